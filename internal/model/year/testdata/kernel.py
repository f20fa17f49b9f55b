"""The lean kernel of a year in plain Python, for comparison: one store with straight curves.

Reads doubles from standard input: hours, times, X, pf, pd, gain, cost, standing, then bus[hours], total[hours].
Prints the best ns a step of the runs, then the last state, what found no room, what was above P_f, and the unmet.
"""
import array
import sys
import time


def run(X, pf, pd, gain, cost, standing, bus, total):
    x, over, above, unmet, per = X, 0.0, 0.0, 0.0, 3600 / cost
    for b, t in zip(bus, total):
        s = b - t - standing
        if s >= 0:
            if s > pf:
                above += s - pf
                s = pf
            x += s * gain
            if x > X:
                over += x - X
                x = X
        else:
            s = -s
            if s > pd:
                unmet += (s - pd) * 3600
                s = pd
            x -= s * cost
            if x < 0:
                unmet -= x * per
                x = 0.0
    return x, over, above, unmet


values = array.array("d", sys.stdin.buffer.read())
hours, times = int(values[0]), int(values[1])
bus, total = list(values[8 : 8 + hours]), list(values[8 + hours : 8 + 2 * hours])
best = float("inf")
for _ in range(times):
    begin = time.perf_counter_ns()
    result = run(*values[2:8], bus, total)
    best = min(best, (time.perf_counter_ns() - begin) / hours)
print("%.3f" % best, *("%.17g" % v for v in result))
