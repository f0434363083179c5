// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/days.h"

#include <algorithm>

namespace morrow {

namespace {

/// How many ranges of days lie over each day of a window, counted in one pass however
/// long the ranges are.
class Cover
{
public:
    explicit Cover(const Window &window)
        : m_window(window)
        , m_steps(window.length() + 1)
    {
    }

    void add(CivilDay first, CivilDay last)
    {
        first = std::max(first, m_window.from);
        last = std::min(last, m_window.to);
        if (last < first)
            return;
        ++m_steps[m_window.place(first)];
        --m_steps[m_window.place(last) + 1];
    }

    /// Calls \a mark with the place of each day that is covered.
    template<class Mark>
    void forEach(Mark mark) const
    {
        int depth = 0;
        for (std::size_t place = 0; place < m_window.length(); ++place) {
            depth += m_steps[place];
            if (depth > 0)
                mark(place);
        }
    }

private:
    Window m_window;
    std::vector<int> m_steps;
};

/// Adds to \a cover the days that \a pause covers by the version that stood on them.
void addStanding(const Pause &pause, const Window &window, Cover &cover)
{
    CivilDay last = window.to; // the days after it belong to a newer version
    for (const PauseVersion &version : pause.versions) {
        const CivilDay since = version.since ? std::max(*version.since, window.from) : window.from;
        if (!version.withdrawn)
            cover.add(std::max(version.from, since), std::min(version.to, last));
        last = std::min(last, since - 1);
    }
}

bool isDue(const Item &item, const Rhythm &rhythm, CivilDay day, const Interruption &interruption) noexcept
{
    if (day < item.start || (item.end && day > *item.end) || interruption.paused || interruption.putAside)
        return false;
    if (item.restsAfterVisit && interruption.afterVisit)
        return false;
    const auto *onDays = std::get_if<OnDays>(&rhythm);
    return onDays == nullptr || onDays->rule.falls(day, item.start);
}

} // namespace

std::vector<Week> weeksOf(const Window &window)
{
    if (window.isEmpty())
        return {};
    std::vector<Week> weeks;
    for (int number = (window.from - window.planStart) / 7; window.planStart + 7 * number <= window.to; ++number) {
        const CivilDay start = window.planStart + 7 * number;
        weeks.push_back({number, start, std::max(start, window.from), std::min(start + 6, window.to)});
    }
    return weeks;
}

std::vector<Interruption> interruptions(std::span<const Pause> pauses, const ComplaintDiary &complaint, const Window &window)
{
    std::vector<Interruption> days(window.length());

    Cover standing(window);
    Cover counting(window);
    for (const Pause &pause : pauses) {
        addStanding(pause, window, standing);
        if (!pause.versions.empty() && !pause.versions.front().withdrawn)
            counting.add(pause.versions.front().from, pause.versions.front().to);
    }
    standing.forEach([&days](std::size_t place) { days[place].paused = true; });
    counting.forEach([&days](std::size_t place) { days[place].covered = true; });

    Cover rest(window);
    const int restDays = complaint.limits().restDaysAfterVisit;
    for (const Visit &visit : complaint.visits)
        rest.add(visit.day, visit.day + restDays - 1);
    rest.forEach([&days](std::size_t place) { days[place].afterVisit = true; });

    if (complaint.putAsideFrom) {
        for (std::size_t place = 0; place < days.size(); ++place)
            days[place].putAside = window.day(place) >= *complaint.putAsideFrom;
    }
    return days;
}

bool hasStage(const ItemDiary &item, int number) noexcept
{
    return number >= 1 && static_cast<std::size_t>(number) <= item.item.stages.size();
}

StageInForce stageOn(const ItemDiary &item, CivilDay day) noexcept
{
    StageInForce stage{1, item.item.start};
    for (const StageChange &change : item.stageChanges) {
        if (change.day > day)
            break;
        if (hasStage(item, change.stage))
            stage = {change.stage, std::max(item.item.start, change.day), change.entry};
    }
    return stage;
}

std::vector<ItemDay> itemDays(const ItemDiary &item, std::span<const Interruption> interruptions, const Window &window)
{
    std::vector<ItemDay> days(window.length());
    auto change = item.stageChanges.begin();
    int stage = 1;
    for (std::size_t place = 0; place < days.size(); ++place) {
        const CivilDay day = window.day(place);
        for (; change != item.stageChanges.end() && change->day <= day; ++change) {
            if (hasStage(item, change->stage))
                stage = change->stage;
        }
        const Rhythm &rhythm = item.item.stages[static_cast<std::size_t>(stage - 1)].rhythm;
        ItemDay &itemDay = days[place];
        itemDay.stage = stage;
        itemDay.due = isDue(item.item, rhythm, day, interruptions[place]);
        itemDay.away = itemDay.due && interruptions[place].covered;
    }
    return days;
}

std::vector<CivilDay> visitDays(const ComplaintDiary &complaint, CivilDay to)
{
    std::vector<CivilDay> days;
    for (const Visit &visit : complaint.visits) {
        if (visit.day <= to && (days.empty() || days.back() != visit.day))
            days.push_back(visit.day);
    }
    return days;
}

bool SorenessDays::holds(CivilDay day) const noexcept
{
    const auto visit = std::lower_bound(m_visits.begin(), m_visits.end(), day); // the first on or after it
    return visit != m_visits.begin() && day - *std::prev(visit) <= m_length;
}

} // namespace morrow
