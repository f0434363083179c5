// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/bad_folders.h"

#include <iterator>
#include <map>

namespace morrow::test {

namespace {

const std::map<std::string, std::string> kHeaders{
    {"complaints.csv", "complaint,region,side,question,check,first_assessment_pain,started,ended,end_reason"},
    {"plan.csv",
        "item,exercise,side,stage,sets,reps,hold_s,load_kg,body_share,up_s,pause_s,down_s,rest_s,rrule,slots,per_week,start,end,"
        "min_days,min_sessions,rests_after_visit"},
    {"settings.csv", "key,value"},
    {"stages.csv", "day,item,stage,reason"},
    {"visits.csv", "day,region,side,warmup_impulses,warmup_bar,warmup_hz,impulses,bar,hz,area_cm2,pain_during,note"},
    {"pauses.csv", "from,to,reason"},
    {"mornings.csv", "id,day,pain,stiffness_min,recorded_at"},
    {"sets.csv", "id,day,slot,item,set,reps,hold_s,load_kg,recorded_at"},
    {"flags.csv", "id,day,sign,note,recorded_at"},
    {"notes.csv", "id,day,kind,item,text,recorded_at"},
    {"unusual.csv", "id,day,text,recorded_at"},
    {"outcomes.csv", "id,day,kind,name,side,value,unit,pain,by,recorded_at"},
};

/// The table \a file with its usual header, \a more columns behind it if they are named, and \a rows.
Files table(const std::string &file, const std::string &rows, const std::string &more = {})
{
    return {{file, kHeaders.at(file) + (more.empty() ? "" : "," + more) + "\n" + rows}};
}

Files operator+(Files a, Files b)
{
    a.merge(b);
    return a;
}

const std::string kRaise = "raise,heel raise,,1,3,15,,,,,,,,FREQ=DAILY,morning,,2026-03-02,,,,";

using enum IssueCode;

const std::vector<BadFolder> kNoTables{
    {"a table of another name", {{"morning.csv", "x"}}, UnknownFile, "morning.csv"},
    {"bytes that are no text", table("mornings.csv", ",2026-03-03,4,,\n\xc3(,2026-03-04,,,\n"), NotUtf8, "mornings.csv", 3, 1, "id"},
    {"an overlong form", table("unusual.csv", ",2026-03-03,\xc0\xaf,\n"), NotUtf8, "unusual.csv", 2, 3, "text"},
    {"a surrogate", table("unusual.csv", ",2026-03-03,\xed\xa0\x80,\n"), NotUtf8, "unusual.csv", 2, 3, "text"},
    {"a header that is no text", table("unusual.csv", "", "te\xfft"), NotUtf8, "unusual.csv", 1, 5},
    {"a number that is no text", table("mornings.csv", ",2026-03-03,\xff,,\n"), NotUtf8, "mornings.csv", 2, 3, "pain"},
    {"a note that is no text", table("visits.csv", "2026-03-03,,,,,,,,,,,\xff\n"), NotUtf8, "visits.csv", 2, 12, "note"},
    {"an open quote", table("unusual.csv", ",2026-03-03,fine,\n,2026-03-04,\"rain\n,2026-03-05,a,\n"), OpenQuote, "unusual.csv", 3, 3},
    {"a quote inside a cell", table("unusual.csv", ",2026-03-03,5\" of rain,\n"), StrayQuote, "unusual.csv", 2, 3},
    {"text behind a quote", table("unusual.csv", ",2026-03-03,\"rain\" all day,\n"), StrayQuote, "unusual.csv", 2, 3},
    {"a bell", table("unusual.csv", ",2026-03-03,ding\a,\n"), ControlCharacter, "unusual.csv", 2, 3, "text"},
    {"a next-line character", table("unusual.csv", ",2026-03-03,a\xc2\x85,\n"), ControlCharacter, "unusual.csv", 2, 3, "text"},
    {"a return alone", table("unusual.csv", ",2026-03-03,a\rb,\n"), ControlCharacter, "unusual.csv", 2, 3},
    {"an empty file", {{"mornings.csv", ""}}, NoHeader, "mornings.csv"},
    {"a byte order mark alone", {{"mornings.csv", "\xef\xbb\xbf"}}, NoHeader, "mornings.csv"},
    {"a column that no table has", table("mornings.csv", "", "mood"), UnknownColumn, "mornings.csv", 1, 6, "", "mood"},
    {"a column of another table", table("mornings.csv", "", "reps"), UnknownColumn, "mornings.csv", 1, 6, "", "reps"},
    {"a column in capitals", table("mornings.csv", "", "Declined"), UnknownColumn, "mornings.csv", 1, 6, "", "Declined"},
    {"a missing column", {{"mornings.csv", "id,day,pain,recorded_at\n"}}, ColumnMissing, "mornings.csv", 1, 0, "stiffness_min"},
    {"a missing column of settings", {{"settings.csv", "key\n"}}, ColumnMissing, "settings.csv", 1, 0, "value"},
    {"a column that stands there twice", table("mornings.csv", "", "pain"), ColumnTwice, "mornings.csv", 1, 6, "pain"},
    {"a cell too few", table("mornings.csv", ",2026-03-03,4,,\n,2026-03-04,4,\n"), CellCount, "mornings.csv", 3, 0, "", "4", "5"},
    {"a cell too many", table("mornings.csv", ",2026-03-03,4,,,\n"), CellCount, "mornings.csv", 2, 0, "", "6", "5"},
    {"an empty line", table("mornings.csv", "\n,2026-03-03,4,,\n"), CellCount, "mornings.csv", 2, 0, "", "1", "5"},
    // The tables below are good; their complaints and items are not known, which is said once.
    {"complaints that cannot be read",
        table("complaints.csv", "\"heel\n") + table("mornings.csv", ",2026-03-03,4,,\n") + table("settings.csv", "during_limit,4\n"),
        OpenQuote, "complaints.csv", 2, 1},
    {"a complaint that is refused", table("complaints.csv", "heel,,up,,,,,,\n") + table("mornings.csv", ",2026-03-03,4,,\n"), ValueRefused,
        "complaints.csv", 2, 3, "side", "up"},
    {"a plan that is refused",
        table("plan.csv", "raise,heel raise,,1,0,15,,,,,,,,FREQ=DAILY,morning,,2026-03-02,,,,\n")
            + table("sets.csv", ",2026-03-03,morning,raise,1,1,,,\n") + table("settings.csv", "during_limit,4\n"),
        ValueRefused, "plan.csv", 2, 5, "sets", "0"},
    {"a setting that is refused", table("settings.csv", "during_limit,11\n") + table("sets.csv", ",2026-03-03,morning,raise,1,1,,,\n"),
        ValueRefused, "settings.csv", 2, 2, "value", "11"},
};

const std::vector<BadFolder> kValues{
    {"a row without its day", table("mornings.csv", ",,4,,\n"), ValueMissing, "mornings.csv", 2, 2, "day"},
    {"a set without reps", table("sets.csv", ",2026-03-03,morning,raise,1,,,,\n"), ValueMissing, "sets.csv", 2, 6, "reps"},
    {"a pause without end", table("pauses.csv", "2026-03-03,,away\n"), ValueMissing, "pauses.csv", 2, 2, "to"},
    {"an item without start", table("plan.csv", "raise,heel raise,,1,3,15,,,,,,,,FREQ=DAILY,morning,,,,,,\n"), ValueMissing, "plan.csv", 2,
        17, "start"},
    {"a value without key", table("settings.csv", ",5\n"), ValueMissing, "settings.csv", 2, 1, "key"},
    {"a complaint without name", table("complaints.csv", "heel,,,,,,,,\n,knee,,,,,,,\n"), ValueMissing, "complaints.csv", 3, 1,
        "complaint"},
    {"a test without unit", table("outcomes.csv", ",2026-03-03,test,hop,,3,,,,\n"), ValueMissing, "outcomes.csv", 2, 7, "unit"},
    {"an activity without name", table("outcomes.csv", ",2026-03-03,activity,,,3,,,,\n"), ValueMissing, "outcomes.csv", 2, 4, "name"},
    {"a question without text", table("notes.csv", ",2026-03-03,question,,,\n"), ValueMissing, "notes.csv", 2, 5, "text"},
    {"pain 11", table("mornings.csv", ",2026-03-03,11,,\n"), ValueRefused, "mornings.csv", 2, 3, "pain", "11"},
    {"pain -1", table("mornings.csv", ",2026-03-03,-1,,\n"), ValueRefused, "mornings.csv", 2, 3, "pain", "-1"},
    {"pain NaN", table("mornings.csv", ",2026-03-03,NaN,,\n"), ValueRefused, "mornings.csv", 2, 3, "pain", "NaN"},
    {"pain between two answers", table("mornings.csv", ",2026-03-03,4.5,,\n"), ValueRefused, "mornings.csv", 2, 3, "pain", "4.5"},
    {"a number with an apostrophe", table("mornings.csv", ",2026-03-03,'4,,\n"), ValueRefused, "mornings.csv", 2, 3, "pain", "'4"},
    {"reps -1", table("sets.csv", ",2026-03-03,morning,raise,1,-1,,,\n"), ValueRefused, "sets.csv", 2, 6, "reps", "-1"},
    {"set 0", table("sets.csv", ",2026-03-03,morning,raise,0,1,,,\n"), ValueRefused, "sets.csv", 2, 5, "set", "0"},
    {"a fourth decimal", table("sets.csv", ",2026-03-03,morning,raise,1,1,,2.0001,\n"), ValueRefused, "sets.csv", 2, 8, "load_kg",
        "2.0001"},
    {"a decimal comma", table("sets.csv", ",2026-03-03,morning,raise,1,1,,\"2,5\",\n"), ValueRefused, "sets.csv", 2, 8, "load_kg", "2,5"},
    {"a slot of two words", table("sets.csv", ",2026-03-03,late morning,raise,1,1,,,\n"), ValueRefused, "sets.csv", 2, 3, "slot",
        "late morning"},
    {"30 February", table("mornings.csv", ",2026-02-30,4,,\n"), ValueRefused, "mornings.csv", 2, 2, "day", "2026-02-30"},
    {"a day of 2201", table("mornings.csv", ",2201-01-01,4,,\n"), ValueRefused, "mornings.csv", 2, 2, "day", "2201-01-01"},
    {"an instant without offset", table("mornings.csv", ",2026-03-03,4,,2026-03-03T07:00:00\n"), ValueRefused, "mornings.csv", 2, 5,
        "recorded_at", "2026-03-03T07:00:00"},
    {"four digits of fraction", table("mornings.csv", ",2026-03-03,4,,2026-03-03T07:00:00.1234Z\n"), ValueRefused, "mornings.csv", 2, 5,
        "recorded_at", "2026-03-03T07:00:00.1234Z"},
    {"an id with a space", table("mornings.csv", "a b,2026-03-03,4,,\n"), ValueRefused, "mornings.csv", 2, 1, "id", "a b"},
    {"an unknown author", table("mornings.csv", ",2026-03-03,4,,,nurse\n", "author"), ValueRefused, "mornings.csv", 2, 6, "author",
        "nurse"},
    {"withdrawn 0", table("mornings.csv", ",2026-03-03,,,,0\n", "withdrawn"), ValueRefused, "mornings.csv", 2, 6, "withdrawn", "0"},
    {"a sign cleared on no day", table("flags.csv", ",2026-03-03,numb,,,soon\n", "cleared_on"), ValueRefused, "flags.csv", 2, 6,
        "cleared_on", "soon"},
    {"a rule with COUNT", table("plan.csv", "raise,heel raise,,1,3,15,,,,,,,,FREQ=DAILY;COUNT=3,morning,,2026-03-02,,,,\n"), ValueRefused,
        "plan.csv", 2, 14, "rrule", "FREQ=DAILY;COUNT=3"},
    {"a slot twice", table("plan.csv", "raise,heel raise,,1,3,15,,,,,,,,FREQ=DAILY,noon noon,,2026-03-02,,,,\n"), ValueRefused, "plan.csv",
        2, 15, "slots", "noon noon"},
    {"a change of 6", table("outcomes.csv", ",2026-03-03,change,,,6,,,,\n"), ValueRefused, "outcomes.csv", 2, 6, "value", "6"},
    {"an activity of 3.5", table("outcomes.csv", ",2026-03-03,activity,run,,3.5,,,,\n"), ValueRefused, "outcomes.csv", 2, 6, "value",
        "3.5"},
    {"a time of day in words", table("settings.csv", "day_starts,4 am\n"), ValueRefused, "settings.csv", 2, 2, "value", "4 am"},
    {"a cell behind a line break", table("mornings.csv", ",2026-03-03,,,,\"he\nel\",12\n", "complaint,declined"), ValueRefused,
        "mornings.csv", 3, 7, "declined", "12"},
    {"pain where none could be said", table("mornings.csv", ",2026-03-03,4,,,1\n", "declined"), NotAllowedHere, "mornings.csv", 2, 3,
        "pain", "", "declined"},
    {"a withdrawal with an answer", table("mornings.csv", ",2026-03-03,4,,,1\n", "withdrawn"), NotAllowedHere, "mornings.csv", 2, 3, "pain",
        "", "withdrawn"},
    {"an end's reason without end", table("complaints.csv", "heel,,,,,,,,better\n"), NotAllowedHere, "complaints.csv", 2, 9, "end_reason",
        "", "ended"},
    {"a body mass for a complaint", table("settings.csv", "body_mass_kg,80,heel\n", "complaint"), NotAllowedHere, "settings.csv", 2, 3,
        "complaint", "", "body_mass_kg"},
    {"a person for a complaint", table("settings.csv", "patient_ref,q1,heel\n", "complaint"), NotAllowedHere, "settings.csv", 2, 3,
        "complaint", "", "patient_ref"},
    {"a first pain beside complaints.csv", table("settings.csv", "first_assessment_pain,5\n"), NotAllowedHere, "settings.csv", 2, 1, "key",
        "", "complaints.csv"},
    {"a set by the clinic", table("sets.csv", ",2026-03-03,morning,raise,1,1,,,,clinic\n", "author"), AuthorRefused, "sets.csv", 2, 10,
        "author", "clinic"},
};

const std::vector<BadFolder> kNames{
    {"an item of no complaint", table("plan.csv", kRaise + ",knee\n", "complaint"), UnknownComplaint, "plan.csv", 2, 22, "complaint",
        "knee"},
    {"a setting of no complaint", table("settings.csv", "during_limit,4,knee\n", "complaint"), UnknownComplaint, "settings.csv", 2, 3,
        "complaint", "knee"},
    {"a morning of no complaint", table("mornings.csv", ",2026-03-03,4,,,knee\n", "complaint"), UnknownComplaint, "mornings.csv", 2, 6,
        "complaint", "knee"},
    {"a morning where there is no complaint",
        table("complaints.csv", "") + table("plan.csv", "") + table("mornings.csv", ",2026-03-03,4,,\n"), UnknownComplaint, "mornings.csv",
        2, 0, "complaint"},
    {"a set of no item", table("sets.csv", ",2026-03-03,morning,squat,1,1,,,\n"), UnknownItem, "sets.csv", 2, 4, "item", "squat"},
    {"a note on no item", table("notes.csv", ",2026-03-03,note,squat,easy,\n"), UnknownItem, "notes.csv", 2, 4, "item", "squat"},
    {"an item that follows none", table("plan.csv", kRaise + ",squat\n", "continues"), UnknownItem, "plan.csv", 2, 22, "continues",
        "squat"},
    {"the third of two stages", table("stages.csv", "2026-03-03,raise,3,\n"), UnknownStage, "stages.csv", 2, 3, "stage", "3", "2"},
    {"a setting that there is not", table("settings.csv", "during_limits,4\n"), UnknownSetting, "settings.csv", 2, 1, "key",
        "during_limits"},
    {"a limit without a plan", table("plan.csv", "") + table("settings.csv", "during_limit,4\n"), PlanKeyWithoutItem, "settings.csv", 2, 1,
        "key", "during_limit"},
    {"a limit for a complaint without item",
        table("complaints.csv", "heel,,,,,,,,\nknee,,,,,,,,\n") + table("settings.csv", "during_limit,4,knee\n", "complaint"),
        PlanKeyWithoutItem, "settings.csv", 2, 1, "key", "during_limit"},
};

const std::vector<BadFolder> kTogether{
    {"two mornings of one day", table("mornings.csv", ",2026-03-03,4,,\n,2026-03-03,5,,\n"), SameThingTwice, "mornings.csv", 3, 0, "", "",
        "2"},
    {"two equal mornings", table("mornings.csv", ",2026-03-03,4,,\n,2026-03-03,4,,\n"), SameThingTwice, "mornings.csv", 3, 0, "", "", "2"},
    {"two equal rows of things of their own", table("unusual.csv", ",2026-03-03,rain,\n,2026-03-04,rain,\n,2026-03-03,rain,\n"),
        SameThingTwice, "unusual.csv", 4, 0, "", "", "2"},
    {"a complaint twice", table("complaints.csv", "heel,,,,,,,,\nheel,,,,,,,,\n"), SameThingTwice, "complaints.csv", 3, 1, "complaint", "",
        "2"},
    {"a stage twice", table("plan.csv", kRaise + "\n" + kRaise + "\n"), SameThingTwice, "plan.csv", 3, 4, "stage", "1"},
    {"a setting twice", table("settings.csv", "day_starts,04:00\nday_starts,05:00\n"), SameThingTwice, "settings.csv", 3, 1, "key", "",
        "2"},
    {"two contents for one id", table("mornings.csv", "q1,2026-03-03,4,,\nq1,2026-03-03,5,,\n"), TwoContentsForOneId, "mornings.csv", 3, 1,
        "id", "q1", "2"},
    {"one id in two tables", table("mornings.csv", "q1,2026-03-03,4,,\n") + table("unusual.csv", "q1,2026-03-03,rain,\n"),
        TwoContentsForOneId, "unusual.csv", 2, 1, "id", "q1", "mornings.csv:2"},
    {"a visit with two notes", table("visits.csv", "2026-03-03,,,,,,,,,,,one,v\n2026-03-03,,,,,,,,,,,two,v\n", "id"), TwoContentsForOneId,
        "visits.csv", 3, 13, "id", "v", "2"},
    {"two plans of one id",
        table("complaints.csv", "heel,,,,,,,,\nknee,,,,,,,,\n")
            + table("plan.csv", kRaise + ",heel\nsquat,squat,,1,3,15,,,,,,,,FREQ=DAILY,noon,,2026-03-02,,,,,knee\n", "complaint")
            + table("settings.csv", "plan_id,p1,heel\nplan_id,p1,knee\n", "complaint"),
        TwoContentsForOneId, "settings.csv", 3, 2, "value", "p1", "2"},
    {"a loop of two", table("mornings.csv", "a,2026-03-03,4,,,b\nb,2026-03-04,4,,,a\n", "replaces"), ReplacesLoop, "mornings.csv", 2, 6,
        "replaces", "a"},
    {"a row that replaces itself", table("mornings.csv", "a,2026-03-03,4,,,a\n", "replaces"), ReplacesLoop, "mornings.csv", 2, 6,
        "replaces", "a"},
    {"a loop behind a chain", table("mornings.csv", "a,2026-03-03,4,,,b\nb,2026-03-03,4,,,c\nc,2026-03-03,4,,,b\n", "replaces"),
        ReplacesLoop, "mornings.csv", 3, 6, "replaces", "b"},
    {"a morning that replaces a note",
        table("mornings.csv", "a,2026-03-03,4,,,n\n", "replaces") + table("notes.csv", "n,2026-03-03,note,,easy,\n"), ReplacesAnotherKind,
        "mornings.csv", 2, 6, "replaces", "n"},
    {"two exercises in one item", table("plan.csv", kRaise + "\nraise,squat,,2,3,15,,,,,,,,FREQ=DAILY,morning,,2026-03-02,,,,\n"),
        ItemRowsDisagree, "plan.csv", 3, 2, "exercise", "squat", "heel raise"},
    {"an end on one row only",
        table("plan.csv", kRaise + "\nraise,heel raise,,2,3,15,,,,,,,,FREQ=DAILY,morning,,2026-03-02,2026-04-02,,,\n"), ItemRowsDisagree,
        "plan.csv", 3, 18, "end", "2026-04-02", ""},
    {"a stage left out", table("plan.csv", kRaise + "\nraise,heel raise,,3,3,15,,,,,,,,FREQ=DAILY,morning,,2026-03-02,,,,\n"), StageOrder,
        "plan.csv", 2, 4, "stage", "raise"},
    {"neither rule nor days a week", table("plan.csv", "raise,heel raise,,1,3,15,,,,,,,,,,,2026-03-02,,,,\n"), RhythmUnclear, "plan.csv", 2,
        14, "rrule"},
    {"rule and days a week", table("plan.csv", "raise,heel raise,,1,3,15,,,,,,,,FREQ=DAILY,morning,3,2026-03-02,,,,\n"), RhythmUnclear,
        "plan.csv", 2, 14, "rrule"},
    {"a rule without slots", table("plan.csv", "raise,heel raise,,1,3,15,,,,,,,,FREQ=DAILY,,,2026-03-02,,,,\n"), RhythmUnclear, "plan.csv",
        2, 14, "rrule"},
    {"days a week with slots", table("plan.csv", "raise,heel raise,,1,3,15,,,,,,,,,morning,3,2026-03-02,,,,\n"), RhythmUnclear, "plan.csv",
        2, 14, "rrule"},
    {"an item that ends before it starts",
        table("plan.csv", "raise,heel raise,,1,3,15,,,,,,,,FREQ=DAILY,morning,,2026-03-02,2026-03-01,,,\n"), ItemEndsBeforeStart,
        "plan.csv", 2, 18, "end", "", "2026-03-02"},
    {"an item that rests on no day", table("plan.csv", "raise,heel raise,,1,3,15,,,,,,,,FREQ=DAILY,morning,,2026-03-02,,,,1\n"),
        RestWithoutDays, "plan.csv", 2, 21, "rests_after_visit"},
    {"an item that rests on 0 days",
        table("plan.csv", "raise,heel raise,,1,3,15,,,,,,,,FREQ=DAILY,morning,,2026-03-02,,,,1\n")
            + table("settings.csv", "rest_days_after_visit,0\n"),
        RestWithoutDays, "plan.csv", 2, 21, "rests_after_visit"},
    {"reps neither given nor held", table("plan.csv", "raise,heel raise,,1,3,,,,,,,,,FREQ=DAILY,morning,,2026-03-02,,,,\n"), RepsMissing,
        "plan.csv", 2, 6, "reps"},
    {"a pause that ends before it starts", table("pauses.csv", "2026-03-03,2026-03-02,\n"), PauseEndsBeforeStart, "pauses.csv", 2, 2, "to",
        "", "2026-03-03"},
};

} // namespace

std::vector<BadFolder> badFolders()
{
    std::vector<BadFolder> all;
    for (const auto *const group : {&kNoTables, &kValues, &kNames, &kTogether})
        all.insert(all.end(), group->begin(), group->end());
    return all;
}

} // namespace morrow::test
