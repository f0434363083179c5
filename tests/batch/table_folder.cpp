// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/table_folder.h"

#include <QDirIterator>
#include <QFile>
#include <QTest>

namespace morrow::test {

TableFolder::TableFolder()
{
    if (!m_folder.isValid())
        qFatal("no temporary folder");
}

void TableFolder::write(const char *name, const QByteArray &rows)
{
    QFile file(path(name));
    if (!file.open(QIODevice::WriteOnly) || file.write(rows) != rows.size())
        qFatal("%s was not written", name);
}

QByteArray TableFolder::contents() const
{
    QStringList names;
    QDirIterator files(path(), QDir::AllEntries | QDir::Hidden | QDir::System | QDir::NoDotAndDotDot, QDirIterator::Subdirectories);
    while (files.hasNext())
        names.append(files.next());
    names.sort();
    QByteArray all;
    for (const QString &name : names) {
        all += name.toUtf8() + '\n';
        QFile file(name);
        const QFileInfo about(name);
        if (about.isFile() && about.size() < 1'000'000 && file.open(QIODevice::ReadOnly))
            all += file.readAll() + '\n';
    }
    return all;
}

void writeSmallDiary(TableFolder &folder)
{
    folder.write("complaints.csv",
        "complaint,region,side,question,check,first_assessment_pain,started,ended,end_reason\n"
        "heel,plantar heel,right,Pain this morning,,6,2026-03-01,,\n");
    folder.write("settings.csv", "key,value\npatient_ref,p-1\nrest_days_after_visit,1\n");
    folder.write("plan.csv",
        QByteArray(kPlanHeader)
            + "\n"
              "raise,heel raise,right,1,3,12,,,,3,2,3,,FREQ=DAILY,morning,,2026-03-02,2026-03-29,,,1\n"
              "raise,heel raise,right,2,4,10,,,,3,2,3,,FREQ=DAILY,morning,,2026-03-02,2026-03-29,,,1\n"
              "hold,wall sit,right,1,2,1,30,,,,,,,,,3,2026-03-02,2026-03-29,,,0\n");
    folder.write("stages.csv", "day,item,stage,reason\n2026-03-16,raise,2,\n");
    folder.write("pauses.csv", "from,to,reason\n2026-03-09,2026-03-10,away\n");
    folder.write("mornings.csv",
        "id,day,pain,stiffness_min,recorded_at,declined,replaces\n"
        "m-1,2026-03-02,6,10,2026-03-02T07:00:00+01:00,,\n"
        "m-2,2026-03-02,5,10,2026-03-02T08:00:00+01:00,,m-1\n"
        ",2026-03-03,5,,,,\n");
    folder.write("sets.csv",
        "id,day,slot,item,set,reps,hold_s,load_kg,recorded_at\n"
        ",2026-03-02,morning,raise,1,12,,,\n"
        ",2026-03-02,morning,raise,2,10,,,\n"
        ",2026-03-02,day,hold,1,1,25,,\n");
}

} // namespace morrow::test
