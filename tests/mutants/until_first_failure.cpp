// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// Runs test classes until one fails: that is all there is to know about a fault.

#include "support/suite.h"

#include <QCoreApplication>

#include <vector>

namespace morrow::test {

namespace {

std::vector<std::function<std::unique_ptr<QObject>()>> &suites()
{
    static std::vector<std::function<std::unique_ptr<QObject>()>> all;
    return all;
}

} // namespace

bool enlist(std::function<std::unique_ptr<QObject>()> make)
{
    suites().push_back(std::move(make));
    return true;
}

int runSuites(int argc, char **argv)
{
    for (const auto &make : suites()) {
        if (QTest::qExec(make().get(), argc, argv) != 0)
            return 1;
    }
    return 0;
}

} // namespace morrow::test

int main(int argc, char **argv)
{
    const QCoreApplication app(argc, argv);
    return morrow::test::runSuites(argc, argv);
}
