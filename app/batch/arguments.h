// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The words behind a verb. Paths stay the bytes that they came as.

#include "base/civil_day.h"
#include "base/result.h"

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace morrow::batch {

struct OptionRule
{
    std::string_view name; ///< with its dashes
    std::string_view value; ///< what its value is called; empty: it takes none
    bool isRepeated = false; ///< it may be given more than once
};

class Arguments
{
public:
    /// Sorts \a words into options and operands; a sentence where they break \a rules: an
    /// unknown option, one given twice that may not be, a value missing or too many. All after `--` is operands.
    [[nodiscard]] static Result<Arguments, std::string> parse(std::span<const std::string> words, std::span<const OptionRule> rules);

    [[nodiscard]] const std::vector<std::string> &operands() const noexcept { return m_operands; }
    [[nodiscard]] bool has(std::string_view option) const { return m_options.contains(option); }
    [[nodiscard]] std::optional<std::string> value(std::string_view option) const;
    /// All values of \a option, as they came.
    [[nodiscard]] std::vector<std::string> values(std::string_view option) const;
    /// The day that \a option names; a sentence if it names none, nullopt without the option.
    [[nodiscard]] Result<std::optional<CivilDay>, std::string> day(std::string_view option) const;

private:
    std::vector<std::string> m_operands;
    std::multimap<std::string, std::string, std::less<>> m_options;
};

} // namespace morrow::batch
