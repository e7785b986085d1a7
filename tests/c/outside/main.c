/* A program that knows the library from its header alone: a cooler on R134a, its superheat and its diagnosis. */
#include <rimewise.h>
#include <stdio.h>

int main(void)
{
    RimewiseReadings readings;
    RimewiseReport report = {.size = sizeof report};
    static RimewiseWorkspace workspace;
    RimewiseInvalid invalid = {.size = sizeof invalid};
    const char *cause = "?";
    float dew_c = 0.0f;

    if (rimewise_version() >> 8 != (RIMEWISE_VERSION_MAJOR << 8 | RIMEWISE_VERSION_MINOR))
        return 1;
    rimewise_readings_clear(&readings, sizeof readings);
    readings.suction_pressure_kpa = 200.0f;
    readings.suction_line_c = 4.0f;
    readings.space_c = 3.0f;
    readings.ambient_c = 25.0f;
    if (rimewise_dew_temperature(&rimewise_r134a, readings.suction_pressure_kpa, &dew_c) != RIMEWISE_OK)
        return 2;
    if (rimewise_diagnose(&rimewise_r134a, NULL, &readings, NULL, NULL, &workspace, &report, &invalid) != RIMEWISE_OK)
        return 3;
    if (rimewise_text(&rimewise_cause_names, report.leading, &cause) != RIMEWISE_OK)
        return 4;
    printf("superheat %.1f K, leading %s\n", (double)(readings.suction_line_c - dew_c), cause);
    return 0;
}
