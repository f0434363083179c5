// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "actions/reader_child.h"

#include <array>
#include <cerrno>
#include <csignal>
#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/timerfd.h>
#include <sys/wait.h>
#include <unistd.h>
#include <utility>
#include <vector>

extern char **environ; // NOLINT: POSIX declares it nowhere

namespace morrow {

namespace {

/// How the reader ends that got too little memory; see app/reader_main.cpp.
constexpr int kHungry = 3;
/// What a reader says of the largest file is shorter than the file.
constexpr std::size_t kMaxAnswer = 2 * kMaxFhirBytes;

void closeIfOpen(int &descriptor) noexcept
{
    if (const int number = std::exchange(descriptor, -1); number >= 0)
        ::close(number);
}

/// A descriptor that can be read once \a patience is over; core reads no clock.
int alarmAfter(std::chrono::milliseconds patience) noexcept
{
    const int timer = ::timerfd_create(CLOCK_MONOTONIC, TFD_CLOEXEC | TFD_NONBLOCK);
    itimerspec when{};
    when.it_value.tv_sec = patience.count() / 1000;
    when.it_value.tv_nsec = patience.count() % 1000 * 1'000'000;
    if (timer >= 0 && ::timerfd_settime(timer, 0, &when, nullptr) == 0)
        return timer;
    if (timer >= 0)
        ::close(timer);
    return -1;
}

} // namespace

ReaderChild::ReaderChild(std::filesystem::path program, std::chrono::milliseconds patience)
    : m_program(std::move(program))
    , m_patience(patience)
{
}

ReaderChild::~ReaderChild()
{
    end(true);
}

std::optional<pid_t> ReaderChild::process() const noexcept
{
    return m_process > 0 ? std::optional(m_process) : std::nullopt;
}

bool ReaderChild::start()
{
    std::array<int, 2> in{-1, -1};
    std::array<int, 2> out{-1, -1};
    if (::pipe2(in.data(), O_CLOEXEC) != 0)
        return false;
    if (::pipe2(out.data(), O_CLOEXEC) != 0) {
        ::close(in[0]);
        ::close(in[1]);
        return false;
    }
    m_asked = in[0];
    m_ask = in[1];
    m_answer = out[0];

    posix_spawn_file_actions_t actions;
    ::posix_spawn_file_actions_init(&actions);
    ::posix_spawn_file_actions_adddup2(&actions, in[0], STDIN_FILENO);
    ::posix_spawn_file_actions_adddup2(&actions, out[1], STDOUT_FILENO);
    // Nothing else that this process has open is for the reader.
    ::posix_spawn_file_actions_addclosefrom_np(&actions, STDERR_FILENO + 1);
    std::string program = m_program.string();
    std::array<char *, 2> arguments{program.data(), nullptr};
    const int failed = ::posix_spawn(&m_process, program.c_str(), &actions, nullptr, arguments.data(), environ);
    ::posix_spawn_file_actions_destroy(&actions);
    ::close(out[1]);
    if (failed == 0)
        return true;
    m_process = -1;
    end(false);
    return false;
}

int ReaderChild::end(bool kills) noexcept
{
    int status = 0;
    if (const pid_t process = std::exchange(m_process, -1); process > 0) {
        if (kills)
            ::kill(process, SIGKILL);
        while (::waitpid(process, &status, 0) < 0 && errno == EINTR) { }
    }
    closeIfOpen(m_ask);
    closeIfOpen(m_asked);
    closeIfOpen(m_answer);
    return status;
}

bool ReaderChild::ask(const std::filesystem::path &path)
{
    // At most one path lies in the pipe, which holds far more than the longest.
    const std::string text = path.string();
    return ::write(m_ask, text.c_str(), text.size() + 1) == static_cast<ssize_t>(text.size() + 1);
}

Result<FileReading, ReaderFault> ReaderChild::read(const std::filesystem::path &path)
{
    if (m_process <= 0 && !start())
        return failure(ReaderFault::NotStarted);
    if (!ask(path)) {
        end(true);
        return failure(ReaderFault::NotStarted);
    }
    auto reading = listen();
    if (!reading && reading.error() == ReaderFault::Crashed) {
        const int status = end(false);
        return failure(WIFEXITED(status) && WEXITSTATUS(status) == kHungry ? ReaderFault::Hungry
                : WIFEXITED(status) && WEXITSTATUS(status) == 127          ? ReaderFault::NotStarted
                                                                           : ReaderFault::Crashed);
    }
    if (!reading)
        end(true);
    return reading;
}

Result<FileReading, ReaderFault> ReaderChild::listen()
{
    int alarm = alarmAfter(m_patience);
    if (alarm < 0)
        return failure(ReaderFault::NotStarted);
    const auto hear = [this, alarm]() -> Result<FileReading, ReaderFault> {
        ReadingLines lines;
        std::vector<char> part(1 << 16);
        std::size_t heard = 0;
        for (;;) {
            std::array<pollfd, 2> both{pollfd{m_answer, POLLIN, 0}, pollfd{alarm, POLLIN, 0}};
            if (::poll(both.data(), both.size(), -1) < 0) {
                if (errno == EINTR)
                    continue;
                return failure(ReaderFault::Garbled);
            }
            if (both[1].revents != 0)
                return failure(ReaderFault::Hung);
            const ssize_t got = ::read(m_answer, part.data(), part.size());
            if (got < 0 && errno == EINTR)
                continue;
            if (got <= 0)
                return failure(ReaderFault::Crashed);
            heard += static_cast<std::size_t>(got);
            const auto state = lines.take({part.data(), static_cast<std::size_t>(got)});
            if (state == ReadingLines::State::Garbled || heard > kMaxAnswer)
                return failure(ReaderFault::Garbled);
            if (state == ReadingLines::State::Whole)
                return std::move(lines).result();
        }
    };
    auto reading = hear();
    closeIfOpen(alarm);
    return reading;
}

} // namespace morrow
