// The header stands alone in C++17, and a program links to the library through it.
#include "rimewise.h"

static_assert(sizeof(RimewiseEstimate) == 8, "two binary32 numbers");
static_assert(sizeof(RimewiseReadings) % 4 == 0, "4-byte numbers only");

int main()
{
    float dew_c = 0.0f;
    const RimewiseStatus status = rimewise_dew_temperature(&rimewise_r134a, 200.0f, &dew_c);
    return status == RIMEWISE_STATUS_OK && dew_c > -10.2f && dew_c < -10.0f ? 0 : 1;
}
