//! The lists of texts. Written by `cargo run -p rimewise-schema`; do not edit.

#![allow(non_upper_case_globals)]

use crate::text::RimewiseTexts;
use rimewise::schema::CHOICES;
use rimewise::text;

/// The names of RimewiseMetering in the contract.
#[unsafe(no_mangle)] pub static rimewise_metering_names: RimewiseTexts = RimewiseTexts(CHOICES[0].c_names);
/// The names of RimewiseDuty in the contract.
#[unsafe(no_mangle)] pub static rimewise_duty_names: RimewiseTexts = RimewiseTexts(CHOICES[1].c_names);
/// The names of RimewiseCompressorKind in the contract.
#[unsafe(no_mangle)] pub static rimewise_compressor_kind_names: RimewiseTexts = RimewiseTexts(CHOICES[2].c_names);
/// The names of RimewiseDrive in the contract.
#[unsafe(no_mangle)] pub static rimewise_drive_names: RimewiseTexts = RimewiseTexts(CHOICES[3].c_names);
/// The names of RimewiseStartGear in the contract.
#[unsafe(no_mangle)] pub static rimewise_start_gear_names: RimewiseTexts = RimewiseTexts(CHOICES[4].c_names);
/// The names of RimewisePumpDownValve in the contract.
#[unsafe(no_mangle)] pub static rimewise_pump_down_valve_names: RimewiseTexts = RimewiseTexts(CHOICES[5].c_names);
/// The names of RimewisePumpDownEnd in the contract.
#[unsafe(no_mangle)] pub static rimewise_pump_down_end_names: RimewiseTexts = RimewiseTexts(CHOICES[6].c_names);
/// The names of RimewiseStartNoise in the contract.
#[unsafe(no_mangle)] pub static rimewise_start_noise_names: RimewiseTexts = RimewiseTexts(CHOICES[7].c_names);
/// The names of RimewiseSightGlass in the contract.
#[unsafe(no_mangle)] pub static rimewise_sight_glass_names: RimewiseTexts = RimewiseTexts(CHOICES[8].c_names);
/// The names of RimewiseFan in the contract.
#[unsafe(no_mangle)] pub static rimewise_fan_names: RimewiseTexts = RimewiseTexts(CHOICES[9].c_names);
/// The names of RimewiseCondenserFace in the contract.
#[unsafe(no_mangle)] pub static rimewise_condenser_face_names: RimewiseTexts = RimewiseTexts(CHOICES[10].c_names);
/// The names of RimewiseFrostLine in the contract.
#[unsafe(no_mangle)] pub static rimewise_frost_line_names: RimewiseTexts = RimewiseTexts(CHOICES[11].c_names);
/// The names of RimewiseStartSound in the contract.
#[unsafe(no_mangle)] pub static rimewise_start_sound_names: RimewiseTexts = RimewiseTexts(CHOICES[12].c_names);
/// The names of RimewiseComplaint in the contract.
#[unsafe(no_mangle)] pub static rimewise_complaint_names: RimewiseTexts = RimewiseTexts(CHOICES[13].c_names);
/// The names of RimewiseHistory in the contract.
#[unsafe(no_mangle)] pub static rimewise_history_names: RimewiseTexts = RimewiseTexts(CHOICES[14].c_names);
/// The names of RimewiseTool in the contract.
#[unsafe(no_mangle)] pub static rimewise_tool_names: RimewiseTexts = RimewiseTexts(CHOICES[15].c_names);
/// The names of RimewiseAction in the contract.
#[unsafe(no_mangle)] pub static rimewise_action_names: RimewiseTexts = RimewiseTexts(CHOICES[16].c_names);
/// The names of RimewiseMeasurement in the contract.
#[unsafe(no_mangle)] pub static rimewise_measurement_names: RimewiseTexts = RimewiseTexts(CHOICES[17].c_names);
/// The names of RimewiseEffort in the contract.
#[unsafe(no_mangle)] pub static rimewise_effort_names: RimewiseTexts = RimewiseTexts(CHOICES[18].c_names);
/// What a RimewiseEffort says, in English.
#[unsafe(no_mangle)] pub static rimewise_effort_en: RimewiseTexts = RimewiseTexts(text::en::EFFORT);
/// What a RimewiseEffort says, in Spanish.
#[unsafe(no_mangle)] pub static rimewise_effort_es: RimewiseTexts = RimewiseTexts(text::es::EFFORT);
/// The names of RimewiseCause in the contract.
#[unsafe(no_mangle)] pub static rimewise_cause_names: RimewiseTexts = RimewiseTexts(CHOICES[19].c_names);
/// What a RimewiseCause says, in English.
#[unsafe(no_mangle)] pub static rimewise_cause_en: RimewiseTexts = RimewiseTexts(text::en::CAUSE);
/// What a RimewiseCause says, in Spanish.
#[unsafe(no_mangle)] pub static rimewise_cause_es: RimewiseTexts = RimewiseTexts(text::es::CAUSE);
/// The names of RimewiseWarningKind in the contract.
#[unsafe(no_mangle)] pub static rimewise_warning_kind_names: RimewiseTexts = RimewiseTexts(CHOICES[20].c_names);
/// What a RimewiseWarningKind says, in English.
#[unsafe(no_mangle)] pub static rimewise_warning_kind_en: RimewiseTexts = RimewiseTexts(text::en::WARNING_KIND);
/// What a RimewiseWarningKind says, in Spanish.
#[unsafe(no_mangle)] pub static rimewise_warning_kind_es: RimewiseTexts = RimewiseTexts(text::es::WARNING_KIND);
/// The names of RimewiseErrorCode in the contract.
#[unsafe(no_mangle)] pub static rimewise_error_code_names: RimewiseTexts = RimewiseTexts(CHOICES[21].c_names);
/// What a RimewiseErrorCode says, in English.
#[unsafe(no_mangle)] pub static rimewise_error_code_en: RimewiseTexts = RimewiseTexts(text::en::ERROR_CODE);
/// What a RimewiseErrorCode says, in Spanish.
#[unsafe(no_mangle)] pub static rimewise_error_code_es: RimewiseTexts = RimewiseTexts(text::es::ERROR_CODE);
/// The names of RimewiseFindingKind in the contract.
#[unsafe(no_mangle)] pub static rimewise_finding_kind_names: RimewiseTexts = RimewiseTexts(CHOICES[22].c_names);
/// What a RimewiseFindingKind says, in English.
#[unsafe(no_mangle)] pub static rimewise_finding_kind_en: RimewiseTexts = RimewiseTexts(text::en::FINDING_KIND);
/// What a RimewiseFindingKind says, in Spanish.
#[unsafe(no_mangle)] pub static rimewise_finding_kind_es: RimewiseTexts = RimewiseTexts(text::es::FINDING_KIND);
/// The names of RimewiseCautionCode in the contract.
#[unsafe(no_mangle)] pub static rimewise_caution_code_names: RimewiseTexts = RimewiseTexts(CHOICES[23].c_names);
/// What a RimewiseCautionCode says, in English.
#[unsafe(no_mangle)] pub static rimewise_caution_code_en: RimewiseTexts = RimewiseTexts(text::en::CAUTION_CODE);
/// What a RimewiseCautionCode says, in Spanish.
#[unsafe(no_mangle)] pub static rimewise_caution_code_es: RimewiseTexts = RimewiseTexts(text::es::CAUTION_CODE);
/// The names of RimewiseStep in the contract.
#[unsafe(no_mangle)] pub static rimewise_step_names: RimewiseTexts = RimewiseTexts(CHOICES[24].c_names);
/// What a RimewiseStep says, in English.
#[unsafe(no_mangle)] pub static rimewise_step_en: RimewiseTexts = RimewiseTexts(text::en::STEP);
/// What a RimewiseStep says, in Spanish.
#[unsafe(no_mangle)] pub static rimewise_step_es: RimewiseTexts = RimewiseTexts(text::es::STEP);
/// The names of RimewiseUnit in the contract.
#[unsafe(no_mangle)] pub static rimewise_unit_names: RimewiseTexts = RimewiseTexts(CHOICES[25].c_names);
/// What a RimewiseUnit says, in English.
#[unsafe(no_mangle)] pub static rimewise_unit_en: RimewiseTexts = RimewiseTexts(text::en::UNIT);
/// What a RimewiseUnit says, in Spanish.
#[unsafe(no_mangle)] pub static rimewise_unit_es: RimewiseTexts = RimewiseTexts(text::es::UNIT);
/// The names of RimewiseLanguage in the contract.
#[unsafe(no_mangle)] pub static rimewise_language_names: RimewiseTexts = RimewiseTexts(CHOICES[26].c_names);
/// The names of RimewiseWinding in the contract.
#[unsafe(no_mangle)] pub static rimewise_winding_names: RimewiseTexts = RimewiseTexts(CHOICES[27].c_names);
/// The names of RimewiseAlarmCode in the contract.
#[unsafe(no_mangle)] pub static rimewise_alarm_code_names: RimewiseTexts = RimewiseTexts(CHOICES[28].c_names);
/// What a RimewiseAlarmCode says, in English.
#[unsafe(no_mangle)] pub static rimewise_alarm_code_en: RimewiseTexts = RimewiseTexts(text::en::ALARM_CODE);
/// What a RimewiseAlarmCode says, in Spanish.
#[unsafe(no_mangle)] pub static rimewise_alarm_code_es: RimewiseTexts = RimewiseTexts(text::es::ALARM_CODE);
/// The names of RimewiseLevel in the contract.
#[unsafe(no_mangle)] pub static rimewise_level_names: RimewiseTexts = RimewiseTexts(CHOICES[29].c_names);
/// The names of RimewiseFamily in the contract.
#[unsafe(no_mangle)] pub static rimewise_family_names: RimewiseTexts = RimewiseTexts(CHOICES[30].c_names);
/// The names of RimewiseJob in the contract.
#[unsafe(no_mangle)] pub static rimewise_job_names: RimewiseTexts = RimewiseTexts(CHOICES[31].c_names);
/// The names of RimewiseCompressorState in the contract.
#[unsafe(no_mangle)] pub static rimewise_compressor_state_names: RimewiseTexts = RimewiseTexts(CHOICES[32].c_names);
/// The names of RimewiseStepKind in the contract.
#[unsafe(no_mangle)] pub static rimewise_step_kind_names: RimewiseTexts = RimewiseTexts(CHOICES[33].c_names);
/// The names of RimewisePlanContext in the contract.
#[unsafe(no_mangle)] pub static rimewise_plan_context_names: RimewiseTexts = RimewiseTexts(CHOICES[34].c_names);
/// The names of RimewiseChange in the contract.
#[unsafe(no_mangle)] pub static rimewise_change_names: RimewiseTexts = RimewiseTexts(CHOICES[35].c_names);
/// The names of RimewiseMonitorEventKind in the contract.
#[unsafe(no_mangle)] pub static rimewise_monitor_event_kind_names: RimewiseTexts = RimewiseTexts(CHOICES[36].c_names);
/// The names of RimewiseMonitorState in the contract.
#[unsafe(no_mangle)] pub static rimewise_monitor_state_names: RimewiseTexts = RimewiseTexts(CHOICES[37].c_names);
/// The names of RimewiseMonitorSampleProblem in the contract.
#[unsafe(no_mangle)] pub static rimewise_monitor_sample_problem_names: RimewiseTexts = RimewiseTexts(CHOICES[38].c_names);
/// The names of RimewiseCompressorScale in the contract.
#[unsafe(no_mangle)] pub static rimewise_compressor_scale_names: RimewiseTexts = RimewiseTexts(CHOICES[39].c_names);
/// What to do about a RimewiseMeasurement, in English; not every one has a sentence.
#[unsafe(no_mangle)] pub static rimewise_measure_en: RimewiseTexts = RimewiseTexts(text::en::MEASURE);
/// What to do about a RimewiseMeasurement, in Spanish; not every one has a sentence.
#[unsafe(no_mangle)] pub static rimewise_measure_es: RimewiseTexts = RimewiseTexts(text::es::MEASURE);
/// What to do about a RimewiseAction, in English; not every one has a sentence.
#[unsafe(no_mangle)] pub static rimewise_act_en: RimewiseTexts = RimewiseTexts(text::en::ACT);
/// What to do about a RimewiseAction, in Spanish; not every one has a sentence.
#[unsafe(no_mangle)] pub static rimewise_act_es: RimewiseTexts = RimewiseTexts(text::es::ACT);
/// What to do about a RimewisePlanContext, in English; not every one has a sentence.
#[unsafe(no_mangle)] pub static rimewise_ask_en: RimewiseTexts = RimewiseTexts(text::en::ASK);
/// What to do about a RimewisePlanContext, in Spanish; not every one has a sentence.
#[unsafe(no_mangle)] pub static rimewise_ask_es: RimewiseTexts = RimewiseTexts(text::es::ASK);
/// What to do about a RimewiseCause, in English; not every one has a sentence.
#[unsafe(no_mangle)] pub static rimewise_remedy_en: RimewiseTexts = RimewiseTexts(text::en::REMEDY);
/// What to do about a RimewiseCause, in Spanish; not every one has a sentence.
#[unsafe(no_mangle)] pub static rimewise_remedy_es: RimewiseTexts = RimewiseTexts(text::es::REMEDY);
/// What to do about a RimewiseFindingKind, in English; not every one has a sentence.
#[unsafe(no_mangle)] pub static rimewise_mend_en: RimewiseTexts = RimewiseTexts(text::en::MEND);
/// What to do about a RimewiseFindingKind, in Spanish; not every one has a sentence.
#[unsafe(no_mangle)] pub static rimewise_mend_es: RimewiseTexts = RimewiseTexts(text::es::MEND);
