// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Every screen of home in a state worth looking at, by name.

#include "qml/home/stay.h"
#include "qml/stage.h"

#include <QStringList>

#include <memory>

namespace morrow::test {

/// "first-run", "today", "all-done", ...
[[nodiscard]] QStringList homeScreens();

class HomeScreen
{
public:
    explicit HomeScreen(const QString &name);

    [[nodiscard]] Stage &stage() { return *m_stage; }
    [[nodiscard]] Stay &stay() { return *m_stay; }
    /// Presses the control of that objectName; false if it is not there.
    bool press(const QString &objectName);
    /// Shows the page with that number in the bar.
    void turnTo(int view);
    /// What scrolls of the page; null: nothing.
    [[nodiscard]] QQuickItem *scrolling() const;

private:
    std::unique_ptr<Stay> m_stay;
    std::unique_ptr<Stage> m_stage;
};

} // namespace morrow::test
