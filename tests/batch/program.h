// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The built morrow-batch, run as a person or a script runs it.

#include <QByteArray>
#include <QJsonArray>
#include <QJsonObject>
#include <QString>
#include <QStringList>

#include <functional>

namespace morrow::test {

struct Outcome
{
    int status; ///< -1: it did not end by itself
    QByteArray out;
    QByteArray err;

    /// What it said on standard error, line by line.
    [[nodiscard]] QList<QByteArray> sentences() const;
    /// What it printed; the test fails where that is no object or array.
    [[nodiscard]] QJsonObject object() const;
    [[nodiscard]] QJsonArray array() const;
};

struct Circumstances
{
    QString folder{}; ///< to run in; empty: where the test runs
    QString out{}; ///< a file that takes standard output
    QString program{}; ///< a copy of it to run instead
    std::function<void()> inChild{}; ///< before the program starts; only calls that are safe after a fork
    QByteArray zone{"UTC"};
};

/// Runs morrow-batch with \a arguments.
[[nodiscard]] Outcome run(const QStringList &arguments, const Circumstances &circumstances = {});

} // namespace morrow::test
