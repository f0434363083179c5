// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Folders of tables that a test writes by hand.

#include <QByteArray>
#include <QDir>
#include <QString>
#include <QTemporaryDir>

namespace morrow::test {

/// A folder that goes away with the test.
class TableFolder
{
public:
    TableFolder();

    [[nodiscard]] QString path() const { return m_folder.path(); }
    [[nodiscard]] QString path(const char *name) const { return m_folder.filePath(QString::fromLatin1(name)); }

    /// Writes \a rows, whose lines end in LF, as the file \a name.
    void write(const char *name, const QByteArray &rows);

    /// The names and bytes of everything in it, to see that nothing was added or changed.
    [[nodiscard]] QByteArray contents() const;

private:
    QTemporaryDir m_folder;
};

/// A small diary that is accepted: two items, both stages of one of them, one table of each form.
void writeSmallDiary(TableFolder &folder);

inline constexpr const char *kPlanHeader = "item,exercise,side,stage,sets,reps,hold_s,load_kg,body_share,up_s,pause_s,down_s,rest_s,rrule,"
                                           "slots,per_week,start,end,min_days,min_sessions,rests_after_visit";

} // namespace morrow::test
