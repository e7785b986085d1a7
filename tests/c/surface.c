/* Every function: right answers, every pointer NULL, every struct of a wrong size, every code unknown. */
#include "rimewise.h"

#include "check.h"

#include <math.h>
#include <string.h>

#define NEAR(value, wanted, within) (fabsf((value) - (wanted)) <= (within))

/* 0xA5 bytes: a result that a failed call must leave as it was. */
#define UNTOUCHED(object) untouched(&(object), sizeof(object))

static int untouched(const void *object, size_t size)
{
    const unsigned char *bytes = object;
    for (size_t i = 0; i < size; i++)
        if (bytes[i] != 0xA5)
            return 0;
    return 1;
}

#define SPOIL(object) memset(&(object), 0xA5, sizeof(object))

static void versions(void)
{
    CHECK(rimewise_version() ==
          (RIMEWISE_VERSION_MAJOR << 16 | RIMEWISE_VERSION_MINOR << 8 | RIMEWISE_VERSION_PATCH));
}

static void units(void)
{
    float x;
    /* ICAO standard atmosphere at 1,600 m: 83.523 kPa (ICAO Doc 7488, table, interpolated). */
    CHECK(rimewise_atmosphere_at_altitude(1600.0f, &x) == RIMEWISE_OK && NEAR(x, 83.523f, 0.02f));
    CHECK(rimewise_pressure_to_kpa(0.0f, RIMEWISE_PRESSURE_UNIT_PSI_GAUGE, 101.325f, &x) == RIMEWISE_OK &&
          NEAR(x, 101.325f, 1e-4f));
    CHECK(rimewise_pressure_to_kpa(100.0f, RIMEWISE_PRESSURE_UNIT_PSI, 0.0f, &x) == RIMEWISE_OK &&
          NEAR(x, 689.4757f, 1e-3f));
    CHECK(rimewise_pressure_to_kpa(1.0f, RIMEWISE_PRESSURE_UNIT_BAR_GAUGE, 83.5f, &x) == RIMEWISE_OK &&
          NEAR(x, 183.5f, 1e-3f));
    CHECK(rimewise_pressure_from_kpa(50.0f, RIMEWISE_PRESSURE_UNIT_KPA_GAUGE, 101.325f, &x) == RIMEWISE_OK &&
          NEAR(x, -51.325f, 1e-3f));
    CHECK(rimewise_temperature_to_c(14.0f, RIMEWISE_TEMPERATURE_UNIT_F, &x) == RIMEWISE_OK &&
          NEAR(x, -10.0f, 1e-4f));
    CHECK(rimewise_temperature_from_c(100.0f, RIMEWISE_TEMPERATURE_UNIT_F, &x) == RIMEWISE_OK &&
          NEAR(x, 212.0f, 1e-3f));
    CHECK(rimewise_difference_from_k(10.0f, RIMEWISE_TEMPERATURE_UNIT_F, &x) == RIMEWISE_OK &&
          NEAR(x, 18.0f, 1e-5f));
    CHECK(rimewise_difference_to_k(18.0f, RIMEWISE_TEMPERATURE_UNIT_F, &x) == RIMEWISE_OK &&
          NEAR(x, 10.0f, 1e-5f));
    for (int32_t unit = 1; unit <= 7; unit++) {
        float kpa, back;
        CHECK(rimewise_pressure_to_kpa(123.0f, unit, 95.0f, &kpa) == RIMEWISE_OK);
        CHECK(rimewise_pressure_from_kpa(kpa, unit, 95.0f, &back) == RIMEWISE_OK && NEAR(back, 123.0f, 1.0f));
    }
    SPOIL(x);
    CHECK(rimewise_pressure_to_kpa(1.0f, 0, 101.0f, &x) == RIMEWISE_STATUS_UNKNOWN_CODE && UNTOUCHED(x));
    CHECK(rimewise_pressure_from_kpa(1.0f, 8, 101.0f, &x) == RIMEWISE_STATUS_UNKNOWN_CODE && UNTOUCHED(x));
    CHECK(rimewise_temperature_to_c(1.0f, 4, &x) == RIMEWISE_STATUS_UNKNOWN_CODE && UNTOUCHED(x));
    CHECK(rimewise_temperature_from_c(1.0f, -1, &x) == RIMEWISE_STATUS_UNKNOWN_CODE && UNTOUCHED(x));
    CHECK(rimewise_difference_to_k(1.0f, 9, &x) == RIMEWISE_STATUS_UNKNOWN_CODE && UNTOUCHED(x));
    CHECK(rimewise_difference_from_k(1.0f, 9, &x) == RIMEWISE_STATUS_UNKNOWN_CODE && UNTOUCHED(x));
    CHECK(rimewise_atmosphere_at_altitude(NAN, &x) == RIMEWISE_STATUS_NOT_FINITE && UNTOUCHED(x));
    CHECK(rimewise_temperature_to_c(INFINITY, 1, &x) == RIMEWISE_STATUS_NOT_FINITE && UNTOUCHED(x));
    CHECK(rimewise_atmosphere_at_altitude(0.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_pressure_to_kpa(1.0f, 2, 101.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_pressure_from_kpa(1.0f, 2, 101.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_temperature_to_c(1.0f, 1, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_temperature_from_c(1.0f, 1, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_difference_to_k(1.0f, 1, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_difference_from_k(1.0f, 1, NULL) == RIMEWISE_STATUS_NULL_POINTER);
}

static void refrigerants(void)
{
    const RimewiseRefrigerant *found, *again;
    char name[24];
    uint32_t length;
    float fraction;
    static const char *const ways[] = {"R404A", "R-404A", "r404a", "404A"};
    for (unsigned i = 0; i < 4; i++) {
        CHECK(rimewise_refrigerant_find(ways[i], &found) == RIMEWISE_OK);
        CHECK(rimewise_refrigerant_designation(found, name, sizeof name, &length) == RIMEWISE_OK);
        CHECK(strcmp(name, "R404A") == 0 && length == 5);
    }
    CHECK(rimewise_refrigerant_find("propane", &found) == RIMEWISE_OK);
    CHECK(rimewise_refrigerant_designation(found, name, sizeof name, &length) == RIMEWISE_OK &&
          strcmp(name, "R290") == 0);

    /* The whole list, each found again by its own designation. */
    uint32_t count = 0;
    while (rimewise_refrigerant_at(count, &found) == RIMEWISE_OK) {
        CHECK(rimewise_refrigerant_designation(found, name, sizeof name, &length) == RIMEWISE_OK);
        CHECK(rimewise_refrigerant_find(name, &again) == RIMEWISE_OK && again == found);
        count++;
    }
    CHECK(count > 100);
    CHECK(rimewise_refrigerant_at(count, &found) == RIMEWISE_STATUS_OUT_OF_RANGE);

    /* ASHRAE Standard 34: R404A is 44 % R125, 4 % R134a, 52 % R143a, class A1. */
    RimewiseRefrigerantInfo info = {.size = sizeof info};
    CHECK(rimewise_refrigerant_info(&rimewise_r404a, &info) == RIMEWISE_OK);
    CHECK(info.safety_class == RIMEWISE_SAFETY_CLASS_A1);
    float sum = 0.0f;
    for (uint32_t i = 0; i < info.component_count; i++) {
        CHECK(rimewise_refrigerant_component(&rimewise_r404a, i, name, sizeof name, &length, &fraction) ==
              RIMEWISE_OK);
        if (strcmp(name, "R143a") == 0)
            CHECK(NEAR(fraction, 0.52f, 1e-4f));
        sum += fraction;
    }
    CHECK(info.component_count == 3 && NEAR(sum, 1.0f, 1e-4f));
    CHECK(rimewise_refrigerant_component(&rimewise_r404a, 3, name, sizeof name, &length, &fraction) ==
          RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_refrigerant_info(&rimewise_r290, &info) == RIMEWISE_OK);
    CHECK(info.safety_class == RIMEWISE_SAFETY_CLASS_A3 && info.component_count == 1);
    /* Critical point of propane: Lemmon, McLinden, Wagner, J. Chem. Eng. Data 54 (2009): 369.89 K, 4251.2 kPa. */
    CHECK(NEAR(info.critical_c, 96.74f, 0.05f) && NEAR(info.critical_kpa, 4251.2f, 5.0f));

    SPOIL(name);
    CHECK(rimewise_refrigerant_designation(&rimewise_r404a, name, 5, &length) ==
          RIMEWISE_STATUS_SHORT_BUFFER);
    CHECK(UNTOUCHED(name) && length == 5);
    CHECK(rimewise_refrigerant_component(&rimewise_r404a, 0, name, 2, &length, &fraction) ==
          RIMEWISE_STATUS_SHORT_BUFFER);
    SPOIL(found);
    CHECK(rimewise_refrigerant_find("R9999", &found) == RIMEWISE_STATUS_UNKNOWN_DESIGNATION && UNTOUCHED(found));
    CHECK(rimewise_refrigerant_find("", &found) == RIMEWISE_STATUS_UNKNOWN_DESIGNATION);
    char endless[200];
    memset(endless, '4', sizeof endless - 1);
    endless[sizeof endless - 1] = 0;
    CHECK(rimewise_refrigerant_find(endless, &found) == RIMEWISE_STATUS_UNKNOWN_DESIGNATION);
    CHECK(rimewise_refrigerant_find("\xff\xfe", &found) == RIMEWISE_STATUS_UNKNOWN_DESIGNATION);

    CHECK(rimewise_refrigerant_find(NULL, &found) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_refrigerant_find("R22", NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_refrigerant_at(0, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_refrigerant_info(NULL, &info) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_refrigerant_info(&rimewise_r22, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_refrigerant_designation(NULL, name, 24, &length) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_refrigerant_designation(&rimewise_r22, NULL, 24, &length) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_refrigerant_designation(&rimewise_r22, name, 24, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_refrigerant_component(NULL, 0, name, 24, &length, &fraction) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_refrigerant_component(&rimewise_r22, 0, NULL, 24, &length, &fraction) ==
          RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_refrigerant_component(&rimewise_r22, 0, name, 24, NULL, &fraction) ==
          RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_refrigerant_component(&rimewise_r22, 0, name, 24, &length, NULL) ==
          RIMEWISE_STATUS_NULL_POINTER);
    const uint32_t wrong[] = {0, 3, 4, sizeof info - 4, sizeof info - 1, sizeof info + 4, 0xFFFFFFFF};
    for (unsigned i = 0; i < sizeof wrong / sizeof *wrong; i++) {
        info.size = wrong[i];
        CHECK(rimewise_refrigerant_info(&rimewise_r22, &info) == RIMEWISE_STATUS_WRONG_SIZE);
    }

    /* A table that is none. */
    RimewiseRefrigerantStorage storage;
    uint8_t table[64] = {0};
    CHECK(rimewise_refrigerant_load(table, sizeof table, &storage, &found) == RIMEWISE_STATUS_NOT_A_TABLE);
    CHECK(rimewise_refrigerant_load(table, 0, &storage, &found) == RIMEWISE_STATUS_NOT_A_TABLE);
    memcpy(table, "RMWT\x01\x00\x08\x00", 8);
    CHECK(rimewise_refrigerant_load(table, sizeof table, &storage, &found) == RIMEWISE_STATUS_TABLE_LENGTH);
    CHECK(rimewise_refrigerant_load(NULL, 64, &storage, &found) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_refrigerant_load(table, 64, NULL, &found) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_refrigerant_load(table, 64, &storage, NULL) == RIMEWISE_STATUS_NULL_POINTER);
}

typedef RimewiseStatus (*Curve)(const RimewiseRefrigerant *, float, float *);
typedef RimewiseStatus (*OnePhase)(const RimewiseRefrigerant *, float, float, RimewiseState *);
typedef RimewiseStatus (*Inverse)(const RimewiseRefrigerant *, float, float, float *);

static void properties(void)
{
    static const Curve curves[] = {rimewise_dew_temperature, rimewise_bubble_temperature, rimewise_dew_pressure,
                                   rimewise_bubble_pressure};
    static const OnePhase phases[] = {rimewise_vapor, rimewise_liquid};
    static const Inverse inverses[] = {rimewise_vapor_temperature_at_enthalpy,
                                       rimewise_vapor_temperature_at_entropy};
    RimewiseState state, saturated;
    float x, y;
    int32_t phase;
    /* Saturation of R134a at 200 kPa: -10.09 degC (ASHRAE Handbook - Fundamentals, R-134a table). */
    CHECK(rimewise_dew_temperature(&rimewise_r134a, 200.0f, &x) == RIMEWISE_OK && NEAR(x, -10.09f, 0.02f));
    CHECK(rimewise_dew_pressure(&rimewise_r134a, x, &y) == RIMEWISE_OK && NEAR(y, 200.0f, 0.02f));
    CHECK(rimewise_bubble_temperature(&rimewise_r134a, 200.0f, &x) == RIMEWISE_OK && NEAR(x, -10.09f, 0.02f));
    CHECK(rimewise_bubble_pressure(&rimewise_r134a, x, &y) == RIMEWISE_OK && NEAR(y, 200.0f, 0.02f));
    /* A blend with glide: its dew lies above its bubble. */
    CHECK(rimewise_dew_temperature(&rimewise_r407c, 500.0f, &x) == RIMEWISE_OK);
    CHECK(rimewise_bubble_temperature(&rimewise_r407c, 500.0f, &y) == RIMEWISE_OK && x - y > 4.0f && x - y < 8.0f);
    /* The IIR reference state: saturated liquid at 0 degC has 200 kJ/kg and 1 kJ/(kg K). */
    CHECK(rimewise_bubble_pressure(&rimewise_r134a, 0.0f, &x) == RIMEWISE_OK);
    CHECK(rimewise_saturated_liquid(&rimewise_r134a, x, &state) == RIMEWISE_OK);
    CHECK(NEAR(state.enthalpy_kj_kg, 200.0f, 0.2f) && NEAR(state.entropy_kj_kg_k, 1.0f, 0.001f));
    CHECK(rimewise_saturated_vapor(&rimewise_r134a, x, &saturated) == RIMEWISE_OK);
    /* Latent heat of R134a at 0 degC: 198.6 kJ/kg (ASHRAE Handbook - Fundamentals, R-134a table). */
    CHECK(NEAR(saturated.enthalpy_kj_kg - state.enthalpy_kj_kg, 198.6f, 0.4f));
    CHECK(rimewise_vapor(&rimewise_r134a, x, 20.0f, &state) == RIMEWISE_OK);
    CHECK(state.enthalpy_kj_kg > saturated.enthalpy_kj_kg && state.density_kg_m3 < saturated.density_kg_m3);
    CHECK(rimewise_vapor_temperature_at_enthalpy(&rimewise_r134a, x, state.enthalpy_kj_kg, &y) == RIMEWISE_OK &&
          NEAR(y, 20.0f, 0.02f));
    CHECK(rimewise_vapor_temperature_at_entropy(&rimewise_r134a, x, state.entropy_kj_kg_k, &y) == RIMEWISE_OK &&
          NEAR(y, 20.0f, 0.02f));
    CHECK(rimewise_phase(&rimewise_r134a, x, 20.0f, &phase) == RIMEWISE_OK && phase == RIMEWISE_PHASE_VAPOR);
    CHECK(rimewise_phase(&rimewise_r134a, x, -20.0f, &phase) == RIMEWISE_OK && phase == RIMEWISE_PHASE_LIQUID);
    CHECK(rimewise_liquid(&rimewise_r134a, x, -20.0f, &state) == RIMEWISE_OK);

    SPOIL(state);
    SPOIL(x);
    CHECK(rimewise_vapor(&rimewise_r134a, 300.0f, -30.0f, &state) == RIMEWISE_STATUS_OTHER_PHASE);
    CHECK(rimewise_liquid(&rimewise_r134a, 300.0f, 60.0f, &state) == RIMEWISE_STATUS_OTHER_PHASE);
    CHECK(rimewise_vapor(&rimewise_r134a, 300.0f, 290.0f, &state) == RIMEWISE_STATUS_TEMPERATURE_OUTSIDE_TABLE);
    CHECK(rimewise_dew_temperature(&rimewise_r134a, 9000.0f, &x) == RIMEWISE_STATUS_TRANSCRITICAL);
    CHECK(rimewise_dew_temperature(&rimewise_r134a, 0.0f, &x) == RIMEWISE_STATUS_PRESSURE_OUTSIDE_TABLE);
    CHECK(rimewise_dew_pressure(&rimewise_r134a, -200.0f, &x) == RIMEWISE_STATUS_TEMPERATURE_OUTSIDE_TABLE);
    CHECK(rimewise_dew_pressure(&rimewise_r134a, 150.0f, &x) == RIMEWISE_STATUS_TRANSCRITICAL);
    CHECK(rimewise_vapor_temperature_at_enthalpy(&rimewise_r134a, 300.0f, 100.0f, &x) == RIMEWISE_STATUS_TWO_PHASE);
    CHECK(UNTOUCHED(x) && UNTOUCHED(state));

    static const float edges[] = {NAN, INFINITY, -INFINITY, 0.0f, -1.0f, -273.15f, 1e30f, -1e30f, 1e-30f};
    for (unsigned e = 0; e < sizeof edges / sizeof *edges; e++) {
        for (unsigned i = 0; i < 4; i++) {
            RimewiseStatus status = curves[i](&rimewise_r134a, edges[e], &x);
            /* 0 degC has a saturation pressure, and so has -1 degC; nothing else here has an answer. */
            int answerable = i >= 2 && (edges[e] == 0.0f || edges[e] == -1.0f || edges[e] == 1e-30f);
            CHECK((status == RIMEWISE_OK) == answerable);
            CHECK(status != RIMEWISE_OK || isfinite(x));
        }
        for (unsigned i = 0; i < 2; i++) {
            CHECK(phases[i](&rimewise_r134a, edges[e], 20.0f, &state) != RIMEWISE_OK);
            RimewiseStatus status = phases[i](&rimewise_r134a, 300.0f, edges[e], &state);
            CHECK(status != RIMEWISE_OK || (isfinite(state.density_kg_m3) && isfinite(state.enthalpy_kj_kg)));
            CHECK(inverses[i](&rimewise_r134a, 300.0f, edges[e], &x) != RIMEWISE_OK);
            CHECK(inverses[i](&rimewise_r134a, edges[e], 400.0f, &x) != RIMEWISE_OK);
        }
        CHECK(rimewise_phase(&rimewise_r134a, edges[e], 0.0f, &phase) != RIMEWISE_OK);
        CHECK(rimewise_saturated_vapor(&rimewise_r134a, edges[e], &state) != RIMEWISE_OK);
        CHECK(rimewise_saturated_liquid(&rimewise_r134a, edges[e], &state) != RIMEWISE_OK);
    }
    for (unsigned i = 0; i < 4; i++) {
        CHECK(curves[i](NULL, 20.0f, &x) == RIMEWISE_STATUS_NULL_POINTER);
        CHECK(curves[i](&rimewise_r134a, 20.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    }
    for (unsigned i = 0; i < 2; i++) {
        CHECK(phases[i](NULL, 300.0f, 20.0f, &state) == RIMEWISE_STATUS_NULL_POINTER);
        CHECK(phases[i](&rimewise_r134a, 300.0f, i ? -20.0f : 20.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
        CHECK(inverses[i](NULL, 300.0f, 420.0f, &x) == RIMEWISE_STATUS_NULL_POINTER);
        CHECK(inverses[i](&rimewise_r134a, 300.0f, i ? 1.8f : 420.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    }
    CHECK(rimewise_phase(NULL, 300.0f, 20.0f, &phase) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_phase(&rimewise_r134a, 300.0f, 20.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_saturated_vapor(NULL, 300.0f, &state) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_saturated_vapor(&rimewise_r134a, 300.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_saturated_liquid(NULL, 300.0f, &state) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_saturated_liquid(&rimewise_r134a, 300.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
}

static void texts(void)
{
    /* Every list that the header has. */
    static const struct {
        const RimewiseTexts *texts;
        int names;
    } lists[] = {
#define TEXTS(list, names) {&list, names},
#include "texts.h"
#undef TEXTS
    };
    CHECK(sizeof lists / sizeof *lists > 60);
    for (unsigned i = 0; i < sizeof lists / sizeof *lists; i++) {
        const RimewiseTexts *texts = lists[i].texts;
        const char *text;
        unsigned known = 0;
        for (int32_t code = -2; code < 400; code++) {
            SPOIL(text);
            RimewiseStatus status = rimewise_text(texts, code, &text);
            CHECK(status == RIMEWISE_OK || (status == RIMEWISE_STATUS_UNKNOWN_CODE && UNTOUCHED(text)));
            if (status == RIMEWISE_OK) {
                known++;
                /* Only the unit of what has none is empty. */
                CHECK(strlen(text) > 0 || code == RIMEWISE_UNIT_NONE);
                CHECK(!lists[i].names || strchr(text, '{') == NULL);
                CHECK(rimewise_text(texts, code, NULL) == RIMEWISE_STATUS_NULL_POINTER);
            }
        }
        CHECK(known >= 1);
        CHECK(rimewise_text(texts, INT32_MIN, &text) == RIMEWISE_STATUS_UNKNOWN_CODE);
        CHECK(rimewise_text(texts, INT32_MAX, &text) == RIMEWISE_STATUS_UNKNOWN_CODE);
    }
    const char *section, *name;
    CHECK(rimewise_text(&rimewise_cause_names, RIMEWISE_CAUSE_WEAK_COMPRESSOR, &name) == RIMEWISE_OK &&
          strcmp(name, "weak_compressor") == 0);
    CHECK(rimewise_text(&rimewise_cause_es, RIMEWISE_CAUSE_WEAK_COMPRESSOR, &section) == RIMEWISE_OK &&
          strcmp(section, name) != 0);
    CHECK(rimewise_text(NULL, 0, &name) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_field_text(RIMEWISE_MEASUREMENT_SUCTION_PRESSURE, &section, &name) == RIMEWISE_OK);
    CHECK(strcmp(section, "readings") == 0 && strcmp(name, "suction_pressure_kpa") == 0);
    CHECK(rimewise_field_text(RIMEWISE_MEASUREMENT_SUPERHEAT, &section, &name) == RIMEWISE_STATUS_UNKNOWN_CODE);
    CHECK(rimewise_field_text(0, &section, &name) == RIMEWISE_STATUS_UNKNOWN_CODE);
    CHECK(rimewise_field_text(1, NULL, &name) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_field_text(1, &section, NULL) == RIMEWISE_STATUS_NULL_POINTER);
}

static RimewiseSystem system_;
static RimewiseReadings readings;
static RimewiseObservations observations;
static RimewiseUncertainty uncertainty;
static RimewiseReport report;
static RimewiseInvalid invalid;
static RimewiseCycle cycle;
static RimewiseWorkspace workspace;

/* A freezer on R290, invented. */
static void fill(void)
{
    CHECK(rimewise_system_clear(&system_, sizeof system_) == RIMEWISE_OK);
    CHECK(rimewise_readings_clear(&readings, sizeof readings) == RIMEWISE_OK);
    CHECK(rimewise_observations_clear(&observations, sizeof observations) == RIMEWISE_OK);
    CHECK(rimewise_uncertainty_clear(&uncertainty, sizeof uncertainty) == RIMEWISE_OK);
    report.size = sizeof report;
    invalid.size = sizeof invalid;
    system_.metering = RIMEWISE_METERING_CAPILLARY;
    system_.duty = RIMEWISE_DUTY_FREEZER;
    readings.suction_pressure_kpa = 210.0f;
    readings.discharge_pressure_kpa = 1320.0f;
    readings.evaporator_outlet_c = -21.5f;
    readings.suction_line_c = -4.0f;
    readings.liquid_line_c = 33.5f;
    readings.space_c = -17.5f;
    readings.ambient_c = 27.0f;
}

static RimewiseStatus diagnose(void)
{
    return rimewise_diagnose(&rimewise_r290, &system_, &readings, &observations, &uncertainty, &workspace, &report, &invalid);
}

static void visits(void)
{
    fill();
    CHECK(isnan(readings.current_a) && readings.running == RIMEWISE_NOT_KNOWN);
    CHECK(rimewise_cycle(&rimewise_r290, &system_, &readings, &uncertainty, &cycle, &invalid) == RIMEWISE_OK);
    float dew_c;
    CHECK(rimewise_dew_temperature(&rimewise_r290, 210.0f, &dew_c) == RIMEWISE_OK);
    CHECK(cycle.valid & RIMEWISE_CYCLE_VALID_SUPERHEAT_K);
    CHECK(NEAR(cycle.superheat_k.value, -21.5f - dew_c, 1e-4f) && cycle.superheat_k.u > 0.0f);
    CHECK(!(cycle.valid & RIMEWISE_CYCLE_VALID_DRIER_DROP_K) && cycle.drier_drop_k.value == 0.0f);

    CHECK(diagnose() == RIMEWISE_OK);
    CHECK(memcmp(&report.cycle, &cycle, sizeof cycle) == 0);
    float highest = report.causes[0].probability;
    unsigned seen = 0;
    CHECK(report.cause_count == 10);
    for (unsigned i = 0; i < report.cause_count; i++) {
        CHECK(report.causes[i].probability <= highest && report.causes[i].probability >= 0.0f);
        highest = report.causes[i].probability;
        seen |= 1u << report.causes[i].cause;
    }
    CHECK(seen == 0x3FF && report.leading == report.causes[0].cause);
    CHECK(report.caution_count > 0 && report.next_count > 0);
    for (uint32_t i = 0; i < report.warning_count; i++) {
        const char *section, *name;
        CHECK(rimewise_field_text(report.warnings[i].field, &section, &name) == RIMEWISE_OK);
    }

    /* Only readings and report must be there. */
    CHECK(rimewise_diagnose(&rimewise_r290, NULL, &readings, NULL, NULL, &workspace, &report, NULL) == RIMEWISE_OK);
    CHECK(rimewise_diagnose(NULL, NULL, &readings, NULL, NULL, &workspace, &report, NULL) == RIMEWISE_OK);
    CHECK(report.cycle.valid == 0 || !(report.cycle.valid & RIMEWISE_CYCLE_VALID_SUPERHEAT_K));
    CHECK(rimewise_diagnose(&rimewise_r290, &system_, NULL, &observations, &uncertainty, &workspace, &report, &invalid) ==
          RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_diagnose(&rimewise_r290, &system_, &readings, &observations, &uncertainty, &workspace, NULL, &invalid) ==
          RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_cycle(&rimewise_r290, NULL, &readings, NULL, &cycle, NULL) == RIMEWISE_OK);
    CHECK(rimewise_cycle(&rimewise_r290, &system_, NULL, &uncertainty, &cycle, &invalid) ==
          RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_cycle(&rimewise_r290, &system_, &readings, &uncertainty, NULL, &invalid) ==
          RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_system_clear(NULL, sizeof system_) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_readings_clear(NULL, sizeof readings) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_observations_clear(NULL, sizeof observations) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_uncertainty_clear(NULL, sizeof uncertainty) == RIMEWISE_STATUS_NULL_POINTER);

    CHECK(rimewise_diagnose(&rimewise_r290, &system_, &readings, &observations, &uncertainty, NULL, &report, &invalid) ==
          RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_diagnose(&rimewise_r290, &system_, &readings, &observations, &uncertainty,
                            (RimewiseWorkspace *)((char *)&workspace + 1), &report, &invalid) ==
          RIMEWISE_STATUS_OUT_OF_RANGE);

    /* A record of the same machine. */
    RimewiseReadings record[2] = {readings, readings};
    const int32_t cannot[2] = {RIMEWISE_MEASUREMENT_RECOVERED, RIMEWISE_CANNOT_ACTION + RIMEWISE_ACTION_LEAK_SEARCH};
    RimewiseCall call;
    RimewiseAccess access;
    RimewiseCosts costs;
    CHECK(rimewise_call_clear(&call, sizeof call) == RIMEWISE_OK && call.complaint == RIMEWISE_NOT_KNOWN);
    CHECK(rimewise_access_clear(&access, sizeof access) == RIMEWISE_OK && access.tools == RIMEWISE_NOT_KNOWN);
    CHECK(rimewise_costs_clear(&costs, sizeof costs) == RIMEWISE_OK && isnan(costs.repair[1]));
    CHECK(rimewise_call_clear(NULL, sizeof call) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_access_clear(NULL, sizeof access) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_costs_clear(NULL, sizeof costs) == RIMEWISE_STATUS_NULL_POINTER);
    call.complaint = 1 << RIMEWISE_COMPLAINT_NOT_COLD | 1 << RIMEWISE_COMPLAINT_NEVER_STOPS;
    access.tools = 1 << RIMEWISE_TOOL_GAUGES;
    access.suction_port = 1;
    costs.repair[RIMEWISE_CAUSE_UNDERCHARGE] = 300.0f;
    RimewiseVisit visit = {.size = sizeof visit,
                           .record_count = 2,
                           .cannot_count = 2,
                           .system = &system_,
                           .readings = &readings,
                           .observations = &observations,
                           .uncertainty = &uncertainty,
                           .call = &call,
                           .access = &access,
                           .costs = &costs,
                           .record = record,
                           .cannot = cannot};
    const RimewiseVisit whole = visit;
#define VISIT() rimewise_diagnose_visit(&rimewise_r290, &visit, &workspace, &report, &invalid)
    CHECK(VISIT() == RIMEWISE_OK);
    visit.record_count = visit.cannot_count = 0;
    visit.record = NULL;
    visit.cannot = NULL;
    CHECK(VISIT() == RIMEWISE_OK);
    visit.record_count = 2;
    CHECK(VISIT() == RIMEWISE_STATUS_NULL_POINTER);
    visit.record_count = 0;
    visit.cannot_count = 2;
    CHECK(VISIT() == RIMEWISE_STATUS_NULL_POINTER);
    visit = whole;
    CHECK(rimewise_diagnose_visit(&rimewise_r290, NULL, &workspace, &report, &invalid) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_diagnose_visit(&rimewise_r290, &visit, NULL, &report, &invalid) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_diagnose_visit(&rimewise_r290, &visit, &workspace, NULL, &invalid) == RIMEWISE_STATUS_NULL_POINTER);
    visit.record_count = RIMEWISE_RECORD_MAX + 1;
    CHECK(VISIT() == RIMEWISE_STATUS_OUT_OF_RANGE);
    visit = whole;
    visit.cannot_count = RIMEWISE_CANNOT_MAX + 1;
    CHECK(VISIT() == RIMEWISE_STATUS_OUT_OF_RANGE);
    visit = whole;
    visit.readings = NULL;
    CHECK(VISIT() == RIMEWISE_STATUS_NULL_POINTER);
    visit = whole;
    visit.size = 8;
    CHECK(VISIT() == RIMEWISE_STATUS_WRONG_SIZE);
    visit.size = sizeof visit + 8;
    CHECK(VISIT() == RIMEWISE_STATUS_WRONG_SIZE);
    visit = whole;
    const int32_t nothing = 999;
    visit.cannot = &nothing;
    visit.cannot_count = 1;
    CHECK(VISIT() == RIMEWISE_STATUS_UNKNOWN_CODE && invalid.field == 506);
    visit = whole;
    costs.repair[RIMEWISE_CAUSE_UNDERCHARGE] = -1.0f;
    CHECK(VISIT() == RIMEWISE_STATUS_INVALID_INPUT && invalid.field == 548);
    costs.repair[RIMEWISE_CAUSE_UNDERCHARGE] = 300.0f;
    access.liquid_port = 2;
    CHECK(VISIT() == RIMEWISE_STATUS_UNKNOWN_CODE && invalid.field == 502);
    access.liquid_port = RIMEWISE_NOT_KNOWN;
    record[1].ambient_c = 999.0f;
    CHECK(VISIT() == RIMEWISE_STATUS_INVALID_INPUT);
    CHECK(invalid.record == 1 && invalid.field == RIMEWISE_MEASUREMENT_AMBIENT);
    CHECK(invalid.unit == RIMEWISE_UNIT_C && invalid.value == 999.0f && invalid.max == 300.0f);
    CHECK(invalid.valid == (RIMEWISE_FACT_VALUE | RIMEWISE_FACT_MIN | RIMEWISE_FACT_MAX));
    record[1].size -= 1;
    CHECK(VISIT() == RIMEWISE_STATUS_WRONG_SIZE);
}

/* Each size that no release had, in each struct that carries one. */
static void sizes(void)
{
    struct {
        uint32_t *size;
        uint32_t right;
        uint32_t first; /* in the first release */
    } structs[] = {
        {&system_.size, sizeof system_, 112},          {&readings.size, sizeof readings, 200},
        {&observations.size, sizeof observations, 56}, {&uncertainty.size, sizeof uncertainty, 24},
        {&report.size, sizeof report, 2908},           {&invalid.size, sizeof invalid, 36},
    };
    fill();
    for (unsigned i = 0; i < sizeof structs / sizeof *structs; i++) {
        uint32_t right = structs[i].right;
        const uint32_t wrong[] = {0, 1, 4, structs[i].first - 4, right - 1, right + 1, right + 4, 2 * right, 0xFFFFFFFF};
        for (unsigned k = 0; k < sizeof wrong / sizeof *wrong; k++) {
            *structs[i].size = wrong[k];
            CHECK(diagnose() == RIMEWISE_STATUS_WRONG_SIZE);
        }
        *structs[i].size = structs[i].first;
        CHECK(diagnose() == RIMEWISE_OK);
        *structs[i].size = right;
        CHECK(diagnose() == RIMEWISE_OK);
    }
    CHECK(rimewise_system_clear(&system_, sizeof system_ + 4) == RIMEWISE_STATUS_WRONG_SIZE);
    CHECK(rimewise_readings_clear(&readings, 4) == RIMEWISE_STATUS_WRONG_SIZE);
    CHECK(rimewise_observations_clear(&observations, 0) == RIMEWISE_STATUS_WRONG_SIZE);
    CHECK(rimewise_uncertainty_clear(&uncertainty, 7) == RIMEWISE_STATUS_WRONG_SIZE);
}

/* Each refused field is named, and nothing is written. */
static void refusals(void)
{
    RimewiseReport before;
    fill();
    CHECK(diagnose() == RIMEWISE_OK);
    before = report;
    struct {
        int32_t *code;
        int32_t field;
    } codes[] = {
        {&system_.metering, 301},
        {&system_.receiver, 302},
        {&system_.suction_pressure_regulator, 303},
        {&system_.duty, 304},
        {&readings.running, RIMEWISE_MEASUREMENT_RUNNING},
        {&readings.pump_down_valve, RIMEWISE_MEASUREMENT_PUMP_DOWN_VALVE},
        {&readings.pump_down_ended_by, RIMEWISE_MEASUREMENT_PUMP_DOWN_ENDED_BY},
        {&observations.start_noise, RIMEWISE_MEASUREMENT_START_NOISE},
        {&observations.frost_on_compressor, RIMEWISE_MEASUREMENT_FROST_ON_COMPRESSOR},
        {&observations.sight_glass, RIMEWISE_MEASUREMENT_SIGHT_GLASS},
        {&observations.coil_iced, RIMEWISE_MEASUREMENT_COIL_ICED},
    };
    for (unsigned i = 0; i < sizeof codes / sizeof *codes; i++) {
        int32_t right = *codes[i].code;
        *codes[i].code = 77;
        CHECK(diagnose() == RIMEWISE_STATUS_UNKNOWN_CODE);
        CHECK(invalid.field == codes[i].field && invalid.code == RIMEWISE_ERROR_CODE_UNKNOWN_CODE);
        *codes[i].code = -2;
        CHECK(diagnose() == RIMEWISE_STATUS_UNKNOWN_CODE);
        *codes[i].code = right;
    }
    readings.suction_pressure_kpa = -5.0f;
    CHECK(diagnose() == RIMEWISE_STATUS_INVALID_INPUT && invalid.field == RIMEWISE_MEASUREMENT_SUCTION_PRESSURE);
    CHECK(invalid.record == -1 && invalid.code == RIMEWISE_ERROR_CODE_OUT_OF_RANGE);
    readings.suction_pressure_kpa = 1900.0f;
    CHECK(diagnose() == RIMEWISE_STATUS_INVALID_INPUT && invalid.code == RIMEWISE_ERROR_CODE_ABOVE_DISCHARGE);
    readings.suction_pressure_kpa = 9000.0f;
    CHECK(diagnose() == RIMEWISE_STATUS_INVALID_INPUT && invalid.code == RIMEWISE_ERROR_CODE_OUTSIDE_TABLE);
    CHECK(invalid.max > 3000.0f && invalid.max < 4300.0f);
    readings.suction_pressure_kpa = INFINITY;
    CHECK(diagnose() == RIMEWISE_STATUS_INVALID_INPUT && invalid.code == RIMEWISE_ERROR_CODE_NOT_FINITE);
    readings.suction_pressure_kpa = 210.0f;
    readings.winding_run_ohm = INFINITY; /* reads open */
    CHECK(diagnose() == RIMEWISE_OK);
    before = report;
    readings.line_voltages_v[1] = 230.0f; /* one of three */
    CHECK(diagnose() == RIMEWISE_STATUS_INVALID_INPUT && invalid.field == RIMEWISE_MEASUREMENT_LINE_VOLTAGES);
    readings.line_voltages_v[1] = NAN;
    system_.compressor_phases = 2.0f;
    CHECK(diagnose() == RIMEWISE_STATUS_INVALID_INPUT && invalid.code == RIMEWISE_ERROR_CODE_PHASES_UNKNOWN);
    const char *section, *name;
    CHECK(rimewise_field_text(invalid.field, &section, &name) == RIMEWISE_OK);
    CHECK(strcmp(section, "system.compressor") == 0 && strcmp(name, "phases") == 0);
    CHECK(memcmp(&before, &report, sizeof report) == 0);
}

int main(void)
{
    versions();
    units();
    refrigerants();
    properties();
    texts();
    visits();
    sizes();
    refusals();
    return checks_close("surface");
}
