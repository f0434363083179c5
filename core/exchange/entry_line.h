// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One entry as a line of JSON (RFC 8259), as a program hands it over:
/// `{"kind":"check","day":"2026-03-02","author":"patient","recorded":"2026-03-02T07:14:05+01:00","body":{"pain":3}}`.
///
/// `day`, `recorded`, `id` and `replaces` may be absent; `"recorded":null` says that
/// it was typed in from paper. The body's keys are the columns of the kind's table, numbers as numbers.

#include "base/result.h"
#include "model/draft.h"

#include <string>
#include <string_view>

namespace morrow {

struct LineProblem
{
    enum class Code {
        NotJson, ///< or not one object, not UTF-8, nested too deeply
        KeyTwice,
        KeyUnknown,
        KeyMissing,
        TypeRefused, ///< of another JSON type than the key asks for, or a number of more than three decimals
        ValueRefused, ///< no day, no instant, no such kind or author
    };

    Code code = Code::NotJson;
    std::string where; ///< a JSON pointer (RFC 6901)
};

/// Reads \a line; nothing about the diary is checked here.
[[nodiscard]] Result<Draft, LineProblem> readEntryLine(std::string_view line);

} // namespace morrow
