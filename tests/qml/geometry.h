// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What no page may do in any window: cut, cover or lose a text, or offer a target too small to press.

#include "qml/stage.h"

#include <QQuickItem>
#include <QStringList>

#include <vector>

namespace morrow::test {

[[nodiscard]] bool isText(const QQuickItem *item);
[[nodiscard]] bool isPressable(const QQuickItem *item);

/// What is to be seen below \a item and \a are says yes to.
[[nodiscard]] std::vector<QQuickItem *> visibleThat(QQuickItem *item, bool (*are)(const QQuickItem *));

/// Class, text and place of \a item, for whoever reads why a test failed.
[[nodiscard]] QString told(const QQuickItem *item);

/// The breaches below \a from, each in words; empty when there are none. Half a pixel is rounding; rows
/// of a list that are scrolled in part or whole out of it are passed over.
[[nodiscard]] QStringList breaches(Stage &stage, QQuickItem *from);

/// Those of the whole page in every look, the look before each; the first twelve, a line each.
[[nodiscard]] QString breachesInEveryLook(Stage &stage);

} // namespace morrow::test
