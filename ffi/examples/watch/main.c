/* Watches a machine run: one sample after the other into the monitor, its events as they come, and at the end what the
 * averages and the tests seen in the stream say.
 *
 * The machine is invented: a walk-in freezer on R404A that is pumped down against its suction service valve, and whose
 * pressure rises afterwards. On a real meter `recording` is what the instruments show as often as they are read. */
#include "rimewise.h"

#include <math.h>
#include <stdio.h>

#include "recording.h"

#define SAMPLES (sizeof recording / sizeof *recording)

static RimewiseMonitor monitor; /* 1 KiB, all that watching takes */
static RimewiseMonitorEvents events;
static RimewiseReadings readings, found;
static RimewiseUncertainty uncertainty;
static RimewiseSystem machine;
static RimewiseReport report;
static RimewiseWorkspace workspace;

static const char *text(const RimewiseTexts *texts, int32_t code)
{
    const char *name = "?";
    (void)rimewise_text(texts, code, &name);
    return name;
}

/* What the technician entered once, for the diagnosis and for the monitor. */
static RimewiseStatus enter_machine(void)
{
    RimewiseMonitorSettings settings;
    RimewiseInvalid invalid = {.size = sizeof invalid};
    rimewise_system_clear(&machine, sizeof machine);
    machine.metering = RIMEWISE_METERING_THERMOSTATIC_VALVE;
    machine.duty = RIMEWISE_DUTY_FREEZER;
    machine.receiver = 1;
    machine.design_space_c = -20.0f;
    machine.design_ambient_c = 32.0f;
    machine.design_evaporator_td_k = 6.7f;
    machine.design_condenser_td_k = 13.5f;
    machine.compressor_rated_load_a = 20.7f;
    machine.compressor_locked_rotor_a = 99.5f;
    machine.compressor_rated_v = 230.0f;
    rimewise_monitor_settings_clear(&settings, sizeof settings);
    settings.rated_load_a = machine.compressor_rated_load_a;
    settings.locked_rotor_a = machine.compressor_locked_rotor_a;
    settings.rated_v = machine.compressor_rated_v;
    settings.pump_down_valve = RIMEWISE_PUMP_DOWN_VALVE_SUCTION_SERVICE;
    return rimewise_monitor_start(&monitor, &settings, &invalid);
}

static void show(const RimewiseMonitorEvent *event)
{
    printf("%5u s  %s", (unsigned)(event->time_ms_low / 1000u), text(&rimewise_monitor_event_kind_names, event->kind));
    /* What the figures are stands beside the kinds in the header. */
    for (uint32_t i = 0; i < 3; i++)
        if (event->valid >> i & 1u)
            printf("  %.2f", (double)event->values[i]);
    printf("\n");
}

static void take(const Row *row)
{
    RimewiseSample sample;
    rimewise_sample_clear(&sample, sizeof sample);
    sample.suction_pressure_kpa = row->suction_pressure_kpa;
    sample.discharge_pressure_kpa = row->discharge_pressure_kpa;
    sample.evaporator_outlet_c = row->evaporator_outlet_c;
    sample.suction_line_c = row->suction_line_c;
    sample.discharge_line_c = row->discharge_line_c;
    sample.space_c = row->space_c;
    sample.ambient_c = row->ambient_c;
    sample.current_a = row->current_a;
    sample.voltage_v = row->voltage_v;
    events.size = sizeof events;
    if (rimewise_monitor_push(&monitor, &rimewise_r404a, row->time_ms, &sample, &events) != RIMEWISE_OK)
        return;
    if (events.problem != 0)
        printf("%5u s  ! %s\n", (unsigned)(row->time_ms / 1000u),
               text(&rimewise_monitor_sample_problem_names, events.problem));
    for (uint32_t i = 0; i < events.count; i++)
        show(&events.events[i]);
    /* The averages are there while the machine holds still; the latest ones stay. */
    (void)rimewise_monitor_readings(&monitor, NULL, &readings, &uncertainty);
}

static int tell(void)
{
    found.size = sizeof found;
    rimewise_monitor_found(&monitor, &found);
    /* The pump-down came after the last averages. */
    readings.pump_down_kpa = found.pump_down_kpa;
    readings.pump_down_rise_kpa_per_min = found.pump_down_rise_kpa_per_min;
    readings.pump_down_valve = found.pump_down_valve;
    readings.pump_down_ended_by = found.pump_down_ended_by;
    report.size = sizeof report;
    RimewiseStatus status = rimewise_diagnose(&rimewise_r404a, &machine, &readings, NULL, &uncertainty, &workspace,
                                              &report, NULL);
    if (status != RIMEWISE_OK) {
        printf("no diagnosis: %s\n", text(&rimewise_status_en, status));
        return 1;
    }
    printf("%s: %s, %.0f %%\n", report.decided ? "decided" : "not decided, most probable",
           text(&rimewise_cause_names, report.leading), (double)(100.0f * report.causes[0].probability));
    printf("take care:\n");
    for (uint32_t i = 0; i < report.caution_count; i++)
        printf("  %s: %s\n", text(&rimewise_step_names, report.cautions[i].step),
               text(&rimewise_caution_code_en, report.cautions[i].code));
    return 0;
}

int main(void)
{
    if (enter_machine() != RIMEWISE_OK) {
        printf("the plate cannot be used\n");
        return 1;
    }
    rimewise_readings_clear(&readings, sizeof readings);
    rimewise_uncertainty_clear(&uncertainty, sizeof uncertainty);
    for (uint32_t i = 0; i < SAMPLES; i++)
        take(&recording[i]);
    return tell();
}
