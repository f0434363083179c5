// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "base/clock.h"

#include <QDateTime>

namespace morrow {

namespace {

constexpr std::int64_t kMsPerMinute = 60'000;
constexpr std::int64_t kMsPerDay = 86'400'000;

std::int64_t floorDiv(std::int64_t a, std::int64_t b) noexcept
{
    return a / b - (a % b < 0 ? 1 : 0);
}

/// The two digits at \a at, or -1.
int twoDigits(std::string_view text, std::size_t at) noexcept
{
    if (at + 2 > text.size() || text[at] < '0' || text[at] > '9' || text[at + 1] < '0' || text[at + 1] > '9')
        return -1;
    return (text[at] - '0') * 10 + (text[at + 1] - '0');
}

void appendTwo(std::string &out, int value)
{
    out += static_cast<char>('0' + value / 10);
    out += static_cast<char>('0' + value % 10);
}

/// Minutes of `Z` or `+hh:mm`; nullopt if \a text is neither.
std::optional<int> parseOffset(std::string_view text) noexcept
{
    if (text == "Z" || text == "z")
        return 0;
    if (text.size() != 6 || (text[0] != '+' && text[0] != '-') || text[3] != ':')
        return std::nullopt;
    const int hours = twoDigits(text, 1);
    const int minutes = twoDigits(text, 4);
    if (hours < 0 || hours > 23 || minutes < 0 || minutes > 59)
        return std::nullopt;
    return (text[0] == '-' ? -1 : 1) * (hours * 60 + minutes);
}

class SystemClock final : public Clock
{
public:
    [[nodiscard]] Moment now() const override
    {
        const QDateTime now = QDateTime::currentDateTime();
        return {now.toMSecsSinceEpoch(), now.offsetFromUtc() / 60};
    }
};

} // namespace

std::optional<Moment> parseMoment(std::string_view text) noexcept
{
    if (text.size() < 20 || (text[10] != 'T' && text[10] != 't') || text[13] != ':' || text[16] != ':')
        return std::nullopt;
    const auto day = CivilDay::parse(text.substr(0, 10));
    const int hours = twoDigits(text, 11);
    const int minutes = twoDigits(text, 14);
    const int seconds = twoDigits(text, 17);
    if (!day || hours < 0 || hours > 23 || minutes < 0 || minutes > 59 || seconds < 0 || seconds > 60)
        return std::nullopt;

    std::size_t at = 19;
    int milliseconds = 0;
    if (text[at] == '.') {
        int scale = 100;
        for (++at; at < text.size() && text[at] >= '0' && text[at] <= '9'; ++at) {
            if (scale == 0)
                return std::nullopt;
            milliseconds += (text[at] - '0') * scale;
            scale /= 10;
        }
        if (scale == 100)
            return std::nullopt;
    }
    const auto offset = parseOffset(text.substr(at));
    if (!offset)
        return std::nullopt;

    const int ofMinute = seconds * 1000 + milliseconds;
    const std::int64_t local = day->number() * kMsPerDay + (hours * 60 + minutes) * kMsPerMinute + ofMinute;
    const Moment moment{local - *offset * kMsPerMinute, *offset};
    // A leap second at the end of the last day would lie on a day that nothing else can be about,
    // an instant that is another day in UTC in a year that no file in UTC could hold.
    const bool isInRange = CivilDay::fromNumber(static_cast<int>(floorDiv(local, kMsPerDay)))
        && CivilDay::fromNumber(static_cast<int>(floorDiv(moment.utcMs, kMsPerDay)));
    return isInRange ? std::optional(moment) : std::nullopt;
}

std::string rfc3339(const Moment &moment)
{
    const std::int64_t local = moment.utcMs + moment.offsetMinutes * kMsPerMinute;
    const auto ofDay = static_cast<int>(local - floorDiv(local, kMsPerDay) * kMsPerDay);
    std::string out = diaryDay(moment, std::chrono::minutes{0}).toString();
    out += 'T';
    appendTwo(out, ofDay / 3'600'000);
    out += ':';
    appendTwo(out, ofDay / 60'000 % 60);
    out += ':';
    appendTwo(out, ofDay / 1000 % 60);
    if (const int ms = ofDay % 1000; ms != 0) {
        out += '.';
        out += static_cast<char>('0' + ms / 100);
        appendTwo(out, ms % 100);
    }
    const int offset = moment.offsetMinutes < 0 ? -moment.offsetMinutes : moment.offsetMinutes;
    out += moment.offsetMinutes < 0 ? '-' : '+';
    appendTwo(out, offset / 60);
    out += ':';
    appendTwo(out, offset % 60);
    return out;
}

CivilDay diaryDay(const Moment &moment, std::chrono::minutes dayStarts) noexcept
{
    const std::int64_t local = moment.utcMs + (moment.offsetMinutes - dayStarts.count()) * kMsPerMinute;
    static const CivilDay epoch = *CivilDay::fromNumber(0);
    return epoch + static_cast<int>(floorDiv(local, kMsPerDay));
}

std::unique_ptr<Clock> systemClock()
{
    return std::make_unique<SystemClock>();
}

} // namespace morrow
