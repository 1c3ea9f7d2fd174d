"""Holds chances of a rise that the program prints against SciPy.

Usage: fall.py FILE
Each line of FILE: `case DELTA VALUE y s y s …`, VALUE the program's chance that of independent normal values
some later one lies DELTA or more above an earlier one.

Two values: the bivariate normal distribution. Three: adaptive quadrature of the plain densities over
the first two values, the last one in closed form. More: simulation, within five standard errors.
Prints `fall: N passed, N failed`.
"""

import sys

import numpy as np
from scipy import integrate, stats

TOLERANCE = 1e-7
DRAWS = 4_000_000


def two(values, delta):
    """θ2 − θ1 ≥ δ, as a bivariate normal probability of (θ1 − θ2) and a free value."""
    (y1, s1), (y2, s2) = values
    held = stats.multivariate_normal(mean=[y1 - y2, 0.0], cov=[[s1 * s1 + s2 * s2, 0.0], [0.0, 1.0]])
    return held.cdf([-delta, 40.0])


def density(value, t):
    return stats.norm.pdf(t, loc=value[0], scale=value[1])


def no_rise(values, delta):
    """The chance of no rise, by quadrature over all values but the last."""
    *front, last = values

    def inner(low):
        return stats.norm.cdf((low + delta - last[0]) / last[1])

    def level(number, low):
        value = front[number]
        top = value[0] + 9 * value[1] if number == 0 else min(low + delta, value[0] + 9 * value[1])
        bottom = value[0] - 9 * value[1]
        if top <= bottom:
            return 0.0

        def at(t):
            least = t if number == 0 else min(low, t)
            after = inner(least) if number + 1 == len(front) else level(number + 1, least)
            return density(value, t) * after

        kinks = [value[0]] + ([low] if number else [])
        points = sorted(point for point in kinks if bottom < point < top)
        found, _ = integrate.quad(at, bottom, top, points=points or None, epsabs=1e-10, epsrel=1e-9, limit=200)
        return found

    return level(0, None)


def simulated(values, delta, seed):
    y = np.array([value[0] for value in values])
    s = np.array([value[1] for value in values])
    draws = np.random.default_rng(seed)
    hits = total = 0
    for _ in range(DRAWS // 500_000):
        theta = y + s * draws.standard_normal((500_000, len(y)))
        lowest = np.minimum.accumulate(theta, axis=1)
        hits += int(np.count_nonzero((theta[:, 1:] >= lowest[:, :-1] + delta).any(axis=1)))
        total += 500_000
    share = hits / total
    return share, 5 * np.sqrt(max(share * (1 - share), 1 / total) / total)


def main():
    passed = failed = 0
    worst = 0.0
    with open(sys.argv[1]) as file:
        for number, line in enumerate(file):
            delta, value, *numbers = (float(one) for one in line.split()[1:])
            values = list(zip(numbers[::2], numbers[1::2]))
            if len(values) == 2:
                expected, tolerance = two(values, delta), TOLERANCE
            elif len(values) == 3:
                expected, tolerance = 1.0 - no_rise(values, delta), TOLERANCE
            else:
                expected, tolerance = simulated(values, delta, number)
            off = abs(value - expected)
            if tolerance == TOLERANCE:
                worst = max(worst, off)
            if off <= tolerance:
                passed += 1
            else:
                failed += 1
                print(f"{line.strip()}: {value}, SciPy {expected} within {tolerance}")
    print(f"worst difference from an integral: {worst:.2g}")
    print(f"fall: {passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


sys.exit(main())
