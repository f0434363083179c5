// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// Another process at work on a store. It has to be one that was started, not forked off:
/// SQLite knows within one process what it has open.

#include <filesystem>
#include <string>

namespace morrow::test {

/// How the call \a verb (open, read, restore) on the store in \a folder ends in another program.
[[nodiscard]] std::string outcomeElsewhere(const std::string &verb, const std::filesystem::path &folder);

/// Lets a program record the facts \a first to \a first + \a count - 1 in the store in
/// \a folder, one after another, and die by SIGKILL with the store open.
void runToItsDeath(const std::filesystem::path &folder, int first, int count);

} // namespace morrow::test
