"""A second calculation of what breaks first, in plain Python, to hold against the program's own.

Written from the written equations alone, on the second calculation of the drive (hoist.py). It reads a JSON list of
hoists on standard input, every input known, and prints for each a list of lines: id, and its load cases as
[demand, capacity, wanted, good].
"""
import json
import math
import sys

from hoist import G, figures, num

TIMBER = {  # EN 338: bending, along, across, shear, mean modulus, its 5-percentile, mean density
    "C16": (16e6, 17e6, 2.2e6, 3.2e6, 8000e6, 5400e6, 370),
    "C24": (24e6, 21e6, 2.5e6, 4.0e6, 11000e6, 7400e6, 420),
}
BENDS = [(1, .50), (2, .65), (4, .75), (6, .79), (8, .83), (10, .86), (15, .89), (20, .91), (30, .93), (40, .95)]
LEWIS = [(12, .245), (13, .261), (14, .277), (15, .290), (16, .296), (17, .303), (18, .309), (19, .314), (20, .322), (21, .328),
         (22, .331), (24, .337), (26, .346), (28, .353), (30, .359), (34, .371), (38, .384), (43, .397), (50, .409), (60, .422),
         (75, .435), (100, .447), (150, .460), (300, .472), (400, .480)]
CLASS = {"HC1": (1.05, .17), "HC2": (1.10, .34), "HC3": (1.15, .51), "HC4": (1.20, .68)}


def between(table, x):
    if x <= table[0][0]:
        return table[0][1]
    for (a, fa), (b, fb) in zip(table, table[1:]):
        if x <= b:
            return fa + (fb - fa) * (x - a) / (b - a)
    return table[-1][1]


class Section:
    def __init__(self, x):
        b, h, t = x["width_m"], x["depth_m"], x["wall_m"]
        kind = x["kind"]
        self.kind, self.b, self.h = kind, b, h
        if kind == "timber":
            self.area, self.i, self.j, self.shear = b * h, b * h ** 3 / 12, h * b ** 3 / 12, b * h / 1.5
        elif kind == "steel_tube":
            bi, hi = b - 2 * t, h - 2 * t
            self.area, self.shear = b * h - bi * hi, 2 * t * h
            self.i, self.j = (b * h ** 3 - bi * hi ** 3) / 12, (h * b ** 3 - hi * bi ** 3) / 12
        else:
            self.h = b
            inner = 0.0 if kind == "round_pole" else b - 2 * t
            self.area = math.pi / 4 * (b * b - inner * inner)
            self.i = self.j = math.pi / 64 * (b ** 4 - inner ** 4)
            self.shear = self.area * 3 / 4 if kind == "round_pole" else self.area / 2
        self.w = self.i / (self.h / 2)
        self.least = min(self.i, self.j)
        self.wall = t if kind.startswith("steel") else 0.0
        self.wood = not kind.startswith("steel")
        if self.wood:
            self.fm, self.fc, self.f90, self.fv, self.e, self.e05, self.rho = TIMBER[x["class"]]
            self.kh = min(1.3, max(1.0, (0.15 / self.h) ** 0.2)) if kind == "timber" else 1.0
        else:
            self.fy, self.e, self.e05, self.rho = x["yield_pa"], 210e9, 210e9, 7850

    def net(self, hole):
        if self.wall:
            return max(0.0, self.w - hole * self.wall * self.h)
        return max(0.0, self.w - hole * self.h ** 2 / 6)


def kmod(outdoors, short):
    return (0.7 if short else 0.5) if outdoors else (0.9 if short else 0.6)


class Path:
    def __init__(self, h):
        self.h, self.o = h, figures(h)
        o = self.o
        self.up, self.down = o["part_up"], o["part_down"]
        self.m = sum(p["mass_kg"] for p in h["mass"])
        self.n, self.k = h["reeving"]["rope_parts"], h["reeving"]["lead_sheaves"]
        self.out = h["site"]["outdoors"] != "no"
        self.beam = Section(h["structure"]["beam"])
        self.fast = max(o.get("up_speed", 0.0), o.get("up_speed_low", 0.0), o.get("down_fastest", o.get("down_speed", 0.0)))
        self.phi = self.jerk()
        self.lines = []

    def bend(self, p, q):
        """Moment, larger reaction and deflection over EI of the beam under a point load p and w along it."""
        b = self.h["structure"]["beam"]
        L = b["span_m"]
        a = b["load_from_support_m"]
        near = 0.0 if a is None else min(a, L - a)
        a = L / 2 if a is None else min(a, L - a)

        def parts(a):
            c = L - a
            if b["support"] == "cantilever":
                return p * L + q * L * L / 2, p + q * L, p * L ** 3 / 3 + q * L ** 4 / 8
            if b["support"] == "both_ends_fixed":
                m = max(p * a * c * c / L ** 2, 2 * p * a * a * c * c / L ** 3) + q * L * L / 12
                return m, p * c * c * (3 * a + c) / L ** 3 + q * L / 2, p * (a * c) ** 3 / (3 * L ** 3) + q * L ** 4 / 384
            return p * a * c / L + q * L * L / 8, p * c / L + q * L / 2, p * a * a * c * c / (3 * L) + 5 * q * L ** 4 / 384
        return parts(a)[0], parts(near)[1], parts(a)[2]

    def stiff(self, top):
        h, n = self.h, self.n
        room = max(0.1, num(h["holds"]["room_above_m"], 0.0))
        length = n * (room if top else h["travel_m"])
        if self.k > 0:
            length += num(h["structure"]["head_height_m"], 0.0)
        return 1 / (length / (n * n * h["rope"]["stiffness_ea_n"]) + self.bend(1.0, 0.0)[2] / (self.beam.e * self.beam.i))

    def jerk(self):
        x = self.h["holds"]
        v = self.fast
        least, slope = CLASS.get(x["hoist_class"], CLASS["HC4"])
        phi = least + slope * v
        if x["hoist_class"] not in CLASS:
            phi = max(1.25, phi)
        phi = max(phi, 1 + v / G * math.sqrt(self.stiff(False) / self.m))
        if x["slack_switch"] == "no":
            phi = max(phi, 2.0)
        return max(phi, num(x["dynamic_factor"], 1.0))

    def line(self, id, *cases):
        self.lines.append({"id": id, "cases": [list(c) for c in cases if c is not None]})

    def most(self, j):
        return max(self.up[j], self.down[j])

    def sheave(self, j):
        s = self.h["reeving"]["sheaves"]
        return s[j - 1]

    def angle(self, j):
        a = self.sheave(j)["angle_rad"]
        if a is None and j == self.k:
            a = self.h["structure"]["lead_line_angle_rad"]
        return num(a, 0.0)

    def resultant(self, a, b, th):
        return abs(complex(a + b * math.cos(th), b * math.sin(th)))

    def hook(self, j):
        return max(self.resultant(t[j - 1], t[j], self.angle(j)) for t in (self.up, self.down))

    def shares(self):
        r = self.h["rope"]
        age = r["age_factor"]
        if age is None:
            wet = r["outdoors"] == "yes" or self.h["site"]["outdoors"] == "yes"
            age = 0.8
            if wet and r["kind"] != "wire":
                age *= {"polypropylene": 0.5, "nylon": 0.8 * 0.85}.get(r["kind"], 0.8)
        knot = {"splice": 0.8 if r["kind"] == "wire" else 0.9, "figure_eight": 0.65, "bowline": 0.5, "other_knot": 0.45, "swaged": 0.9}[r["ending"]]
        if r["kind"] in ("wire", "hmpe") and r["ending"] in ("figure_eight", "bowline", "other_knot"):
            knot = 0.0
        elif r["ending"] == "swaged" and r["kind"] != "wire":
            knot = 0.0 if r["kind"] == "hmpe" else 0.45
        if r["knot_factor"] is not None and knot > 0:
            knot = r["knot_factor"]
        return age, knot

    def ratio(self, j):
        D = self.h["drum"]["diameter_m"] if j == 0 else self.sheave(j)["diameter_m"]
        return D / self.h["rope"]["diameter_m"]

    def events(self):
        """Each event as a multiple of the static pull while raising."""
        o, up0 = self.o, self.up[0]
        k = self.stiff(True)
        v = max(o.get("up_speed", 0.0), o.get("up_speed_low", 0.0))
        self.swing = v * math.sqrt(k * o["reflected"]) / self.n
        out = [(o["stall_pull"] + self.swing) / up0]
        self.shunt = any(x["permanent"] == "yes" and x["kind"] in ("resistor", "clamp") for x in self.h["lower"]["loads"])
        if "burst" in o and not self.shunt:
            out.append(o["burst"] / up0)
        still = self.m * G / self.n
        if "overtravel" in o and self.h["holds"]["slack_switch"] == "yes":
            out.append(still * (1 + math.sqrt(1 + 2 * o["overtravel"] * k / (self.m * G))) / up0)
        if "brake_speed" in o:
            out.append(still * (1 + o["brake_speed"] / G * math.sqrt(k / self.m)) / up0)
        return out

    def happen(self, demand, capacity, wanted, good):
        return [(demand * e, capacity, wanted, good) for e in self.events()]

    def all(self):
        self.rope()
        self.hangers()
        self.beams()
        self.posts()
        self.container()
        self.base()
        self.shaft()
        self.drum()
        self.teeth()
        self.holding()
        self.mishaps()
        return self.lines

    def rope(self):
        r, phi = self.h["rope"], self.phi
        age, knot = self.shares()
        mbs, wire = r["breaking_load_n"], r["kind"] == "wire"
        want, good = (5, 7) if wire else (7, 12)
        cases = []
        bends = [between(BENDS, self.ratio(j)) for j in range(len(self.up))]
        for j in range(len(self.up)):
            t = self.most(j) if j == 0 else max(self.most(j), self.most(j - 1))
            cases.append((phi * t, mbs * age * bends[j], want, good))
        self.left = mbs * min(bends + [knot]) * age
        self.events()
        if "burst" in self.o and not self.shunt:
            cases.append((self.o["burst"] * self.down[-1] / self.down[0], self.left, 2, 2.5))
        self.line("rope", *cases)
        turns = math.exp(2 * math.pi * (0.05 if r["kind"] == "hmpe" else 0.15) * self.h["drum"]["dead_wraps"])
        good = 10 if r["ending"] == "splice" and not wire else good
        self.line("knot", (phi * self.most(-1), mbs * knot * age, want, good), (phi * self.up[0] / turns, mbs * knot * age, want, good))

    def hangers(self):
        s, phi = self.h["structure"], self.phi
        for j in range(1, self.n + self.k):
            x = self.sheave(j)
            rate = x["working_load_n"] * (2 if x["rating_of"] == "rope_pull" else 1)
            self.line("head_sheave" if j == self.k else "redirect_sheave", (phi * self.hook(j), rate, 1, 1.25))
            if j < self.k and x["on_base"] != "yes":
                self.line("redirect_sheave", (phi * self.hook(j), x["fixing_working_load_n"], 1, 1.25))
        if self.k == 0:
            return
        th = self.angle(self.k)
        self.head = max(self.resultant(self.m * G, t[self.k - 1], th) for t in (self.up, self.down))
        deg = math.degrees(s["hanger_angle_rad"])
        share = 1.0
        if s["hanger_kind"] == "shackle":
            share = 1.0 if deg <= 5 else 0.7 if deg <= 45 else 0.5
        elif s["hanger_kind"] == "shoulder_eyebolt":
            share = [x for lim, x in ((5, 1), (15, .8), (30, .65), (45, .3), (91, .25)) if deg <= lim][0]
        cases = [(phi * self.head, s["hanger_working_load_n"] * share, 1, 1.25)]
        if s["hanger_kind"] == "shoulder_eyebolt" and deg > 45:
            cases.append((phi * self.head, 0.0, 1, 1.25))
        if s["hanger_kind"] != "shackle" and s["hanger_fixing"] == "bolted_through_wood":
            f90 = TIMBER[s["beam"]["class"]][2]
            d, hole = s["hanger_washer_m"], min(s["beam"]["hole_m"], s["hanger_washer_m"])
            area = math.pi * (d * d - hole * hole) / 4
            for f, short in ((1, False), (phi, True)):
                cases.append((1.35 * f * self.head, kmod(self.out, short) * 3 * f90 / 1.3 * area, 1, 1.25))
        self.line("hanger", *cases)

    def force(self):
        f = self.m * G
        if self.h["base"]["where"] == "on_beam":
            return f + self.h["base"]["mass_kg"] * G
        return f + max(0.0, max(self.up[self.k - 1], self.down[self.k - 1]) * math.cos(self.angle(self.k)))

    def beams(self):
        b, s, phi = self.h["structure"]["beam"], self.beam, self.phi
        L, F, hole = b["span_m"], self.force(), b["hole_m"]
        w = b["own_mass_kg"] * G / L if b["own_mass_kg"] is not None else s.area * s.rho * G
        cases = []
        for f, short in ((1, False), (phi, True)):
            M, V, _ = self.bend(1.35 * f * F, 1.35 * w)
            km = kmod(self.out, short) / 1.3
            fm = km * s.fm * s.kh if s.wood else s.fy
            crit = 1.0
            if b["kind"] == "timber":
                rel = math.sqrt(s.fm / (0.78 * s.b ** 2 * s.e05 / (s.h * (0.8 * L + 2 * s.h))))
                crit = 1.0 if rel <= 0.75 else 1.56 - 0.75 * rel if rel <= 1.4 else rel ** -2
            cases.append((M / s.w, crit * fm, 1, 1.25))
            cases.append((V / s.shear, km * s.fv * 0.67 if s.wood else s.fy / math.sqrt(3), 1, 1.25))
            if hole > 0:
                cases.append((M / s.net(hole) if s.net(hole) > 0 else 1e15, fm, 1, 1.25))
            if s.wood:
                wide = s.b / 2 if b["kind"] == "round_pole" else s.b
                cases.append((V / (wide * b["bearing_length_m"]), km * s.f90, 1, 1.25))
        creep = 1 + (2.0 if self.out else 0.8) if s.wood else 1.0
        cases.append((self.bend(F, w)[2] / (s.e * s.i) * creep, L / 240, 1, 1.25))
        self.line("beam", *cases)
        self.own = w * L if b["own_mass_kg"] is not None else s.area * L * s.rho * G

    def posts(self):
        phi = self.phi
        for p in self.h["structure"]["posts"] or []:
            s = Section(p)
            share = num(p["load_share"], 1.0) / math.cos(num(p["lean_rad"], 0.0))
            F, own = self.force() * share, self.own * share
            K = {"pinned_both": 1, "braced": 1, "fixed_foot_pinned_top": 0.8, "free_top": 2.1}[p["fixing"]]
            kl = K * p["height_m"]
            kc = 1.0
            if s.wood:
                rel = kl / math.sqrt(s.least / s.area) / math.pi * math.sqrt(s.fc / s.e05)
                if rel > 0.3:
                    q = 0.5 * (1 + 0.2 * (rel - 0.3) + rel * rel)
                    kc = 1 / (q + math.sqrt(q * q - rel * rel))

            def along(short):
                return kmod(self.out, short) * s.fc / 1.3 if s.wood else s.fy
            self.line("post", (phi * F + own, math.pi ** 2 * s.e05 * s.least / kl ** 2, 3, 5),
                      (1.35 * (F + own) / s.area, kc * along(False), 1, 1.25), (1.35 * (phi * F + own) / s.area, kc * along(True), 1, 1.25))
            if num(p["lean_rad"], 0.0) > 0:
                self.line("post", (math.tan(p["lean_rad"]), 0.3 if self.out else 0.4, 1.5, 2) if p["foot_tied"] == "no" else (0, 1, 1, 1))
            soil = {"clay": 1500, "sand": 2000, "gravel": 3000, "rock": 4000}[p["soil"]] * 0.45359237 * G / 0.3048 ** 2
            weight = s.area * p["height_m"] * s.rho * G
            self.line("ground", ((phi * F + own + weight) / p["foot_area_m2"], soil, 1, 2))
        if self.h["structure"]["posts"] and self.k > 0 and self.h["base"]["where"] != "on_beam" and self.angle(self.k) > math.radians(3):
            t = max(self.up[self.k - 1], self.down[self.k - 1])
            self.line("post", (phi * t * math.sin(self.angle(self.k)), self.h["structure"]["side_pull_n"], 1, 1.25))

    def container(self):
        c = self.h["container"]
        f = self.phi * self.m * G
        cases = [(f, c["working_load_n"], 1, 2), (f, c["eye_working_load_n"], 1, 1.25)]
        if c["kind"] == "bag":
            cases.append((1, c["safety_factor"], 5, 6))
            if c["safety_factor"] < 6:
                cases.append((c["in_use_s"] / 86400, 30, 1, 1))
            elif self.out:
                cases.append((c["in_use_s"] / 86400 / 365, 1, 1, 1))
        self.line("container", *cases)

    def base(self):
        b, phi = self.h["base"], self.phi
        if b["where"] != "on_ground":
            return
        held = b["mass_kg"] * G if b["weights_fixed"] == "yes" else (b["mass_kg"] - b["loose_mass_kg"]) * G
        a = b["rope_angle_rad"]
        if a is None:
            a = self.angle(1)
        on = [True] + [self.sheave(j)["on_base"] == "yes" for j in range(1, self.n + self.k)] + [False]
        t = sum(self.up[j] for j in range(len(self.up)) if on[j] != on[j + 1])
        V, H = t * math.cos(a), t * math.sin(a)
        self.V, self.held = V, held
        self.line("base_uplift", (V, held, 1.5, 2), (phi * V, held, 1.2, 1.6))
        if a > 0:
            mu = b["friction"]
            self.line("base_sliding", (H, max(0.0, mu * (held - V)), 1.5, 2), (phi * H, max(0.0, mu * (held - phi * V)), 1.2, 1.6))
        w, e, y = b["width_m"], b["pull_offset_m"], b["pull_height_m"]
        tip = max(H * y + V * (w / 2 - e), V * (w / 2 + e) - H * y)
        self.line("base_overturning", (tip, held * w / 2, 1.5, 2), (phi * tip, held * w / 2, 1.2, 1.6))
        d = b["board"]
        s = 1.35 * 6 * V * d["arm_m"] / (d["width_m"] * d["thickness_m"] ** 2)
        f = d["bending_strength_pa"] / 1.3
        self.line("base_board", (s, kmod(self.out, False) * f, 1, 1.25), (phi * s, kmod(self.out, True) * f, 1, 1.25))

    def shaft(self):
        d, phi, q = self.h["drum"], self.phi, self.o["torque_up"]
        D, Y, pin, w = d["shaft_diameter_m"], d["shaft_yield_pa"], d["pin_diameter_m"], d["key_width_m"]
        a, L = d["shaft_overhang_m"], d["shaft_bearing_span_m"]
        arm = a * (L - a) / L if L is not None and a <= L else a
        hole = pin if d["hub_fit"] == "cross_pin" else 0.0
        zb, zt = math.pi * D ** 3 / 32 - hole * D * D / 6, math.pi * D ** 3 / 16 - hole * D * D / 6
        s = math.sqrt((self.up[0] * arm / zb) ** 2 + 3 * (q / zt) ** 2) if zb > 0 and zt > 0 else 1e15
        peak = s * (2 if hole else 1)
        self.line("shaft", (peak, Y, 2, 4), (phi * peak, Y, 2, 4), *self.happen(s, Y, 1, 1.25))
        metal = d["hub_material"] in ("steel", "aluminium")
        hw, hg = (2, 4) if metal else (5, 10)
        Do, f = d["hub_outer_diameter_m"], d["hub_strength_pa"]
        event = (1, 1.25) if metal else (2, 2.5)
        if d["hub_fit"] == "cross_pin":
            shear, wall = 4 * q / (math.pi * pin ** 2 * D), 4 * q / (pin * (Do ** 2 - D ** 2)) if Do > D else 1e15
            y = 0.577 * d["pin_yield_pa"]
            self.line("cross_pin", (phi * shear, y, 2, 4), *self.happen(shear, y, 1, 1.25),
                      (phi * 6 * q / (pin * D * D), Y, 2, 4), (phi * wall, f, hw, hg))
            self.line("drum_hub", (phi * wall, f, hw, hg), *self.happen(wall, f, *event))
        else:
            n, y = d["key_length_m"], d["key_yield_pa"]
            crush, cut = 4 * q / (D * w * n), 2 * q / (D * w * n)
            self.line("drum_hub", (phi * crush, f, hw, hg), *self.happen(crush, f, *event))
            self.line("drum_hub", (phi * cut, 0.577 * y, 2, 4), (phi * crush, y, 2, 4), *self.happen(crush, y, 1, 1.25))
        if d["coupling"] != "none":
            self.line("coupling", (phi * q, d["coupling_torque_nm"], 1, 1.25), *self.happen(q, 2 * d["coupling_torque_nm"], 1, 1.25))

    def drum(self):
        d, r = self.h["drum"], self.h["rope"]
        D, t = d["diameter_m"], r["diameter_m"]
        room, j = 0.0, 1
        while D + 2 * t * j <= d["flange_diameter_m"] * (1 + 1e-12) + 1e-9 * t:
            room += math.floor(d["width_m"] / t + 1e-9) * math.pi * (D + t + 2 * 0.87 * t * (j - 1))
            j += 1
        wound = self.n * self.h["travel_m"] + d["dead_wraps"] * math.pi * (D + t)
        cases = [(wound, room, 1, 1.1)]
        if self.k == 0 or self.h["base"]["where"] == "on_beam":
            cases.append((wound, r["length_m"], 1, 1))
        else:
            cases.append((wound + self.h["structure"]["head_height_m"], r["length_m"], 1, 1))
        self.line("drum_capacity", *cases)
        self.line("dead_wraps", (1, d["dead_wraps"], *((5, 5) if r["kind"] == "hmpe" else (2, 3))))
        most, good = (5, 2) if d["grooved"] == "yes" else (3, 1.5)
        self.line("fleet_angle", (d["fleet_angle_rad"], math.radians(most), 1, most / good))
        for j in range(len(self.up)):
            size = d["diameter_m"] if j == 0 else self.sheave(j)["diameter_m"]
            self.line("bend_ratio", (t, size, *((12, 20) if r["kind"] == "wire" else (4, 8))))

    def teeth(self):
        o, phi = self.o, self.phi
        stages = self.h["train"]["stages"]
        ratio = []
        for s in stages:
            ratio.append(1 + (s["sun_teeth"] + 2 * s["planet_teeth"]) / s["sun_teeth"] if s["kind"] == "planetary" and s["sun_teeth"] else s["ratio"])
        rotor = max(o.get("up_rotor", 0.0), o.get("down_rotor", 0.0))
        for i, s in enumerate(stages):
            q = o["torque_up"] if i == len(stages) - 1 else o["in_up"][i + 1]
            rotor /= ratio[i]
            if s["kind"] in ("belt", "chain") and s["rated_torque_nm"] is None:
                continue
            if s["rated_torque_nm"] is not None:
                x = s["rated_torque_nm"]
                self.line("gear_tooth", (phi * q, x, 1, 1.25), *self.happen(q, 2 * x, 1, 1.25))
                continue
            w = s["tooth"]
            mod, z, face, share = w["module_m"], w["teeth"], w["face_width_m"], max(1, num(w["meshes_sharing"], 1))
            force = 2 * q / (mod * z * share)
            if s["kind"] == "planetary" and s["sun_teeth"]:
                force = max(2 * o["in_up"][i], 2 * q / ratio[i]) / (mod * s["sun_teeth"] * share)
            v = rotor * mod * z / 2
            speed = (3.05 + v) / 3.05 if w["material"] in ("printed", "cast_iron") else (6.1 + v) / 6.1
            y = between(LEWIS, z) if z >= 12 else max(0.0, math.pi * (0.154 - 0.912 / z))
            stress = force / (face * mod * y)
            f = w["strength_pa"] * (17 / 51 if w["material"] == "printed" and w["layers"] != "in_plane" else 1)
            want, good = {"printed": (5, 10), "pom": (3, 6), "nylon": (3, 6)}.get(w["material"], (3, 4))
            event = (1, 1.25) if w["material"] in ("steel", "brass") else (2, 2.5)
            self.line("gear_tooth", (stress, f, want, good), (phi * speed * stress, f, want, good), *self.happen(stress, f, *event))
        x = self.h["train"]
        tau = 2 * o["torque_up"] / (x["case_screw_circle_m"] * x["case_screw_count"] * 0.75 * math.pi / 4 * x["case_screw_diameter_m"] ** 2)
        f = 0.577 * x["case_screw_proof_pa"]
        self.line("case_fasteners", (phi * tau, f, 2, 4), *self.happen(tau, f, 1, 1.25))

    def holding(self):
        x = self.h["holds"]
        named = [k for k in x["holds"] if k["kind"] in ("spring_brake", "ratchet", "rated_prop", "locking_pin", "overspeed_catch")]
        self.line("holds", (1, len(named), 2, 2), (1, 0, 1, 1) if len(named) >= 2 and all(k["on_drum"] == "no" for k in named) else None)
        for k in named:
            if k["torque_nm"] is not None:
                self.line("holds", (self.o["torque_up"], k["torque_nm"], 1.25, 1.25))
            else:
                self.line("holds", (self.m * G, k["force_n"], 1.25, 1.25))
        stops = [k for k in x["upper_stops"] if k["kind"] in ("limit_switch", "second_limit_switch", "mechanical")]
        own = sum(k["own_path"] == "yes" for k in stops)
        self.line("stops", (1, own + (len(stops) > own), 2, 2))

    def mishaps(self):
        o, k, x = self.o, self.stiff(True), self.h["holds"]
        self.events()
        if "overtravel" in o:
            self.line("overhoist", (2 * o["overtravel"] + 0.1, x["room_above_m"], 1, 1))
        self.line("overhoist", (o["stall_pull"] + self.swing, self.left, 2, 2.5))
        if self.h["base"]["where"] == "on_ground":
            self.line("overhoist", (self.V * (o["stall_pull"] + self.swing) / self.up[0], self.held, 1, 1.25))
        still = self.m * G / self.n
        if x["slack_switch"] == "yes" and "overtravel" in o:
            self.line("slack", (still * (1 + math.sqrt(1 + 2 * o["overtravel"] * k / (self.m * G))), self.left, 2, 2.5))
        if any(q["kind"] in ("spring_brake", "ratchet", "overspeed_catch") for q in x["holds"]) and "brake_speed" in o:
            self.line("brake_catch", (still * (1 + o["brake_speed"] / G * math.sqrt(k / self.m)), self.left, 2, 2.5))


if __name__ == "__main__":
    json.dump([Path(h).all() for h in json.load(sys.stdin)], sys.stdout)
