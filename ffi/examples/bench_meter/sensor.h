/* From counts of a 12-bit converter to kPa, degC and A. */
#ifndef BENCH_METER_SENSOR_H
#define BENCH_METER_SENSOR_H

#include <stdint.h>

/* Counts at or beyond these belong to a broken wire or a short circuit; the functions then return NaN. */
#define COUNTS_LOWEST 20
#define COUNTS_HIGHEST 4075

/* A ratiometric transducer, 0.5 V to 4.5 V of 5 V over its span: kPa above the local atmosphere. */
float pressure_kpa_gauge(uint16_t counts, float span_kpa);

/* A thermistor of 10 kohm at 25 degC and beta 3435 K below 10 kohm: degC. */
float thermistor_c(uint16_t counts);

/* A clamp with an RMS converter: A. */
float current_a(uint16_t counts, float full_scale_a);

#endif
