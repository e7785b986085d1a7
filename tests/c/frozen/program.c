/* A program of the first release: it includes the header that lies beside it, which is never written anew, and runs
 * against the newest library. Every struct that may grow has a page of 0xA5 behind it, which no call may touch.
 *
 * Prints one digest of everything that comes out, so that two libraries can be compared. */
#include "rimewise.h"

#include <stdio.h>
#include <string.h>

static int failures;

static void check(int holds, int line)
{
    if (!holds) {
        printf("frozen: line %d does not hold\n", line);
        failures++;
    }
}
#define CHECK(condition) check((condition), __LINE__)

/* A struct with room behind it that is the program's own. */
#define GUARDED(type, name)              \
    static struct {                      \
        type it;                         \
        unsigned char guard[256];        \
    } name

GUARDED(RimewiseSystem, machine);
GUARDED(RimewiseReadings, readings);
GUARDED(RimewiseObservations, observations);
GUARDED(RimewiseUncertainty, uncertainty);
GUARDED(RimewiseCall, call);
GUARDED(RimewiseAccess, reach);
GUARDED(RimewiseCosts, costs);
GUARDED(RimewiseReport, report);
GUARDED(RimewiseInvalid, invalid);
GUARDED(RimewiseDecision, decision);
GUARDED(RimewiseMonitorSettings, settings);
GUARDED(RimewiseSample, sample);
GUARDED(RimewiseMonitorEvents, events);
GUARDED(RimewiseRefrigerantInfo, info);
GUARDED(RimewiseCycle, cycle);
static RimewiseReadings record[2];
static RimewiseWorkspace workspace;
static RimewiseMonitor monitor;

static int untouched(const unsigned char *guard)
{
    for (unsigned i = 0; i < 256; i++)
        if (guard[i] != 0xA5)
            return 0;
    return 1;
}

static uint32_t hash = 0x811C9DC5u;

static void digest(const void *object, size_t size)
{
    const unsigned char *bytes = object;
    for (size_t i = 0; i < size; i++)
        hash = (hash ^ bytes[i]) * 0x01000193u;
}

int main(void)
{
    unsigned char *guards[] = {machine.guard, readings.guard, observations.guard, uncertainty.guard, call.guard,
                               reach.guard,   costs.guard,    report.guard,       invalid.guard,     decision.guard,
                               settings.guard, sample.guard,  events.guard,       info.guard,        cycle.guard};
    const unsigned guard_count = sizeof guards / sizeof *guards;
    for (unsigned i = 0; i < guard_count; i++)
        memset(guards[i], 0xA5, 256);

    CHECK(rimewise_system_clear(&machine.it, sizeof machine.it) == RIMEWISE_OK);
    CHECK(rimewise_readings_clear(&readings.it, sizeof readings.it) == RIMEWISE_OK);
    CHECK(rimewise_observations_clear(&observations.it, sizeof observations.it) == RIMEWISE_OK);
    CHECK(rimewise_uncertainty_clear(&uncertainty.it, sizeof uncertainty.it) == RIMEWISE_OK);
    CHECK(rimewise_call_clear(&call.it, sizeof call.it) == RIMEWISE_OK);
    CHECK(rimewise_access_clear(&reach.it, sizeof reach.it) == RIMEWISE_OK);
    CHECK(rimewise_costs_clear(&costs.it, sizeof costs.it) == RIMEWISE_OK);
    CHECK(rimewise_monitor_settings_clear(&settings.it, sizeof settings.it) == RIMEWISE_OK);
    CHECK(rimewise_sample_clear(&sample.it, sizeof sample.it) == RIMEWISE_OK);

    /* An invented freezer on R290, with a stopped pump-down. */
    machine.it.metering = RIMEWISE_METERING_CAPILLARY;
    machine.it.duty = RIMEWISE_DUTY_FREEZER;
    machine.it.design_space_c = -20.0f;
    machine.it.compressor_rated_load_a = 3.1f;
    readings.it.suction_pressure_kpa = 210.0f;
    readings.it.discharge_pressure_kpa = 1320.0f;
    readings.it.evaporator_outlet_c = -21.5f;
    readings.it.suction_line_c = -4.0f;
    readings.it.space_c = -17.5f;
    readings.it.ambient_c = 27.0f;
    readings.it.current_a = 2.9f;
    readings.it.minutes_running = 5.0f;
    readings.it.line_voltages_v[0] = 228.0f;
    readings.it.line_voltages_v[1] = 229.0f;
    readings.it.line_voltages_v[2] = 230.0f;
    readings.it.hours_running = 3.0f;
    observations.it.start_noise = RIMEWISE_START_NOISE_FADES;
    observations.it.start_sound = RIMEWISE_START_SOUND_STARTS;
    uncertainty.it.line_temperature_k = 1.0f;
    call.it.complaint = 1 << RIMEWISE_COMPLAINT_NOT_COLD;
    reach.it.suction_port = 1;
    costs.it.visit = 100.0f;
    costs.it.test = 20.0f;
    costs.it.compressor = 900.0f;
    costs.it.product_at_risk = 400.0f;
    for (int cause = 1; cause < 10; cause++)
        costs.it.repair[cause] = 100.0f + 10.0f * (float)cause;
    record[0] = record[1] = readings.it;

    const RimewiseVisit visit = {.size = sizeof visit,
                                 .record_count = 2,
                                 .system = &machine.it,
                                 .readings = &readings.it,
                                 .observations = &observations.it,
                                 .uncertainty = &uncertainty.it,
                                 .call = &call.it,
                                 .access = &reach.it,
                                 .costs = &costs.it,
                                 .record = record};
    report.it.size = sizeof report.it;
    invalid.it.size = sizeof invalid.it;
    CHECK(rimewise_diagnose_visit(&rimewise_r290, &visit, &workspace, &report.it, &invalid.it) == RIMEWISE_OK);
    CHECK(report.it.cause_count >= 10 && report.it.warning_count > 0 && report.it.caution_count > 0);
    CHECK(report.it.cycle.valid & RIMEWISE_CYCLE_VALID_SUPERHEAT_K);
    digest(&report.it, sizeof report.it);
    CHECK(rimewise_diagnose(&rimewise_r290, &machine.it, &readings.it, NULL, NULL, &workspace, &report.it, NULL) ==
          RIMEWISE_OK);
    digest(&report.it, sizeof report.it);
    CHECK(rimewise_cycle(&rimewise_r290, NULL, &readings.it, NULL, &cycle.it, NULL) == RIMEWISE_OK);
    digest(&cycle.it, sizeof cycle.it);

    float chances[10];
    for (uint32_t i = 0; i < 10; i++)
        chances[report.it.causes[i].cause] = report.it.causes[i].probability;
    decision.it.size = sizeof decision.it;
    CHECK(rimewise_decide(chances, 10, &costs.it, 0.5f, &decision.it) == RIMEWISE_OK);
    digest(&decision.it, sizeof decision.it);

    readings.it.hours_running = -1.0f;
    CHECK(rimewise_diagnose_visit(&rimewise_r290, &visit, &workspace, &report.it, &invalid.it) ==
          RIMEWISE_STATUS_INVALID_INPUT);
    CHECK(invalid.it.field == RIMEWISE_MEASUREMENT_HOURS_RUNNING && invalid.it.code == RIMEWISE_ERROR_CODE_OUT_OF_RANGE);
    digest(&invalid.it, sizeof invalid.it);

    info.it.size = sizeof info.it;
    CHECK(rimewise_refrigerant_info(&rimewise_r290, &info.it) == RIMEWISE_OK);
    CHECK(info.it.safety_class == RIMEWISE_SAFETY_CLASS_A3);

    settings.it.rated_load_a = 3.1f;
    CHECK(rimewise_monitor_start(&monitor, &settings.it, &invalid.it) == RIMEWISE_OK);
    events.it.size = sizeof events.it;
    for (unsigned second = 0; second < 600; second++) {
        sample.it.current_a = second < 5 ? 0.0f : 2.6f;
        sample.it.suction_pressure_kpa = 210.0f;
        sample.it.voltage_v = 229.0f;
        CHECK(rimewise_monitor_push(&monitor, &rimewise_r290, 1000u * second, &sample.it, &events.it) == RIMEWISE_OK);
        digest(&events.it, sizeof events.it);
    }
    CHECK(rimewise_monitor_readings(&monitor, NULL, &readings.it, &uncertainty.it) == RIMEWISE_OK);
    CHECK(readings.it.current_a > 2.59f && readings.it.current_a < 2.61f);
    digest(&readings.it, sizeof readings.it);
    digest(&uncertainty.it, sizeof uncertainty.it);

    const char *text;
    CHECK(rimewise_text(&rimewise_cause_names, RIMEWISE_CAUSE_UNDERCHARGE, &text) == RIMEWISE_OK &&
          strcmp(text, "undercharge") == 0);
    for (unsigned i = 0; i < guard_count; i++)
        CHECK(untouched(guards[i]));
    printf("frozen: digest %08lx\n", (unsigned long)hash);
    return failures != 0;
}
