/* Answers every case that is linked in and prints a digest of each answer, the same lines as the host's core writes.
 *
 * The digest goes through the C structs field by field, so that padding, order or a lost bit would show. */
#include "rimewise.h"

#include <stddef.h>
#include <stdio.h>
#include <string.h>

typedef struct {
    char designation[24];
    RimewiseSystem system;
    RimewiseReadings readings;
    RimewiseObservations observations;
    RimewiseUncertainty uncertainty;
    uint32_t record_count;
    RimewiseReadings record[2];
} Case;

extern const Case cases_start[];
extern const Case cases_end[];

static uint32_t hash;

static void word(uint32_t value)
{
    for (int i = 0; i < 4; i++) {
        hash ^= value >> (8 * i) & 0xFFu;
        hash *= 0x01000193u;
    }
}

static void number(float value)
{
    uint32_t bits;
    memcpy(&bits, &value, 4);
    word(bits);
}

static void optional(int there, float value)
{
    word(there ? 1 : 0);
    number(value);
}

static void letters(const char *text)
{
    while (*text)
        word((unsigned char)*text++);
}

static void estimates(uint32_t valid, const RimewiseEstimate *all, unsigned count)
{
    for (unsigned i = 0; i < count; i++) {
        word(valid >> i & 1u);
        number(all[i].value);
        number(all[i].u);
    }
}

static void measurements(uint32_t count, const RimewiseCauseAndMeasurements *all)
{
    word(count);
    for (uint32_t i = 0; i < count; i++) {
        word((uint32_t)all[i].cause);
        word(all[i].measurement_count);
        for (uint32_t k = 0; k < all[i].measurement_count; k++)
            word((uint32_t)all[i].measurements[k]);
    }
}

static void shares(uint32_t count, const RimewiseShare *all)
{
    word(count);
    for (uint32_t i = 0; i < count; i++) {
        word((uint32_t)all[i].name);
        number(all[i].probability);
    }
}

static void entry(const RimewisePlanEntry *e)
{
    word((uint32_t)e->kind);
    word((uint32_t)e->about);
    word((uint32_t)e->name);
    number(e->number);
}

static void plan(const RimewisePlan *p)
{
    entry(&p->step);
    number(p->minutes);
    word((uint32_t)p->effort);
    optional(p->valid & RIMEWISE_PLAN_HOSE, p->hose_takes_g);
    optional(p->valid & RIMEWISE_PLAN_HOSE_PERCENT, p->hose_takes_percent);
    optional(p->valid & RIMEWISE_PLAN_REPLACE_ABOVE, p->replace_above);
    word(p->valid & RIMEWISE_PLAN_WEIGH_IN ? 1 : 0);
    number(p->weigh_in_kg.value);
    number(p->weigh_in_kg.u);
    word((uint32_t)p->change);
    word(p->then_count);
    for (uint32_t i = 0; i < p->then_count; i++)
        entry(&p->then[i]);
    word(p->way_count);
    for (uint32_t i = 0; i < p->way_count; i++)
        entry(&p->ways[i]);
}

static uint32_t report_digest(const RimewiseReport *r)
{
    const char *section, *name;
    hash = 0x811C9DC5u;
    word((uint32_t)r->decided);
    word((uint32_t)r->leading);
    optional(r->valid & RIMEWISE_REPORT_FITS, r->fits);
    for (unsigned i = 0; i < r->cause_count; i++) {
        word((uint32_t)r->causes[i].cause);
        number(r->causes[i].probability);
        optional(r->causes[i].valid & RIMEWISE_CAUSE_SEVERITY, r->causes[i].severity);
    }
    word(r->evidence_count);
    for (uint32_t i = 0; i < r->evidence_count; i++) {
        word((uint32_t)r->evidence[i].cause);
        word((uint32_t)r->evidence[i].reading);
        number(r->evidence[i].weight_nats);
    }
    word(r->next_count);
    for (uint32_t i = 0; i < r->next_count; i++) {
        word((uint32_t)r->next[i].measurement);
        word((uint32_t)r->next[i].effort);
        number(r->next[i].information_bits);
        number(r->next_minutes[i]);
    }
    measurements(r->ruled_out_count, r->ruled_out);
    measurements(r->still_open_count, r->still_open);
    word(r->warning_count);
    for (uint32_t i = 0; i < r->warning_count; i++) {
        word((uint32_t)r->warnings[i].code);
        if (rimewise_field_text(r->warnings[i].field, &section, &name) == RIMEWISE_OK)
            letters(name);
        word((uint32_t)r->warnings[i].unit);
        optional(r->warnings[i].valid & RIMEWISE_FACT_VALUE, r->warnings[i].value);
        optional(r->warnings[i].valid & RIMEWISE_FACT_LIMIT, r->warnings[i].limit);
    }
    word(r->electrical_count);
    for (uint32_t i = 0; i < r->electrical_count; i++) {
        const RimewiseFinding *f = &r->electrical[i];
        word((uint32_t)f->finding);
        if (rimewise_text(&rimewise_unit_names, f->unit, &name) == RIMEWISE_OK)
            letters(name);
        optional(f->valid & RIMEWISE_FINDING_VALUE, f->value);
        optional(f->valid & RIMEWISE_FINDING_LIMIT, f->limit);
    }
    word(r->caution_count);
    for (uint32_t i = 0; i < r->caution_count; i++) {
        word((uint32_t)r->cautions[i].code);
        word((uint32_t)r->cautions[i].step);
    }
    estimates(r->cycle.valid, &r->cycle.suction_saturation_c,
              (offsetof(RimewiseCycle, reserved) - sizeof r->cycle.valid) / sizeof(RimewiseEstimate));
    estimates(r->expected.valid, &r->expected.suction_saturation_c,
              (offsetof(RimewiseExpected, reserved) - sizeof r->expected.valid) / sizeof(RimewiseEstimate));
    word((uint32_t)r->verdict.level);
    word((uint32_t)r->verdict.name);
    number(r->verdict.probability);
    word((uint32_t)r->compressor_state);
    number(r->compressor_probability);
    shares(r->family_count, r->families);
    shares(r->job_count, r->jobs);
    word(r->alarm_count);
    for (uint32_t i = 0; i < r->alarm_count; i++) {
        word((uint32_t)r->alarms[i].code);
        word((uint32_t)r->alarms[i].field);
        if (rimewise_text(&rimewise_unit_names, r->alarms[i].unit, &name) == RIMEWISE_OK)
            letters(name);
        optional(r->alarms[i].valid & RIMEWISE_FACT_VALUE, r->alarms[i].value);
        optional(r->alarms[i].valid & RIMEWISE_FACT_LIMIT, r->alarms[i].limit);
    }
    word(r->terminals.common);
    word(r->terminals.run);
    word(r->terminals.start);
    number(r->terminals.probability);
    plan(&r->plan);
    return hash;
}

static uint32_t invalid_digest(const RimewiseInvalid *invalid)
{
    const char *section = "", *name = "";
    hash = 0x811C9DC5u;
    rimewise_field_text(invalid->field, &section, &name);
    letters(name);
    /* A field of the visit has the number of its measurement; the same name elsewhere has one of its own. */
    int32_t known = invalid->field;
    for (int32_t code = 1; code < 300; code++) {
        const char *measurement;
        if (rimewise_text(&rimewise_measurement_names, code, &measurement) == RIMEWISE_OK && strcmp(measurement, name) == 0)
            known = code;
    }
    word(known < 300 ? (uint32_t)known : 0);
    word((uint32_t)invalid->record);
    word((uint32_t)invalid->code);
    word((uint32_t)invalid->unit);
    optional(invalid->valid & RIMEWISE_FACT_VALUE, invalid->value);
    optional(invalid->valid & RIMEWISE_FACT_MIN, invalid->min);
    optional(invalid->valid & RIMEWISE_FACT_MAX, invalid->max);
    return hash;
}

int main(void)
{
    static RimewiseReport report;
    static RimewiseInvalid invalid;
    static RimewiseWorkspace workspace;
    for (const Case *visit = cases_start; visit < cases_end; visit++) {
        unsigned index = (unsigned)(visit - cases_start);
        const RimewiseRefrigerant *refrigerant = NULL;
        if (visit->designation[0] && rimewise_refrigerant_find(visit->designation, &refrigerant) != RIMEWISE_OK) {
            printf("%u unknown\n", index);
            continue;
        }
        report.size = sizeof report;
        invalid.size = sizeof invalid;
        const RimewiseVisit whole = {.size = sizeof whole,
                                     .record_count = visit->record_count,
                                     .system = &visit->system,
                                     .readings = &visit->readings,
                                     .observations = &visit->observations,
                                     .uncertainty = &visit->uncertainty,
                                     .record = visit->record};
        RimewiseStatus status =
            rimewise_diagnose_visit(refrigerant, &whole, &workspace, &report, &invalid);
        if (status == RIMEWISE_OK)
            printf("%u report %08lx\n", index, (unsigned long)report_digest(&report));
        else if (status == RIMEWISE_STATUS_INVALID_INPUT)
            printf("%u invalid %08lx\n", index, (unsigned long)invalid_digest(&invalid));
        else
            printf("%u status %d\n", index, (int)status);
    }
    return 0;
}
