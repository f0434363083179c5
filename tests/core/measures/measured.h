// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Shorter words for tests that tell a diary and look at its measures.

#include "support/diary_builder.h"

#include "measures/measures.h"

#include <QTest>

#include <optional>
#include <string>

namespace morrow::test {

/// The measures of the first complaint told to \a builder, which has started by \a to.
inline ComplaintMeasures measured(const DiaryBuilder &builder, Day to, std::optional<Day> from = std::nullopt)
{
    const auto result = measure(builder.diary(), to, from ? std::optional<CivilDay>(*from) : std::nullopt);
    return result.value().at(0);
}

/// The adherence to its first item.
inline Adherence adherence(const DiaryBuilder &builder, Day to, std::optional<Day> from = std::nullopt)
{
    return measured(builder, to, from).items.at(0).adherence;
}

inline const std::optional<double> kNone;

} // namespace morrow::test

/// So that a failed comparison says which numbers differed.
template<>
inline char *QTest::toString(const std::optional<double> &number)
{
    return qstrdup(number ? std::to_string(*number).c_str() : "none");
}

template<>
inline char *QTest::toString(const morrow::CivilDay &day)
{
    return qstrdup(day.toString().c_str());
}

template<>
inline char *QTest::toString(const std::string &text)
{
    return qstrdup(text.c_str());
}
