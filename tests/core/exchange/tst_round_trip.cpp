// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h" // Qt first: moc cannot read some standard headers

#include "exchange/folders.h"
#include "exchange/one_form.h"
#include "support/diary_generator.h"
#include "support/typed_cells.h"

#include <algorithm>
#include <map>
#include <sstream>

using namespace morrow;
using namespace morrow::test;

namespace {

/// Every table and column that the format names, and every key of a setting.
const std::map<std::string, std::string> kColumns{
    {"complaints.csv", "complaint,region,side,question,check,first_assessment_pain,started,ended,end_reason"},
    {"plan.csv",
        "item,exercise,side,stage,sets,reps,hold_s,load_kg,body_share,up_s,pause_s,down_s,rest_s,rrule,slots,per_week,start,end,min_days,"
        "min_sessions,rests_after_visit,complaint,loads,continues,spare_reps,load_step_kg,range,key_point,easier_sets,easier_reps,"
        "easier_hold_s,easier_load_kg"},
    {"settings.csv", "key,value,complaint"},
    {"stages.csv", "day,item,stage,reason"},
    {"visits.csv",
        "day,region,side,warmup_impulses,warmup_bar,warmup_hz,impulses,bar,hz,area_cm2,pain_during,note,complaint,by,applicator,point,"
        "reaction,told,consent,next_time,next_visit"},
    {"pauses.csv", "from,to,reason"},
    {"mornings.csv", "day,pain,stiffness_min,complaint,declined"},
    {"sets.csv", "day,slot,item,set,reps,hold_s,load_kg,spare,how"},
    {"sessions.csv", "day,slot,pain_during,pain_after,complaint"},
    {"flags.csv", "day,sign,note,told,cleared_on"},
    {"heard.csv", "day,flag,answer"},
    {"put_aside.csv", "day,complaint"},
    {"skips.csv", "day,slot,reason,complaint"},
    {"easier.csv", "day,slot,complaint"},
    {"unusual.csv", "day,text"},
    {"notes.csv", "day,kind,item,text,complaint,about"},
    {"outcomes.csv", "day,kind,name,side,value,unit,pain,by,complaint"},
};
const std::string kEveryTableOfEntries = "id,recorded_at,author,replaces,withdrawn";
const std::string kSettings
    = "patient_ref,day_starts,time_zone,body_mass_kg,first_assessment_pain,birth_year,review_day,review_text,visits_planned,plan_id,"
      "plan_number,plan_from,plan_by,rest_days_after_visit,soreness_days,during_limit,after_limit,check_limit,rise_allowed,"
      "weekly_rise_allowed,weekly_stiffness_allowed,level_rise_allowed,contact_level,contact_rise,step_sessions,step_window_days,"
      "step_spacing_days,step_adherence,asks,authority";

std::vector<std::string> split(const std::string &list)
{
    std::vector<std::string> parts;
    std::istringstream in(list);
    for (std::string part; std::getline(in, part, ',');)
        parts.push_back(part);
    return parts;
}

/// How often each column (`file column`), setting (`setting key`) and kind (`kind name`) was filled.
class Filled
{
public:
    Filled()
    {
        for (const auto &[file, columns] : kColumns) {
            for (const std::string &column : split(columns))
                m_counts[file + " " + column] = 0;
            if (file != "complaints.csv" && file != "plan.csv" && file != "settings.csv") {
                for (const std::string &column : split(kEveryTableOfEntries))
                    m_counts[file + " " + column] = 0;
            }
        }
        for (const std::string &key : split(kSettings))
            m_counts["setting " + key] = 0;
        for (int kind = 0; kind < kKindCount; ++kind) {
            const auto one = static_cast<Kind>(kind);
            if (one != Kind::Handed && one != Kind::KnownAs && one != Kind::Alias && one != Kind::SetAside)
                m_counts["kind " + std::string(name(one))] = 0;
        }
    }

    void count(const TypedFolder &folder, const TablesDiary &diary)
    {
        for (const auto &[file, table] : folder) {
            for (const auto &row : table.rows) {
                std::map<std::string, std::string> cells;
                for (std::size_t i = 0; i < row.size(); ++i) {
                    cells[table.columns[i]] = row[i];
                    if (!row[i].empty())
                        ++m_counts.at(file + " " + table.columns[i]);
                }
                if (file == "settings.csv" && !cells["value"].empty())
                    ++m_counts.at("setting " + cells["key"]);
            }
        }
        for (const Entry &entry : diary.entries)
            ++m_counts.at("kind " + std::string(name(entry.kind)));
    }

    /// What was filled fewer than \a times times.
    [[nodiscard]] std::string rarerThan(int times) const
    {
        std::string rare;
        for (const auto &[what, count] : m_counts) {
            if (count < times)
                rare += what + " " + std::to_string(count) + "\n";
        }
        return rare;
    }

    [[nodiscard]] std::size_t size() const { return m_counts.size(); }

private:
    std::map<std::string, int> m_counts;
};

/// Reads, writes and reads \a files; what went wrong, if anything did.
std::string roundTripProblem(const Files &files, std::optional<TablesDiary> &diary)
{
    std::string problem;
    diary = diaryIn(files, &problem);
    if (!diary)
        return "refused: " + problem;
    const TablesFolder folder = writeTables(*diary);
    if (!folder.leftOut.empty())
        return "something is left out";
    const Files first(folder.files.begin(), folder.files.end());
    const auto again = diaryIn(first, &problem);
    if (!again)
        return "refused when written: " + problem;
    if (again->entries != diary->entries)
        return "other entries";
    if (again->person != diary->person)
        return "another person";
    if (written(*again) != first)
        return "other bytes the second time";
    return difference(oneForm(files), oneForm(first));
}

} // namespace

/// tables -> entries -> tables changes nothing that anybody typed.
class tst_round_trip : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init() { QTest::failOnWarning(QRegularExpression(QStringLiteral(".?"))); }

    void i2_fiveHundredRandomFoldersComeBackAsTheyWere()
    {
        Filled filled;
        int folders = 0;
        const bool holds = rc::check("tables -> entries -> tables -> entries", [&] {
            for (int i = 0; i < 5; ++i) { // RapidCheck tries a property a hundred times
                const TypedFolder folder = *typedFolders();
                std::optional<TablesDiary> diary;

                const std::string problem = roundTripProblem(filesOf(folder), diary);

                RC_LOG(problem);
                RC_ASSERT(problem.empty());
                filled.count(folder, *diary);
                ++folders;
            }
        });
        QVERIFY(holds);
        QVERIFY2(folders >= 500, std::to_string(folders).c_str());
        QVERIFY(filled.size() > 200);
        const std::string rare = filled.rarerThan(20);
        QVERIFY2(rare.empty(), rare.c_str());
    }

    void i3_theOrderOfColumnsAndRowsNeverMatters()
    {
        const bool holds = rc::check("shuffled tables are the same diary", [] {
            const TypedFolder folder = *typedFolders();
            TypedFolder shuffled = folder;
            for (auto &[file, table] : shuffled) {
                if (file != "complaints.csv" && file != "plan.csv")
                    shuffle(table.rows);
                std::vector<std::size_t> order(table.columns.size());
                for (std::size_t i = 0; i < order.size(); ++i)
                    order[i] = i;
                shuffle(order);
                const auto reorder = [&order](std::vector<std::string> &cells) {
                    std::vector<std::string> moved;
                    for (const std::size_t i : order)
                        moved.push_back(cells[i]);
                    cells = std::move(moved);
                };
                reorder(table.columns);
                std::for_each(table.rows.begin(), table.rows.end(), reorder);
            }

            const auto straight = diaryIn(filesOf(folder));
            const auto other = diaryIn(filesOf(shuffled));

            RC_ASSERT(straight && other);
            RC_ASSERT(straight->entries == other->entries);
            RC_ASSERT(straight->person == other->person);
        });
        QVERIFY(holds);
    }

    void i3_theOrderOfComplaintsMatters()
    {
        const auto bodies = [](const std::string &first, const std::string &second) {
            const std::string header = smallFolder().at("complaints.csv").substr(0, smallFolder().at("complaints.csv").find('\n') + 1);
            const std::string plan = smallFolder().at("plan.csv").substr(0, smallFolder().at("plan.csv").find('\n') + 1);
            return diaryIn({{"complaints.csv", header + first + ",,,,,,,,\n" + second + ",,,,,,,,\n"}, {"plan.csv", plan}});
        };

        const auto straight = bodies("heel", "knee");
        const auto turned = bodies("knee", "heel");

        QVERIFY(straight && turned);
        QVERIFY(straight->entries != turned->entries);
        QVERIFY(written(*straight).at("complaints.csv") != written(*turned).at("complaints.csv"));
    }

    void i3_theOrderOfItemsMatters()
    {
        const std::string plan = smallFolder().at("plan.csv");
        const std::string squat = "squat,squat,,1,3,15,,,,,,,,FREQ=DAILY,noon,,2026-03-02,,,,\r\n";
        const std::size_t header = plan.find('\n') + 1;

        const auto behind = diaryIn(smallFolder({{"plan.csv", plan + squat}}));
        const auto before = diaryIn(smallFolder({{"plan.csv", plan.substr(0, header) + squat + plan.substr(header)}}));

        QVERIFY(behind && before);
        QVERIFY(behind->entries != before->entries);
        QVERIFY(written(*behind).at("plan.csv") != written(*before).at("plan.csv"));
    }

    void thePaperDiaryComesBackRowByRow()
    {
        const Files files = loaded(MORROW_DEMO_DATA "/paper");
        QVERIFY(files.size() > 10);
        std::optional<TablesDiary> diary;

        const std::string problem = roundTripProblem(files, diary);

        QVERIFY2(problem.empty(), problem.c_str());
    }
};

MORROW_SUITE(tst_round_trip)

#include "tst_round_trip.moc"
