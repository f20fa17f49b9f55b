"""A second calculation of a managed year, in plain Python, from the written rule of an hour alone.

Reads a JSON list of homes on standard input and prints a JSON list of what each year comes to, once it repeats itself or
after twenty turns. Watts by hour, joules, shares; an hour is 3600 s.

The rule, each hour, in this order:
 a. leak and locks
 b. at clock 0: what waits grows by the day's energy; what is above (1 + carry) days is missed; the backup's hours are 0
 c. charge = sum(x - locked) / sum(X - locked), once (x between 0 and X)
 d. each level, highest first: on and charge < shed: off; off and charge >= back: on
 e. backup: off, charge < start, allowed, hours left: on; on and (charge >= stop, not allowed or none left): off
 f. M = standing + levels on; room = max(0, bus - M)
 g. each waiting load in order, window open, B > 0, u = min(P, B/H): must and B > P H (hours left - 1): runs at u; else if
    charge >= run_above: u = min(u, room); else it asks again in h
 h. n = bus - M >= 0: stores are offered n + eta c; what they take is sun up to n; sun left to those that ask again
 i. n < 0: the backup covers: stores are offered eta min(rated - y, charge); else they are drawn; the rest is unmet
 j. levels that are off: shed, a part of unmet
"""
import json
import math
import sys

H = 3600.0


class Store:
    def __init__(self, s):
        self.s, self.x = s, s["X"]
        self.taken = self.delivered = 0.0

    def leak(self):
        self.x *= math.exp(-self.s["leak"] * H)

    def locked(self, h):
        locks = self.s["locked"]
        return min(1.0, locks[h]) * self.s["X"] if locks else 0.0

    def offer(self, watts, h):
        """Takes what it can of an offer and returns the mean power taken."""
        s = self.s
        if watts <= 0 or watts < s["pth"] or (s["nofill"] and s["nofill"][h]) or self.x >= s["X"]:
            return 0.0
        u = min(watts, s["pf"])
        rate = s["af"] * u - s["bf"]
        if rate <= 0:
            return 0.0
        t = min(H, (s["X"] - self.x) / rate)
        self.x = s["X"] if t < H else self.x + rate * t
        self.taken += u * t
        return u if t == H else u * t / H

    def ask(self, watts, h):
        """Gives what it can of a wish and returns the mean power given."""
        s, floor = self.s, self.locked(h)
        y = min(watts, s["pd"])
        rate = s["ad"] * max(y, s["pmin"]) + s["bd"]
        if y <= 0 or rate <= 0 or self.x <= floor:
            return 0.0
        t = min(H, (self.x - floor) / rate)
        self.x = floor if t < H else self.x - rate * t
        self.delivered += y * t
        return y if t == H else y * t / H


class Wait:
    def __init__(self, a):
        self.a, self.b = a, 0.0

    def left(self, clock):
        """Hours of the window that are left with this one; 0 where it is closed."""
        a, hours = self.a, 0
        if a["from"] == a["to"]:
            return 24 - clock
        span = (a["to"] - a["from"]) % 24 or 24
        since = (clock - a["from"]) % 24
        if since < span:
            hours = span - since
        return hours


def allowed(b, clock):
    return b["from"] == b["to"] or (clock - b["from"]) % 24 < (b["to"] - b["from"]) % 24


class Home:
    def __init__(self, c):
        self.c = c
        self.stores = [Store(s) for s in c["stores"]]
        self.waits = [Wait(a) for a in c["waiting"]]
        self.on = [True] * len(c["levels"])
        self.backup = False
        self.order = sorted(range(len(c["levels"])), key=lambda i: -c["levels"][i]["below"])

    def state(self):
        return [s.x for s in self.stores], [w.b for w in self.waits], list(self.on), self.backup

    def turn(self):
        c, got = self.c, dict.fromkeys(
            "direct backup_direct charged out fuel hours starts spilled load unmet unmet_essential unmet_nice".split(), 0.0)
        got["shed"], got["level_hours"] = [0.0] * len(self.on), [0] * len(self.on)
        for key in "asked run missed".split():
            got[key] = [0.0] * len(self.waits)
        for s in self.stores:
            s.taken = s.delivered = 0.0
        used = 0
        for h in range(len(c["bus"])):
            clock, gone = h % 24, {"essential": 0.0, "nice": 0.0}
            for s in self.stores:
                s.leak()
            if clock == 0:
                used = 0
                for i, w in enumerate(self.waits):
                    e = w.a["energy"][h // 24]
                    w.b += e
                    got["asked"][i] += e
                    if w.b > (1 + w.a["carry"]) * e:
                        got["missed"][i] += w.b - (1 + w.a["carry"]) * e
                        w.b = (1 + w.a["carry"]) * e
            hold = sum(s.s["X"] - s.locked(h) for s in self.stores)
            have = sum(max(0.0, min(s.x, s.s["X"]) - s.locked(h)) for s in self.stores)
            charge = have / hold if hold > 0 else 0.0
            for i in self.order:
                l = c["levels"][i]
                if self.on[i] and charge < l["below"]:
                    self.on[i] = False
                elif not self.on[i] and charge >= l["back"]:
                    self.on[i] = True
            b = c["backup"]
            if b:
                may = allowed(b, clock) and used < b["most"]
                if not self.backup and charge < b["start"] and may:
                    self.backup = True
                    got["starts"] += 1
                elif self.backup and (charge >= b["stop"] or not may):
                    self.backup = False
                if self.backup:
                    used += 1
                    got["hours"] += 1
            on = {"essential": c["essential"][h], "nice": c["nice"][h]}
            for i, l in enumerate(c["levels"]):
                if self.on[i]:
                    on["essential"] += l["essential"][h]
                    on["nice"] += l["nice"][h]
                else:
                    gone["essential"] += l["essential"][h]
                    gone["nice"] += l["nice"][h]
                    got["shed"][i] += (l["essential"][h] + l["nice"][h]) * H
                    got["level_hours"][i] += l["essential"][h] + l["nice"][h] > 0
            bus = c["bus"][h]
            need = c["standing"] + on["essential"] + on["nice"]
            n, again = bus - need, []  # what the line has over: what takes all of it leaves exactly nothing
            for i, w in enumerate(self.waits):
                left = w.left(clock)
                if left == 0 or w.b <= 0:
                    continue
                u = min(w.a["power"], w.b / H)
                if w.a["must"] and w.b > w.a["power"] * H * (left - 1):
                    pass
                elif charge >= w.a["run_above"]:
                    u = min(u, max(0.0, n))
                else:
                    again.append((i, w, u))
                    continue
                need += u
                n -= u
                w.b = max(0.0, w.b - u * H)
                got["run"][i] += u * H
                on["essential" if w.a["essential"] else "nice"] += u
            lack, direct, charged = 0.0, 0.0, 0.0
            if n >= 0:
                offered = n + (b["gain"] * min(b["rated"], b["charge"]) if self.backup else 0.0)
                taken = 0.0
                for s in self.stores:
                    taken += s.offer(offered - taken, h)
                sun = min(taken, n)
                charged, rest = taken - sun, n - sun
                for i, w, u in again:
                    u = min(u, rest)
                    rest -= u
                    need += u
                    w.b = max(0.0, w.b - u * H)
                    got["run"][i] += u * H
                    on["essential" if w.a["essential"] else "nice"] += u
                got["spilled"] += rest * H
                got["direct"] += need * H
            else:
                got["direct"] += bus * H
                if self.backup and b["rated"] >= -n:
                    direct = -n
                    offered = b["gain"] * min(b["rated"] - direct, b["charge"])
                    for s in self.stores:
                        charged += s.offer(offered - charged, h)
                else:
                    direct = b["rated"] if self.backup else 0.0
                    lack = -n - direct
                    for s in self.stores:
                        lack -= s.ask(lack, h)
                    lack = max(0.0, lack)
            if self.backup:
                out = direct + charged / b["gain"]
                got["backup_direct"] += direct * H
                got["charged"] += charged * H
                got["out"] += out * H
                got["fuel"] += (b["f0"] * b["rated"] + b["f1"] * out) / 1000
            nice = min(lack, on["nice"])
            got["unmet_nice"] += (nice + gone["nice"]) * H
            got["unmet_essential"] += (min(lack - nice, on["essential"]) + gone["essential"]) * H
            got["unmet"] += (lack + gone["essential"] + gone["nice"]) * H
            got["load"] += (need + gone["essential"] + gone["nice"]) * H
        got["taken"] = [s.taken for s in self.stores]
        got["delivered"] = [s.delivered for s in self.stores]
        got["end"] = [s.x for s in self.stores]
        return got

    def year(self):
        for passes in range(1, 21):
            was = self.state()
            got = self.turn()
            now = self.state()
            same = was[2:] == now[2:]
            for s, x, y in zip(self.stores, was[0], now[0]):
                same = same and abs(x - y) <= 1e-9 * s.s["X"]
            for w, x, y in zip(self.waits, was[1], now[1]):
                same = same and abs(x - y) <= 1e-9 * max(w.a["energy"])
            if same:
                break
        got["passes"], got["settled"] = passes, same
        return got


json.dump([Home(c).year() for c in json.load(sys.stdin)], sys.stdout)
