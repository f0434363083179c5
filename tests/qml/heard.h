// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What a screen reader is given.

#include "qml/stage.h"

#include <QAccessible>
#include <QStringList>

#include <vector>

namespace morrow::test {

/// What it is given for the item of that objectName.
[[nodiscard]] QAccessibleInterface *heard(const Stage &stage, const QString &objectName);

/// Everything from \a from down that it walks through.
[[nodiscard]] std::vector<QAccessibleInterface *> walk(QObject *from);

[[nodiscard]] std::vector<QAccessibleInterface *> withRole(const std::vector<QAccessibleInterface *> &nodes, QAccessible::Role role);

/// The texts that it reads out from \a from down.
[[nodiscard]] QStringList heardTexts(QObject *from);

/// What acts below \a from and has no name or no action; empty when all have both. \a acting is how many there are.
[[nodiscard]] QStringList unnamed(QObject *from, int &acting);

} // namespace morrow::test
