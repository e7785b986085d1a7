#include "sensor.h"

#include <math.h>

static int broken(uint16_t counts)
{
    return counts <= COUNTS_LOWEST || counts >= COUNTS_HIGHEST;
}

float pressure_kpa_gauge(uint16_t counts, float span_kpa)
{
    return broken(counts) ? NAN : ((float)counts / 4095.0f - 0.1f) / 0.8f * span_kpa;
}

float thermistor_c(uint16_t counts)
{
    if (broken(counts))
        return NAN;
    float ratio = (float)counts / (4095.0f - (float)counts);
    return 1.0f / (1.0f / 298.15f + logf(ratio) / 3435.0f) - 273.15f;
}

float current_a(uint16_t counts, float full_scale_a)
{
    return counts >= COUNTS_HIGHEST ? NAN : (float)counts / 4095.0f * full_scale_a;
}
