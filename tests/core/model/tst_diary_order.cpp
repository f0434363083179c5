// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "model/diary.h"
#include "model/diary_text.h"
#include "support/json_text.h"

#include <rapidcheck.h>

#include <map>
#include <set>

using namespace morrow;
using namespace morrow::test;

namespace {

CivilDay anyDay()
{
    return *CivilDay::parse("2026-03-02") + *rc::gen::inRange(0, 3);
}

/// The body of an entry of \a kind, of few things, so that many are about the same.
std::string anyBody(Kind kind)
{
    const std::string complaint = *rc::gen::element<std::string>("heel", "knee", "elbow");
    const std::string about = "'complaint':'" + complaint + "'";
    const std::string digit = std::to_string(*rc::gen::inRange(0, 9));
    const std::string slot = *rc::gen::element<std::string>("am", "pm");
    const std::string item = *rc::gen::element<std::string>("raise", "squat", "other");
    const bool withdrawn = *rc::gen::inRange(0, 4) == 0;
    const std::string end = withdrawn ? ",'withdrawn':1}" : "}";
    switch (kind) {
    case Kind::Check:
        return "{" + about + (withdrawn ? "" : ",'pain':" + digit) + end;
    case Kind::Set:
        return "{'item':'" + item + "'" + (withdrawn ? "" : ",'reps':" + digit) + ",'set':" + *rc::gen::element<std::string>("1", "2")
            + ",'slot':'" + slot + "'" + end;
    case Kind::Session:
        return "{" + about + (withdrawn ? "" : ",'pain_during':" + digit) + ",'slot':'" + slot + "'" + end;
    case Kind::Skip:
        return "{" + about + (withdrawn ? "" : ",'reason':'r" + digit + "'") + ",'slot':'" + slot + "'" + end;
    case Kind::Easier:
        return "{" + about + ",'slot':'" + slot + "'" + end;
    case Kind::Stage:
        return "{'item':'" + item + "'" + (withdrawn ? "" : ",'stage':1") + end;
    case Kind::Setting: {
        const std::string key = *rc::gen::element<std::string>("day_starts", "body_mass_kg");
        return "{'key':'" + key + "'" + (withdrawn ? "" : ",'value':'" + (key == "day_starts" ? "0" + digit + ":00" : "7" + digit) + "'")
            + end;
    }
    case Kind::Outcome:
        return withdrawn ? "{" + about + end : "{" + about + ",'kind':'overall','value':" + digit + end;
    case Kind::Pause:
        return withdrawn ? "{'withdrawn':1}" : "{'to':'2026-03-0" + std::to_string(*rc::gen::inRange(4, 8)) + "'}";
    case Kind::Visit:
        return withdrawn ? "{" + about + end : "{" + about + ",'impulses':" + digit + end;
    case Kind::PutAside:
        return "{" + about + end;
    case Kind::Complaint:
        return "{" + about + (withdrawn ? "" : ",'place':" + std::to_string(*rc::gen::inRange(1, 3)) + ",'region':'r" + digit + "'") + end;
    case Kind::Plan:
        return withdrawn ? "{" + about + ",'plan':'p'" + end
                         : "{" + about + ",'items':[{'exercise':'e','item':'" + item
                + "','stages':[{'per_week':3,'reps':9,'sets':3,'stage':1}],'start':'2026-03-02'}],'number':"
                + std::to_string(*rc::gen::inRange(1, 3)) + ",'plan':'p'" + end;
    default:
        return "{'broken'";
    }
}

std::vector<Entry> makeEntries()
{
    static const std::vector<Kind> kinds{Kind::Check, Kind::Set, Kind::Session, Kind::Skip, Kind::Easier, Kind::Stage, Kind::Setting,
        Kind::Outcome, Kind::Pause, Kind::Visit, Kind::PutAside, Kind::Complaint, Kind::Plan, Kind::Note};
    std::vector<Entry> entries;
    const int count = *rc::gen::inRange(0, 150);
    for (int i = 0; i < count; ++i) {
        const Kind kind = i < 6 ? (i % 2 == 0 ? Kind::Complaint : Kind::Plan) : *rc::gen::elementOf(kinds);
        Entry entry{"e" + std::to_string(i), kind, anyDay(), {}, Author::Patient, {}, json(anyBody(kind))};
        if (*rc::gen::arbitrary<bool>())
            entry.recorded = Moment{1'772'500'000'000 + 40'000'000 * *rc::gen::inRange(0, 3), 60 * *rc::gen::inRange(0, 2)};
        // Any other entry: of another kind, not there, itself, or in a circle.
        if (*rc::gen::inRange(0, 4) == 0)
            entry.replaces = "e" + std::to_string(*rc::gen::inRange(0, count + 3));
        entries.push_back(std::move(entry));
    }
    return entries;
}

/// A set of entries, at full size from the first one on, for RapidCheck begins with narrow ranges.
std::vector<Entry> anyEntries()
{
    return *rc::gen::resize(rc::kNominalSize, rc::gen::exec(makeEntries));
}

/// The ids of the entries of \a kind that count, found from the definition one thing at a time: a day and \a about.
std::set<std::string> countingIds(const std::vector<Entry> &entries, Kind kind, std::initializer_list<Field> about)
{
    std::map<std::pair<CivilDay, std::string>, std::vector<const Entry *>> things;
    for (const Entry &entry : entries) {
        if (entry.kind != kind)
            continue;
        const Body body = BodyReader().read(entry.body).value();
        Body thing;
        for (const Field field : about)
            thing.set(field, *body.find(field));
        things[{entry.day, thing.toJson()}].push_back(&entry);
    }
    std::set<std::string> ids;
    for (const auto &[thing, told] : things) {
        const Entry *best = nullptr;
        for (const Entry *const entry : told) {
            bool isReplaced = false;
            for (const Entry &other : entries)
                isReplaced |= other.kind == entry->kind && other.id != entry->id && other.replaces == entry->id;
            const auto rank
                = [](const Entry *e) { return std::tuple(e->recorded.has_value(), e->recorded ? e->recorded->utcMs : 0, e->id); };
            if (!isReplaced && (!best || rank(best) < rank(entry)))
                best = entry;
        }
        if (best && !BodyReader().read(best->body)->has(Field::Withdrawn))
            ids.insert(best->id);
    }
    return ids;
}

} // namespace

/// The diary is that of the set, whatever came first.
class tst_diary_order : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void i1_theDiaryDependsOnTheSetOnly()
    {
        int facts = 0;
        const bool holds = rc::check("one diary from two orders", [&facts] {
            const auto entries = anyEntries();
            std::vector<Entry> shuffled = entries;
            for (std::size_t i = shuffled.size(); i > 1; --i)
                std::swap(shuffled[i - 1], shuffled[*rc::gen::inRange<std::size_t>(0, i)]);

            const std::string straight = textOf(Diary::from(entries));

            RC_ASSERT(straight == textOf(Diary::from(shuffled)));
            facts += static_cast<int>(std::count(straight.begin(), straight.end(), '\n'));
        });
        QVERIFY(holds);
        QVERIFY2(facts > 1000, std::to_string(facts).c_str()); // the diaries are not empty
    }

    void i1_anEntryGivenTwiceIsTakenOnce()
    {
        const bool holds = rc::check("a set doubled", [] {
            const auto entries = anyEntries();
            std::vector<Entry> doubled = entries;
            doubled.insert(doubled.end(), entries.begin(), entries.end());

            RC_ASSERT(textOf(Diary::from(entries)) == textOf(Diary::from(doubled)));
        });
        QVERIFY(holds);
    }

    void i2_theChecksThatCountAreThoseOfTheDefinition()
    {
        int counted = 0;
        const bool holds = rc::check("counting checks against a search", [&counted] {
            auto entries = anyEntries();
            for (const char *const key : {"heel", "knee", "elbow"})
                entries.push_back({std::string("z") + key, Kind::Complaint, anyDay(), Moment{1'800'000'000'000, 0}, Author::Clinic, {},
                    json("{'complaint':'" + std::string(key) + "','place':1}")});

            const Diary diary = Diary::from(entries);

            std::set<std::string> found;
            for (const ComplaintDiary &complaint : diary.complaints()) {
                for (const Check &check : complaint.checks)
                    found.insert(diary.entries()[check.entry].id);
            }
            RC_ASSERT(diary.complaints().size() == 3U);
            RC_ASSERT(found == countingIds(entries, Kind::Check, {Field::Complaint}));
            counted += static_cast<int>(found.size());
        });
        QVERIFY(holds);
        QVERIFY2(counted > 80, std::to_string(counted).c_str());
    }

    void i2_theSetsThatCountAreThoseOfTheDefinition()
    {
        int counted = 0;
        const bool holds = rc::check("counting sets against a search", [&counted] {
            auto entries = anyEntries();
            const Moment latest{1'800'000'000'000, 0};
            entries.push_back({"zc", Kind::Complaint, anyDay(), latest, Author::Clinic, {}, json("{'complaint':'heel','place':1}")});
            std::string items;
            for (const char *const item : {"raise", "squat", "other"})
                items += std::string(items.empty() ? "" : ",") + "{'exercise':'e','item':'" + item
                    + "','stages':[{'per_week':3,'reps':9,'sets':3,'stage':1}],'start':'2026-03-02'}";
            entries.push_back({"zp", Kind::Plan, anyDay(), latest, Author::Clinic, {},
                json("{'complaint':'heel','items':[" + items + "],'number':9,'plan':'p'}")});

            const Diary diary = Diary::from(entries);

            std::set<std::string> found;
            for (const ComplaintDiary &complaint : diary.complaints()) {
                for (const ItemDiary &item : complaint.items) {
                    for (const SetDone &set : item.sets)
                        found.insert(diary.entries()[set.entry].id);
                }
            }
            RC_ASSERT(found == countingIds(entries, Kind::Set, {Field::Item, Field::Set, Field::Slot}));
            counted += static_cast<int>(found.size());
        });
        QVERIFY(holds);
        QVERIFY2(counted > 80, std::to_string(counted).c_str());
    }
};

MORROW_SUITE(tst_diary_order)

#include "tst_diary_order.moc"
