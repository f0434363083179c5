// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// The process that reads files of others, as the program that started it sees it.
///
///  I1  A file that crashes, hangs or starves its reader is refused, and the next file is read
///      by a new one.
///  I2  Nothing that the reader says is taken unchecked; see reading_lines.h.
///  I3  The reader ends with whoever started it.

#include "base/result.h"
#include "exchange/reading_lines.h"

#include <chrono>
#include <filesystem>
#include <optional>

#include <sys/types.h>

namespace morrow {

/// Why a file was not read, through no lack of the file's form.
enum class ReaderFault {
    NotStarted, ///< there is no reader at its place, or the machine has no room for it
    Crashed,
    Hung, ///< longer than it may take
    Hungry, ///< it wanted more memory than it gets
    Garbled, ///< what it said cannot be what it read
};

class ReaderChild
{
public:
    /// The most that one file may take (our choice: the largest file takes about half of it).
    static constexpr std::chrono::milliseconds kPatience{5000};

    /// A reader that is the program at \a program; it is started when there is a file to read.
    explicit ReaderChild(std::filesystem::path program, std::chrono::milliseconds patience = kPatience);
    ~ReaderChild();
    ReaderChild(const ReaderChild &) = delete;
    ReaderChild &operator=(const ReaderChild &) = delete;

    /// Reads the file at \a path.
    [[nodiscard]] Result<FileReading, ReaderFault> read(const std::filesystem::path &path);

    /// The process that runs now; nullopt: none.
    [[nodiscard]] std::optional<pid_t> process() const noexcept;

private:
    bool start();
    /// Ends what runs and gives how it ended, as waitpid says it.
    int end(bool kills) noexcept;
    [[nodiscard]] bool ask(const std::filesystem::path &path);
    [[nodiscard]] Result<FileReading, ReaderFault> listen();

    std::filesystem::path m_program;
    std::chrono::milliseconds m_patience;
    pid_t m_process = -1;
    int m_ask = -1; ///< its standard input, and the other end of it, so that a write to a dead reader is no signal
    int m_asked = -1;
    int m_answer = -1; ///< its standard output
};

} // namespace morrow
