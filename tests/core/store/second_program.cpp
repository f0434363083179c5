// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "core/store/second_program.h"

#include <QProcess>

namespace morrow::test {

namespace {

QByteArray run(const QStringList &arguments)
{
    QProcess program;
    program.start(QStringLiteral(MORROW_STORE_PROGRAM), arguments);
    program.waitForFinished(-1);
    return program.readAllStandardOutput();
}

} // namespace

std::string outcomeElsewhere(const std::string &verb, const std::filesystem::path &folder)
{
    return run({QString::fromStdString(verb), QString::fromStdString(folder.string())}).trimmed().toStdString();
}

void runToItsDeath(const std::filesystem::path &folder, int first, int count)
{
    const QByteArray said
        = run({QStringLiteral("record"), QString::fromStdString(folder.string()), QString::number(first), QString::number(count)});
    if (said.count("fact-") != count)
        qFatal("the program recorded only: %s", said.constData());
}

} // namespace morrow::test
