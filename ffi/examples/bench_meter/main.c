/* A bench meter: takes raw sensor counts once a second, shows superheat and subcooling as the machine runs, and at the
 * end says what is wrong, why, and what to measure next.
 *
 * The machine is invented: a walk-in cooler on R448A whose condenser is blocked. On a real meter `recording` is the
 * converter's buffer and printf the display. */
#include "filter.h"
#include "rimewise.h"
#include "sensor.h"

#include <math.h>
#include <stdio.h>

enum { SUCTION, DISCHARGE, OUTLET, SUCTION_LINE, DISCHARGE_LINE, LIQUID_LINE, SPACE, AMBIENT, CURRENT, CHANNELS };

#include "recording.h"

#define SECONDS (sizeof recording / sizeof *recording)

static const RimewiseRefrigerant *const refrigerant = &rimewise_r448a;
static RimewiseSystem machine;
static RimewiseReadings readings;
static RimewiseObservations observations;
static RimewiseReport report;
static RimewiseWorkspace workspace;
static Filter filters[CHANNELS];

/* What the technician entered once: the plate and the sheet. */
static void enter_machine(void)
{
    rimewise_system_clear(&machine, sizeof machine);
    machine.metering = RIMEWISE_METERING_THERMOSTATIC_VALVE;
    machine.duty = RIMEWISE_DUTY_COOLER;
    machine.receiver = 1;
    machine.design_space_c = 3.0f;
    machine.design_ambient_c = 33.0f;
    machine.design_evaporator_td_k = 7.0f;
    machine.design_condenser_td_k = 12.0f;
    machine.design_suction_superheat_k = 13.0f;
    machine.compressor_rated_load_a = 7.6f;
    machine.compressor_rated_v = 230.0f;
    machine.compressor_phases = 3.0f;
    machine.compressor_hz = 60.0f;
}

/* One row of counts into the readings. */
static void take(const uint16_t *counts, float atmosphere_kpa, uint32_t second)
{
    readings.suction_pressure_kpa =
        atmosphere_kpa + filter_push(&filters[SUCTION], pressure_kpa_gauge(counts[SUCTION], 1000.0f));
    readings.discharge_pressure_kpa =
        atmosphere_kpa + filter_push(&filters[DISCHARGE], pressure_kpa_gauge(counts[DISCHARGE], 4000.0f));
    readings.evaporator_outlet_c = filter_push(&filters[OUTLET], thermistor_c(counts[OUTLET]));
    readings.suction_line_c = filter_push(&filters[SUCTION_LINE], thermistor_c(counts[SUCTION_LINE]));
    readings.discharge_line_c = filter_push(&filters[DISCHARGE_LINE], thermistor_c(counts[DISCHARGE_LINE]));
    readings.liquid_line_c = filter_push(&filters[LIQUID_LINE], thermistor_c(counts[LIQUID_LINE]));
    readings.space_c = filter_push(&filters[SPACE], thermistor_c(counts[SPACE]));
    readings.ambient_c = filter_push(&filters[AMBIENT], thermistor_c(counts[AMBIENT]));
    readings.current_a = filter_push(&filters[CURRENT], current_a(counts[CURRENT], 20.0f));
    /* The machine ran for twenty minutes before the meter was clamped on. */
    readings.minutes_running = 20.0f + (float)second / 60.0f;
}

static void show(uint32_t second)
{
    RimewiseCycle cycle;
    RimewiseStatus status = rimewise_cycle(refrigerant, &machine, &readings, NULL, &cycle, NULL);
    if (status != RIMEWISE_OK) {
        printf("%4u s  status %d\n", (unsigned)second, (int)status);
        return;
    }
    printf("%4u s", (unsigned)second);
    if (cycle.valid & RIMEWISE_CYCLE_VALID_SUPERHEAT_K)
        printf("  superheat %5.1f K", (double)cycle.superheat_k.value);
    if (cycle.valid & RIMEWISE_CYCLE_VALID_SUBCOOLING_K)
        printf("  subcooling %5.1f K", (double)cycle.subcooling_k.value);
    if (cycle.valid & RIMEWISE_CYCLE_VALID_CONDENSING_C)
        printf("  condensing %5.1f degC", (double)cycle.condensing_c.value);
    printf("\n");
}

static const char *text(const RimewiseTexts *texts, int32_t code)
{
    const char *name = "?";
    (void)rimewise_text(texts, code, &name);
    return name;
}

static int tell(void)
{
    report.size = sizeof report;
    RimewiseStatus status =
        rimewise_diagnose(refrigerant, &machine, &readings, &observations, NULL, &workspace, &report, NULL);
    if (status != RIMEWISE_OK) {
        printf("no diagnosis: %s\n", text(&rimewise_status_en, status));
        return 1;
    }
    printf("%s: %s, %.0f %%\n", report.decided ? "decided" : "not decided, most probable",
           text(&rimewise_cause_names, report.leading), (double)(100.0f * report.causes[0].probability));
    printf("why:\n");
    for (uint32_t i = 0, shown = 0; i < report.evidence_count && shown < 3; i++) {
        if (report.evidence[i].cause != report.leading)
            continue;
        printf("  %s %s\n", text(&rimewise_measurement_names, report.evidence[i].reading),
               report.evidence[i].weight_nats >= 0.0f ? "for" : "against");
        shown++;
    }
    printf("next:\n");
    for (uint32_t i = 0; i < report.next_count && i < 3; i++)
        printf("  %s (%s)\n", text(&rimewise_measurement_names, report.next[i].measurement),
               text(&rimewise_effort_names, report.next[i].effort));
    printf("take care:\n");
    for (uint32_t i = 0; i < report.caution_count; i++)
        printf("  %s: %s\n", text(&rimewise_step_names, report.cautions[i].step),
               text(&rimewise_caution_code_en, report.cautions[i].code));
    return 0;
}

int main(void)
{
    float atmosphere_kpa;
    enter_machine();
    rimewise_readings_clear(&readings, sizeof readings);
    rimewise_observations_clear(&observations, sizeof observations);
    observations.sight_glass = RIMEWISE_SIGHT_GLASS_BUBBLES;
    rimewise_atmosphere_at_altitude(0.0f, &atmosphere_kpa);
    for (uint32_t second = 0; second < SECONDS; second++) {
        take(recording[second], atmosphere_kpa, second);
        if (second % 60 == 59)
            show(second + 1);
    }
    return tell();
}
