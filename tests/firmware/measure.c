/* Instructions and stack of fixed scenarios, printed as `name instructions stack_bytes`.
 *
 * Instructions are the difference between 2N and N calls, divided by N. The stack is painted below the call and looked
 * at after it. */
#include "rimewise.h"

#include "clock.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static RimewiseSystem machine;
static RimewiseReadings few, all;
static RimewiseObservations observations;
static RimewiseUncertainty uncertainty;
static RimewiseReport report;
static RimewiseWorkspace workspace;
static RimewiseCycle cycle;
static RimewiseState state;
static volatile float pressure_kpa = 210.0f, temperature_c = 5.0f;
static volatile float answer;

static void saturation(void)
{
    float c;
    rimewise_dew_temperature(&rimewise_r290, pressure_kpa, &c);
    answer = c;
}

static void vapor(void)
{
    rimewise_vapor(&rimewise_r290, pressure_kpa, temperature_c, &state);
}

static void cycle_of_all(void)
{
    rimewise_cycle(&rimewise_r290, &machine, &all, &uncertainty, &cycle, NULL);
}

static void diagnosis_of_few(void)
{
    rimewise_diagnose(&rimewise_r290, &machine, &few, NULL, NULL, &workspace, &report, NULL);
}

static void diagnosis_of_all(void)
{
    rimewise_diagnose(&rimewise_r290, &machine, &all, &observations, &uncertainty, &workspace, &report, NULL);
}

static void nothing(void) {}

static void measure(const char *name, void (*call)(void), uint32_t calls)
{
    uint32_t began = ticks();
    for (uint32_t i = 0; i < calls; i++)
        call();
    uint32_t once = ticks() - began;
    began = ticks();
    for (uint32_t i = 0; i < 2 * calls; i++)
        call();
    uint32_t twice = ticks() - began;
    printf("%s %.0f %u\n", name, instructions(twice - once) / calls, (unsigned)stack_of(call, STACK_ROOM));
}

int main(void)
{
    rimewise_system_clear(&machine, sizeof machine);
    rimewise_readings_clear(&few, sizeof few);
    rimewise_observations_clear(&observations, sizeof observations);
    rimewise_uncertainty_clear(&uncertainty, sizeof uncertainty);
    report.size = sizeof report;
    machine.metering = RIMEWISE_METERING_CAPILLARY;
    machine.duty = RIMEWISE_DUTY_FREEZER;
    machine.design_space_c = -20.0f;
    machine.design_ambient_c = 32.0f;
    machine.design_evaporator_td_k = 8.0f;
    machine.design_condenser_td_k = 11.0f;
    machine.design_suction_superheat_k = 20.0f;
    machine.design_subcooling_k = 4.0f;
    machine.compressor_rated_load_a = 3.1f;
    machine.compressor_rated_v = 230.0f;
    machine.compressor_run_capacitor_uf = 15.0f;
    few.suction_pressure_kpa = 210.0f;
    few.suction_line_c = -4.0f;
    few.space_c = -17.5f;
    few.ambient_c = 27.0f;
    all = few;
    all.discharge_pressure_kpa = 1320.0f;
    all.evaporator_pressure_kpa = 215.0f;
    all.liquid_pressure_kpa = 1310.0f;
    all.evaporator_outlet_c = -21.5f;
    all.discharge_line_c = 68.0f;
    all.liquid_line_c = 33.5f;
    all.drier_outlet_c = 33.0f;
    all.supply_air_c = -23.0f;
    all.condenser_exhaust_c = 34.5f;
    all.current_a = 2.9f;
    all.voltage_v = 228.0f;
    all.pump_down_kpa = 165.0f;
    all.pump_down_rise_kpa_per_min = 6.0f;
    all.pump_down_valve = RIMEWISE_PUMP_DOWN_VALVE_SUCTION_SERVICE;
    all.pump_down_ended_by = RIMEWISE_PUMP_DOWN_END_LIMIT;
    all.winding_run_ohm = 2.5f;
    all.winding_start_ohm = 9.9f;
    all.winding_run_to_start_ohm = 12.4f;
    all.winding_to_frame_megohm = 200.0f;
    all.run_capacitor_uf = 14.6f;
    observations.start_noise = RIMEWISE_START_NOISE_FADES;
    observations.frost_on_compressor = 0;
    observations.sight_glass = RIMEWISE_SIGHT_GLASS_CLEAR;
    observations.coil_iced = 0;
    start_clock();
    measure("nothing", nothing, 1000);
    measure("saturation", saturation, 1000);
    measure("vapor", vapor, 100);
    measure("cycle", cycle_of_all, 10);
    measure("diagnosis_few", diagnosis_of_few, 1);
    measure("diagnosis_all", diagnosis_of_all, 1);
    return report.leading < 0;
}
