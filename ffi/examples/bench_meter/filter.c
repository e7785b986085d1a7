#include "filter.h"

#include <math.h>

/* The share of a new value: a time constant of 20 s at one sample a second. */
#define SHARE 0.05f

float filter_push(Filter *filter, float value)
{
    if (!isnan(value)) {
        filter->last[filter->count % 5] = value;
        filter->count++;
        unsigned n = filter->count < 5 ? filter->count : 5;
        float sorted[5] = {0};
        for (unsigned i = 0; i < n; i++) {
            unsigned k = i;
            for (; k > 0 && sorted[k - 1] > filter->last[i]; k--)
                sorted[k] = sorted[k - 1];
            sorted[k] = filter->last[i];
        }
        float median = sorted[n / 2];
        filter->smooth = filter->count <= 5 ? median : filter->smooth + SHARE * (median - filter->smooth);
    }
    return filter->count ? filter->smooth : NAN;
}
