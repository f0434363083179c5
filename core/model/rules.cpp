// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "model/rules.h"

#include <algorithm>
#include <array>

namespace morrow {

namespace {

using namespace std::string_view_literals;

// How a field rule is written below: what it is, then what else holds of it.

constexpr FieldRule text(Field field)
{
    return {.field = field};
}

constexpr FieldRule of(Field field, Form form)
{
    return {.field = field, .form = form};
}

constexpr FieldRule whole(Field field, int least, int most)
{
    return {.field = field, .form = Form::Whole, .least = Decimal::whole(least), .most = Decimal::whole(most)};
}

constexpr FieldRule number(Field field, int least, int most)
{
    return {.field = field, .form = Form::Number, .least = Decimal::whole(least), .most = Decimal::whole(most)};
}

constexpr FieldRule choice(Field field, std::span<const std::string_view> choices)
{
    return {.field = field, .form = Form::Choice, .choices = choices};
}

constexpr FieldRule needed(FieldRule rule)
{
    rule.required = true;
    return rule;
}

/// A field that says what the entry is about.
constexpr FieldRule naming(FieldRule rule)
{
    rule.names = true;
    return rule;
}

constexpr std::array kSides{"left"sv, "right"sv, "both"sv};
constexpr std::array kYesNo{"yes"sv, "no"sv};
constexpr std::array kHow{"tick"sv, "all"sv, "timer"sv};
constexpr std::array kAnswers{"go-on"sv, "lighter"sv, "wait"sv};
constexpr std::array kNoteKinds{"question"sv, "answer"sv, "note"sv, "unsure"sv, "reply"sv};
constexpr std::array kOutcomeKinds{"activity"sv, "overall"sv, "change"sv, "acceptable"sv, "test"sv};
constexpr std::array kUnits{"count"sv, "s"sv, "cm"sv, "kg"sv};
constexpr std::array kAuthorities{"off"sv, "clinic"sv, "patient"sv};
constexpr std::array kSettingKeys{"day_starts"sv, "body_mass_kg"sv, "time_zone"sv};

// Upper bounds are wider than anything a person can do; they refuse a slip of the
// keyboard and keep every sum far inside its type (our choice).
constexpr int kMaxSeconds = 86'400;
constexpr int kMaxReps = 100'000;
constexpr int kMaxKg = 10'000;
constexpr int kMaxImpulses = 1'000'000;
constexpr int kMaxDays = 36'500;

constexpr FieldRule kComplaint = naming(needed(text(Field::Complaint)));
constexpr FieldRule kSlot = naming(needed(of(Field::Slot, Form::Word)));
constexpr FieldRule kNamedItem = naming(needed(text(Field::Item)));
constexpr FieldRule kWithdrawn = whole(Field::Withdrawn, 1, 1);

constexpr FieldRule pain(Field field)
{
    return whole(field, 0, 10);
}

constexpr std::array kCheck{kComplaint, pain(Field::Pain), whole(Field::StiffnessMin, 0, 1440), whole(Field::Declined, 0, 1), kWithdrawn};
constexpr std::array kSet{
    kSlot,
    kNamedItem,
    naming(needed(whole(Field::Set, 1, 1000))),
    needed(whole(Field::Reps, 0, kMaxReps)),
    whole(Field::HoldS, 0, kMaxSeconds),
    number(Field::LoadKg, 0, kMaxKg),
    whole(Field::Spare, 0, 1000),
    choice(Field::How, kHow),
    kWithdrawn,
};
constexpr std::array kSession{kComplaint, kSlot, pain(Field::PainDuring), pain(Field::PainAfter), kWithdrawn};
constexpr std::array kSkip{kComplaint, kSlot, text(Field::Reason), kWithdrawn};
constexpr std::array kEasier{kComplaint, kSlot, kWithdrawn};
constexpr std::array kStage{kNamedItem, needed(whole(Field::Stage, 1, 1000)), text(Field::Reason), kWithdrawn};
constexpr std::array kSetting{naming(needed(choice(Field::Key, kSettingKeys))), needed(text(Field::Value)), kWithdrawn};
constexpr std::array kUnusual{needed(text(Field::Text)), kWithdrawn};
constexpr std::array kNote{
    kComplaint,
    needed(choice(Field::Kind, kNoteKinds)),
    text(Field::Item),
    text(Field::Text),
    of(Field::About, Form::Id),
    kWithdrawn,
};
constexpr std::array kFlag{needed(text(Field::Sign)), text(Field::Note), choice(Field::Told, kYesNo), kWithdrawn};
constexpr std::array kOutcome{
    kComplaint,
    needed(choice(Field::Kind, kOutcomeKinds)),
    text(Field::Name),
    choice(Field::Side, kSides),
    needed(number(Field::Value, -999'999, 999'999)),
    choice(Field::Unit, kUnits),
    pain(Field::Pain),
    text(Field::By),
    kWithdrawn,
};
constexpr std::array kPause{needed(of(Field::To, Form::Day)), text(Field::Reason), kWithdrawn};
constexpr std::array kVisit{
    kComplaint,
    text(Field::Region),
    choice(Field::Side, kSides),
    whole(Field::WarmupImpulses, 0, kMaxImpulses),
    number(Field::WarmupBar, 0, 1000),
    number(Field::WarmupHz, 0, 1000),
    whole(Field::Impulses, 0, kMaxImpulses),
    number(Field::Bar, 0, 1000),
    number(Field::Hz, 0, 1000),
    number(Field::AreaCm2, 0, 100'000),
    pain(Field::PainDuring),
    text(Field::By),
    text(Field::Applicator),
    text(Field::Point),
    text(Field::Reaction),
    text(Field::Told),
    whole(Field::Consent, 0, 1),
    of(Field::NextVisit, Form::Day),
    kWithdrawn,
};
constexpr std::array kHeard{naming(needed(of(Field::Flag, Form::Id))), needed(choice(Field::Answer, kAnswers)), kWithdrawn};
constexpr std::array kPutAside{kComplaint, kWithdrawn};
constexpr std::array kHanded{
    needed(text(Field::File)), of(Field::From, Form::Day), of(Field::To, Form::Day), text(Field::Addressee), kWithdrawn};
constexpr std::array kComplaintFields{
    kComplaint,
    text(Field::Region),
    choice(Field::Side, kSides),
    text(Field::Question),
    of(Field::Check, Form::Rule),
    number(Field::FirstAssessmentPain, 0, 10),
    of(Field::Started, Form::Day),
    needed(whole(Field::Place, 1, 1'000'000)),
    kWithdrawn,
};
constexpr std::array kPlanSettings{
    number(Field::AfterLimit, 0, 10),
    of(Field::Asks, Form::Asks),
    choice(Field::Authority, kAuthorities),
    whole(Field::BirthYear, 1800, 2200),
    number(Field::CheckLimit, 0, 10),
    number(Field::ContactLevel, 0, 10),
    number(Field::ContactRise, 0, 10),
    number(Field::DuringLimit, 0, 10),
    number(Field::LevelRiseAllowed, 0, 10),
    whole(Field::RestDaysAfterVisit, 0, kMaxDays),
    of(Field::ReviewDay, Form::Day),
    text(Field::ReviewText),
    number(Field::RiseAllowed, 0, 10),
    whole(Field::SorenessDays, 0, kMaxDays),
    number(Field::StepAdherence, 0, 1),
    whole(Field::StepSessions, 1, 1000),
    whole(Field::StepSpacingDays, 0, kMaxDays),
    whole(Field::StepWindowDays, 1, kMaxDays),
    whole(Field::VisitsPlanned, 0, 1000),
    number(Field::WeeklyRiseAllowed, 0, 10),
    number(Field::WeeklyStiffnessAllowed, 0, 1440),
};
constexpr std::array kPlanOwn{
    kComplaint,
    naming(needed(of(Field::Plan, Form::Id))),
    needed(whole(Field::Number, 1, 1'000'000)),
    text(Field::By),
    needed(of(Field::Items, Form::List)),
    kWithdrawn,
};
constexpr auto kPlan = [] {
    std::array<FieldRule, kPlanOwn.size() + kPlanSettings.size()> all{};
    std::copy(kPlanSettings.begin(), kPlanSettings.end(), std::copy(kPlanOwn.begin(), kPlanOwn.end(), all.begin()));
    return all;
}();
constexpr std::array kItem{
    needed(text(Field::Item)),
    needed(text(Field::Exercise)),
    choice(Field::Side, kSides),
    needed(of(Field::Start, Form::Day)),
    of(Field::End, Form::Day),
    whole(Field::RestsAfterVisit, 0, 1),
    whole(Field::Loads, 0, 1),
    text(Field::Continues),
    needed(of(Field::Stages, Form::List)),
};
constexpr std::array kStageFields{
    needed(whole(Field::Stage, 1, 1000)),
    needed(whole(Field::Sets, 1, 1000)),
    whole(Field::Reps, 1, kMaxReps),
    whole(Field::HoldS, 0, kMaxSeconds),
    number(Field::LoadKg, 0, kMaxKg),
    number(Field::BodyShare, 0, 1),
    whole(Field::UpS, 0, kMaxSeconds),
    whole(Field::PauseS, 0, kMaxSeconds),
    whole(Field::DownS, 0, kMaxSeconds),
    whole(Field::RestS, 0, kMaxSeconds),
    of(Field::Rrule, Form::Rule),
    of(Field::Slots, Form::Words),
    whole(Field::PerWeek, 1, 7),
    whole(Field::MinDays, 0, kMaxDays),
    whole(Field::MinSessions, 0, kMaxDays),
    whole(Field::SpareReps, 0, 1000),
    number(Field::LoadStepKg, 0, kMaxKg),
    text(Field::Range),
    text(Field::KeyPoint),
    whole(Field::EasierSets, 0, 1000),
    whole(Field::EasierReps, 0, kMaxReps),
    whole(Field::EasierHoldS, 0, kMaxSeconds),
    number(Field::EasierLoadKg, 0, kMaxKg),
};
constexpr std::array kCleared{naming(needed(of(Field::Flag, Form::Id))), kWithdrawn};
constexpr std::array kClosed{kComplaint, text(Field::EndReason), kWithdrawn};
constexpr std::array kMemo{naming(needed(of(Field::Visit, Form::Id))), text(Field::Note), text(Field::NextTime), kWithdrawn};
constexpr std::array kKnownAs{text(Field::Label), text(Field::FileNumber), whole(Field::BirthYear, 1800, 2200), kWithdrawn};
constexpr std::array kAlias{naming(needed(of(Field::Ref, Form::Id))), kWithdrawn};
constexpr std::array kSetAside{naming(needed(text(Field::File))), kWithdrawn};

constexpr std::array kByComplaint{Field::Complaint};
constexpr std::array kBySlot{Field::Complaint, Field::Slot};
constexpr std::array kBySet{Field::Slot, Field::Item, Field::Set};
constexpr std::array kByItem{Field::Item};
constexpr std::array kByKey{Field::Key};

struct By
{
    bool patient;
    bool clinic;
};
constexpr By kPatient{.patient = true, .clinic = false};
constexpr By kClinic{.patient = false, .clinic = true};
constexpr By kEither{.patient = true, .clinic = true};

constexpr KindRule kind(Kind kind, std::span<const FieldRule> fields, AboutRule about, By by)
{
    return {.kind = kind, .fields = fields, .about = about, .patient = by.patient, .clinic = by.clinic};
}

constexpr std::array<KindRule, kKindCount> kRules{
    kind(Kind::Check, kCheck, {true, kByComplaint}, kPatient),
    kind(Kind::Set, kSet, {true, kBySet}, kPatient),
    kind(Kind::Session, kSession, {true, kBySlot}, kPatient),
    kind(Kind::Skip, kSkip, {true, kBySlot}, kPatient),
    kind(Kind::Easier, kEasier, {true, kBySlot}, kPatient),
    kind(Kind::Stage, kStage, {true, kByItem}, kEither),
    kind(Kind::Setting, kSetting, {false, kByKey}, kEither),
    kind(Kind::Unusual, kUnusual, {}, kEither),
    kind(Kind::Note, kNote, {}, kEither),
    kind(Kind::Flag, kFlag, {}, kEither),
    kind(Kind::Outcome, kOutcome, {}, kEither),
    kind(Kind::Pause, kPause, {}, kEither),
    kind(Kind::Visit, kVisit, {}, kEither),
    kind(Kind::Heard, kHeard, {}, kPatient),
    kind(Kind::PutAside, kPutAside, {}, kPatient),
    kind(Kind::Handed, kHanded, {}, kPatient),
    kind(Kind::Complaint, kComplaintFields, {false, kByComplaint}, kClinic),
    kind(Kind::Plan, kPlan, {}, kClinic),
    kind(Kind::Cleared, kCleared, {}, kClinic),
    kind(Kind::Closed, kClosed, {}, kClinic),
    kind(Kind::Memo, kMemo, {}, kClinic),
    kind(Kind::KnownAs, kKnownAs, {}, kClinic),
    kind(Kind::Alias, kAlias, {}, kClinic),
    kind(Kind::SetAside, kSetAside, {}, kClinic),
};
static_assert([] {
    for (std::size_t i = 0; i < kRules.size(); ++i) {
        if (kRules[i].kind != static_cast<Kind>(i))
            return false;
    }
    return true;
}());

// The values of setting entries are kept as text in the form of these.
constexpr FieldRule kDayStarts = of(Field::Value, Form::TimeOfDay);
constexpr FieldRule kBodyMass{.field = Field::Value, .form = Form::Number, .least = Decimal::whole(1), .most = Decimal::whole(1000)};
constexpr FieldRule kTimeZone = of(Field::Value, Form::Word);

} // namespace

const KindRule &ruleOf(Kind kind) noexcept
{
    return kRules[static_cast<std::size_t>(kind)];
}

const FieldRule *ruleOf(Kind kind, Field field) noexcept
{
    for (const FieldRule &rule : ruleOf(kind).fields) {
        if (rule.field == field)
            return &rule;
    }
    return nullptr;
}

std::span<const FieldRule> itemRules() noexcept
{
    return kItem;
}

std::span<const FieldRule> stageRules() noexcept
{
    return kStageFields;
}

std::span<const FieldRule> planSettingRules() noexcept
{
    return kPlanSettings;
}

const FieldRule *settingRule(std::string_view key) noexcept
{
    return key == "day_starts"sv ? &kDayStarts : key == "body_mass_kg"sv ? &kBodyMass : key == "time_zone"sv ? &kTimeZone : nullptr;
}

} // namespace morrow
