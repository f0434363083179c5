// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Pictures of a page for somebody to look at.

#include "qml/stage.h"

#include <QQuickItem>
#include <QString>

#include <functional>

namespace morrow::test {

/// Draws the page on \a stage into \a folder, narrow and wide, light and dark, in text of 100 and
/// 200 %. Where \a scrolling, asked anew in each look, gives what scrolls, every window of it is a file.
[[nodiscard]] bool drawPage(Stage &stage, const std::function<QQuickItem *()> &scrolling, const QString &name, const QString &folder);

} // namespace morrow::test
