//! Writes the plan of a visit.

use super::write::Line;
use crate::plan::{Plan, Step};

/// Writes the plan as the member `plan`.
pub(super) fn write(line: &mut Line, plan: &Plan) {
    line.name("plan");
    line.open();
    line.name("step");
    write_step(line, &plan.step);
    line.name("then");
    line.list(plan.then.iter(), |line, then| {
        line.open();
        line.name("outcome");
        line.text(then.outcome);
        line.number("probability", then.probability);
        line.name("kind");
        line.text(then.kind.name());
        line.name("name");
        line.text(then.subject.name());
        line.close();
    });
    line.name("ways");
    line.list(plan.ways.iter(), |line, way| {
        line.open();
        line.name("kind");
        line.text(way.kind.name());
        line.name("name");
        line.text(way.subject.name());
        line.number("expected_cost", way.expected_cost);
        line.close();
    });
    line.name("replace_above");
    line.value(plan.replace_above);
    line.estimate("weigh_in_kg", plan.weigh_in_kg);
    line.name("change");
    match plan.change {
        Some(change) => line.text(change.name()),
        None => line.null(),
    }
    line.close();
}

fn write_step(line: &mut Line, step: &Step) {
    line.open();
    line.name("kind");
    line.text(step.kind.name());
    line.name("name");
    line.text(step.subject.name());
    line.number("minutes", step.minutes);
    line.number("changes", step.changes);
    line.name("effort");
    match step.effort {
        Some(effort) => line.text(effort.name()),
        None => line.null(),
    }
    line.name("hose_takes_g");
    line.value(step.hose.map(|hose| hose.grams));
    line.name("hose_takes_percent");
    line.value(step.hose.and_then(|hose| hose.percent));
    line.name("text");
    line.text(step.text());
    line.close();
}
