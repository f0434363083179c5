// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "Entries/said.h"

#include "report/plain_text.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>

namespace morrow {

QString plainText(std::string_view text)
{
    return QString::fromStdString(visible(text));
}

QString fullDate(CivilDay day)
{
    //: A day in words: day of the month, month, year (Qt date format).
    return QLocale().toString(QDate(1970, 1, 1).addDays(day.number()), QCoreApplication::translate("Said", "d MMMM yyyy"));
}

QString numberWords(Decimal number)
{
    return QString::fromStdString(number.toString()).replace(QLatin1Char('.'), QLocale().decimalPoint());
}

QString sideWords(const std::optional<Side> &side)
{
    if (side == Side::Left)
        return QCoreApplication::translate("Said", "left");
    if (side == Side::Right)
        return QCoreApplication::translate("Said", "right");
    return side ? QCoreApplication::translate("Said", "both sides") : QString();
}

} // namespace morrow
