/* Instructions of property calls on a Cortex-M4F, printed as `name instructions`.
 *
 * The emulator gives every instruction the same virtual time, so that a timer counts instructions exactly: the
 * difference between 2N and N calls, divided by N, less the same of calls that hand over the same and do nothing.
 * 1.6 ticks of the 25 MHz timer pass in one instruction of 64 ns. */
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>

extern const void *bench_r404a(void);
extern float bench_nothing(const void *, float);
extern float bench_nothing_more(const void *, float, float);
extern bool bench_nothing_written(const void *, float, float, float *);
extern float bench_dew_temperature(const void *, float);
extern float bench_dew_pressure(const void *, float);
extern bool bench_vapor(const void *, float, float, float *);
extern bool bench_liquid(const void *, float, float, float *);
extern float bench_temperature_at_enthalpy(const void *, float, float);
extern float bench_temperature_at_entropy(const void *, float, float);

extern volatile uint32_t systick_wraps;
#define SYST_CSR (*(volatile uint32_t *)0xE000E010u)
#define SYST_RVR (*(volatile uint32_t *)0xE000E014u)
#define SYST_CVR (*(volatile uint32_t *)0xE000E018u)

static uint32_t ticks(void)
{
    uint32_t wraps, now;
    do {
        wraps = systick_wraps;
        now = 0xFFFFFFu - SYST_CVR;
    } while (wraps != systick_wraps);
    return wraps * 0x1000000u + now;
}

static volatile float sink;
static const void *refrigerant;
static float out[3];
enum { N = 2000 };

static float nothing(float p) { return bench_nothing(refrigerant, p); }
static float nothing_more(float p) { return bench_nothing_more(refrigerant, p, 377000.0f); }
static float nothing_written(float p) { return (float)bench_nothing_written(refrigerant, p, 280.0f, out); }
static float dew_temperature(float p) { return bench_dew_temperature(refrigerant, p); }
static float dew_pressure(float p) { return bench_dew_pressure(refrigerant, 200.0f + p * 1e-4f); }
static float vapor(float p) { return (float)bench_vapor(refrigerant, p, 280.0f, out); }
static float liquid(float p) { return (float)bench_liquid(refrigerant, p, 230.0f, out); }
static float temperature_at_enthalpy(float p) { return bench_temperature_at_enthalpy(refrigerant, p, 377000.0f); }
static float temperature_at_entropy(float p) { return bench_temperature_at_entropy(refrigerant, p, 1679.0f); }

static double count(float (*volatile call)(float))
{
    uint32_t start = ticks();
    for (uint32_t i = 0; i < N; i++) sink = call(400000.0f + (float)i);
    uint32_t middle = ticks();
    for (uint32_t i = 0; i < 2 * N; i++) sink = call(400000.0f + (float)i);
    uint32_t end = ticks();
    return (double)((end - middle) - (middle - start)) / 1.6 / N;
}

int main(void)
{
    refrigerant = bench_r404a();
    SYST_RVR = 0xFFFFFFu;
    SYST_CVR = 0;
    SYST_CSR = 7u; /* processor clock, interrupt, enabled */
    double one = count(nothing), more = count(nothing_more), written = count(nothing_written);
    printf("dew_temperature %.0f\n", count(dew_temperature) - one);
    printf("dew_pressure %.0f\n", count(dew_pressure) - one);
    printf("vapor %.0f\n", count(vapor) - written);
    printf("liquid %.0f\n", count(liquid) - written);
    printf("temperature_at_enthalpy %.0f\n", count(temperature_at_enthalpy) - more);
    printf("temperature_at_entropy %.0f\n", count(temperature_at_entropy) - more);
    return 0;
}
