// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "batch/output.h"
#include "batch/usage.h"
#include "batch/verbs.h"
#include "batch/words.h"

#include <algorithm>
#include <array>
#include <csignal>
#include <cstdio>
#include <fcntl.h>
#include <new>
#include <string>
#include <string_view>
#include <unistd.h>
#include <vector>

namespace {

using namespace morrow::batch;

struct Verb
{
    std::string_view name;
    Status (*run)(Words);
};

constexpr std::array kVerbs{
    Verb{"measure", measureDiary},
    Verb{"check", checkInputs},
    Verb{"convert", convertDiary},
    Verb{"demo", writeDemo},
    Verb{"record", recordEntries},
    Verb{"restore", restoreStore},
    Verb{"erase", eraseEntry},
    Verb{"take-in", takeInFiles},
    Verb{"undo-take-in", undoTakingIn},
    Verb{"rebuild", rebuildDesk},
    Verb{"rehearse", rehearseRule},
    Verb{"merge", mergeDiaries},
};

bool asksForHelp(const std::string &word)
{
    return word == "--help" || word == "-h";
}

/// Takes the places of standard streams that are closed, so that no file of ours gets the number
/// of one and is written into. What is put there takes no output, which is then said.
void holdStandardStreams()
{
    for (int stream = ::open("/dev/null", O_RDONLY); stream >= 0; stream = ::open("/dev/null", O_RDONLY)) {
        if (stream > STDERR_FILENO) {
            ::close(stream);
            return;
        }
    }
}

Status run(const std::vector<std::string> &words)
{
    if (words.empty()) {
        std::fwrite(usage().data(), 1, usage().size(), stderr);
        return Status::WrongUsage;
    }
    const auto end = std::find(words.begin(), words.end(), "--");
    if (std::any_of(words.begin(), end, asksForHelp))
        return print(usage());
    if (words.front() == "--version")
        return print("morrow-batch " MORROW_VERSION "\n");
    for (const Verb &verb : kVerbs) {
        if (verb.name == words.front())
            return verb.run(std::span(words).subspan(1));
    }
    return wrongUsage("There is no verb " + shown(words.front()) + "; see morrow-batch --help.");
}

} // namespace

int main(int argc, char **argv)
{
    holdStandardStreams();
    // A reader that goes away, and a limit on the size of files, are answered where the
    // write fails, with a status and a sentence.
    std::signal(SIGPIPE, SIG_IGN);
    std::signal(SIGXFSZ, SIG_IGN);
    try {
        return static_cast<int>(run(std::vector<std::string>(argv + std::min(1, argc), argv + argc)));
    } catch (const std::bad_alloc &) {
        complain("The machine has too little memory for this.");
        return static_cast<int>(Status::MachineFailed);
    }
}
