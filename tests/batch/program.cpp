// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/program.h"

#include <QJsonDocument>
#include <QProcess>
#include <QTest>

namespace morrow::test {

namespace {

QJsonDocument parsed(const QByteArray &text)
{
    QJsonParseError error;
    const QJsonDocument document = QJsonDocument::fromJson(text, &error);
    if (error.error != QJsonParseError::NoError)
        QTest::qFail(qPrintable(QStringLiteral("no JSON: ") + error.errorString()), __FILE__, __LINE__);
    return document;
}

} // namespace

QList<QByteArray> Outcome::sentences() const
{
    QList<QByteArray> lines = err.split('\n');
    if (lines.last().isEmpty())
        lines.removeLast();
    return lines;
}

QJsonObject Outcome::object() const
{
    return parsed(out).object();
}

QJsonArray Outcome::array() const
{
    return parsed(out).array();
}

Outcome run(const QStringList &arguments, const Circumstances &circumstances)
{
    QProcess process;
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("TZ"), QString::fromLatin1(circumstances.zone));
    process.setProcessEnvironment(environment);
    if (!circumstances.folder.isEmpty())
        process.setWorkingDirectory(circumstances.folder);
    if (!circumstances.out.isEmpty())
        process.setStandardOutputFile(circumstances.out);
    if (circumstances.inChild)
        process.setChildProcessModifier(circumstances.inChild);
    process.start(circumstances.program.isEmpty() ? QStringLiteral(MORROW_BATCH) : circumstances.program, arguments);
    process.closeWriteChannel();
    process.waitForFinished(-1);
    const bool ended = process.exitStatus() == QProcess::NormalExit && process.error() == QProcess::UnknownError;
    return {ended ? process.exitCode() : -1, process.readAllStandardOutput(), process.readAllStandardError()};
}

} // namespace morrow::test
