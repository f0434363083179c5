// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What to say beside an answer: that it is kept, or why it is not.

#include <QString>

namespace morrow {

struct Kept
{
    QString said; ///< "Saved 07:12"
    QString failure; ///< empty: it is durable

    [[nodiscard]] bool isKept() const { return failure.isEmpty(); }
    [[nodiscard]] bool isSomething() const { return !said.isEmpty() || !failure.isEmpty(); }

    friend bool operator==(const Kept &, const Kept &) = default;
};

} // namespace morrow
