// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

#include "measures/statistics.h"

#include <algorithm>
#include <cmath>

namespace morrow {

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

std::optional<double> ratio(double part, double whole) noexcept
{
    if (whole == 0)
        return std::nullopt;
    return part / whole;
}

} // namespace morrow
