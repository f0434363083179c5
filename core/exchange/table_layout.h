// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Which tables a diary has and which columns each may have: what the reader, the
/// writer and csv-metadata.json go by.

#include "model/field.h"
#include "model/kind.h"
#include "model/rules.h"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace morrow {

/// What a column of a table of entries is to its entry.
enum class ColumnRole : std::uint8_t {
    Id,
    Day,
    RecordedAt,
    Author,
    Replaces,
    Own, ///< a field of the body
    Aside, ///< a field of another entry that the row makes: a memo, a cleared sign
};

struct TableColumn
{
    std::string_view name;
    ColumnRole role;
    const FieldRule *rule; ///< of the column's value; never nullptr
    bool required; ///< in every header
};

/// A table whose rows are entries of one kind.
struct EntryTable
{
    std::string_view file;
    Kind kind;
    std::vector<TableColumn> columns; ///< in the order in which they are written
};

/// In the order in which they are read.
[[nodiscard]] const std::vector<EntryTable> &entryTables();

/// A column of complaints.csv, plan.csv or settings.csv.
struct PlainColumn
{
    std::string_view name;
    const FieldRule *rule; ///< names the field of the body too; of `ended` another entry's day
    bool required; ///< in every header
};

inline constexpr std::string_view kSettingsFile = "settings.csv";
inline constexpr std::string_view kComplaintsFile = "complaints.csv";
inline constexpr std::string_view kPlanFile = "plan.csv";
inline constexpr std::string_view kMetadataFile = "csv-metadata.json";

[[nodiscard]] std::span<const PlainColumn> complaintColumns();
[[nodiscard]] std::span<const PlainColumn> planColumns();
[[nodiscard]] std::span<const PlainColumn> settingsColumns();

/// Columns of plan.csv that must be the same on every row of an item.
[[nodiscard]] bool isOfWholeItem(Field field) noexcept;

/// The rule of a key of settings.csv; nullptr: no such key. Keys of the person are
/// refused with a complaint, the others belong to a plan.
struct SettingKey
{
    std::string_view name;
    const FieldRule *rule;
    enum class Belongs : std::uint8_t {
        ToPerson,
        ToDiary,
        ToComplaint,
        ToPlan
    } belongs;
};
[[nodiscard]] const SettingKey *settingKey(std::string_view name);
/// All of them, in the order in which they are written.
[[nodiscard]] const std::vector<SettingKey> &settingKeys();

/// Who an entry is by when its row does not say.
[[nodiscard]] Author defaultAuthor(Kind kind, const Body &body) noexcept;

} // namespace morrow
