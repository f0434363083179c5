// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/entry_layouts.h"

namespace morrow::test {

namespace {

const std::vector<const char *> kSides{"left", "right", "both"};

std::vector<Layout> makeLayouts()
{
    using enum Is;
    using enum Need;
    return {
        {"stages.csv", "day,item,stage,reason", false, true, {{"item", Item, Names}, {"stage", ItemStage, Needed}, {"reason", Text}}},
        {"visits.csv", "day,region,side,warmup_impulses,warmup_bar,warmup_hz,impulses,bar,hz,area_cm2,pain_during,note", true, true,
            {
                {"region", Text},
                {"side", Choice, Free, 0, 0, kSides},
                {"warmup_impulses", Whole, Free, 0, 5000},
                {"warmup_bar", Number, Free, 0, 5},
                {"warmup_hz", Number, Free, 0, 30},
                {"impulses", Whole, Free, 0, 9000},
                {"bar", Number, Free, 0, 5},
                {"hz", Number, Free, 0, 30},
                {"area_cm2", Number, Free, 0, 300},
                {"pain_during", Whole, Free, 0, 10},
                {"note", Text, Aside},
                {"by", Text},
                {"applicator", Text},
                {"point", Text},
                {"reaction", Text},
                {"told", Text},
                {"consent", Whole, Free, 0, 1},
                {"next_time", Text, Aside},
                {"next_visit", Day},
            }},
        {"pauses.csv", "from,to,reason", false, true, {{"to", Later, Needed}, {"reason", Text}}},
        {"mornings.csv", "id,day,pain,stiffness_min,recorded_at", true, false,
            {{"pain", Whole, Free, 0, 10}, {"stiffness_min", Whole, Free, 0, 1440}, {"declined", Whole, Free, 0, 1}}},
        {"sets.csv", "id,day,slot,item,set,reps,hold_s,load_kg,recorded_at", false, false,
            {
                {"slot", Word, Names},
                {"item", Item, Names},
                {"set", Whole, Names, 1, 6},
                {"reps", Whole, Needed, 0, 40},
                {"hold_s", Whole, Free, 0, 90},
                {"load_kg", Number, Free, 0, 200},
                {"spare", Whole, Free, 0, 9},
                {"how", Choice, Free, 0, 0, {"tick", "all", "timer"}},
            }},
        {"sessions.csv", "id,day,slot,pain_during,pain_after,recorded_at", true, false,
            {{"slot", Word, Names}, {"pain_during", Whole, Free, 0, 10}, {"pain_after", Whole, Free, 0, 10}}},
        {"flags.csv", "id,day,sign,note,recorded_at", false, true,
            {{"sign", Text, Needed}, {"note", Text}, {"told", Choice, Free, 0, 0, {"yes", "no"}}, {"cleared_on", Day, Aside}}},
        {"heard.csv", "id,day,flag,answer,recorded_at", false, false,
            {{"flag", Flag, Names}, {"answer", Choice, Needed, 0, 0, {"go-on", "lighter", "wait"}}}},
        {"put_aside.csv", "id,day,complaint,recorded_at", true, false, {}},
        {"skips.csv", "id,day,slot,reason,recorded_at", true, false, {{"slot", Word, Names}, {"reason", Text}}},
        {"easier.csv", "id,day,slot,recorded_at", true, false, {{"slot", Word, Names}}},
        {"unusual.csv", "id,day,text,recorded_at", false, true, {{"text", Text, Needed}}},
        {"notes.csv", "id,day,kind,item,text,recorded_at", true, true,
            {
                {"kind", Choice, Needed, 0, 0, {"question", "answer", "note", "unsure", "reply"}},
                {"item", Item},
                {"text", Text, Needed},
                {"about", Note},
            }},
        {"outcomes.csv", "id,day,kind,name,side,value,unit,pain,by,recorded_at", true, true,
            {
                {"kind", Choice, Needed, 0, 0, {"activity", "overall", "change", "acceptable", "test"}},
                {"name", Text, Needed},
                {"side", Choice, Free, 0, 0, kSides},
                {"value", Whole, Needed, 0, 1},
                {"unit", Choice, Needed, 0, 0, {"count", "s", "cm", "kg"}},
                {"pain", Whole, Free, 0, 10},
                {"by", Text},
            }},
    };
}

} // namespace

const std::vector<Layout> &layouts()
{
    static const std::vector<Layout> all = makeLayouts();
    return all;
}

} // namespace morrow::test
