// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "bench/long_diary.h"

namespace morrow::bench {

CivilDay longDiaryStart()
{
    return *CivilDay::from(2015, 1, 1);
}

std::map<std::string, std::string> longDiary(int years)
{
    return longDiaryTo(*CivilDay::from(2015 + years, 1, 1) - 1);
}

std::map<std::string, std::string> longDiaryTo(CivilDay last)
{
    const CivilDay start = longDiaryStart();
    std::map<std::string, std::string> files;
    files["settings.csv"] = "key,value\r\npatient_ref,bench\r\n";
    std::string &plan = files["plan.csv"];
    plan = "item,exercise,side,stage,sets,reps,hold_s,load_kg,body_share,up_s,pause_s,down_s,rest_s,rrule,slots,per_week,start,end,min_"
           "days,min_sessions,"
           "rests_after_visit\r\n";
    for (const char *item : {"a", "b"})
        plan += std::string(item) + ",heel raise,both,1,10,12,,5,,3,0,3,90,FREQ=DAILY,evening,," + start.toString() + ",,,,0\r\n";
    std::string &mornings = files["mornings.csv"];
    std::string &sets = files["sets.csv"];
    std::string &sessions = files["sessions.csv"];
    mornings = "id,day,pain,stiffness_min,recorded_at\r\n";
    sets = "id,day,slot,item,set,reps,hold_s,load_kg,recorded_at\r\n";
    sessions = "id,day,slot,pain_during,pain_after,recorded_at\r\n";
    for (CivilDay day = start; day <= last; day = day + 1) {
        const std::string text = day.toString();
        mornings += "," + text + "," + std::to_string(day.number() % 7) + ",10," + text + "T07:10:00+01:00\r\n";
        sessions += "," + text + ",evening," + std::to_string(day.number() % 5) + ",2," + text + "T19:40:00+01:00\r\n";
        for (int set = 0; set < 20; ++set) {
            const std::string second = std::to_string(10 + set);
            sets += "," + text + ",evening," + (set < 10 ? "a," : "b,") + std::to_string(set % 10 + 1) + ",12,,5," + text + "T19:" + second
                + ":00+01:00\r\n";
        }
    }
    return files;
}

} // namespace morrow::bench
