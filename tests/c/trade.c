/* Compressor, motor, charge, decision and monitor: worked examples, every pointer NULL, every wrong size. */
#include "rimewise.h"

#include "check.h"

#include <math.h>
#include <string.h>

#define NEAR(value, wanted, within) (fabsf((value) - (wanted)) <= (within))
#define SPOIL(object) memset(&(object), 0xA5, sizeof(object))
#define UNTOUCHED(object) untouched(&(object), sizeof(object))

static int untouched(const void *object, size_t size)
{
    const unsigned char *bytes = object;
    for (size_t i = 0; i < size; i++)
        if (bytes[i] != 0xA5)
            return 0;
    return 1;
}

static void compressor(void)
{
    RimewiseEstimate e;
    int32_t verdict;
    /* A map of our own: 1000 + 10 S - 2 D, so 1000 - 100 - 80 at -10 and 40 degC. */
    RimewiseRatingMap map = {.size = sizeof map,
                             .scale = RIMEWISE_COMPRESSOR_SCALE_CELSIUS,
                             .coefficients = {1000.0f, 10.0f, -2.0f},
                             .spread = NAN,
                             .corner_count = 4,
                             .corner_evaporating_c = {-30.0f, 5.0f, 5.0f, -30.0f},
                             .corner_condensing_c = {20.0f, 20.0f, 60.0f, 60.0f}};
    CHECK(rimewise_compressor_rate(&map, -10.0f, 40.0f, &e) == RIMEWISE_OK && NEAR(e.value, 820.0f, 0.01f));
    CHECK(NEAR(e.u, 0.025f * 820.0f, 0.01f));
    map.scale = RIMEWISE_COMPRESSOR_SCALE_FAHRENHEIT; /* the same point is 14 and 104 degF */
    CHECK(rimewise_compressor_rate(&map, -10.0f, 40.0f, &e) == RIMEWISE_OK && NEAR(e.value, 932.0f, 0.01f));
    SPOIL(e);
    map.scale = 0;
    CHECK(rimewise_compressor_rate(&map, -10.0f, 40.0f, &e) == RIMEWISE_STATUS_UNKNOWN_CODE);
    map.scale = 1;
    CHECK(rimewise_compressor_rate(&map, 9.0f, 40.0f, &e) == RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_compressor_rate(&map, NAN, 40.0f, &e) == RIMEWISE_STATUS_NOT_FINITE);
    map.corner_count = 2;
    CHECK(rimewise_compressor_rate(&map, -10.0f, 40.0f, &e) == RIMEWISE_STATUS_OUT_OF_RANGE);
    map.corner_count = RIMEWISE_ENVELOPE_MAX + 1;
    CHECK(rimewise_compressor_rate(&map, -10.0f, 40.0f, &e) == RIMEWISE_STATUS_OUT_OF_RANGE);
    map.corner_count = 4;
    map.size -= 4;
    CHECK(rimewise_compressor_rate(&map, -10.0f, 40.0f, &e) == RIMEWISE_STATUS_WRONG_SIZE && UNTOUCHED(e));
    map.size += 4;
    CHECK(rimewise_compressor_rate(NULL, -10.0f, 40.0f, &e) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_compressor_rate(&map, -10.0f, 40.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);

    CHECK(rimewise_pump_down_expected(1300.0f, 210.0f, 1300.0f, 2.0f, &e) == RIMEWISE_OK);
    CHECK(e.value > 1.0f && e.value < 150.0f && e.u > 0.0f);
    CHECK(rimewise_pump_down_expected(1300.0f, 210.0f, 100.0f, 2.0f, &e) == RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_pump_down_expected(1300.0f, 210.0f, 1300.0f, 2.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_pump_down_judge(20.0f, 0.0f, RIMEWISE_PUMP_DOWN_VALVE_SUCTION_SERVICE, RIMEWISE_PUMP_DOWN_END_LIMIT,
                                   1300.0f, 210.0f, 1300.0f, 2.0f, &verdict) == RIMEWISE_OK &&
          verdict == RIMEWISE_PUMP_DOWN_VERDICT_PULLS_AND_HOLDS);
    CHECK(rimewise_pump_down_judge(190.0f, NAN, RIMEWISE_PUMP_DOWN_VALVE_SUCTION_SERVICE, RIMEWISE_PUMP_DOWN_END_LIMIT,
                                   1300.0f, 210.0f, 1300.0f, 2.0f, &verdict) == RIMEWISE_OK &&
          verdict == RIMEWISE_PUMP_DOWN_VERDICT_CANNOT_PULL);
    CHECK(rimewise_pump_down_judge(190.0f, NAN, -1, RIMEWISE_PUMP_DOWN_END_TECHNICIAN, 1300.0f, 210.0f, 1300.0f, 2.0f,
                                   &verdict) == RIMEWISE_OK &&
          verdict == RIMEWISE_PUMP_DOWN_VERDICT_REACHED_STOP);
    CHECK(rimewise_pump_down_judge(20.0f, NAN, 7, -1, 1300.0f, 210.0f, 1300.0f, 2.0f, &verdict) ==
          RIMEWISE_STATUS_UNKNOWN_CODE);
    CHECK(rimewise_pump_down_judge(NAN, NAN, 1, -1, 1300.0f, 210.0f, 1300.0f, 2.0f, &verdict) ==
          RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_pump_down_judge(20.0f, NAN, 1, 1, 1300.0f, 210.0f, 1300.0f, 2.0f, NULL) ==
          RIMEWISE_STATUS_NULL_POINTER);

    /* The locked-rotor current follows the voltage (common practice): 21 A at 230 V are 18.9 A at 207 V. */
    CHECK(rimewise_locked_rotor_at(21.0f, 230.0f, 207.0f, &e) == RIMEWISE_OK && NEAR(e.value, 18.9f, 1e-3f));
    CHECK(rimewise_locked_rotor_at(0.0f, 230.0f, 207.0f, &e) == RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_locked_rotor_at(21.0f, 230.0f, 207.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_start_judge(20.0f, 21.0f, 0.4f, 3.0f, &verdict) == RIMEWISE_OK &&
          verdict == RIMEWISE_START_VERDICT_GOOD);
    CHECK(rimewise_start_judge(20.0f, 21.0f, 5.0f, 20.0f, &verdict) == RIMEWISE_OK &&
          verdict == RIMEWISE_START_VERDICT_LOCKED_ROTOR);
    CHECK(rimewise_start_judge(NAN, 21.0f, 5.0f, 20.0f, &verdict) == RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_start_judge(20.0f, 21.0f, 0.4f, 3.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
}

static void motor(void)
{
    RimewiseEstimate e;
    RimewiseTerminals t;
    float x;
    /* Voltages 460, 467 and 450 V are unbalanced by 1.96 % (worked example of NEMA MG 1, 14.36). */
    CHECK(rimewise_unbalance(460.0f, 467.0f, 450.0f, &x) == RIMEWISE_OK && NEAR(x, 1.96f, 0.005f));
    CHECK(rimewise_unbalance(NAN, 467.0f, 450.0f, &x) == RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_unbalance(460.0f, 467.0f, 450.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_derating(0.0f, &x) == RIMEWISE_OK && NEAR(x, 1.0f, 1e-6f));
    CHECK(rimewise_derating(-1.0f, &x) == RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_derating(1.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    /* C = I / (2 pi f V); at 60 Hz 2652 I / V in microfarad (common practice): 2.5 A, 370 V. */
    CHECK(rimewise_capacitance(2.5f, 0.04f, 370.0f, 2.0f, 60.0f, &e) == RIMEWISE_OK && NEAR(e.value, 17.92f, 0.01f));
    CHECK(e.u > 0.0f);
    CHECK(rimewise_capacitance(2.5f, 0.04f, 0.0f, 2.0f, 60.0f, &e) == RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_capacitance(2.5f, 0.04f, 370.0f, 2.0f, 60.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    /* Copper (IEC 60034-1): 2.4 ohm at 25 degC is 2.4 (234.5 + 75)/(234.5 + 25) = 2.862 ohm at 75 degC. */
    CHECK(rimewise_winding_referred(2.4f, 0.01f, 25.0f, 1.0f, 75.0f, 234.5f, &e) == RIMEWISE_OK &&
          NEAR(e.value, 2.8624f, 1e-3f));
    CHECK(rimewise_winding_referred(NAN, 0.01f, 25.0f, 1.0f, 75.0f, 234.5f, &e) == RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_winding_referred(2.4f, 0.01f, 25.0f, 1.0f, 75.0f, 234.5f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    /* Insulation halves for each 10 K (IEEE Std 43, rule for older windings): 100 megohm at 30 degC are 50 at 40. */
    CHECK(rimewise_insulation_at_40c(100.0f, 30.0f, &x) == RIMEWISE_OK && NEAR(x, 50.0f, 0.1f));
    CHECK(rimewise_insulation_at_40c(-1.0f, 30.0f, &x) == RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_insulation_at_40c(100.0f, 30.0f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    /* The largest resistance lies between start and run, the smaller of the others is run (common practice). */
    CHECK(rimewise_identify_terminals(2.4f, 12.2f, 9.8f, &t) == RIMEWISE_OK);
    CHECK(t.identification == RIMEWISE_IDENTIFICATION_IDENTIFIED && t.common == 1 && t.run == 2 && t.start == 3);
    CHECK(NEAR(t.run_ohm.value, 2.4f, 0.01f) && NEAR(t.start_ohm.value, 9.8f, 0.01f));
    CHECK(rimewise_identify_terminals(INFINITY, 12.2f, INFINITY, &t) == RIMEWISE_OK);
    CHECK(t.identification == RIMEWISE_IDENTIFICATION_OPEN && t.open_count == 2 && t.common == 0);
    CHECK(rimewise_identify_terminals(2.4f, 20.0f, 9.8f, &t) == RIMEWISE_OK);
    CHECK(t.identification == RIMEWISE_IDENTIFICATION_INCONSISTENT && NEAR(t.residual_ohm.value, 7.8f, 0.01f));
    CHECK(rimewise_identify_terminals(-1.0f, 12.2f, 9.8f, &t) == RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_identify_terminals(2.4f, 12.2f, 9.8f, NULL) == RIMEWISE_STATUS_NULL_POINTER);

    RimewiseSystem system;
    RimewiseReadings readings;
    RimewiseUncertainty uncertainty;
    RimewiseFinding findings[RIMEWISE_ELECTRICAL_MAX];
    RimewiseInvalid invalid = {.size = sizeof invalid};
    uint32_t count = 0;
    rimewise_system_clear(&system, sizeof system);
    rimewise_readings_clear(&readings, sizeof readings);
    rimewise_uncertainty_clear(&uncertainty, sizeof uncertainty);
    CHECK(rimewise_motor_examine(&system, &readings, &uncertainty, findings, &count, &invalid) == RIMEWISE_OK);
    CHECK(count == 0);
    system.compressor_run_capacitor_uf = 15.0f;
    readings.run_capacitor_uf = 12.1f; /* 6 % below 15 is 14.1, and the meter is allowed 0.3 */
    CHECK(rimewise_motor_examine(&system, &readings, NULL, findings, &count, NULL) == RIMEWISE_OK && count == 1);
    CHECK(findings[0].finding == RIMEWISE_FINDING_KIND_RUN_CAPACITOR_LOW && findings[0].unit == RIMEWISE_UNIT_UF);
    CHECK(NEAR(findings[0].value, 12.1f, 1e-5f) && NEAR(findings[0].limit, 13.8f, 0.01f));
    CHECK(rimewise_motor_examine(NULL, &readings, NULL, findings, &count, NULL) == RIMEWISE_OK);
    CHECK(rimewise_motor_examine(&system, NULL, NULL, findings, &count, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_motor_examine(&system, &readings, NULL, NULL, &count, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_motor_examine(&system, &readings, NULL, findings, NULL, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    readings.voltage_v = -3.0f;
    CHECK(rimewise_motor_examine(&system, &readings, NULL, findings, &count, &invalid) ==
          RIMEWISE_STATUS_INVALID_INPUT);
    CHECK(invalid.field == RIMEWISE_MEASUREMENT_VOLTAGE);
}

static void charge(void)
{
    RimewiseStanding standing;
    RimewiseWeighIn plan;
    RimewiseCharge found;
    RimewiseHandling handling;
    RimewiseState state;
    float kg;
    int32_t phase;
    /* R134a at 20 degC: 571.7 kPa (ASHRAE Handbook - Fundamentals, R-134a table). */
    CHECK(rimewise_standing_pressure(&rimewise_r134a, 572.0f, 5.0f, 20.0f, 0.5f, &standing) == RIMEWISE_OK);
    CHECK(standing.verdict == RIMEWISE_STANDING_VERDICT_CONSISTENT && NEAR(standing.dew_kpa.value, 571.7f, 1.0f));
    CHECK(rimewise_standing_pressure(&rimewise_r134a, 750.0f, 5.0f, 20.0f, 0.5f, &standing) == RIMEWISE_OK &&
          standing.verdict == RIMEWISE_STANDING_VERDICT_ABOVE_BUBBLE);
    CHECK(rimewise_standing_pressure(&rimewise_r134a, 300.0f, 5.0f, 20.0f, 0.5f, &standing) == RIMEWISE_OK &&
          standing.verdict == RIMEWISE_STANDING_VERDICT_BELOW_DEW);
    SPOIL(standing);
    CHECK(rimewise_standing_pressure(&rimewise_r134a, 300.0f, 5.0f, -200.0f, 0.5f, &standing) ==
          RIMEWISE_STATUS_TEMPERATURE_OUTSIDE_TABLE);
    CHECK(rimewise_standing_pressure(&rimewise_r134a, NAN, 5.0f, 20.0f, 0.5f, &standing) ==
              RIMEWISE_STATUS_OUT_OF_RANGE &&
          UNTOUCHED(standing));
    CHECK(rimewise_standing_pressure(NULL, 572.0f, 5.0f, 20.0f, 0.5f, &standing) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_standing_pressure(&rimewise_r134a, 572.0f, 5.0f, 20.0f, 0.5f, NULL) ==
          RIMEWISE_STATUS_NULL_POINTER);

    /* 1.5 m of 4.5 mm hold 23.86 cm3. */
    CHECK(rimewise_hose_contents(&rimewise_r290, 1.5f, 4.5f, 1200.0f, 20.0f, &kg, &phase) == RIMEWISE_OK);
    CHECK(rimewise_liquid(&rimewise_r290, 1200.0f, 20.0f, &state) == RIMEWISE_OK);
    CHECK(phase == RIMEWISE_PHASE_LIQUID && NEAR(kg, 23.856e-6f * state.density_kg_m3, 1e-6f));
    CHECK(rimewise_hose_contents(&rimewise_r290, 0.0f, 4.5f, 1200.0f, 20.0f, &kg, &phase) ==
          RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_hose_contents(&rimewise_r290, 1.5f, 4.5f, 90000.0f, 20.0f, &kg, &phase) ==
          RIMEWISE_STATUS_TRANSCRITICAL);
    CHECK(rimewise_hose_contents(NULL, 1.5f, 4.5f, 1200.0f, 20.0f, &kg, &phase) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_hose_contents(&rimewise_r290, 1.5f, 4.5f, 1200.0f, 20.0f, NULL, &phase) ==
          RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_hose_contents(&rimewise_r290, 1.5f, 4.5f, 1200.0f, 20.0f, &kg, NULL) ==
          RIMEWISE_STATUS_NULL_POINTER);

    CHECK(rimewise_weigh_in(0.150f, 0.0f, 0.0f, 0.008f, 0.001f, 0.001f, &plan) == RIMEWISE_OK);
    CHECK(plan.plan == RIMEWISE_WEIGH_IN_PLAN_CHARGE && NEAR(plan.mass_kg.value, 0.158f, 1e-6f));
    CHECK(rimewise_weigh_in(0.150f, 0.2f, 0.01f, 0.0f, 0.0f, 0.001f, &plan) == RIMEWISE_OK);
    CHECK(plan.plan == RIMEWISE_WEIGH_IN_PLAN_RECOVER && NEAR(plan.mass_kg.value, 0.05f, 1e-6f));
    CHECK(rimewise_weigh_in(0.0f, 0.0f, 0.0f, 0.0f, 0.0f, 0.001f, &plan) == RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_weigh_in(0.150f, 0.0f, 0.0f, 0.0f, 0.0f, 0.001f, NULL) == RIMEWISE_STATUS_NULL_POINTER);

    /* Li and Braun's form: ((2 - 6) - 0.4 (10 - 6)) 0.175 / 6 = -0.163. */
    RimewiseChargeState measured = {{10.0f, 0.5f}, {2.0f, 0.5f}}, rated = {{6.0f, 0.5f}, {6.0f, 0.5f}};
    CHECK(rimewise_charge_estimate(&measured, &rated, 0, 0, 0, &found) == RIMEWISE_OK);
    CHECK(found.answer == RIMEWISE_CHARGE_ANSWER_DEVIATION && NEAR(found.deviation.value, -0.1633f, 1e-3f));
    CHECK(rimewise_charge_estimate(&measured, &rated, 1, 0, 0, &found) == RIMEWISE_OK);
    CHECK(found.answer == RIMEWISE_CHARGE_ANSWER_BLIND_RECEIVER && found.deviation.value == 0.0f);
    CHECK(rimewise_charge_estimate(&measured, &rated, 2, 0, 0, &found) == RIMEWISE_STATUS_UNKNOWN_CODE);
    rated.subcooling_k.value = 0.0f;
    CHECK(rimewise_charge_estimate(&measured, &rated, 0, 0, 0, &found) == RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_charge_estimate(NULL, &rated, 0, 0, 0, &found) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_charge_estimate(&measured, NULL, 0, 0, 0, &found) == RIMEWISE_STATUS_NULL_POINTER);
    rated.subcooling_k.value = 6.0f;
    CHECK(rimewise_charge_estimate(&measured, &rated, 0, 0, 0, NULL) == RIMEWISE_STATUS_NULL_POINTER);

    CHECK(rimewise_handling(&rimewise_r407c, &handling) == RIMEWISE_OK);
    CHECK(handling.charge_as_liquid_only == 1 && handling.leak_shifts_composition == 1 && handling.flammable == 0);
    CHECK(rimewise_handling(&rimewise_r290, &handling) == RIMEWISE_OK && handling.flammable == 1 &&
          handling.charge_as_liquid_only == 0);
    CHECK(rimewise_handling(NULL, &handling) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_handling(&rimewise_r290, NULL) == RIMEWISE_STATUS_NULL_POINTER);
}

static void decision(void)
{
    static const float repairs[10] = {0, 150, 80, 180, 200, 90, 0, 60, 60, 220};
    RimewiseCosts costs;
    CHECK(rimewise_costs_clear(&costs, sizeof costs) == RIMEWISE_OK);
    costs.visit = 100.0f;
    costs.test = 20.0f;
    memcpy(costs.repair, repairs, sizeof repairs);
    costs.compressor = 900.0f;
    costs.machine = 2500.0f;
    costs.product_at_risk = 400.0f;
    RimewiseDecision decision = {.size = sizeof decision};
    float probabilities[10] = {0.0f, 1.0f};
    CHECK(rimewise_decide(probabilities, 10, &costs, 0.5f, &decision) == RIMEWISE_OK);
    CHECK((decision.valid & RIMEWISE_DECISION_RECOMMENDED) && decision.recommended == RIMEWISE_WAY_REPAIR);
    CHECK(decision.recommended_cause == RIMEWISE_CAUSE_UNDERCHARGE);
    CHECK(decision.alternative_count >= 4 && decision.alternative_count <= RIMEWISE_ALTERNATIVES_MAX);
    for (uint32_t i = 0; i < decision.alternative_count; i++) {
        const RimewiseAlternative *way = &decision.alternatives[i];
        CHECK((way->valid & RIMEWISE_ALTERNATIVE_COST) && isfinite(way->expected_cost));
        if (way->action == RIMEWISE_WAY_REPAIR && way->cause == RIMEWISE_CAUSE_UNDERCHARGE)
            CHECK(NEAR(way->expected_cost, 150.0f, 1.0f));
    }
    /* One that is not known stands in its usual ratio to the others; where none is, nothing is recommended. */
    costs.product_at_risk = NAN;
    CHECK(rimewise_decide(probabilities, 10, &costs, 0.5f, &decision) == RIMEWISE_OK);
    CHECK(decision.valid & RIMEWISE_DECISION_RECOMMENDED);
    RimewiseCosts none;
    CHECK(rimewise_costs_clear(&none, sizeof none) == RIMEWISE_OK);
    CHECK(rimewise_decide(probabilities, 10, &none, 0.5f, &decision) == RIMEWISE_OK);
    CHECK(decision.valid == 0 && decision.recommended == 0);
    CHECK(rimewise_decide(probabilities, 11, &costs, 0.5f, &decision) == RIMEWISE_STATUS_OUT_OF_RANGE);
    probabilities[1] = NAN;
    CHECK(rimewise_decide(probabilities, 10, &costs, 0.5f, &decision) == RIMEWISE_OK && decision.valid == 0);
    CHECK(rimewise_decide(NULL, 10, &costs, 0.5f, &decision) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_decide(probabilities, 10, NULL, 0.5f, &decision) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_decide(probabilities, 10, &costs, 0.5f, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    costs.size++;
    CHECK(rimewise_decide(probabilities, 10, &costs, 0.5f, &decision) == RIMEWISE_STATUS_WRONG_SIZE);
    costs.size--;
    decision.size = 4;
    CHECK(rimewise_decide(probabilities, 10, &costs, 0.5f, &decision) == RIMEWISE_STATUS_WRONG_SIZE);
}

static void monitor(void)
{
    static RimewiseMonitor monitor;
    RimewiseMonitorSettings settings;
    RimewiseSample sample;
    RimewiseMonitorEvents events = {.size = sizeof events};
    RimewiseInvalid invalid = {.size = sizeof invalid};
    RimewiseReadings readings;
    RimewiseUncertainty uncertainty;
    int32_t state = -1;
    uint32_t since, starts = 0;
    CHECK(rimewise_monitor_settings_clear(&settings, sizeof settings) == RIMEWISE_OK);
    CHECK(rimewise_sample_clear(&sample, sizeof sample) == RIMEWISE_OK && isnan(sample.current_a));
    rimewise_readings_clear(&readings, sizeof readings);
    rimewise_uncertainty_clear(&uncertainty, sizeof uncertainty);
    settings.rated_load_a = 4.0f;
    settings.locked_rotor_a = 21.0f;
    settings.rated_v = 230.0f;
    CHECK(rimewise_monitor_start(&monitor, &settings, &invalid) == RIMEWISE_OK);
    CHECK(rimewise_monitor_state(&monitor, &state) == RIMEWISE_OK && state == RIMEWISE_MONITOR_STATE_UNKNOWN);
    CHECK(rimewise_monitor_since(&monitor, &since) == RIMEWISE_STATUS_NOT_YET);
    CHECK(rimewise_monitor_readings(&monitor, NULL, &readings, &uncertainty) == RIMEWISE_STATUS_NOT_YET);

    /* Off for twenty seconds, a start, then ten minutes that hold still. */
    for (uint32_t second = 0; second < 620; second++) {
        int running = second >= 20;
        sample.suction_pressure_kpa = running ? 210.0f : 400.0f;
        sample.discharge_pressure_kpa = running ? 1320.0f : 400.0f;
        sample.suction_line_c = 5.0f;
        sample.ambient_c = 27.0f;
        sample.current_a = !running ? 0.0f : second == 20 ? 15.0f : 3.0f;
        CHECK(rimewise_monitor_push(&monitor, &rimewise_r290, 1000u * second, &sample, &events) == RIMEWISE_OK);
        CHECK(events.problem == 0 && events.count <= RIMEWISE_MONITOR_EVENTS_MAX);
        for (uint32_t i = 0; i < events.count; i++)
            starts += events.events[i].kind == RIMEWISE_MONITOR_EVENT_KIND_START;
    }
    CHECK(starts == 1);
    CHECK(rimewise_monitor_state(&monitor, &state) == RIMEWISE_OK && state == RIMEWISE_MONITOR_STATE_STEADY);
    CHECK(rimewise_monitor_since(&monitor, &since) == RIMEWISE_OK && since >= 595000 && since <= 602000);
    CHECK(rimewise_monitor_readings(&monitor, NULL, &readings, &uncertainty) == RIMEWISE_OK);
    CHECK(NEAR(readings.suction_pressure_kpa, 210.0f, 0.1f) && NEAR(readings.current_a, 3.0f, 0.01f));
    CHECK(isnan(readings.space_c) && readings.running == 1);
    RimewiseReadings found = {.size = sizeof found};
    CHECK(rimewise_monitor_found(&monitor, &found) == RIMEWISE_OK);
    CHECK(isnan(found.suction_pressure_kpa) && isnan(found.pump_down_kpa) &&
          found.running == RIMEWISE_NOT_KNOWN);
    found.size = 8;
    CHECK(rimewise_monitor_found(&monitor, &found) == RIMEWISE_STATUS_WRONG_SIZE);
    static RimewiseReport report = {.size = sizeof report};
    static RimewiseWorkspace workspace;
    CHECK(rimewise_diagnose(&rimewise_r290, NULL, &readings, NULL, &uncertainty, &workspace, &report, NULL) == RIMEWISE_OK);

    /* What cannot be used is said, and is no error. */
    CHECK(rimewise_monitor_push(&monitor, NULL, 0, &sample, &events) == RIMEWISE_OK);
    CHECK(events.problem == RIMEWISE_MONITOR_SAMPLE_PROBLEM_BACKWARD_TIME);
    sample.suction_pressure_kpa = -7.0f;
    CHECK(rimewise_monitor_push(&monitor, NULL, 621000, &sample, &events) == RIMEWISE_OK);
    CHECK(events.problem == RIMEWISE_MONITOR_SAMPLE_PROBLEM_SOME_UNUSABLE && events.unusable == 1);

    settings.rated_v = -1.0f;
    CHECK(rimewise_monitor_start(&monitor, &settings, &invalid) == RIMEWISE_STATUS_INVALID_INPUT);
    const char *section, *name;
    CHECK(rimewise_field_text(invalid.field, &section, &name) == RIMEWISE_OK && strcmp(name, "rated_v") == 0);
    settings.rated_v = NAN;
    settings.pump_down_valve = 9;
    CHECK(rimewise_monitor_start(&monitor, &settings, &invalid) == RIMEWISE_STATUS_UNKNOWN_CODE);
    settings.pump_down_valve = -1;
    settings.suction_pressure_regulator = 2;
    CHECK(rimewise_monitor_start(&monitor, &settings, NULL) == RIMEWISE_STATUS_UNKNOWN_CODE);
    CHECK(rimewise_monitor_start(&monitor, NULL, NULL) == RIMEWISE_OK);
    CHECK(rimewise_monitor_start(NULL, &settings, &invalid) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_monitor_start((RimewiseMonitor *)((char *)&monitor + 1), NULL, NULL) ==
          RIMEWISE_STATUS_OUT_OF_RANGE);
    CHECK(rimewise_monitor_push(NULL, NULL, 0, &sample, &events) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_monitor_push(&monitor, NULL, 0, NULL, &events) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_monitor_push(&monitor, NULL, 0, &sample, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_monitor_state(NULL, &state) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_monitor_state(&monitor, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_monitor_since(NULL, &since) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_monitor_since(&monitor, NULL) != RIMEWISE_OK);
    CHECK(rimewise_monitor_readings(NULL, NULL, &readings, &uncertainty) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_monitor_readings(&monitor, NULL, NULL, &uncertainty) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_monitor_readings(&monitor, NULL, &readings, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_monitor_found(NULL, &readings) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_monitor_found(&monitor, NULL) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_monitor_settings_clear(NULL, sizeof settings) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_sample_clear(NULL, sizeof sample) == RIMEWISE_STATUS_NULL_POINTER);
    CHECK(rimewise_sample_clear(&sample, 8) == RIMEWISE_STATUS_WRONG_SIZE);
    CHECK(rimewise_monitor_settings_clear(&settings, 8) == RIMEWISE_STATUS_WRONG_SIZE);
    sample.size = 8;
    CHECK(rimewise_monitor_push(&monitor, NULL, 0, &sample, &events) == RIMEWISE_STATUS_WRONG_SIZE);
    sample.size = sizeof sample;
    events.size = 8;
    CHECK(rimewise_monitor_push(&monitor, NULL, 0, &sample, &events) == RIMEWISE_STATUS_WRONG_SIZE);
    settings.size = 8;
    CHECK(rimewise_monitor_start(&monitor, &settings, NULL) == RIMEWISE_STATUS_WRONG_SIZE);
    invalid.size = 8;
    CHECK(rimewise_monitor_start(&monitor, NULL, &invalid) == RIMEWISE_STATUS_WRONG_SIZE);
}

int main(void)
{
    compressor();
    motor();
    charge();
    decision();
    monitor();
    return checks_close("trade");
}
