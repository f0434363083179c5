# SPDX-FileCopyrightText: The project authors
# SPDX-License-Identifier: GPL-3.0-only
"""The statistics of sections 3 and 5, by SciPy where it has them in the same convention."""

import math
from collections import Counter
from functools import lru_cache

from scipy.special import erfc
from scipy.stats import binomtest, norm, theilslopes


def median(values, at_least=1):
    """The median, None if there are fewer than `at_least` values."""
    ordered = sorted(values)
    if len(ordered) < max(at_least, 1):
        return None
    middle = len(ordered) // 2
    return ordered[middle] if len(ordered) % 2 else (ordered[middle - 1] + ordered[middle]) / 2


def mean(values):
    return math.fsum(values) / len(values)


@lru_cache(maxsize=None)
def wilson(part, whole):
    """95 % interval of part/whole, None if whole is 0."""
    if whole == 0:
        return None
    interval = binomtest(part, whole).proportion_ci(confidence_level=0.95, method='wilson')
    return [max(interval.low, 0.0), min(interval.high, 1.0)]


def kendall(values):
    """S and var(S) with tie correction, of values in the order of time."""
    n = len(values)
    s = sum((later > earlier) - (later < earlier)
            for i, earlier in enumerate(values) for later in values[i + 1:])
    ties = sum(t * (t - 1) * (2 * t + 5) for t in Counter(values).values())
    return s, (n * (n - 1) * (2 * n + 5) - ties) / 18


def trend(times, values, confidence=0.95):
    """Sen slope with interval and Kendall test; `times` are all different."""
    s, variance = kendall(values)
    line = theilslopes(values, times, alpha=confidence)
    z = 0.0 if s == 0 or variance == 0 else (s - math.copysign(1, s)) / math.sqrt(variance)
    return {'n': len(values), 'slopePerWeek': float(line.slope), 'lower': float(line.low_slope),
            'upper': float(line.high_slope), 's': s, 'varS': variance, 'z': z,
            'p': float(erfc(abs(z) / math.sqrt(2)))}


def chart(values):
    """Individuals chart of (day, value): centre, mean range over neighbouring days, limits before clipping."""
    centre = mean([value for _, value in values])
    ranges = [abs(value - before) for (yesterday, before), (day, value) in zip(values, values[1:])
              if day == yesterday + 1]
    if not ranges:
        return centre, None, None, None
    spread = mean(ranges)
    return centre, spread, centre - 3 * spread / 1.128, centre + 3 * spread / 1.128


assert norm.ppf(0.975) == 1.959963984540054, 'SciPy takes another z than the page of definitions'
