// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#pragma once

/// \file
/// What reading somebody else's file gave, as lines of JSON from the process that reads to the
/// one that asked.
///
///     {"file":SHA-256,"kind":"summary","person":...,"name":...,"count":N,...}
///     {"id":...,"kind":"check","day":"2026-03-02","author":"patient","body":{"pain":3}}     N times
///     {"end":SUM}
///
/// or, of a file that is refused, `"issues":N` in the first line and N issues after it.
///
///  I1  Whoever asked trusts no line: each entry is checked against every rule of its kind, and
///      the sum of all is compared, as if the reader had been taken over by the file.

#include "base/result.h"
#include "exchange/fhir.h"

#include <filesystem>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace morrow {

struct FileReading
{
    std::string sha256; ///< of the bytes that were read, in lower-case hexadecimal; empty: it could not be read
    Result<FhirDiary, std::vector<Issue>> diary;
};

/// Reads the file at \a path: a regular file of at most kMaxFhirBytes.
[[nodiscard]] FileReading readForeignFile(const std::filesystem::path &path);

/// Gives the lines of \a reading to \a write, in parts.
void writeLines(const FileReading &reading, const std::function<void(std::string_view)> &write);

/// Takes the lines of one reading.
class ReadingLines
{
public:
    ReadingLines();
    ~ReadingLines();
    ReadingLines(const ReadingLines &) = delete;
    ReadingLines &operator=(const ReadingLines &) = delete;

    enum class State {
        More, ///< lines are to come
        Whole,
        Garbled, ///< a line that no reader of ours writes
    };

    /// Takes a part of what came, wherever it is cut. Nothing may follow what is whole.
    State take(std::string_view part);
    /// What was read, once that is whole.
    [[nodiscard]] FileReading result() &&;

private:
    struct Parser;
    std::unique_ptr<Parser> m_parser;
};

} // namespace morrow
