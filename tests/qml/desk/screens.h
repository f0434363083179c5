// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Every screen of the desk in a state worth looking at, by name.

#include "qml/desk/sitting.h"
#include "qml/stage.h"

#include <QStringList>

#include <memory>

namespace morrow::test {

/// "first-run", "caseload", "review", ...
[[nodiscard]] QStringList deskScreens();

class DeskScreen
{
public:
    explicit DeskScreen(const QString &name);

    [[nodiscard]] Stage &stage() { return *m_stage; }
    [[nodiscard]] Sitting &sitting() { return *m_sitting; }
    /// What scrolls of it, besides the list of people where that stands beside it; null: nothing.
    [[nodiscard]] QQuickItem *scrolling() const;

private:
    std::unique_ptr<Sitting> m_sitting;
    std::unique_ptr<Stage> m_stage;
};

} // namespace morrow::test
