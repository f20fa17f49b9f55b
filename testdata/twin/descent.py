"""A way down from rest, for the second calculations: what time it takes and what reaches the loads.

Written from the written equations: (m q_d + J c^2) v' = K c (I* - I(v)), through the layers of rope from the outermost in,
1/2 (m q_d + J c^2) v^2 kept from one to the next. Between two speeds at which a load begins to conduct the current grows in a
straight line, so v comes near its end as e^(-t/tau); how long a stretch lasts is found by bisection.
"""
import math


def bisect(f, lo, hi):
    for _ in range(200):
        mid = (lo + hi) / 2
        if mid in (lo, hi):
            break
        if f(mid) < 0:
            lo = mid
        else:
            hi = mid
    return (lo + hi) / 2


class Loads:
    """What hangs on the wires: taken(u) is the current of all that is not held at a voltage, useful(u, i) the power that
    counts when all together take i, begins the voltages at which something begins to conduct, top the lowest held one."""

    def __init__(self, taken, useful, begins, top):
        self.taken, self.useful, self.begins, self.top = taken, useful, begins, top


def stretch(v, way, until, a, beta):
    """Time, way and last speed from speed v with v' = a - beta (v - v_0), until a speed or the end of the way."""
    def speed(t):
        return v + (a * t if beta == 0 else -a * math.expm1(-beta * t) / beta)

    def gone(t):
        if abs(beta * t) < 0.1:
            return v * t + a * t * t * sum((-beta * t) ** k / math.factorial(k + 2) for k in range(12))
        return v * t + a * (t + math.expm1(-beta * t) / beta) / beta
    far = 1.0
    while gone(far) < way:
        far *= 2
    t = bisect(lambda x: gone(x) - way, 0.0, far)
    if until < speed(t) and a > 0:
        t = bisect(lambda x: speed(x) - until, 0.0, t)
        return t, gone(t), until
    return t, way, speed(t)


def descent(layers, loads, r, brush, governed=None):
    """Time and useful energy. Each layer is (K c, I*, m q_d + J c^2, way, steady speed), the outermost first."""
    v, before, time, energy = 0.0, None, 0.0, 0.0
    for gear, star, heavy, way, steady in layers:
        if before is not None:
            v *= math.sqrt(before / heavy)
        before = heavy
        ends = [(0.0, 0.0)] + [(u + r * loads.taken(u), loads.taken(u)) for u in loads.begins]
        if loads.top < math.inf:
            ends.append((loads.top + r * loads.taken(loads.top), loads.taken(loads.top)))
        ends = sorted(x for x in (((e + brush) / gear, i) for e, i in ends) if 0 < x[0] < steady)
        ends.append((steady, 0.0 if governed else star))  # a governed load takes nothing until its speed is there
        start, less = 0.0, 0.0
        for k, (end, more) in enumerate(ends):
            last = k == len(ends) - 1
            if way <= 0 or (v >= end and not last):
                start, less = end, more
                continue
            if last and governed and v >= end * (1 - 1e-12):
                break
            slope = (more - less) / (end - start)  # A for a metre a second

            def at(x, slope=slope, end=end, more=more):
                return more + slope * (x - end)
            t, gone, to = stretch(v, way, math.inf if last and not governed else end, gear * (star - at(v)) / heavy, gear * slope / heavy)

            def watts(x):
                i = at(x)
                u = gear * x - brush - r * i
                if loads.top < math.inf and abs(u - loads.top) < 1e-9 * loads.top:
                    u = loads.top
                return loads.useful(u, i) if x > brush / gear else 0.0
            energy += work(watts, v, to, t, gear * (star - at(v)) / heavy, gear * slope / heavy)
            time, way, v, start, less = time + t, way - gone, to, end, more
        if way > 1e-15 and governed:
            time, energy, v = time + way / steady, energy + governed(star) * way / steady, steady
    return time, energy


def work(watts, v, to, t, a, beta):
    """The power, a square of the speed, over the time of one stretch."""
    if t == 0:
        return 0.0
    quarter = (to - v) / 4
    low, mid, high = watts(v + quarter), watts(v + 2 * quarter), watts(v + 3 * quarter)
    if beta * t < 14:  # Gauss, five points in each part of the time
        parts = 5 + int(4 * max(0.0, beta * t))
        x = (0.0, 0.5384693101056831, 0.906179845938664)
        w = (0.5688888888888889, 0.47862867049936647, 0.23692688505618908)
        total = 0.0
        for part in range(parts):
            for k in range(3):
                for side in ((1,) if k == 0 else (-1, 1)):
                    s = (part + (1 + side * x[k]) / 2) * t / parts
                    gain = a * s if beta == 0 else -a * math.expm1(-beta * s) / beta
                    z = gain / (4 * quarter) if quarter else 0.5
                    p = low * (z - .5) * (z - .75) * 8 - mid * (z - .25) * (z - .75) * 16 + high * (z - .25) * (z - .5) * 8
                    total += w[k] * p * t / (2 * parts)
        return total
    z, span = v + a / beta, -a / beta  # as good as there: v = z + span e^(-beta t)
    p0 = watts(z)
    one, two = watts(z + span / 2) - p0, watts(z + span / 4) - p0
    square = (one - 2 * two) / (1 / 4 - 1 / 8)
    line = 2 * one - square / 2
    x = math.exp(-beta * t)
    return p0 * t + line * (1 - x) / beta + square * (1 - x * x) / (2 * beta)
