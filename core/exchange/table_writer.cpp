// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "exchange/table_writer.h"

#include "exchange/csv.h"

#include <QJsonArray>
#include <QJsonObject>
#include <QString>

#include <algorithm>
#include <numeric>

namespace morrow {

namespace {

QString text(std::string_view utf8)
{
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

QJsonValue datatype(const FieldRule &rule)
{
    const auto bounded = [&rule](const char *base) {
        return QJsonObject{{QStringLiteral("base"), QLatin1String(base)}, {QStringLiteral("minimum"), rule.least.toDouble()},
            {QStringLiteral("maximum"), rule.most.toDouble()}};
    };
    switch (rule.form) {
    case Form::Number:
        return bounded("decimal");
    case Form::Whole:
        return bounded("integer");
    case Form::Day:
        return QJsonObject{{QStringLiteral("base"), QStringLiteral("date")}, {QStringLiteral("format"), QStringLiteral("yyyy-MM-dd")}};
    case Form::Moment:
        return QStringLiteral("dateTimeStamp");
    case Form::Choice: {
        QStringList choices;
        for (const std::string_view choice : rule.choices)
            choices << text(choice);
        return QJsonObject{{QStringLiteral("base"), QStringLiteral("string")}, {QStringLiteral("format"), choices.join(QLatin1Char('|'))}};
    }
    default:
        return QStringLiteral("string");
    }
}

} // namespace

void TableWriter::addColumn(std::string_view name, const FieldRule &rule, bool required)
{
    m_columns.push_back({std::string(name), rule, required});
}

void TableWriter::addRow()
{
    m_rows.emplace_back(m_columns.size());
}

void TableWriter::setValue(std::string_view name, const Body::Value &value)
{
    if (const auto *number = std::get_if<Decimal>(&value)) {
        const auto found = std::find_if(m_columns.begin(), m_columns.end(), [name](const Column &c) { return c.name == name; });
        m_rows.back()[static_cast<std::size_t>(found - m_columns.begin())] = number->toString();
        found->isWritten = true;
    } else {
        setText(name, std::string_view(std::get<std::string>(value)));
    }
}

void TableWriter::setText(std::string_view name, std::string_view text)
{
    const auto found = std::find_if(m_columns.begin(), m_columns.end(), [name](const Column &c) { return c.name == name; });
    m_rows.back()[static_cast<std::size_t>(found - m_columns.begin())] = escapeFormula(text);
    found->isWritten |= !text.empty();
}

void TableWriter::sortBy(const std::vector<std::string> &keys)
{
    std::vector<std::size_t> order(m_rows.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&keys](std::size_t a, std::size_t b) { return keys[a] < keys[b]; });
    std::vector<std::vector<std::string>> sorted;
    sorted.reserve(m_rows.size());
    for (const std::size_t i : order)
        sorted.push_back(std::move(m_rows[i]));
    m_rows = std::move(sorted);
}

std::string TableWriter::toCsv() const
{
    std::string out;
    std::string_view separator;
    for (const Column &column : m_columns) {
        if (!column.isWritten)
            continue;
        out += separator;
        separator = ",";
        out += column.name;
    }
    out += "\r\n";
    for (const auto &row : m_rows) {
        separator = {};
        for (std::size_t i = 0; i < m_columns.size(); ++i) {
            if (!m_columns[i].isWritten)
                continue;
            out += separator;
            separator = ",";
            appendCsvCell(out, row[i]);
        }
        out += "\r\n";
    }
    return out;
}

QJsonObject TableWriter::describe(std::string_view file) const
{
    QJsonArray columns;
    for (const Column &column : m_columns) {
        if (!column.isWritten)
            continue;
        QJsonObject described{{QStringLiteral("name"), text(column.name)}, {QStringLiteral("titles"), text(column.name)},
            {QStringLiteral("datatype"), datatype(column.rule)}};
        if (column.rule.form == Form::Words)
            described.insert(QStringLiteral("separator"), QStringLiteral(" "));
        columns.append(described);
    }
    return {{QStringLiteral("url"), text(file)}, {QStringLiteral("tableSchema"), QJsonObject{{QStringLiteral("columns"), columns}}}};
}

} // namespace morrow
