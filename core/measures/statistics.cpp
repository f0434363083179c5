// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/statistics.h"

#include <algorithm>
#include <cmath>

namespace morrow {

namespace {

/// What groups of equal values take from var(S).
struct Ties
{
    double fives = 0; ///< sum of t (t - 1) (2 t + 5)
    double triples = 0; ///< sum of t (t - 1) (t - 2)
    double pairs = 0; ///< sum of t (t - 1)

    explicit Ties(std::vector<double> values)
    {
        std::sort(values.begin(), values.end());
        for (std::size_t i = 0; i < values.size();) {
            std::size_t next = i;
            while (next < values.size() && values[next] == values[i])
                ++next;
            const auto t = static_cast<double>(next - i);
            fives += t * (t - 1) * (2 * t + 5);
            triples += t * (t - 1) * (t - 2);
            pairs += t * (t - 1);
            i = next;
        }
    }
};

double varianceOfS(std::span<const TimedValue> values)
{
    std::vector<double> times;
    std::vector<double> measured;
    for (const TimedValue &one : values) {
        times.push_back(one.time);
        measured.push_back(one.value);
    }
    const Ties t(std::move(measured));
    const Ties u(std::move(times));
    const auto n = static_cast<double>(values.size());
    double variance = (n * (n - 1) * (2 * n + 5) - t.fives - u.fives) / 18 + t.pairs * u.pairs / (2 * n * (n - 1));
    if (n > 2)
        variance += t.triples * u.triples / (9 * n * (n - 1) * (n - 2));
    return variance;
}

} // namespace

std::optional<double> median(std::vector<double> values, std::size_t atLeast)
{
    if (values.empty() || values.size() < atLeast)
        return std::nullopt;
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    if (values.size() % 2 == 1)
        return *middle;
    return (*std::max_element(values.begin(), middle) + *middle) / 2;
}

std::optional<Interval> wilson(std::int64_t successes, std::int64_t trials)
{
    if (trials <= 0)
        return std::nullopt;
    constexpr double z = kNormal975;
    const auto r = static_cast<double>(successes);
    const auto n = static_cast<double>(trials);
    const double centre = 2 * r + z * z;
    const double half = z * std::sqrt(z * z + 4 * r * (n - r) / n);
    const double divisor = 2 * (n + z * z);
    return Interval{std::clamp((centre - half) / divisor, 0.0, 1.0), std::clamp((centre + half) / divisor, 0.0, 1.0)};
}

std::optional<Trend> trend(std::span<const TimedValue> values, std::size_t atLeast, double quantile)
{
    if (values.empty() || values.size() < atLeast || values.front().time == values.back().time)
        return std::nullopt;
    std::vector<double> slopes;
    slopes.reserve(values.size() * (values.size() - 1) / 2);
    Trend result{.n = static_cast<int>(values.size())};
    for (std::size_t i = 0; i < values.size(); ++i) {
        for (std::size_t j = i + 1; j < values.size(); ++j) {
            if (values[j].time == values[i].time)
                continue;
            const double rise = values[j].value - values[i].value;
            result.s += rise > 0 ? 1 : rise < 0 ? -1 : 0;
            slopes.push_back(rise / (values[j].time - values[i].time));
        }
    }
    std::sort(slopes.begin(), slopes.end());
    const std::size_t count = slopes.size();
    result.slope = count % 2 == 1 ? slopes[count / 2] : (slopes[count / 2 - 1] + slopes[count / 2]) / 2;
    result.varS = varianceOfS(values);
    const double sigma = std::sqrt(result.varS);
    if (result.s != 0) // then var(S) is above 0
        result.z = static_cast<double>(result.s - (result.s > 0 ? 1 : -1)) / sigma;
    result.p = std::erfc(std::abs(result.z) / std::sqrt(2.0));
    const auto all = static_cast<double>(count);
    const double low = std::max(std::nearbyint((all - quantile * sigma) / 2) - 1, 0.0);
    const double high = std::min(std::nearbyint((all + quantile * sigma) / 2), all - 1);
    result.lower = slopes[static_cast<std::size_t>(low)];
    result.upper = slopes[static_cast<std::size_t>(high)];
    return result;
}

std::optional<IndividualsChart> individualsChart(std::span<const TimedValue> values, std::size_t atLeast)
{
    constexpr double rangeToSigma = 1.128; // d2 of two values
    if (values.empty() || values.size() < atLeast)
        return std::nullopt;
    double sum = 0;
    double ranges = 0;
    int pairs = 0;
    for (std::size_t i = 0; i < values.size(); ++i) {
        sum += values[i].value;
        if (i > 0 && values[i].time - values[i - 1].time == 1) {
            ranges += std::abs(values[i].value - values[i - 1].value);
            ++pairs;
        }
    }
    IndividualsChart chart{sum / static_cast<double>(values.size()), std::nullopt, std::nullopt};
    if (pairs > 0)
        chart.meanRange = ranges / pairs;
    if (ranges > 0) {
        const double reach = 3 * *chart.meanRange / rangeToSigma;
        chart.limits = Interval{chart.centre - reach, chart.centre + reach};
    }
    return chart;
}

std::optional<double> ratio(double part, double whole) noexcept
{
    if (whole == 0)
        return std::nullopt;
    return part / whole;
}

} // namespace morrow
