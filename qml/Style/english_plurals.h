// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One and many in our own language, which no translation is loaded for.
///
/// A text with a count is written for translators as "%n day(s)" or "%n entr(y/ies)"; of what stands
/// in brackets the first is for one, the last for any other number.

#include <QTranslator>

namespace morrow {

class EnglishPlurals : public QTranslator
{
public:
    using QTranslator::QTranslator;

    [[nodiscard]] bool isEmpty() const override { return false; }
    /// Null where there is no count.
    [[nodiscard]] QString translate(const char *context, const char *text, const char *disambiguation, int count) const override;
};

} // namespace morrow
