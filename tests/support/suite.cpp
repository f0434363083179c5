// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "support/suite.h"

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
    int failed = 0;
    for (const auto &make : suites())
        failed += QTest::qExec(make().get(), argc, argv) == 0 ? 0 : 1;
    return failed;
}

} // namespace morrow::test
