/* A median of five against spikes, then a first-order low-pass against noise. */
#ifndef BENCH_METER_FILTER_H
#define BENCH_METER_FILTER_H

typedef struct {
    float last[5];
    unsigned count;
    float smooth;
} Filter;

/* Takes one value; NaN (a broken wire) is left out. Returns the filtered value, NaN until there is one. */
float filter_push(Filter *filter, float value);

#endif
