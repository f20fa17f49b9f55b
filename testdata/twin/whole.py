"""A second calculation of a plan's whole answer, in plain Python, to hold against the program's own.

Written from the written equations alone: sun, panel, controller, load, battery, lifted mass, year, life and money, from
the project document to the answer. It reads a JSON list of cases on standard input: a project document as the program
exports it and the hourly sky over the place (W/m2 on the flat, of it diffuse, and degrees C). It prints for each case what
`duskweight evaluate` prints, under the same names.

A case may bring the power at the line of each variant ("bus"); the store side is then compared to rounding, and the way
from the sun to the line apart from it.
"""
import json
import math
import sys

from descent import Loads, descent

H = 3600.0
G = 9.80665
MONTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
N = 8760
MONTH_OF = [m for m, days in enumerate(MONTHS) for _ in range(days * 24)]  # 0 to 11
YEAR = 2001
DEG = math.pi / 180


def known(value, otherwise):
    return otherwise if value is None else value


def mean_of(values):
    return sum(values) / len(values)


# --- the sun's place (Meeus, Astronomical Algorithms, ch. 25, lower accuracy: 0.01 degree) ---

def julian(hours_utc):
    """Centuries since J2000.0 at hours of Universal Time since the first of January."""
    # Meeus 7.1 for 1 January 2001, 0 h: JD 2451910.5
    return (2451910.5 + hours_utc / 24 + 64.0 / 86400 - 2451545.0) / 36525


def declination_and_time(hours_utc):
    """Declination (rad) and equation of time (rad, apparent less mean)."""
    t = julian(hours_utc)
    l0 = (280.46646 + 36000.76983 * t + .0003032 * t * t) % 360
    m = (357.52911 + 35999.05029 * t - .0001537 * t * t) * DEG
    c = (1.914602 - .004817 * t) * math.sin(m) + (.019993 - .000101 * t) * math.sin(2 * m) + .000289 * math.sin(3 * m)
    omega = (125.04 - 1934.136 * t) * DEG
    lam = (l0 + c - .00569 - .00478 * math.sin(omega)) * DEG
    eps = (23.439291 - .0130042 * t + .00256 * math.cos(omega)) * DEG
    dec = math.asin(math.sin(eps) * math.sin(lam))
    ra = math.atan2(math.cos(eps) * math.sin(lam), math.cos(lam))
    e = (l0 * DEG - .0057183 * DEG - ra - .00478 * DEG * math.sin(omega) * math.cos(eps) + math.pi) % (2 * math.pi) - math.pi
    ecc = .016708634 - .000042037 * t
    distance = 1.000001018 * (1 - ecc * ecc) / (1 + ecc * math.cos(m + c * DEG))
    return dec, e, distance


class Sun:
    def __init__(self, place):
        self.lat = place["latitude_rad"]
        offset = place["utc_offset_s"]
        self.lon = known(place["longitude_rad"], 0.0 if offset is None else offset / H * 15 * DEG)
        self.offset = round(self.lon / DEG / 15) if offset is None else offset / H
        self.cache = {}

    def hour_angle_and(self, clock):
        utc = clock - self.offset
        dec, eot, dist = declination_and_time(utc)
        w = ((utc % 24) * 15 * DEG + self.lon + eot - math.pi + math.pi) % (2 * math.pi) - math.pi
        return w, dec, dist

    def at(self, clock):
        """Cosine of the zenith and the unit vector (east, north, up) at hours of clock time since the year began."""
        w, dec, dist = self.hour_angle_and(clock)
        up = math.sin(self.lat) * math.sin(dec) + math.cos(self.lat) * math.cos(dec) * math.cos(w)
        east = -math.cos(dec) * math.sin(w)
        north = math.cos(self.lat) * math.sin(dec) - math.sin(self.lat) * math.cos(dec) * math.cos(w)
        return east, north, up, dist

    def hour(self, h):
        """The sunlit share of a clock hour and the sun in the middle of that part; none at night."""
        a, b = float(h), h + 1.0
        ua, ub = self.at(a)[2], self.at(b)[2]
        if ua > 0 and ub > 0:
            return 1.0, self.at(h + .5)
        if ua <= 0 and ub <= 0:
            if self.at(h + .5)[2] <= 0:
                return 0.0, None
            peak = h + .5
            s, e = self.cross(a, peak), self.cross(b, peak)
        elif ua > 0:
            s, e = a, self.cross(b, a)
        else:
            s, e = self.cross(a, b), b
        return e - s, self.at((s + e) / 2)

    def cross(self, dark, light):
        for _ in range(40):
            mid = (dark + light) / 2
            if self.at(mid)[2] > 0:
                light = mid
            else:
                dark = mid
        return light

    def noon(self, day):
        """Clock hours of solar noon."""
        clock = day * 24 + 12.0
        for _ in range(3):
            w = self.hour_angle_and(clock)[0]
            clock -= w / (15 * DEG)
        return clock


def skyline(place, azimuth):
    points = sorted((p["azimuth_rad"], p["altitude_rad"]) for p in place["horizon"] or [])
    if not points:
        return 0.0
    two = 2 * math.pi
    azimuth %= two
    points = [(points[-1][0] - two, points[-1][1])] + points + [(points[0][0] + two, points[0][1])]
    for (a, x), (b, y) in zip(points, points[1:]):
        if a <= azimuth <= b:
            return x if a == b else x + (y - x) * (azimuth - a) / (b - a)
    return 0.0


def hides(place, normal):
    """The share of an even sky's light on a plane that comes from below the skyline: 1/pi of the integral of cos(theta)."""
    if not place["horizon"]:
        return 0.0
    total, around = 0.0, 720
    for i in range(around):
        azimuth = (i + .5) * 2 * math.pi / around
        flat = normal[0] * math.sin(azimuth) + normal[1] * math.cos(azimuth)
        top = skyline(place, azimuth)
        for j in range(10):
            alt = (j + .5) * top / 10
            total += max(0.0, flat * math.cos(alt) + normal[2] * math.sin(alt)) * math.cos(alt) * top / 10
    return total * 2 / around


def plane(place, array, sky, sun, hours):
    """Light on the panels; where they are tilted anew each month, each month's hours come from a plane of its tilt."""
    months = array["tilt_by_month_rad"]
    if not months:
        return tilted(place, array["tilt_rad"], array["azimuth_rad"], sky, hours)
    each = {t: tilted(place, t, array["azimuth_rad"], sky, hours) for t in set(months)}
    return tuple([each[months[MONTH_OF[h]]][k][h] for h in range(N)] for k in (0, 1))


def tilted(place, tilt, azimuth, sky, hours):
    """Light on a tilted plane by Hay and Davies (1980), and of it what gets through the glass, W/m2 by hour."""
    normal = (math.sin(tilt) * math.sin(azimuth), math.sin(tilt) * math.cos(azimuth), math.cos(tilt))
    albedo = known(place["albedo"], .2)
    out, through = [0.0] * N, [0.0] * N
    b = tilt / DEG
    hidden = hides(place, normal)
    # diffuse light counts as coming from one direction: Duffie and Beckman eq. 5.4.1 and 5.4.2
    from_ground = glass(math.cos((90 - .5788 * b + .002693 * b * b) * DEG))
    from_sky = glass(math.cos((59.7 - .1388 * b + .001497 * b * b) * DEG))
    for h in range(N):
        ghi, dhi = sky["ghi"][h], sky["dhi"][h]
        share, at = hours[h]
        if ghi <= 0:
            continue
        ground = ghi * albedo * (1 - math.cos(tilt)) / 2
        view = (1 + math.cos(tilt)) / 2 - hidden
        if share <= 0 or at is None:
            continue
        east, north, up, dist = at
        cos_i = max(0.0, east * normal[0] + north * normal[1] + up * normal[2])
        beam = max(0.0, ghi - dhi)
        outside = 1367.0 / (dist * dist) * up * share
        # what comes from the sun's own direction is at most 1.1 of a clear sky (Haurwitz)
        most = 1.1 * 1098 * up * math.exp(-.059 / up) * share
        beam, dhi = min(beam, most), dhi + max(0.0, beam - most)
        a = min(1.0, beam / outside) if outside > 0 else 0.0
        rb = cos_i / up
        seen = math.asin(up) > skyline(place, math.atan2(east, north))
        ring = min(most, beam + dhi * a)
        even = beam + dhi - ring
        direct = ring * rb if seen else 0.0
        out[h] = direct + even * view + ground
        through[h] = direct * glass(cos_i) + even * view * from_sky + ground * from_ground
    return out, through


def snow_on(place, array, light, sky):
    """Share of each month's power that snow takes: Townsend and Powers (2011), with depths in inches."""
    fall, times = place["snow_m"], place["snow_events"] or [1] * 12
    if not fall:
        return [0.0] * 12
    depth = [x / 2 * (1 + 1 / n) if n else 0.0 for x, n in zip(fall, times)]
    out = []
    for m in range(12):
        hours = [h for h in range(N) if MONTH_OF[h] == m]
        lies = (2 * depth[m] + depth[m - 1]) / 3
        kwh = sum(light[h] for h in hours) / 1000
        kelvin = 273.15 + sum(sky["tair"][h] for h in hours) / len(hours)
        tilt = array["tilt_by_month_rad"][m] if array["tilt_by_month_rad"] else array["tilt_rad"]
        room = 1.0
        if array["slant_m"] is not None and array["lower_edge_m"] is not None and array["lower_edge_m"] > lies:
            gamma = array["slant_m"] * lies * math.cos(tilt) * 2 * math.tan(40 * DEG) / (array["lower_edge_m"] ** 2 - lies ** 2)
            room = 1 - .51 * math.exp(-gamma)
        if lies <= 0:
            lost = 0.0
        elif kwh <= 0:
            lost = 1.0
        else:
            lost = min(1.0, 57000 * lies / .0254 * math.cos(tilt) ** 2 * room * .8 / kelvin ** 2 / kwh ** .67)
        out.append(lost / 4 if array["snow_cleared"] == "yes" else lost)
    return out


def glass(cos_i):
    """Share that gets through the cover glass over that straight on: De Soto (2006) eq. 14 and 15; n 1.526, 4/m, 2 mm."""
    if cos_i <= 0:
        return 0.0
    inside = math.acos(min(1.0, cos_i))
    bent = math.asin(math.sin(inside) / 1.526)
    if inside < 1e-6:
        back = ((1.526 - 1) / (1.526 + 1)) ** 2
    else:
        back = ((math.sin(bent - inside) / math.sin(bent + inside)) ** 2 + (math.tan(bent - inside) / math.tan(bent + inside)) ** 2) / 2
    return math.exp(-.008 / math.cos(bent)) * (1 - back) / (math.exp(-.008) * (1 - ((1.526 - 1) / (1.526 + 1)) ** 2))


def panels_of(variant, place, sky, sun, hours):
    """Power of all panels before the controller (W by hour), light on them (J/m2 a year, mean over their watts), label
    watts, and what snow takes of each array by month (None where none falls)."""
    power, label, lit, snows = [0.0] * N, 0.0, 0.0, []
    for a in variant["panels"] or []:
        light, cells = plane(place, a, sky, sun, hours)
        if a["shade"]:
            light = [g * (1 - a["shade"][MONTH_OF[h]]) for h, g in enumerate(light)]
            cells = [g * (1 - a["shade"][MONTH_OF[h]]) for h, g in enumerate(cells)]
        snow = snow_on(place, a, light, sky)
        snows.append(snow if any(place["snow_m"] or []) else None)
        watts = a["panel_w"] * a["count"]
        label += watts
        lit += watts * sum(light) * H
        keep = (1 - known(a["soiling"], .03)) * (1 - known(a["mismatch"], .02)) * (1 - known(a["wiring"], .02))
        gamma = known(a["gamma_per_k"], -.004)
        for h in range(N):
            g = light[h]
            if a["cell_temperature"] == "nominal":
                t = sky["tair"][h] + g / 800 * (a["nominal_cell_c"] - 20)
            else:
                t = sky["tair"][h] + g / (known(a["u0_w_m2k"], 25) + known(a["u1_ws_m3k"], 6.84) * known(a["wind_m_s"], 1))
            power[h] += max(0.0, watts * cells[h] / 1000 * (1 + gamma * (t - 25)) * keep * (1 - snow[MONTH_OF[h]]))
    return power, lit / label if label else None, label, snows


CURVE = [(.05, .80), (.10, .88), (.20, .93), (.50, .965), (1.0, .96)]


def along(curve, x):
    if x <= curve[0][0]:
        return curve[0][1]
    for (a, p), (b, q) in zip(curve, curve[1:]):
        if x <= b:
            return p + (q - p) * (x - a) / (b - a)
    return curve[-1][1]


def line_power(controller, power, label):
    """Power at the line by hour and what the controller takes all the time."""
    curve = [(p["load"], p["efficiency"]) for p in controller["efficiency_curve"] or []] or CURVE
    rated = known(controller["rated_w"], label)
    amps = {"tracking": .015, "pulse_width": .007, "direct": 0.0}[controller["kind"]]
    standing = known(controller["standing_w"], amps * known(controller["line_voltage_v"], 12.8))
    if not label:
        return [0.0] * N, standing
    bus = [min(rated, p * along(curve, p / rated)) if p > 0 else 0.0 for p in power]
    return bus, standing


# --- what the night needs ---

def overlap(hour, start, end):
    """The share of a clock hour between two times of the day, over midnight where the end comes first."""
    if start == end:
        return 1.0
    spans = [(start, end)] if start < end else [(start, 86400), (0, end)]
    a, b = hour * H, (hour + 1) * H
    return sum(max(0.0, min(b, q) - max(a, p)) for p, q in spans) / H


def nights_of(load, sun, given):
    """Whether the sun is down and which night an hour belongs to (-1 for none).

    Hours that another calculation of the sun decides the other way are taken from it where the sun stands within 0.02
    degrees of the line, which is what either owes; any other such hour is an error.
    """
    ups = [sun.at(h + .5)[2] for h in range(N)]
    down = [u < math.sin(-.833 * DEG) for u in ups]
    for h in range(N) if given else ():
        if given[h] != down[h]:
            if abs(math.asin(ups[h]) / DEG + .833) > .02:
                raise ValueError("hour %d: the sun stands at %.3f degrees" % (h, math.asin(ups[h]) / DEG))
            down[h] = given[h]
    own = load["night"]["hours"] == "own"
    noons = [sun.noon(d) for d in range(365)]
    night, d = [], 364
    for h in range(N):
        day = h // 24
        number = day if h + .5 >= noons[day] else (day - 1) % 365
        dark = down[h]
        if own:
            a, b = load["night"]["from_s"], load["night"]["to_s"]
            t = (h % 24 + .5) * H
            dark = (a <= t < b) if a < b else (t >= a or t < b)
        night.append(number if dark else -1)
    return down, night


def loads_of(load, down):
    essential, nice = [0.0] * N, [0.0] * N
    inverter = load["inverter"]
    standing = sum(known(s["power_w"], 0) for s in load["standing"] or [])
    through = any(a["supply"] == "inverter" for a in load["appliances"] or [])
    if inverter["present"] == "yes" or (inverter["present"] == "" and through):
        standing += known(inverter["idle_w"], 0)
    grown = (1 + known(load.get("growth_per_year"), 0)) ** known(load.get("growth_years"), 0)
    for a in load["appliances"] or []:
        watts = a["power_w"] * a["count"] * known(a["share_on"], 1) * grown
        if a["supply"] == "inverter":
            watts /= known(inverter["efficiency"], .85)
        into = essential if a["priority"] == "essential" else nice
        for h in range(N):
            if a["months"] and MONTH_OF[h] + 1 not in a["months"]:
                continue
            if a["from_dusk_s"] is not None:
                share = dusk_share(h, down, a["from_dusk_s"])
            else:
                share = overlap(h % 24, a["from_s"], a["to_s"])
                if a["after_dusk"] == "yes" and not down[h]:
                    share = 0.0
            into[h] += watts * share
    return essential, nice, standing


def dusk_share(h, down, length):
    """From the first hour with the sun down after one with the sun up, and at most until the sun is up again."""
    back = 0
    if not down[h]:
        return 0.0
    while back * H < length:
        k = (h - back) % N
        if down[k] and not down[k - 1]:
            return max(0.0, min(1.0, length / H - back))
        back += 1
    return 0.0


# --- batteries ---

LEAD = (.711009126, .0138667895, -.0000933332591)  # fit to IEEE 485, table 1
ION = (.848, .01206, -.000226)
FIELDS = ["usable_depth", "round_trip", "peukert", "rated_time_s", "charge_rate_per_h", "draw_rate_per_h", "charge_min_c", "charge_max_c",
          "leak_per_month", "cycle_life", "cycle_life_depth", "cycle_life_slope", "calendar_life_s"]
A = 365 * 86400.0
KINDS = {
    "flooded_lead": ([.5, .78, 1.20, 72000, .13, .2, -20, 50, .05, 750, .5, 2.0, 6 * A], .80, LEAD),
    "sealed_lead": ([.5, .83, 1.12, 72000, .2, .3, -20, 50, .02, 500, .5, 1.8, 7 * A], .80, LEAD),
    "lfp": ([.8, .93, 1.03, 18000, .5, 1, 0, 45, .025, 4000, .8, 1.2, 12 * A], .95, ION),
    "nmc": ([.8, .94, 1.03, 18000, .5, 1, 0, 45, .02, 1500, .8, 1.5, 9 * A], .95, ION),
    "nickel_iron": ([.8, .60, 1.15, 18000, .2, .25, 0, 45, .20, 8000, .8, 1, 25 * A], .9, LEAD),
    "sodium_ion": ([.9, .90, 1.03, 18000, .5, 1, -20, 45, .03, 2500, .8, 1.3, 10 * A], .95, ION),
}


# z, temperature of the Arrhenius law (K), law of the charge, least rate, longest years
AGEING = {
    "flooded_lead": (1, None, "", .8, 10), "sealed_lead": (1, None, "", .8, 8), "nickel_iron": (1, 0.0, "", 1, 40),
    "lfp": (.5, 2 * 17126 / 8.314462618, "iron", .5, 15), "sodium_ion": (.5, 2 * 17126 / 8.314462618, "iron", .5, 15),
    "nmc": (.75, 6976 / .75, "cobalt", .5, 12),
}


class Cells:
    kind = "cells"

    def __init__(self, b, air, place):
        typical, self.bend, capacity = KINDS[b["kind"]]
        v = {f: known(b[f], t) for f, t in zip(FIELDS, typical)}
        self.v, self.lead = v, b["kind"].endswith("lead")
        self.kind_of, self.ageing, self.end = b["kind"], AGEING[b["kind"]], known(b.get("end_share"), .8)
        self.z = self.ageing[0]
        self.name = b["name"]
        self.charge = b["block_capacity_c"] * known(b["parallel"], 1)
        self.volts = b["block_voltage_v"] * known(b["series"], 1)
        self.label = self.charge * self.volts
        if b["charge_efficiency"] is not None and b["discharge_efficiency"] is not None:
            self.into, self.out = b["charge_efficiency"], b["discharge_efficiency"]
        else:
            self.into = self.out = math.sqrt(v["round_trip"])
        self.fill_w, self.draw_w = self.label * v["charge_rate_per_h"] / H, self.label * v["draw_rate_per_h"] / H
        self.standing = known(b["standing_w"], 0)
        self.keep = (1 - v["leak_per_month"]) ** (1 / (365.25 / 12 * 24))
        room = place["indoor"]
        if room and b["place"] in ("own_room", "bedroom", "escape_route"):
            # a cosine through the middles of the months
            air = [room["mean_c"] + room["swing_k"] * math.cos(2 * math.pi * (h / 730 + .5 - room["warmest_month"]) / 12) for h in range(N)]
        run = sum(air[-23:]) + air[0]
        self.warm = []
        for h in range(N):
            self.warm.append(run / 24)
            run += air[(h + 1) % N] - air[(h - 23) % N]
        self.blocked = [t < v["charge_min_c"] or t > v["charge_max_c"] for t in self.warm]
        a, bb, c = capacity
        self.locked = [0.0 if t >= 25 else 1 - min(1.0, max(0.0, a + bb * t + c * t * t)) for t in self.warm]

    def size(self, current):
        self.current = current
        v = self.v
        self.share = 1.0 if current <= 0 else min(1.0, (self.charge / (current * v["rated_time_s"])) ** (v["peukert"] - 1))
        self.X = self.label * self.share * v["usable_depth"]
        self.knee = self.X * (1 - (1 - self.bend) / v["usable_depth"])
        self.new = self.X

    def begin(self, h, x):
        return x * self.keep

    def fill(self, h, x, offered):
        if self.blocked[h] or offered <= 0 or x >= self.X:
            return x, 0.0
        # dx/dt = into * min(offered, P(x)); P falls straight from fill_w at the knee to a twentieth of it when full
        left, start = H, x
        u = min(offered, self.fill_w)
        fall = .95 * self.fill_w / (self.X - self.knee)
        meet = min(self.X, self.knee + (self.fill_w - u) / fall)
        if x < meet:
            t = min(left, (meet - x) / (self.into * u))
            x += self.into * u * t
            left -= t
        if left > 0 and x < self.X:
            none = self.knee + self.fill_w / fall
            x = min(self.X, none - (none - x) * math.exp(-self.into * fall * left))
        return x, (x - start) / self.into

    def draw(self, h, x, asked):
        floor = self.locked[h] * self.X
        y = min(asked, self.draw_w)
        if y <= 0 or x <= floor:
            return x, 0.0
        gone = min(y * H / self.out, x - floor)
        return x - gone, gone * self.out

    def capacity(self, asked):
        return self.X * self.out

    def trip(self, asked):
        return self.into * self.out

    def left(self, part):
        """What is left of the capacity after a part of the life, 0 new to 1 at its end."""
        return 1 - (1 - self.end) * part ** self.z

    def age(self, part):
        """Holds what it holds after that part of its life; powers stay."""
        self.X *= self.left(part)
        self.knee *= self.left(part)

    def shelf(self, soc):
        """The share of the life on the shelf that the year takes: the mean rate of its hours."""
        arrhenius, cube, least = self.ageing[1:4]
        rates = []
        for t, s in zip(self.warm, soc):
            if self.lead:
                f = 2 ** ((t - 25) / (10 if self.kind_of == "flooded_lead" else 8))
            else:
                f = math.exp(arrhenius * (1 / 298.15 - 1 / (t + 273.15)))
            f = max(least, f)
            if cube == "iron":
                f *= (1 + 2.8575 * (s - .5) ** 3 / .60225) ** 2 / (1 + 2.8575 * .4 ** 3 / .60225) ** 2
            elif cube == "cobalt":
                f *= ((7.543 * rest(s) - 23.75) / (7.543 * rest(.9) - 23.75)) ** (4 / 3)
            rates.append(f)
        return mean_of(rates) / (self.v["calendar_life_s"] / A)

    def crystals(self, soc, drawn, small):
        """By how much faster lead wears that is seldom full; small currents count up to three times."""
        weighted = total = 0.0
        for turn in range(2):
            hours, low = 0, 1.0
            if turn:
                hours, low = kept
            for s, q in zip(soc, drawn):
                hours, low = (0, 1.0) if s >= .98 else (hours + 1, min(low, s))
                if turn and q > 0:
                    f = min(3.0, max(1.0, math.sqrt(self.label / 10 / q))) if small else 1.0
                    weighted += q * (1 + (6.614e-5 + 3.307e-3 * (1 - low) * f) * hours)
                    total += q
            kept = hours, low
        return min(5.0, weighted / total) if total else 1.0

    def life(self, state, drawn):
        """Low, usual and high years to the end share; shares a year; crystals; from the year's state of charge, joules."""
        v = self.v
        damage = 0.0
        # the state is counted from full
        full = [1 - (self.new - x) / self.label for x in state]
        for depth, weight in rainflow(full):
            damage += weight * (max(depth, 1e-300) / v["cycle_life_depth"]) ** v["cycle_life_slope"] / v["cycle_life"]
        longer = ((1 - self.end) / .2) ** (1 / self.z)
        shelf, damage = self.shelf(full) / longer, damage / longer
        usual, worst = (self.crystals(full, drawn, False), self.crystals(full, drawn, True)) if self.lead else (1.0, 1.0)
        cap = self.ageing[4]
        wear = damage * usual
        return {"years_low": min(cap, .6 / (shelf + damage * worst)), "years": min(cap, 1 / (shelf + wear)),
                "years_high": min(cap, 1 / max(shelf, wear)), "shelf_per_year": shelf, "wear_per_year": wear, "sulphation": usual}


def rest(s):
    """Volts of a nickel–manganese–cobalt cell at rest, in straight lines."""
    at, of = (0, .2, .4, .5, .6, .8, 1), (3.331, 3.581, 3.650, 3.698, 3.775, 3.965, 4.162)
    s = min(1.0, max(0.0, s))
    for i in range(6):
        if s <= at[i + 1]:
            return of[i] + (of[i + 1] - of[i]) * (s - at[i]) / (at[i + 1] - at[i])


def rainflow(x):
    """ASTM E1049 for a history that repeats, begun at its highest peak: (range, 1)."""
    top = x.index(max(x))
    x = x[top:] + x[:top + 1]
    turns = [x[0]]
    for a in x[1:]:
        if a == turns[-1]:
            continue
        if len(turns) > 1 and (a - turns[-1]) * (turns[-1] - turns[-2]) > 0:
            turns[-1] = a
        else:
            turns.append(a)
    stack, out = [], []
    for p in turns:
        stack.append(p)
        while len(stack) >= 3:
            new, old = abs(stack[-1] - stack[-2]), abs(stack[-2] - stack[-3])
            if new < old:
                break
            out.append((old, .5 if len(stack) == 3 else 1.0))
            if len(stack) == 3:
                stack.pop(0)
            else:
                del stack[-3:-1]
    out += [(abs(b - a), .5) for a, b in zip(stack, stack[1:])]
    return [(r, w) for r, w in out if r > 0]


# --- lifted mass ---

class Mass:
    kind = "hoist"

    def __init__(self, d):
        self.name = d["name"]
        self.m = sum(p["mass_kg"] for p in d["mass"])
        self.h, self.units = d["travel_m"], known(d["units"], 1)
        self.rope(d)
        self.gears(d)
        self.machine(d)
        self.raising(d["raise"])
        self.lowering(d["lower"])
        self.reduce()

    def rope(self, d):
        n, k = d["reeving"]["rope_parts"], d["reeving"]["lead_sheaves"]
        single = d["reeving"]["sheaves"] or []
        e = [known(single[j]["efficiency"], d["reeving"]["sheave_efficiency"]) if j < len(single) else d["reeving"]["sheave_efficiency"]
             for j in range(k + n)]
        self.n, weight = n, self.m * G
        # T_j over T_0 raising and lowering
        up, down = [1.0], [1.0]
        for j in range(k + n - 1):
            up.append(up[-1] * e[j])
            down.append(down[-1] / e[j])
        self.up, self.down = weight / sum(up[k:k + n]), weight / sum(down[k:k + n])
        drum, dia = d["drum"], d["rope"]["diameter_m"]
        wraps = math.inf if drum["width_m"] is None else math.floor(drum["width_m"] / dia + 1e-9)
        need = n * self.h
        self.layers = []  # (radius for torque, radius for energy, share of the travel)
        j, left, dead = 1, need, known(drum["dead_wraps"], 3)
        while left > 1e-12:
            force = (drum["diameter_m"] + dia) / 2 + dia * (j - 1)
            pay = (drum["diameter_m"] + dia) / 2 + .87 * dia * (j - 1)
            turns, dead = max(0, wraps - dead), max(0, dead - wraps)  # dead turns that find no room lie on the next layer
            take = min(left, turns * 2 * math.pi * pay)
            if take > 0:
                self.layers.append((force, pay, take / need))
            left -= take
            j += 1
        self.bearing = known(drum["bearing_torque_nm"], 0)

    def gears(self, d):
        self.stages = []
        for s in d["train"]["stages"]:
            eta, back = s["efficiency"], s["backward_efficiency"]
            ratio = s["ratio"]
            inside = known(s["stages_inside"], 1) if s["kind"] == "box" else 1
            if eta is None and s["kind"] == "planetary":
                i0 = ratio - 1
                e0 = s["mesh_efficiency"]
                eta, planetary = (1 + e0 * i0) / (1 + i0), (1 + i0) / (1 + i0 / e0)
                back = known(back, planetary)
            if eta is None and s["kind"] == "worm":
                mu, lead, phi = s["friction"], s["lead_angle_rad"], known(s["pressure_angle_rad"], 20 * DEG)
                eta = (math.cos(phi) - mu * math.tan(lead)) / (math.cos(phi) + mu / math.tan(lead))
                back = known(back, (math.cos(phi) - mu / math.tan(lead)) / (math.cos(phi) + mu * math.tan(lead)))
            for i in range(inside):
                self.stages.append((ratio ** (1 / inside), eta ** (1 / inside), known(back, 2 - eta ** (-1 / inside)) if inside == 1 else 2 - eta ** (-1 / inside),
                                    known(s["idle_torque_nm"], 0) if i == 0 else 0))
        self.N = math.prod(s[0] for s in self.stages)
        self.b = known(d["train"]["breakaway"], 1.5)
        if d["machine"]["i0_measured_with_gear"] == "yes":
            self.stages = [(r, e, k, 0) for r, e, k, _ in self.stages]

    def at_rotor_up(self, drum, b=1.0):
        t = drum + self.bearing
        for r, e, _, idle in reversed(self.stages):
            t = t / r * (1 + b * (1 / e - 1)) + idle * b
        return t

    def at_rotor_down(self, drum, b=1.0):
        t = drum - self.bearing
        for r, e, back, idle in reversed(self.stages):
            t = t * (1 - b * (1 - back)) / r - idle * b
            if t <= 0:
                return t
        return t

    def machine(self, d):
        m = d["machine"]
        self.Vb, self.I0 = known(m["brush_drop_v"], 0), m["i0_a"]
        # your own values, else those of the sheet: R = (V - V_b)/I_stall, K = (V - V_b - I_0 R)/w_0
        self.R = m["r_ohm"]
        if self.R is None:
            self.R = (m["sheet_voltage_v"] - self.Vb) / m["sheet_stall_current_a"]
        self.K = m["k_vs_rad"]
        if self.K is None:
            speed = m["sheet_no_load_speed_rad_s"] * known(m["sheet_gear_ratio"], 1)
            self.K = (m["sheet_voltage_v"] - self.Vb - self.I0 * self.R) / speed
        self.J = known(m["j_kg_m2"], 0)
        self.hot = (m["rth_winding_k_w"], m["tau_winding_s"], m["max_winding_c"], known(d["lower"]["ambient_c"], 25))

    def raising(self, r):
        self.feed, self.V = r["feed"], r["voltage_v"]
        self.eta, self.Pau = known(r["drive_efficiency"], 1), known(r["auxiliary_w"], 0)
        self.Rt, limit = self.R + known(r["wire_ohm"], 0), known(r["current_limit_a"], math.inf)
        fullest = self.layers[-1]
        self.torque_up = self.up * fullest[0] + self.bearing
        self.I_u = self.at_rotor_up(self.up * fullest[0]) / self.K + self.I0
        first = self.at_rotor_up(self.up * fullest[0], self.b)
        self.I_ba = first / self.K + self.b * self.I0
        most = min(limit, (self.V - self.Vb) / self.Rt)
        self.starts = self.K * (most - self.b * self.I0) / first >= 1
        speed = (self.V - self.Vb - self.I_u * self.Rt) / self.K
        self.stalls = speed <= 0 or self.I_u >= limit or not self.starts
        self.rotor = speed
        self.v_up = speed * fullest[1] / (self.N * self.n)
        if self.stalls:
            return
        self.t_up = self.e_in = cost = 0.0
        for _, pay, share in self.layers:  # one radius for pull and way, so that no energy is made
            i = self.at_rotor_up(self.up * pay) / self.K + self.I0
            turns = self.h * share * self.N * self.n / pay  # rad of the rotor
            time = turns * self.K / (self.V - self.Vb - i * self.Rt)
            self.t_up += time
            self.e_in += (self.V * i / self.eta + self.Pau) * time
            cost += turns * self.K * i / self.eta  # without what the winding, the brushes and the brake coil take
        self.gain = self.m * G * self.h / cost

    def lowering(self, l):
        self.Pad, self.loads = known(l["auxiliary_w"], 0), l["loads"] or []
        fullest, least = self.layers[-1], self.layers[0]
        self.I_d = self.at_rotor_down(self.down * fullest[0]) / self.K - self.I0
        run = self.at_rotor_down(self.down * least[1]) / self.K - self.I0
        push = self.at_rotor_down(self.down * least[0], self.b) / self.K - self.b * self.I0
        worst = min(min(e, 1) for _, e, _, _ in self.stages)
        self.runs = "no" if run <= 0 or worst < .45 else "nudge" if push <= 0 or worst <= .55 else "yes"
        if self.runs == "no":
            return
        self.U, useful = self.terminal(self.I_d)
        self.v_down = (self.U + self.Vb + self.I_d * self.R) / self.K * fullest[1] / (self.N * self.n)
        self.give, way, steady = 0.0, [], 0.0
        for _, pay, share in self.layers:
            i = self.at_rotor_down(self.down * pay) / self.K - self.I0
            u, useful = self.terminal(i)
            turns = self.h * share * self.N * self.n / pay
            self.give += turns * self.K * useful / u
            c = self.N * self.n / pay
            heavy = self.n * self.down / G * math.prod(s[2] for s in self.stages) + self.J * c * c
            speed = (u + self.Vb + i * self.R) / self.K / c
            way.insert(0, (self.K * c, i, heavy, self.h * share, speed))
            steady += useful * self.h * share / speed
        self.t_down, reaching = self.descent(way)
        self.kept = reaching / steady if steady > 0 else 0.0
        self.e_out = reaching - self.Pad * self.t_down
        self.power = self.e_out / self.t_down
        if len(self.loads) == 1 and self.loads[0]["kind"] == "governed":
            self.governed(self.loads[0])

    def descent(self, way):
        """The whole way down from rest: time and useful energy."""
        def held(l):
            return l["kind"] in ("string", "cell", "clamp") and not known(l["slope_ohm"], 0)

        def begins(l):
            return known(l["diode_v"], 0) + (0 if l["kind"] == "resistor" else l["threshold_v"])

        def current(l, u):
            return max(0.0, u - begins(l)) / (l["resistance_ohm"] if l["kind"] == "resistor" else l["slope_ohm"])
        keeper = [l for l in self.loads if l["kind"] == "governed"]
        soft = [l for l in self.loads if l["kind"] != "governed" and not held(l)]
        top = min((begins(l) for l in self.loads if held(l)), default=math.inf)
        at_top = [l for l in self.loads if held(l) and begins(l) == top]

        def useful(u, i):
            parts = [(l, current(l, u)) for l in soft]
            rest = i - sum(x for _, x in parts)
            parts += [(l, rest / len(at_top)) for l in at_top if u == top]
            return sum((u - known(l["diode_v"], 0)) * x * known(l["efficiency"], 0 if l["kind"] in ("clamp", "resistor") else 1) for l, x in parts)
        loads = Loads(lambda u: sum(current(l, u) for l in soft), useful, [u for u in map(begins, soft) if 0 < u < top], top)
        return descent(way, loads, self.R, self.Vb, (lambda i: self.terminal(i)[1]) if keeper else None)

    def governed(self, l):
        """A converter that keeps the rotor's speed gives what is asked between its least and its most voltage."""
        eff = known(l["efficiency"], 1)
        low, high = 0.0, math.inf
        for _, pay, share in self.layers:
            i = self.at_rotor_down(self.down * pay) / self.K - self.I0
            u = self.K * l["set_speed_rad_s"] - self.Vb - i * self.R
            top = min(u, known(l["max_voltage_v"], u))
            low, high = max(low, eff * min(top, known(l["min_voltage_v"], top)) * i - self.Pad), min(high, eff * top * i - self.Pad)
        self.least, self.most, self.t_most = min(low, max(0.0, high)), max(0.0, high), 0.0
        for _, pay, share in self.layers:
            i = self.at_rotor_down(self.down * pay) / self.K - self.I0
            a = self.m * G / (self.N * self.n / pay * self.K * eff * i)
            rate = a * (self.most + self.Pad) + a * eff * i * (i * self.R + self.Vb)
            self.t_most += self.kept * self.h * share * self.m * G / rate  # nothing is given until the speed is there

    def terminal(self, i):
        """Volts at which all loads together take a current; share that is useful; useful watts."""
        def each(u):
            out = []
            for l in self.loads:
                if l["kind"] == "governed":
                    out.append(math.inf if u >= self.K * l["set_speed_rad_s"] - self.Vb - i * self.R else 0.0)
                elif l["kind"] == "resistor":
                    out.append(max(0.0, u - known(l["diode_v"], 0)) / l["resistance_ohm"])
                elif l["kind"] in ("string", "cell", "clamp"):
                    above = u - l["threshold_v"] - known(l["diode_v"], 0)
                    slope = known(l["slope_ohm"], 0)
                    out.append(0.0 if above <= 0 else above / slope if slope > 0 else math.inf)
                else:
                    raise ValueError(l["kind"])
            return out
        low, high = 0.0, 1e5
        for _ in range(200):
            mid = (low + high) / 2
            if sum(each(mid)) < i:
                low = mid
            else:
                high = mid
        u, useful = high, 0.0
        parts = each(u)
        firm = [k for k, x in enumerate(parts) if x == math.inf]
        if firm:
            rest = i - sum(x for x in parts if x != math.inf)
            parts = [rest / len(firm) if x == math.inf else x for x in parts]
        for l, x in zip(self.loads, parts):
            eff = known(l["efficiency"], 0 if l["kind"] in ("clamp", "resistor") else 1)
            useful += (u - known(l["diode_v"], 0)) * x * eff
        return u, useful

    def reduce(self):
        self.X1 = self.m * G * self.h
        self.X = self.units * self.X1
        self.usable = not self.stalls and self.starts and self.runs != "no"
        if not self.usable:
            return
        self.standing = 0.0
        self.P_f = self.e_in / self.t_up
        if self.feed == "drive":
            i = max(self.I_u, self.I_ba)
            self.P_th = self.Pau + (i * i * self.Rt + i * self.Vb) / self.eta
            self.loss, self.step = max(0.0, self.gain * self.e_in - self.X1) / self.t_up, False
        else:
            self.P_th, self.gain, self.loss, self.step = self.P_f, self.X1 / self.e_in, 0.0, True
        self.cap = self.lifts_a_day() * self.X
        self.P_d = self.P_dmin = max(0.0, self.e_out / self.t_down)
        time = self.t_down
        if len(self.loads) == 1 and self.loads[0]["kind"] == "governed":
            self.P_dmin, self.P_d, time = self.least, self.most, self.t_most
        self.a_d = self.X1 / self.give if self.give > 0 else 0.0
        self.b_d = self.X1 / time - self.a_d * self.P_d
        if self.b_d < 0:
            self.a_d, self.b_d = self.X1 / time / self.P_d, 0.0

    def lifts_a_day(self):
        """How often the winding lets it lift in a day: 0 for no limit. One body that warms and cools (model 5.9)."""
        rth, tau, most, air = self.hot
        if None in (rth, tau, most):
            return 0.0
        allowed = most - air - 20
        copper = self.I_u ** 2 * self.R
        x, full = .00393 * rth * copper, rth * (copper * (1 + .00393 * (air - 25)) + self.K * self.I0 * self.rotor)
        grown = math.exp(-(1 - x) * self.t_up / tau)
        once = full * (1 - grown) / (1 - x)
        if allowed <= 0:
            return 1e-300
        if once >= allowed:  # in short turns, for the share of the time in which the heat goes off at the allowed warmth
            return 86400 / self.t_up * min(1.0, allowed / (full + x * allowed))
        # after ever so many lifts each begins at s and ends at the allowed warmth: s grown + once = allowed
        begins = (allowed - once) / grown
        rest = max(0.0, tau * math.log(allowed / begins))
        return 86400 / (self.t_up + rest) if rest > 0 else 0.0

    def begin(self, h, x):
        if h % 24 == 0:
            self.today = self.cap
        return x

    def fill(self, h, x, offered):
        if offered <= 0 or offered < self.P_th or x >= self.X:
            return x, 0.0
        u = self.P_f if self.step else min(offered, self.P_f)
        rate = self.gain * u - self.loss
        if rate <= 0:
            return x, 0.0
        # a relay whose line is carried by a store before it runs for as long as the energy lasts
        rise = min(rate * H * min(1.0, offered / u), self.X - x)
        if self.cap > 0:
            rise = min(rise, self.today)
            self.today -= rise
        return x + rise, u * rise / rate

    def draw(self, h, x, asked):
        y = min(asked, self.P_d)
        rate = self.a_d * max(y, self.P_dmin) + self.b_d
        if y <= 0 or rate <= 0 or x <= 0:
            return x, 0.0
        t = min(H, x / rate)
        return x - rate * t, y * t

    def capacity(self, asked):
        return self.X * self.P_d / (self.a_d * self.P_d + self.b_d) if self.P_d > 0 else 0.0

    def trip(self, asked):
        return self.P_d / (self.a_d * self.P_d + self.b_d) * (self.gain * self.P_f - self.loss) / self.P_f if self.P_d > 0 else 0.0


# --- the year ---

def run_year(stores, bus, total):
    x = [s.X for s in stores]
    n = len(stores)
    for turn in range(20):
        start = list(x)
        taken, given = [[0.0] * N for _ in stores], [[0.0] * N for _ in stores]
        state = [[0.0] * N for _ in stores]
        miss, over = [0.0] * N, [0.0] * N
        for h in range(N):
            net = (bus[h] - total[h]) * H
            small = 1e-12 * (bus[h] + total[h]) * H
            for k, s in enumerate(stores):
                x[k] = s.begin(h, x[k])
                if net > small:
                    x[k], e = s.fill(h, x[k], net / H)
                    taken[k][h] = e
                    net -= e
                elif net < -small:
                    x[k], e = s.draw(h, x[k], -net / H)
                    given[k][h] = e
                    net += e
                state[k][h] = x[k]
            if net < -small:
                miss[h] = -net
            elif net > small:
                over[h] = net
        if all(abs(a - b) <= 1e-9 * s.X for a, b, s in zip(x, start, stores)):
            break
    change = [a - b for a, b in zip(x, start)]
    return taken, given, miss, over, state, change


def longest(flags):
    best = run = 0
    for h in range(2 * N):
        run = run + 1 if flags[h % N] else 0
        best = max(best, run)
    return min(best, N)


def settle(stores, bus, total, night_mean):
    cells = [(k, s) for k, s in enumerate(stores) if s.kind == "cells"]
    current = {k: night_mean / s.volts for k, s in cells}
    for turn in range(3):
        for k, s in cells:
            s.size(current[k])
        before = [s.share for _, s in cells]
        result = run_year(stores, bus, total)
        for k, s in cells:
            trace = 1e-9 * max(result[1][k])
            drawn = [e for e in result[1][k] if e > trace]
            if drawn:
                current[k] = sum(drawn) / (len(drawn) * H) / s.volts
        shares = [1.0 if current[k] <= 0 else min(1.0, (s.charge / (current[k] * s.v["rated_time_s"])) ** (s.v["peukert"] - 1)) for k, s in cells]
        if shares == before:
            break
    for k, s in cells:
        s.current = current[k]
    return result


# --- money ---

def money(terms, parts, delivered_kwh, nights_served, lives):
    horizon, rate = known(terms["horizon_years"], 20), known(terms["real_rate"], .03)
    parts = parts or []
    out = {"priced_parts": [sum(1 for p in parts if p["price"] is not None), len(parts)], "capital": None, "levelised_per_kwh": None}
    beside = {"npv": None, "per_night": None}
    if parts and all(p["price"] is not None for p in parts):
        out["capital"] = sum(p["price"] * known(p["count"], 1) for p in parts)
    mine, lives, worn = [p for p in parts if p["of"] not in ("panel", "load")], list(lives), min(lives) if lives else None
    if not mine or any(p["price"] is None for p in mine):
        return out, beside
    worth, now = 0.0, lambda t: (1 + rate) ** -t
    every = known(terms["upkeep_per_year"], 0) + sum(known(p["upkeep_per_year"], 0) * known(p["count"], 1) for p in mine)
    for p in parts:
        life = p["life_s"] / A if p["life_s"] is not None else None
        if p["follows_cells"] == "yes":
            # a battery of the list takes the life of the next battery of the plan, anything else that of the shortest
            computed = lives.pop(0) if p["as"] == "battery" and lives else worn
            life = computed if computed is not None else life
        if p not in mine:
            continue
        cost = p["price"] * known(p["count"], 1)
        worth += cost
        if life is None:
            continue
        if abs(life - round(life)) <= 1e-3 * life and life > .5:
            life = round(life)  # a year of 365 or of 365.25 days
        k = 1
        while k * life < horizon - 1e-9:
            worth += cost * now(math.ceil(k * life - 1e-9))  # paid at the end of its year
            k += 1
        worth -= cost * min(1.0, max(0.0, (k * life - horizon) / life)) * now(horizon)
    worth += every * sum(now(t) for t in range(1, horizon + 1))
    beside["npv"] = worth
    if delivered_kwh > 0:
        out["levelised_per_kwh"] = worth / sum(delivered_kwh * now(t) for t in range(1, horizon + 1))
    if nights_served:
        beside["per_night"] = worth / sum(now(t) for t in range(1, horizon + 1)) / nights_served
    return out, beside


# --- the answer ---

def answer(case):
    doc, sky = case["document"], case["sky"]
    project = doc["project"]
    place = dict(project["place"])
    place.update(case.get("where") or {})
    sun = Sun(place)
    down, night = nights_of(project["load"], sun, case.get("down"))
    essential, nice, standing = loads_of(project["load"], down)
    wanted = {}
    for h in range(N):
        if night[h] >= 0:
            wanted[night[h]] = wanted.get(night[h], 0) + (essential[h] + nice[h]) * H
    out = {"sun": {"ghi_j_m2_year": sum(sky["ghi"]) * H},
           "load": {"appliances_j_year": (sum(essential) + sum(nice)) * H, "night_j_mean": mean_of(wanted.values()) if wanted else 0,
                    "night_j_max": max(wanted.values()) if wanted else 0}, "variants": []}
    hours = [sun.hour(h) for h in range(N)]
    for i, v in enumerate(doc["variants"] or []):
        power, light, label, snows = panels_of(v, place, sky, sun, hours)
        bus, idle = line_power(v["controller"], power, label)
        own_bus = sum(bus) * H if v["controller"]["kind"] == "tracking" else None
        if case.get("bus"):
            bus = case["bus"][i]
        one = variant(project, v, place, sky, bus, idle, essential, nice, standing, night, wanted)
        one["beside"].update(plane_j_m2=light, bus_j=own_bus, snow=snows)
        out["variants"].append(one)
    return out


def variant(project, v, place, sky, bus, idle, essential, nice, standing, night, wanted):
    shown, stores = [], []
    for s in v["stores"] or []:
        if s.get("cells"):
            one = Cells(s["cells"], sky["tair"], place)
            used = True
        else:
            one = Mass(s["hoist"])
            used = one.usable
        shown.append((one, used))
        if used:
            stores.append(one)
    dark = [h for h in range(N) if night[h] >= 0]
    night_mean = mean_of([essential[h] + nice[h] + standing for h in dark]) if dark else 0.0
    all_time = standing + idle + sum(known(s["power_w"], 0) for s in v["standing"] or []) + sum(s.standing for s, used in shown if s.kind == "cells" or used)
    total = [e + n + all_time for e, n in zip(essential, nice)]
    taken, given, miss, over, state, change = settle(stores, bus, total, night_mean)
    lack, lack_e, missing_e, missing = {}, {}, [0.0] * N, [0.0] * N
    for h in range(N):
        n = min(miss[h], nice[h] * H)
        e = min(miss[h] - n, essential[h] * H)
        missing_e[h], missing[h] = e, n + e
        if night[h] >= 0:
            lack[night[h]] = lack.get(night[h], 0) + n + e
            lack_e[night[h]] = lack_e.get(night[h], 0) + e
    want_e = {}
    for h in dark:
        want_e[night[h]] = want_e.get(night[h], 0) + essential[h] * H
    served = sum(1 for d in wanted if lack[d] <= 1e-6 * wanted[d])
    ok_e = sum(1 for d in wanted if lack_e[d] <= 1e-6 * want_e[d])
    need = (sum(essential) + sum(nice)) * H
    run, week = sum(miss[:168]), 0.0
    for h in range(N):
        week = max(week, run)
        run += miss[(h + 168) % N] - miss[h]
    one = {"load_j_year": sum(total) * H, "standing_j_year": all_time * N * H, "bus_j_year": sum(bus) * H,
           "direct_j_year": sum(min(b, t) for b, t in zip(bus, total)) * H, "delivered_j_year": sum(map(sum, given)),
           "spilled_j_year": sum(over), "unmet_j_year": sum(miss), "served_share": 1 - sum(missing) / need if need else None,
           "nights_served": served, "nights": len(wanted),
           "essential_share": 1 - sum(missing_e) / (sum(essential) * H) if sum(essential) else None,
           "stores": []}
    night_need = sum(wanted.values())
    share = 1 - sum(lack.values()) / night_need if night_need else 0
    def counts(miss):
        """Nights of a year by what each misses."""
        off, off_e = {d: 0.0 for d in wanted}, {d: 0.0 for d in wanted}
        gone = [0.0] * N
        for h in range(N):
            n = min(miss[h], nice[h] * H)
            gone[h] = min(miss[h] - n, essential[h] * H)
            if night[h] >= 0:
                off[night[h]] += n + gone[h]
                off_e[night[h]] += gone[h]
        return {"full": sum(off[d] <= .01 * wanted[d] for d in wanted), "essential": sum(off_e[d] <= .01 * want_e[d] for d in wanted),
                "most": sum(off[d] <= .1 * wanted[d] for d in wanted), "dark": sum(wanted[d] > 0 and off[d] >= .9 * wanted[d] for d in wanted),
                "share": 1 - sum(off.values()) / night_need if night_need else 1.0, "gap": longest([e > 1e-6 * essential[h] * H for h, e in enumerate(gone)])}
    worn, fresh = [counts(miss)], [(s, s.X, s.knee) for s in stores if s.kind == "cells"]
    shares = [1.0]
    if fresh:
        for part in (.5, 1):
            for s, X, knee in fresh:
                s.X, s.knee = X, knee
                s.age(part)
            worn.append(counts(run_year(stores, bus, total)[2]))
            shares.append(min(s.left(part) for s, _, _ in fresh))
        for s, X, knee in fresh:
            s.X, s.knee = X, knee
    last, n = worn[-1], len(wanted)
    need_full = math.ceil(.95 * n)
    one.update(nights_full=last["full"], nights_essential=last["essential"], nights_most=last["most"], nights_dark=last["dark"],
               night_share=last["share"], longest_gap_h=last["gap"], to_full=max(0, need_full - last["full"]),
               worn=[{"share": q, "nights_full": w["full"], "nights_essential": w["essential"], "night_share": w["share"]} for q, w in zip(shares, worn)] if fresh else [])
    word = "a learning piece"
    if last["full"] >= .95 * n:
        word = "carries the night"
    elif sum(nice) and last["essential"] >= .95 * n:
        word = "carries the essentials"
    elif last["most"] >= .75 * n and last["full"] >= .5 * n:
        word = "carries most nights"
    elif last["share"] >= .1:
        word = "carries part"
    one["verdict"] = word if night_need else None
    one["beside"] = {"essential_nights": ok_e, "outage_hours": longest([e > 0 for e in missing_e]), "week_j": week,
                     "surplus_by_month": [sum(max(0.0, bus[h] - total[h]) * H for h in range(N) if MONTH_OF[h] == m) for m in range(12)]}
    lives = []
    for s, used in shown:
        row = {"name": s.name, "kind": s.kind}
        if used:
            k = stores.index(s)
            i, o = sum(taken[k]), sum(given[k])
            row.update(in_j_year=i, out_j_year=o, change_j_year=change[k], loss_j_year=i - o - change[k], capacity_j=s.capacity(night_mean), round_trip=s.trip(night_mean))
            if s.kind == "cells":
                row["life"] = s.life(state[k], given[k])
                row["beside"] = {"current_a": s.current}
                lives.append(row["life"]["years"])
        if s.kind == "hoist":
            row["hoist"] = hoist_words(s)
        one["stores"].append(row)
    bill, beside = money(project["money"], v["parts"], one["delivered_j_year"] / 3.6e6, served, lives)
    one.update(bill)
    one["beside"].update(beside)
    return one


def hoist_words(s):
    if not s.usable:
        return {"raise": {"stalls": s.stalls, "starts": s.starts}, "lower": {"runs_back": getattr(s, "runs", "no")}}
    return {"rope_up_n": s.up, "rope_down_n": s.down, "drum_torque_up_nm": s.torque_up,
            "raise": {"stalls": s.stalls, "starts": s.starts, "current_a": s.I_u, "speed_m_s": s.v_up, "time_s": s.t_up, "energy_in_j": s.e_in},
            "lower": {"runs_back": s.runs, "current_a": s.I_d, "voltage_v": s.U, "speed_m_s": s.v_down, "time_s": s.t_down, "power_w": s.power,
                      "energy_out_j": s.e_out}}


if __name__ == "__main__":
    json.dump([answer(c) for c in json.load(sys.stdin)], sys.stdout)
