// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/visits.h"

#include "measures/check.h"
#include "measures/days.h"
#include "measures/statistics.h"

#include <algorithm>
#include <span>

namespace morrow {

namespace {

/// Whether \a visit says anything about what was given.
bool givesParts(const Visit &visit) noexcept
{
    return visit.warmupImpulses || visit.warmupHz || visit.impulses || visit.hz || visit.areaCm2;
}

/// How long \a impulses at \a hz take; absent unless both are known and \a hz is not 0.
std::optional<double> seconds(const std::optional<int> &impulses, const std::optional<Decimal> &hz) noexcept
{
    if (!impulses || !hz)
        return std::nullopt;
    return ratio(*impulses, hz->toDouble());
}

std::optional<double> seconds(const Visit &visit) noexcept
{
    const auto warmup = visit.warmupImpulses ? seconds(visit.warmupImpulses, visit.warmupHz) : std::optional(0.0);
    const auto main = seconds(visit.impulses, visit.hz);
    if (!warmup || !main)
        return std::nullopt;
    return *warmup + *main;
}

/// A sum that one missing part makes unknown for good.
template<class T>
class KnownSum
{
public:
    template<class Part>
    void add(const std::optional<Part> &part)
    {
        m_isKnown = m_isKnown && part.has_value();
        m_value += static_cast<T>(part.value_or(Part{}));
    }

    [[nodiscard]] std::optional<T> value() const { return m_isKnown ? std::optional(m_value) : std::nullopt; }

private:
    T m_value{};
    bool m_isKnown = true;
};

/// What was given at \a visits, all of one day.
void addTreatment(VisitMeasures &result, std::span<const Visit> visits)
{
    if (std::none_of(visits.begin(), visits.end(), givesParts))
        return;
    KnownSum<double> time;
    KnownSum<double> area;
    KnownSum<std::int64_t> impulses;
    std::int64_t warmup = 0;
    for (const Visit &visit : visits) {
        if (!givesParts(visit))
            continue;
        time.add(seconds(visit));
        area.add(visit.areaCm2 ? std::optional(visit.areaCm2->toDouble()) : std::nullopt);
        impulses.add(visit.impulses);
        warmup += visit.warmupImpulses.value_or(0);
    }
    result.seconds = time.value();
    if (const auto count = impulses.value()) {
        result.totalImpulses = *count + warmup;
        result.perCm2 = area.value() ? ratio(static_cast<double>(*count), *area.value()) : std::nullopt;
    }
}

/// The medians of the 7-day spans that begin on \a first; the last may be cut by \a last.
std::vector<std::optional<double>> weeklyMedians(std::span<const Check> checks, CivilDay first, CivilDay last)
{
    std::vector<std::optional<double>> medians;
    for (CivilDay start = first; start <= last; start = start + 7)
        medians.push_back(median(painValues(checksOf(checks, start, std::min(start + 6, last))), kLeastValues));
    return medians;
}

} // namespace

std::vector<VisitMeasures> visitMeasures(const ComplaintDiary &complaint, CivilDay to)
{
    const int sorenessDays = complaint.limits().sorenessDays;
    const std::vector<CivilDay> days = visitDays(complaint, to);
    const SorenessDays soreness(days, sorenessDays);
    std::vector<VisitMeasures> result;
    result.reserve(days.size());
    std::span<const Visit> visits = complaint.visits;
    for (std::size_t i = 0; i < days.size(); ++i) {
        const CivilDay day = days[i];
        const auto next = std::find_if(visits.begin(), visits.end(), [day](const Visit &visit) { return visit.day != day; });
        const auto ofDay = visits.first(static_cast<std::size_t>(next - visits.begin()));
        visits = visits.subspan(ofDay.size());

        const CivilDay last = i + 1 < days.size() ? days[i + 1] - 1 : to;
        VisitMeasures measures{
            .day = day,
            .before = median(painValues(checksOf(complaint.checks, day - 7, day - 1), &soreness), kLeastValues),
            .afterWeeks = weeklyMedians(complaint.checks, day + 1 + sorenessDays, last),
            .change = std::nullopt,
            .seconds = std::nullopt,
            .perCm2 = std::nullopt,
            .totalImpulses = std::nullopt,
        };
        addTreatment(measures, ofDay);
        const auto known
            = std::find_if(measures.afterWeeks.rbegin(), measures.afterWeeks.rend(), [](const auto &week) { return week.has_value(); });
        if (measures.before && known != measures.afterWeeks.rend())
            measures.change = **known - *measures.before;
        result.push_back(std::move(measures));
    }
    return result;
}

} // namespace morrow
