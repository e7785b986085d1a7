/* 10,000 random byte patterns as input structs: each gets a status, none a crash, and no number out is NaN.
 *
 * The first argument sets another number of patterns, for slow checkers. */
#include "rimewise.h"

#include "check.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* xorshift64*: Marsaglia, Journal of Statistical Software 8 (2003); Vigna, ACM TOMS 42 (2016). */
static uint64_t seed = 0x9E3779B97F4A7C15u;
static uint32_t draw(void)
{
    seed ^= seed >> 12;
    seed ^= seed << 25;
    seed ^= seed >> 27;
    return (uint32_t)((seed * 0x2545F4914F6CDD1Du) >> 32);
}

static void noise(void *object, size_t size)
{
    unsigned char *bytes = object;
    for (size_t i = 0; i < size; i++)
        bytes[i] = (unsigned char)(draw() >> 24);
}

/* Replaces some of the words behind the size by noise, or by floats and codes on the edges of what is allowed. */
static void disturb(void *object, size_t size, uint32_t one_in)
{
    static const float edges[] = {0.0f, -0.0f, 1e-38f, 1e-45f, -1.0f, 3.4e38f, INFINITY, -INFINITY, 1.0f, 100.0f};
    uint32_t *words = object;
    for (size_t i = 1; i < size / 4; i++) {
        if (draw() % one_in != 0)
            continue;
        uint32_t kind = draw() % 4;
        if (kind == 0)
            words[i] = draw();
        else if (kind == 1)
            memcpy(&words[i], &edges[draw() % 10], 4);
        else if (kind == 2)
            words[i] = draw() % 5 - 1;
        else {
            float value = (float)(draw() % 20000) / 10.0f - 100.0f;
            memcpy(&words[i], &value, 4);
        }
    }
}

/* Every number of a report is finite; the codes are small integers, which as floats are denormal and finite too. */
static int all_finite(const void *object, size_t size)
{
    for (size_t i = 0; i < size / 4; i++) {
        float value;
        memcpy(&value, (const char *)object + 4 * i, 4);
        if (isnan(value))
            return 0;
    }
    return 1;
}

static RimewiseSystem machine;
static RimewiseReadings readings, record[2];
static RimewiseObservations observations;
static RimewiseUncertainty uncertainty;
static RimewiseReport report, before;
static RimewiseCycle cycle;
static RimewiseWorkspace workspace;
static RimewiseInvalid invalid;

int main(int argc, char **argv)
{
    unsigned patterns = argc > 1 ? (unsigned)atoi(argv[1]) : 10000;
    unsigned answered = 0, refused = 0;
    for (unsigned n = 0; n < patterns; n++) {
        const RimewiseRefrigerant *refrigerant;
        CHECK(rimewise_refrigerant_at(draw() % 100, &refrigerant) == RIMEWISE_OK);
        rimewise_system_clear(&machine, sizeof machine);
        rimewise_readings_clear(&readings, sizeof readings);
        rimewise_observations_clear(&observations, sizeof observations);
        rimewise_uncertainty_clear(&uncertainty, sizeof uncertainty);
        memset(&report, 0, sizeof report);
        report.size = sizeof report;
        invalid.size = sizeof invalid;
        switch (n % 4) {
        case 0: /* noise, the sizes included */
            noise(&machine, sizeof machine);
            noise(&readings, sizeof readings);
            noise(&observations, sizeof observations);
            noise(&uncertainty, sizeof uncertainty);
            break;
        case 1: /* noise behind right sizes */
            noise(&machine, sizeof machine);
            noise(&readings, sizeof readings);
            noise(&observations, sizeof observations);
            noise(&uncertainty, sizeof uncertainty);
            machine.size = sizeof machine;
            readings.size = sizeof readings;
            observations.size = sizeof observations;
            uncertainty.size = sizeof uncertainty;
            break;
        case 2: /* one struct in noise, the others as they should be */
            noise(draw() % 2 ? (void *)&readings.running : (void *)&readings.suction_pressure_kpa, 3 * 4);
            break;
        default: /* a visit with a few words disturbed */
            readings.suction_pressure_kpa = 150.0f + (float)(draw() % 200);
            readings.discharge_pressure_kpa = 900.0f + (float)(draw() % 900);
            readings.suction_line_c = -20.0f + (float)(draw() % 40);
            readings.space_c = -20.0f + (float)(draw() % 40);
            readings.ambient_c = 20.0f + (float)(draw() % 20);
            disturb(&machine, sizeof machine, 40);
            disturb(&readings, sizeof readings, 60);
            disturb(&observations, sizeof observations, 20);
            disturb(&uncertainty, sizeof uncertainty, 20);
        }
        if (n % 16 == 0)
            noise(&workspace, sizeof workspace); /* it need not be initialised */
        before = report;
        RimewiseStatus status;
        if (n % 8 == 7) {
            record[0] = record[1] = readings;
            disturb(&record[1], sizeof record[1], 60);
            const RimewiseVisit visit = {.size = sizeof visit,
                                         .record_count = 2,
                                         .system = &machine,
                                         .readings = &readings,
                                         .observations = &observations,
                                         .uncertainty = &uncertainty,
                                         .record = record};
            status = rimewise_diagnose_visit(refrigerant, &visit, &workspace, &report, &invalid);
        } else {
            status = rimewise_diagnose(refrigerant, &machine, &readings, &observations, &uncertainty, &workspace,
                                       &report, &invalid);
        }
        if (status == RIMEWISE_OK) {
            answered++;
            CHECK(all_finite(&report, sizeof report));
            for (uint32_t i = 0; i < report.warning_count; i++) {
                const char *section, *name;
                CHECK(rimewise_field_text(report.warnings[i].field, &section, &name) == RIMEWISE_OK);
            }
            CHECK(report.leading >= 0 && report.leading < (int32_t)report.cause_count);
        } else {
            refused++;
            CHECK(status == RIMEWISE_STATUS_WRONG_SIZE || status == RIMEWISE_STATUS_UNKNOWN_CODE ||
                  status == RIMEWISE_STATUS_INVALID_INPUT);
            CHECK(memcmp(&before, &report, sizeof report) == 0);
            if (status != RIMEWISE_STATUS_WRONG_SIZE) {
                const char *section, *name;
                CHECK(rimewise_field_text(invalid.field, &section, &name) == RIMEWISE_OK);
            }
        }
        status = rimewise_cycle(refrigerant, &machine, &readings, &uncertainty, &cycle, NULL);
        if (status == RIMEWISE_OK)
            CHECK(all_finite(&cycle, sizeof cycle));
    }
    printf("random: %u answered, %u refused\n", answered, refused);
    CHECK(patterns < 100 || (answered > patterns / 50 && refused > patterns / 10));
    return checks_close("random");
}
