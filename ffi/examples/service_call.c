/* One visit from C: superheat, then the diagnosis, why, what next, what to take care of.
 *
 * The freezer is invented. Builds for a host and, unchanged, for a meter without an operating system. */
#include "rimewise.h"

#include <math.h>
#include <stdio.h>

/* Prints a code's name; a code newer than this program prints as a number. */
static const char *text(const RimewiseTexts *texts, int32_t code)
{
    const char *name = "?";
    (void)rimewise_text(texts, code, &name);
    return name;
}

int main(void)
{
    /* What is known of the machine. */
    RimewiseSystem system;
    rimewise_system_clear(&system, sizeof system);
    system.metering = RIMEWISE_METERING_CAPILLARY;
    system.duty = RIMEWISE_DUTY_FREEZER;
    system.receiver = 0;
    system.design_space_c = -20.0f;
    system.design_ambient_c = 32.0f;
    system.design_evaporator_td_k = 8.0f;
    system.design_condenser_td_k = 11.0f;
    system.design_suction_superheat_k = 20.0f;
    system.design_subcooling_k = 4.0f;
    system.compressor_rated_load_a = 3.1f;
    system.compressor_rated_v = 230.0f;
    system.compressor_run_capacitor_uf = 15.0f;

    /* What was measured; the gauges read in psi above the atmosphere at 1,600 m. */
    RimewiseReadings readings;
    float atmosphere_kpa;
    rimewise_readings_clear(&readings, sizeof readings);
    rimewise_atmosphere_at_altitude(1600.0f, &atmosphere_kpa);
    rimewise_pressure_to_kpa(18.4f, RIMEWISE_PRESSURE_UNIT_PSI_GAUGE, atmosphere_kpa,
                             &readings.suction_pressure_kpa);
    rimewise_pressure_to_kpa(167.0f, RIMEWISE_PRESSURE_UNIT_PSI_GAUGE, atmosphere_kpa,
                             &readings.discharge_pressure_kpa);
    readings.evaporator_outlet_c = -21.5f;
    readings.suction_line_c = -4.0f;
    readings.discharge_line_c = 68.0f;
    readings.liquid_line_c = 33.5f;
    readings.space_c = -17.5f;
    readings.ambient_c = 27.0f;
    readings.current_a = 2.9f;
    readings.voltage_v = 228.0f;
    readings.run_capacitor_uf = 12.1f;

    /* Superheat at the compressor, by hand. */
    float dew_c;
    RimewiseStatus status =
        rimewise_dew_temperature(&rimewise_r290, readings.suction_pressure_kpa, &dew_c);
    if (status != RIMEWISE_OK) {
        printf("no dew temperature: %s\n", text(&rimewise_status_en, status));
        return 1;
    }
    printf("suction %.1f kPa, dew %.2f degC, superheat at the compressor %.2f K\n",
           (double)readings.suction_pressure_kpa, (double)dew_c, (double)(readings.suction_line_c - dew_c));

    /* The diagnosis. Report and workspace are some 42 kB, so a meter keeps them off the stack. */
    static RimewiseReport report = {.size = sizeof report};
    static RimewiseWorkspace workspace;
    RimewiseInvalid invalid = {.size = sizeof invalid};
    status = rimewise_diagnose(&rimewise_r290, &system, &readings, NULL, NULL, &workspace, &report, &invalid);
    if (status != RIMEWISE_OK) {
        const char *section = "?", *field = "?";
        rimewise_field_text(invalid.field, &section, &field);
        printf("%s: %s.%s\n", text(&rimewise_status_en, status), section, field);
        return 1;
    }
    if (report.cycle.valid & RIMEWISE_CYCLE_VALID_SUBCOOLING_K)
        printf("subcooling %.1f +- %.1f K\n", (double)report.cycle.subcooling_k.value,
               (double)report.cycle.subcooling_k.u);
    printf("%s: %s\n", report.decided ? "decided" : "not decided, leading",
           text(&rimewise_cause_names, report.leading));
    for (uint32_t i = 0; i < report.cause_count && report.causes[i].probability >= 0.02f; i++)
        printf("  %-24s %3.0f %%\n", text(&rimewise_cause_names, report.causes[i].cause),
               (double)(100.0f * report.causes[i].probability));
    printf("why\n");
    for (uint32_t i = 0; i < report.evidence_count && i < 6; i++)
        printf("  %s speaks %s %s (%+.1f nats)\n", text(&rimewise_measurement_names, report.evidence[i].reading),
               report.evidence[i].weight_nats >= 0.0f ? "for" : "against",
               text(&rimewise_cause_names, report.evidence[i].cause), (double)report.evidence[i].weight_nats);
    printf("what next\n");
    for (uint32_t i = 0; i < report.next_count; i++)
        printf("  %s (%s), %.2f bits\n", text(&rimewise_measurement_names, report.next[i].measurement),
               text(&rimewise_effort_names, report.next[i].effort), (double)report.next[i].information_bits);
    printf("electrical\n");
    for (uint32_t i = 0; i < report.electrical_count; i++) {
        const RimewiseFinding *f = &report.electrical[i];
        printf("  %s", text(&rimewise_finding_kind_names, f->finding));
        if (f->valid & RIMEWISE_FINDING_VALUE)
            printf(" %.1f %s", (double)f->value, text(&rimewise_unit_names, f->unit));
        printf("\n");
    }
    printf("take care\n");
    for (uint32_t i = 0; i < report.caution_count; i++)
        printf("  %s: %s\n", text(&rimewise_step_names, report.cautions[i].step),
               text(&rimewise_caution_code_en, report.cautions[i].code));
    return 0;
}
