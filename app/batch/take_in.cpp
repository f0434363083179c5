// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/take_in.h"

#include "base/file.h"
#include "batch/arguments.h"
#include "batch/desk_words.h"
#include "batch/input.h"
#include "batch/json.h"
#include "batch/store_words.h"
#include "batch/verbs.h"
#include "batch/words.h"

#include <algorithm>
#include <array>
#include <filesystem>

namespace morrow::batch {

namespace {

constexpr std::array kOptions{OptionRule{"--desk", "DIR"}, OptionRule{"--new", {}}, OptionRule{"--as", "REF"}};

/// The reader lies beside this program.
std::filesystem::path readerProgram()
{
    std::error_code ignored;
    return std::filesystem::read_symlink("/proc/self/exe", ignored).replace_filename("morrow-reader");
}

struct Answer
{
    Json json;
    Status status;
};

/// What is said of a file that was not taken in, for every reason.
class Refusal
{
public:
    explicit Refusal(const std::string &file)
        : m_file(file)
    {
    }

    void add(std::string_view code, const std::string &sentence)
    {
        complain(sentence);
        m_issues.add(Json::object({{"code", code}, {"message", sentence}}));
    }
    Answer answer(Status status, const Json &sha = {}) &&
    {
        return {Json::object({{"file", m_file}, {"sha256", sha}, {"takenIn", false}, {"issues", std::move(m_issues)}}), status};
    }

private:
    std::string m_file;
    Json m_issues = Json::array();
};

Answer refuse(const std::string &file, std::string_view code, const std::string &sentence, Status status)
{
    Refusal refusal(file);
    refusal.add(code, sentence);
    return std::move(refusal).answer(status);
}

Answer answerOf(const TakenIn &taken, const std::string &file)
{
    return {Json::object({
                {"file", file},
                {"sha256", taken.file},
                {"takenIn", true},
                {"person", taken.person},
                {"newPerson", taken.isNewPerson},
                {"added", taken.added},
                {"known", taken.known},
                {"erased", taken.erased},
            }),
        Status::Done};
}

Answer takeInFile(OpenDesk &desk, ReaderChild &reader, const std::string &file, const WhoseAnswer &whose)
{
    // Named from the root, since the reader may stand elsewhere, and held against what the reader read.
    std::error_code ignored;
    const auto read = reader.read(std::filesystem::absolute(file, ignored));
    if (!read) {
        const Status status = read.error() == ReaderFault::NotStarted ? Status::MachineFailed : Status::Refused;
        return refuse(file, codeName(read.error()), sentence(read.error(), file), status);
    }
    if (!read->diary) {
        Refusal refusal(file);
        for (const Issue &issue : read->diary.error())
            refusal.add(codeName(issue.code), sentence(issue, file));
        return std::move(refusal).answer(statusOf(read->diary.error()), read->sha256.empty() ? Json() : Json(read->sha256));
    }
    const auto bytes = readFile(file, kMaxFhirBytes);
    if (!bytes || RecordFolder::nameOf(*bytes) != read->sha256)
        return refuse(file, "changed", shown(file) + " changed while it was read.", Status::Refused);

    const auto taken = takeIn(desk, *read->diary, *bytes, whose, systemClock()->now());
    if (taken)
        return answerOf(*taken, file);
    if (const auto error = deskErrorIn(taken.error()))
        return refuse(file, "desk-failed", sentence(*error, file), statusOf(*error));
    Refusal refusal(file);
    for (const TakeInProblem &problem : std::get<std::vector<TakeInProblem>>(taken.error()))
        refusal.add(codeName(problem), sentence(problem, file));
    return std::move(refusal).answer(Status::Refused, Json(read->sha256));
}

} // namespace

Status takeInFiles(Words words)
{
    const auto arguments = Arguments::parse(words, kOptions);
    if (!arguments)
        return wrongUsage(arguments.error());
    const auto folder = arguments->value("--desk");
    if (!folder || arguments->operands().empty())
        return wrongUsage("The verb take-in needs at least one FILE and --desk with a folder.");
    const WhoseAnswer whose{arguments->has("--new"), arguments->value("--as").value_or("")};
    if (whose.isNew && !whose.as.empty())
        return wrongUsage("A file is either of somebody new or of somebody known: --new and --as do not go together.");

    auto desk = OpenDesk::open(*folder);
    if (!desk) {
        complain(sentence(desk.error(), *folder));
        return statusOf(desk.error());
    }
    for (const std::string &one : sentences(desk->news()))
        complain(one);
    ReaderChild reader(readerProgram());
    Json answers = Json::array();
    Status status = Status::Done;
    for (const std::string &file : arguments->operands()) {
        Answer answer = takeInFile(*desk, reader, file, whose);
        answers.add(std::move(answer.json));
        status = std::max(status, answer.status);
    }
    return std::max(status, print(answers.toText()));
}

} // namespace morrow::batch
