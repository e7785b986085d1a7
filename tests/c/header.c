/* The header stands alone in C99 and C11: it is the first thing this file includes. */
#include "rimewise.h"

extern const RimewiseRefrigerant *const named;
const RimewiseRefrigerant *const named = &rimewise_r134a;

int main(void)
{
    float dew_c = 0.0f;
    RimewiseStatus status = rimewise_dew_temperature(named, 200.0f, &dew_c);
    return status == RIMEWISE_OK && dew_c > -10.2f && dew_c < -10.0f ? 0 : 1;
}
