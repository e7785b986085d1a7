/* Watches the streams of the file that STREAMS names and prints a digest of what the monitor said of each, the same
 * lines on every target. With COUNT it prints instead, of all samples, the mean and the most instructions of one call
 * of rimewise_monitor_push, and its stack: `monitor mean worst stack_bytes`. */
#include "rimewise.h"

#ifdef COUNT
#include "clock.h"
#endif
#include "file.h"

#include <math.h>
#include <stddef.h>
#include <stdio.h>
#include <string.h>

#define CHANNELS 15
/* Samples after which the averages are looked at. */
#define EVERY 50u

typedef struct {
    char designation[12];
    uint32_t samples;
    uint32_t regulator;
    float rated_load_a, locked_rotor_a, rated_v;
} Head;

typedef struct {
    uint32_t time_ms;
    float channels[CHANNELS];
} Line;

static Line lines[64];
static RimewiseMonitor monitor;
static const RimewiseRefrigerant *refrigerant;
static RimewiseSample sample;
static RimewiseMonitorEvents events;
static uint32_t time_ms;

static void push(void)
{
    rimewise_monitor_push(&monitor, refrigerant, time_ms, &sample, &events);
}

#ifdef COUNT
static double sum, most;
static uint32_t pushes, stack;

static void take(uint32_t number)
{
    (void)number;
    if (pushes < 2000 && pushes % 7 == 0) {
        uint32_t deep = stack_of(push, STACK_ROOM);
        stack = deep > stack ? deep : stack;
        pushes++;
        return;
    }
    uint32_t began = ticks();
    push();
    double count = instructions(ticks() - began);
    sum += count;
    most = count > most ? count : most;
    pushes++;
}
#else
static uint32_t hash;

static void word(uint32_t value)
{
    for (int i = 0; i < 4; i++)
        hash = (hash ^ (value >> (8 * i) & 0xFFu)) * 0x01000193u;
}

static void number(int there, float value)
{
    uint32_t bits = 0;
    if (there)
        memcpy(&bits, &value, sizeof bits);
    word(there ? 1 : 0);
    word(bits);
}

static void take(uint32_t index)
{
    int32_t state;
    push();
    for (uint32_t i = 0; i < events.count; i++) {
        word((uint32_t)events.events[i].kind);
        word(events.events[i].time_ms_low);
        for (uint32_t k = 0; k < 3; k++)
            number(events.events[i].valid >> k & 1u, events.events[i].values[k]);
    }
    rimewise_monitor_state(&monitor, &state);
    word((uint32_t)state);
    if (index % EVERY == 0) {
        static RimewiseReadings readings;
        static RimewiseUncertainty uncertainty;
        float channels[CHANNELS];
        readings.size = sizeof readings;
        uncertainty.size = sizeof uncertainty;
        if (rimewise_monitor_readings(&monitor, NULL, &readings, &uncertainty) != RIMEWISE_OK)
            return;
        /* The channels are the first readings, in the same order. */
        memcpy(channels, (const char *)&readings + offsetof(RimewiseReadings, suction_pressure_kpa), sizeof channels);
        for (int i = 0; i < CHANNELS; i++)
            number(!isnan(channels[i]), channels[i]);
        number(!isnan(uncertainty.pressure_percent), uncertainty.pressure_percent);
        number(!isnan(uncertainty.line_temperature_k), uncertainty.line_temperature_k);
    }
}
#endif

int main(void)
{
    Head head;
    if (!open_file(STREAMS)) {
        printf("no streams\n");
        return 1;
    }
#ifdef COUNT
    start_clock();
#endif
    for (uint32_t stream = 0; read_file(&head, sizeof head) == sizeof head; stream++) {
        RimewiseMonitorSettings settings;
        rimewise_monitor_settings_clear(&settings, sizeof settings);
        settings.suction_pressure_regulator = (int32_t)head.regulator;
        settings.rated_load_a = head.rated_load_a;
        settings.locked_rotor_a = head.locked_rotor_a;
        settings.rated_v = head.rated_v;
        rimewise_sample_clear(&sample, sizeof sample);
        events.size = sizeof events;
        if (rimewise_refrigerant_find(head.designation, &refrigerant) != RIMEWISE_OK ||
            rimewise_monitor_start(&monitor, &settings, NULL) != RIMEWISE_OK) {
            printf("stream %u cannot be watched\n", (unsigned)stream);
            return 1;
        }
#ifndef COUNT
        hash = 0x811C9DC5u;
#endif
        for (uint32_t done = 0; done < head.samples;) {
            uint32_t count = head.samples - done;
            count = count < 64 ? count : 64;
            if (read_file(lines, count * sizeof *lines) != count * sizeof *lines)
                return 1;
            for (uint32_t i = 0; i < count; i++) {
                time_ms = lines[i].time_ms;
                /* The channels stand in the sample in the order of the file. */
                memcpy((char *)&sample + offsetof(RimewiseSample, suction_pressure_kpa), lines[i].channels,
                       sizeof lines[i].channels);
                take(done + i);
            }
            done += count;
        }
#ifndef COUNT
        printf("%u %08x\n", (unsigned)stream, (unsigned)hash);
#endif
    }
#ifdef COUNT
    printf("monitor %.0f %.0f %u\n", sum / pushes, most, (unsigned)stack);
#endif
    return 0;
}
