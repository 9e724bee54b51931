"""A general-purpose fit of the same record, for comparison: interval-censored mass balance by scipy.

Reads {"looks": [[at, low, high], ...], "changes": [[at, fraction, newWater], ...]} from standard input
(open ends as null) and prints the median milliseconds of one fit and its production per day.
"""

import json
import sys
import time

import numpy
from scipy.optimize import minimize
from scipy.special import log_ndtr


def main():
    record = json.load(sys.stdin)
    looks = sorted(record["looks"])
    changes = sorted(record["changes"])
    start = looks[0][0]
    kept, made, brought = 1.0, 0.0, 0.0
    clock, rows, following = start, [], 0
    changes = [change for change in changes if change[0] >= start]
    for at, low, high in looks:
        while following < len(changes) and changes[following][0] < at:
            when, fraction, new_water = changes[following]
            made += when - clock
            kept, made, brought = kept * (1 - fraction), made * (1 - fraction), brought * (1 - fraction) + fraction * new_water
            clock, following = when, following + 1
        made += at - clock
        clock = at
        rows.append((kept, made, brought, -numpy.inf if low is None else low, numpy.inf if high is None else high))
    kept, made, brought, low, high = numpy.array(rows).T

    def cost(theta):
        level = theta[0] * kept + theta[1] * made + brought
        scatter = numpy.exp(theta[2]) + 0.1 * numpy.maximum(level, 0)
        upper, lower = (high - level) / scatter, (low - level) / scatter
        flip = lower > 0
        upper, lower = numpy.where(flip, -lower, upper), numpy.where(flip, -upper, lower)
        a, b = log_ndtr(upper), log_ndtr(lower)
        return -numpy.sum(a + numpy.log1p(-numpy.minimum(numpy.exp(b - a), 1 - 1e-12)))

    times, found = [], None
    for _ in range(7):
        began = time.process_time()
        found = minimize(cost, [20.0, 1.0, 0.0], method="Nelder-Mead", options={"maxiter": 2000})
        times.append((time.process_time() - began) * 1000)
    print(json.dumps({"ms": sorted(times)[3], "perDay": float(found.x[1])}))


main()
