/* What the generated calls share: arguments drawn from bytes, and looks at what came out. */
#ifndef RIMEWISE_FUZZ_C_CALLS_H
#define RIMEWISE_FUZZ_C_CALLS_H

#include <stddef.h>
#include <stdint.h>
#include <string.h>

typedef const char *(*Call)(void);

/* Most calls for one input. */
#define CALLS_MAX 24

static const uint8_t *bytes;
static size_t left;
static RimewiseMonitor monitor;
static int monitor_runs;

static uint8_t draw_byte(void)
{
    if (left == 0)
        return 0;
    left--;
    return *bytes++;
}

static uint32_t draw_word(void)
{
    uint32_t word = 0;
    for (int i = 0; i < 4; i++)
        word = word << 8 | draw_byte();
    return word;
}

static int draw_null(void)
{
    return draw_byte() % 32 == 31;
}

static float draw_float(void)
{
    static const uint32_t edges[] = {0x7FC00000u, 0x7F800000u, 0xFF800000u, 0u,          0x80000000u, 1u,
                                     0x7F7FFFFFu, 0xFF7FFFFFu, 0x00800000u, 0x3F800000u, 0xBF800000u, 0xC3889333u};
    uint8_t kind = draw_byte();
    float value;
    uint32_t word;
    if (kind < 16) {
        word = edges[kind % 12];
        memcpy(&value, &word, 4);
        return value;
    }
    if (kind < 24) {
        word = draw_word();
        memcpy(&value, &word, 4);
        return value;
    }
    word = (uint32_t)draw_byte() << 8 | draw_byte();
    if (kind < 100) /* a temperature */
        return -50.0f + 150.0f * (float)word / 65535.0f;
    if (kind < 200) /* a pressure */
        return 10.0f + 3000.0f * (float)word / 65535.0f;
    return (float)word / 6553.5f;
}

static int32_t draw_code(void)
{
    uint8_t kind = draw_byte();
    return kind < 8 ? (int32_t)draw_word() : (int32_t)(kind % 128) - 1;
}

/* Mostly a little later than the last time. */
static uint64_t draw_time(void)
{
    static uint64_t now;
    uint8_t kind = draw_byte();
    now = kind < 4 ? (uint64_t)draw_word() << 32 | draw_word() : now + 250u * kind;
    return now;
}

static uint32_t draw_size(uint32_t right)
{
    uint8_t kind = draw_byte();
    return kind < 8 ? draw_byte() : kind < 10 ? draw_word() : right;
}

static const char *draw_text(void)
{
    static char text[16];
    if (draw_null())
        return 0;
    for (unsigned i = 0; i + 1 < sizeof text; i++)
        text[i] = (char)draw_byte();
    return text;
}

/* As many as any array of the header takes. */
static const float *draw_floats(void)
{
    static float many[64];
    if (draw_null())
        return 0;
    for (unsigned i = 0; i < 12; i++)
        many[i] = draw_float();
    return many;
}

static const uint8_t *bytes_here(void)
{
    return draw_null() ? 0 : bytes;
}

static uint32_t bytes_left(void)
{
    return (uint32_t)left;
}

static const RimewiseRefrigerant *draw_refrigerant(void)
{
    const RimewiseRefrigerant *refrigerant = 0;
    if (!draw_null())
        rimewise_refrigerant_at(draw_byte(), &refrigerant);
    return refrigerant;
}

/* Memory that only the library writes to. */
static RimewiseMonitor *draw_monitor(void)
{
    if (draw_null())
        return 0;
    if (!monitor_runs) {
        RimewiseMonitorSettings settings;
        RimewiseInvalid invalid = {.size = sizeof invalid};
        rimewise_monitor_settings_clear(&settings, sizeof settings);
        monitor_runs = rimewise_monitor_start(&monitor, &settings, &invalid) == RIMEWISE_OK;
    }
    return &monitor;
}

static void fill(void *object, size_t size, uint32_t own)
{
    for (size_t i = 0; i + 4 <= size; i += 4) {
        float value = draw_float();
        int32_t code = draw_code();
        if (draw_byte() % 4 == 0)
            memcpy((char *)object + i, &code, 4);
        else
            memcpy((char *)object + i, &value, 4);
    }
    if (own) {
        own = draw_size(own);
        memcpy(object, &own, 4);
    }
}

/* Sets some words of a struct that holds what is not known. */
static void disturb(void *object, size_t size, uint32_t own)
{
    size_t first = own ? 1 : 0;
    for (uint8_t n = draw_byte() % 12; n > 0; n--) {
        size_t word = first + draw_byte() % (size / 4 - first);
        uint8_t kind = draw_byte();
        float value = draw_float();
        int32_t code = kind < 16 ? draw_code() : (int32_t)(kind % 4) - 1;
        if (kind < 128)
            memcpy((char *)object + 4 * word, &code, 4);
        else
            memcpy((char *)object + 4 * word, &value, 4);
    }
    if (own && draw_byte() < 4) {
        own = draw_size(own);
        memcpy(object, &own, 4);
    }
}

/* Prepares memory that is written to: a pattern that is no answer, and each element's own size. */
static void spoil(void *object, size_t size, size_t one, uint32_t own)
{
    memset(object, 0x5A, size);
    if (!own)
        return;
    own = draw_size(own);
    for (size_t at = 0; at + one <= size; at += one)
        memcpy((char *)object + at, &own, 4);
}

/* The bits of NaN as constants and arithmetic make it; other patterns of NaN are met in times and codes. */
static int not_a_number(const void *object, size_t size)
{
    for (size_t i = 0; i + 4 <= size; i += 4) {
        uint32_t word;
        memcpy(&word, (const char *)object + i, 4);
        if ((word & 0x7FFFFFFFu) == 0x7FC00000u)
            return 1;
    }
    return 0;
}

static const char *fuzz_calls(const uint8_t *data, size_t length, const Call *calls, size_t count)
{
    bytes = data;
    left = length;
    monitor_runs = 0;
    for (unsigned n = 0; n < CALLS_MAX && left > 0; n++) {
        const char *complaint = calls[draw_byte() % count]();
        if (complaint)
            return complaint;
    }
    return 0;
}

/* One of the lists of texts. */
static const RimewiseTexts *draw_texts(void)
{
    static const RimewiseTexts *const all[] = {&rimewise_cause_names, &rimewise_warning_kind_en, &rimewise_unit_es,
                                               &rimewise_measure_es};
    return draw_null() ? 0 : all[draw_byte() % 4];
}

/* A visit whose parts are drawn one by one. */
static const RimewiseVisit *draw_visit(void)
{
    static RimewiseSystem system;
    static RimewiseReadings readings, record[RIMEWISE_RECORD_MAX];
    static RimewiseObservations observations;
    static RimewiseUncertainty uncertainty;
    static RimewiseCall call;
    static RimewiseAccess reach;
    static RimewiseCosts costs;
    static int32_t cannot[RIMEWISE_CANNOT_MAX];
    static RimewiseVisit visit;
    if (draw_null())
        return 0;
#define DRAWN(part, name)                                  \
    rimewise_##name##_clear(&(part), sizeof(part));        \
    disturb(&(part), sizeof(part), (uint32_t)sizeof(part))
    DRAWN(system, system);
    DRAWN(readings, readings);
    DRAWN(observations, observations);
    DRAWN(uncertainty, uncertainty);
    DRAWN(call, call);
    DRAWN(reach, access);
    DRAWN(costs, costs);
    for (unsigned i = 0; i < RIMEWISE_RECORD_MAX; i++) {
        rimewise_readings_clear(&record[i], sizeof record[i]);
        disturb(&record[i], sizeof record[i], (uint32_t)sizeof record[i]);
        /* The next one begins where this one says that it ends. */
        record[i].size = sizeof record[i];
    }
#undef DRAWN
    for (unsigned i = 0; i < RIMEWISE_CANNOT_MAX; i++)
        cannot[i] = draw_byte() % 2 ? draw_code() : RIMEWISE_CANNOT_ACTION + draw_byte() % 9;
    visit.size = draw_size((uint32_t)sizeof visit);
    visit.record_count = draw_byte() % 8;
    visit.cannot_count = draw_byte() % 48;
    visit.system = draw_null() ? 0 : &system;
    visit.readings = draw_null() ? 0 : &readings;
    visit.observations = draw_null() ? 0 : &observations;
    visit.uncertainty = draw_null() ? 0 : &uncertainty;
    visit.call = draw_null() ? 0 : &call;
    visit.access = draw_null() ? 0 : &reach;
    visit.costs = draw_null() ? 0 : &costs;
    visit.record = draw_null() ? 0 : record;
    visit.cannot = draw_null() ? 0 : cannot;
    return &visit;
}

#endif
