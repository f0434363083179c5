// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// One test binary a room: each test class registers itself, one main runs them all
/// (support/suite_main.cpp, or one that makes another kind of application first).

#include <QObject>
#include <QRegularExpression>
#include <QTest>

#include <functional>
#include <memory>

namespace morrow::test {

/// Adds a test class to the binary's run.
bool enlist(std::function<std::unique_ptr<QObject>()> make);

/// Runs them all; gives the number of classes that failed.
int runSuites(int argc, char **argv);

} // namespace morrow::test

#define MORROW_SUITE(Class)                                                                                                                \
    [[maybe_unused]] static const bool enlisted_##Class                                                                                    \
        = morrow::test::enlist([]() -> std::unique_ptr<QObject> { return std::make_unique<Class>(); });
