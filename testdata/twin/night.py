"""A second calculation of a whole year at the line, in plain Python, to hold against the program's own.

Written from the written equations alone. It reads a JSON list of cases on standard input: a variant and a load as they
stand in the project document, the power that panels and controller bring to the line by hour, the temperature of the
air round the batteries, the night that each hour belongs to, and each lifted mass as it was reduced. It prints for each
what the nights get, what every store takes and gives, and the current that each battery is rated at.
"""
import json
import math
import sys

H = 3600.0
MONTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

# Typical values of the kinds: depth, round trip, Peukert's k, hours of the label, charge and draw rate (1/h), coldest and
# warmest charge (°C), loss a month, state of charge from which less is taken, capacity over temperature (a, b, c).
LEAD = (.711009126, .0138667895, -.0000933332591)  # fit to IEEE 485, table 1
ION = (.848, .01206, -.000226)
KINDS = {
    "flooded_lead": (.5, .78, 1.20, 20, .13, .2, -20, 50, .05, .80, LEAD),
    "sealed_lead": (.5, .83, 1.12, 20, .2, .3, -20, 50, .02, .80, LEAD),
    "lfp": (.8, .93, 1.03, 5, .5, 1, 0, 45, .025, .95, ION),
    "nmc": (.8, .94, 1.03, 5, .5, 1, 0, 45, .02, .95, ION),
    "nickel_iron": (.8, .60, 1.15, 5, .2, .25, 0, 45, .20, .9, LEAD),
    "sodium_ion": (.9, .90, 1.03, 5, .5, 1, -20, 45, .03, .95, ION),
}
NAMES = ["usable_depth", "round_trip", "peukert", "rated_time_s", "charge_rate_per_h", "draw_rate_per_h", "charge_min_c", "charge_max_c",
         "leak_per_month"]


def month_of(hour):
    day = hour // 24
    for m, days in enumerate(MONTHS):
        if day < days:
            return m + 1
        day -= days


def overlap(hour, start, end):
    """The share of a clock hour between two times of the day, over midnight where the end comes first."""
    a, b = hour * H, (hour + 1) * H
    if start == end:
        return 1.0
    spans = [(start, end)] if start < end else [(start, 86400), (0, end)]
    return sum(max(0.0, min(b, q) - max(a, p)) for p, q in spans) / H


def load_of(load, hours):
    essential, nice = [0.0] * hours, [0.0] * hours
    inverter = load["inverter"]
    standing = sum(s["power_w"] for s in load["standing"])
    through = any(a["supply"] == "inverter" for a in load["appliances"])
    if inverter["present"] == "yes" or inverter["present"] == "" and through:
        standing += inverter["idle_w"]
    month = [month_of(h) for h in range(hours)]
    for a in load["appliances"]:
        power = a["power_w"] * a["count"] * (1 if a["share_on"] is None else a["share_on"])
        if a["supply"] == "inverter":
            power /= .85 if inverter["efficiency"] is None else inverter["efficiency"]
        into = essential if a["priority"] == "essential" else nice
        day = [power * overlap(h, a["from_s"], a["to_s"]) for h in range(24)]
        for h in range(hours):
            if not a["months"] or month[h] in a["months"]:
                into[h] += day[h % 24]
    return essential, nice, standing


class Cells:
    def __init__(self, b, air):
        kind = KINDS[b["kind"]]
        get = {}
        for name, typical in zip(NAMES, kind):
            get[name] = typical * (3600 if name == "rated_time_s" else 1) if b[name] is None else b[name]
        self.charge = b["block_capacity_c"] * (b["parallel"] or 1)
        self.volts = b["block_voltage_v"] * (b["series"] or 1)
        label = self.charge * self.volts  # J
        self.label, self.depth = label, get["usable_depth"]
        self.k, self.rated = get["peukert"], get["rated_time_s"]
        if b["charge_efficiency"] is not None and b["discharge_efficiency"] is not None:
            self.into, self.out = b["charge_efficiency"], b["discharge_efficiency"]
        else:
            self.into = self.out = math.sqrt(get["round_trip"])
        self.charge_w = label / H * get["charge_rate_per_h"]
        self.draw_w = label / H * get["draw_rate_per_h"]
        self.standing = b["standing_w"] or 0
        self.keep = math.exp(math.log(1 - get["leak_per_month"]) / (365.25 / 12 * 86400) * H)
        bend = kind[9]
        n = len(air)
        warm = [sum(air[(h - j) % n] for j in range(24)) / 24 for h in range(n)]
        self.blocked = [t < get["charge_min_c"] or t > get["charge_max_c"] for t in warm]
        a, bb, c = kind[10]
        self.locked = [1 - max(0, min(1, a + bb * t + c * t * t)) for t in warm]
        self.bend = bend

    def size(self, current):
        share = 1.0 if current <= 0 else min(1.0, (self.charge / (current * self.rated)) ** (self.k - 1))
        self.share = share
        self.X = self.label * share * self.depth
        # the state of charge is 1 − depth·(1 − x/X): power falls from the bend to a twentieth when full
        self.x_bend = self.X * (1 - (1 - self.bend) / self.depth)

    def accept(self, x):
        """The power that charging takes at a state, W."""
        if x <= self.x_bend:
            return self.charge_w
        return self.charge_w * (1 - .95 * (x - self.x_bend) / (self.X - self.x_bend))

    def begin(self, h, x):
        return x * self.keep

    def fill(self, h, x, offered):
        """State and joules taken after an hour with that power offered."""
        if self.blocked[h] or offered <= 0 or x >= self.X:
            return x, 0.0
        left, start = H, x
        u = min(offered, self.charge_w)
        # up to the state at which the falling line meets what is offered
        slope = .95 * self.charge_w / (self.X - self.x_bend)
        meet = self.x_bend + (self.charge_w - u) / slope
        if x < meet:
            t = min(left, (min(meet, self.X) - x) / (self.into * u))
            x, left = x + self.into * u * t, left - t
        if left > 0 and x < self.X:
            # dx/dt = into·accept(x), a straight line in x: the state nears the zero of accept as e^(−into·slope·t)
            zero = self.x_bend + self.charge_w / slope
            x = min(self.X, zero - (zero - x) * math.exp(-self.into * slope * left))
        return x, (x - start) / self.into

    def draw(self, h, x, asked):
        floor = max(0.0, self.locked[h] * self.X)
        y = min(asked, self.draw_w)
        if y <= 0 or x <= floor:
            return x, 0.0
        gone = min(y * H / self.out, x - floor)
        return x - gone, gone * self.out


class Mass:
    def __init__(self, r):
        self.r, self.X, self.standing = r, r["Capacity"], r["Standing"]
        self.keep = math.exp(-r["Leak"] * H)

    def begin(self, h, x):
        if h % 24 == 0:
            self.today = self.r["FillCap"]
        return x * self.keep

    def fill(self, h, x, offered):
        r = self.r
        if offered <= 0 or offered < r["FillThreshold"] or x >= self.X:
            return x, 0.0
        u = r["FillMax"] if r["FillStep"] else min(offered, r["FillMax"])
        rate = r["FillGain"] * u - r["FillLoss"]
        if rate <= 0:
            return x, 0.0
        time = H if u <= offered else H * offered / u
        rise = min(rate * time, self.X - x)
        if r["FillCap"] > 0:
            rise = min(rise, self.today)
            self.today -= rise
        return x + rise, u * rise / rate

    def draw(self, h, x, asked):
        r = self.r
        y = min(asked, r["DrawMax"])
        rate = r["DrawGain"] * max(y, r["DrawMin"]) + r["DrawLoss"]
        if y <= 0 or rate <= 0 or x <= 0:
            return x, 0.0
        t = min(H, x / rate)
        return x - rate * t, y * t


def year(stores, bus, total):
    """The settled year: taken, delivered and state by store, what is missing and left over by hour, joules."""
    x = [s.X for s in stores]
    n = len(bus)
    for turn in range(20):
        start = list(x)
        taken = [[0.0] * n for _ in stores]
        given = [[0.0] * n for _ in stores]
        miss, over = [0.0] * n, [0.0] * n
        for h in range(n):
            net = (bus[h] - total[h]) * H
            for k, s in enumerate(stores):
                x[k] = s.begin(h, x[k])
                if net >= 0:
                    x[k], e = s.fill(h, x[k], net / H)
                    taken[k][h], net = e, max(0.0, net - e)
                else:
                    x[k], e = s.draw(h, x[k], -net / H)
                    given[k][h], net = e, min(0.0, net + e)
                if abs(net) < 1e-9:  # what rounding leaves of a wish that was met
                    net = 0.0
            if net < 0:
                miss[h] = -net
            else:
                over[h] = net
        if all(abs(a - b) <= 1e-9 * s.X for a, b, s in zip(x, start, stores)):
            break
    return taken, given, miss, over


def longest(flags):
    n, best, run = len(flags), 0, 0
    for h in range(2 * n):
        run = run + 1 if flags[h % n] else 0
        best = max(best, run)
    return min(best, n)


def answer(case):
    v, bus, night = case["variant"], case["bus"], case["night"]
    n = len(bus)
    essential, nice, standing = load_of(case["load"], n)
    standing += sum(s["power_w"] for s in v["standing"]) + v["controller"]["standing_w"]
    stores, cells = [], []
    for s, mass in zip(v["stores"], case["masses"]):
        if s.get("cells"):
            one = Cells(s["cells"], case["air"])
            cells.append((len(stores), one))
            stores.append(one)
        elif mass:
            stores.append(Mass(mass))
    # standing of the line without the stores' own: the mean night that the first current is taken from
    dark = [h for h in range(n) if night[h] >= 0]
    mean = sum(essential[h] + nice[h] + standing - sum(s["power_w"] for s in v["standing"]) - v["controller"]["standing_w"] for h in dark) / len(dark)
    current = {k: mean / c.volts for k, c in cells}
    own = sum(s.standing for s in stores)
    total = [essential[h] + nice[h] + standing + own for h in range(n)]
    for turn in range(3):
        for k, c in cells:
            c.size(current[k])
        taken, given, miss, over = year(stores, bus, total)
        before = [c.share for _, c in cells]
        for k, c in cells:
            drawn = [e for e in given[k] if e > 0]
            if drawn:
                current[k] = sum(drawn) / (len(drawn) * H) / c.volts
        after = [1.0 if current[k] <= 0 else min(1.0, (c.charge / (current[k] * c.rated)) ** (c.k - 1)) for k, c in cells]
        if after == before:
            break
    wanted, lacking, lacks_essential = {}, {}, [0.0] * n
    for h in range(n):
        lack_nice = min(miss[h], nice[h] * H)
        lack_essential = min(miss[h] - lack_nice, essential[h] * H)
        lacks_essential[h] = lack_essential
        if night[h] >= 0:
            wanted[night[h]] = wanted.get(night[h], 0) + (essential[h] + nice[h]) * H
            lacking[night[h]] = lacking.get(night[h], 0) + lack_nice + lack_essential
    week = 7 * 24
    sums, run = 0.0, sum(miss[:week])
    for h in range(n):
        sums = max(sums, run)
        run += miss[(h + week) % n] - miss[h]
    return {
        "nights": len(wanted), "served": sum(1 for d in wanted if lacking[d] <= 1e-6 * wanted[d]),
        "wanted": sum(wanted.values()), "lacking": sum(lacking.values()),
        "taken": [sum(t) for t in taken], "given": [sum(g) for g in given], "capacity": [s.X for s in stores],
        "current": [current[k] for k, _ in cells], "missing": sum(miss), "over": sum(over),
        "outage": longest([e > 0 for e in lacks_essential]), "week": sums,
    }


json.dump([answer(c) for c in json.load(sys.stdin)], sys.stdout)
