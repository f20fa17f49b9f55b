"""Random whole plans for the second calculation: python3 plans.py COUNT SEED < sample.json prints a JSON list of documents.

The sample lends its place with twelve means. Each plan has two variants of one to three stores, batteries of the six
kinds and lifted masses in any order, with values known or left to the kind, and gears that suit the motor more or less.
"""
import json
import math
import random
import sys

COUNT, r = int(sys.argv[1]), random.Random(int(sys.argv[2]))
U, C = r.uniform, r.choice
q = random.Random(int(sys.argv[2]) + 1000)  # season and snow draw by themselves: without them the plans are the same
SAMPLE = json.load(sys.stdin)["project"]["place"]
YEAR = 365 * 86400


def maybe(p, f):
    return f() if r.random() < p else None


def some(into, p, fields):
    for key, low, high in fields:
        if r.random() < p:
            into[key] = U(low, high)
    return into


def logs(low, high):
    return math.exp(U(math.log(low), math.log(high)))


def place():
    d = json.loads(json.dumps(SAMPLE))
    if r.random() < .5:
        d.update(latitude_rad=U(-1.0, 1.0), longitude_rad=U(-3.1, 3.1), utc_offset_s=None, sky="described", monthly=None,
                 described=C(["desert", "dry", "mixed", "cloudy", "very_cloudy"]), elevation_m=maybe(.5, lambda: U(0, 3000)))
    else:
        shift = U(-18, 12)
        for k in ("t_mean_c", "t_day_max_c", "t_day_min_c"):
            d["monthly"][k] = [x + shift for x in d["monthly"][k]]
    d["albedo"] = maybe(.3, lambda: U(0, .8))
    if r.random() < .3:
        d["indoor"] = {"mean_c": U(-5, 25), "swing_k": U(0, 15), "warmest_month": r.randint(1, 12)}
    if q.random() < .4:
        d["snow_m"] = [q.uniform(0, .3) if m in (0, 1, 2, 10, 11) else 0 for m in range(12)]
        d["snow_events"] = [q.randint(1, 9) for _ in range(12)] if q.random() < .5 else None
    if r.random() < .2:
        d["horizon"] = [{"azimuth_rad": U(0, 6.28), "altitude_rad": U(0, .4)} for _ in range(r.randint(1, 4))]
    return d


def load():
    appliances = []
    for k in range(r.randint(1, 5)):
        a = {"name": "lamp", "power_w": U(.3, 9), "count": r.randint(1, 3), "from_s": r.randrange(96) * 900, "to_s": r.randrange(96) * 900,
             "supply": C(["dc", "dc", "inverter"]), "priority": C(["essential", "nice"]), "purpose": "light"}
        x = r.random()
        if x < .2:
            a["from_dusk_s"] = U(1800, 50000)
        elif x < .45:
            a["after_dusk"] = "yes"
        if r.random() < .3:
            a["share_on"] = U(.05, 1)
        if r.random() < .25:
            a["months"] = sorted(r.sample(range(1, 13), r.randint(1, 6)))
        appliances.append(a)
    night = {"hours": C(["", "sun"])}
    if r.random() < .25:
        night = {"hours": "own", "from_s": r.randrange(64, 88) * 900, "to_s": r.randrange(16, 36) * 900}
    return {"appliances": appliances, "standing": [{"name": "sensor", "power_w": U(0, .4)} for _ in range(r.randint(0, 2))], "night": night,
            "inverter": {"present": C(["", "yes", "no"]), "idle_w": maybe(.6, lambda: U(0, 3)), "efficiency": maybe(.5, lambda: U(.6, 1))}}


def bank():
    b = {"name": "battery", "role": C(["night", "night", "night", "electronics"]), "cells_are": "new", "management_board": "yes",
         "kind": C(["flooded_lead", "sealed_lead", "lfp", "nmc", "nickel_iron", "sodium_ion"]), "block_capacity_c": logs(.7, 60) * 3600,
         "block_voltage_v": U(6, 13), "series": maybe(.4, lambda: r.randint(1, 3)), "parallel": maybe(.4, lambda: r.randint(1, 4)),
         "place": C(["outside_air", "own_room", "shed", ""])}
    some(b, .35, [("usable_depth", .3, 1), ("round_trip", .5, .98), ("peukert", 1, 1.4), ("charge_rate_per_h", .03, 1), ("draw_rate_per_h", .03, 1),
                  ("leak_per_month", 0, .5), ("cycle_life", 100, 8000), ("cycle_life_depth", .2, 1), ("cycle_life_slope", .5, 2.5), ("standing_w", 0, .2)])
    if b["block_capacity_c"] % 3 < 1:
        b["end_share"] = .5 + .45 * (b["block_capacity_c"] % 1)
    if r.random() < .2:
        b["charge_efficiency"], b["discharge_efficiency"] = U(.7, 1), U(.7, 1)
    return some(b, .3, [("rated_time_s", 3600, 108000), ("charge_min_c", -15, 15), ("charge_max_c", 16, 45), ("calendar_life_s", 2 * YEAR, 30 * YEAR)])


def stage():
    s = {"kind": C(["spur", "planetary", "belt", "chain", "box"]), "ratio": U(2, 8), "efficiency": U(.82, .99), "idle_torque_nm": maybe(.5, lambda: U(0, .002)) or 0}
    if s["kind"] == "box":
        s.update(ratio=U(5, 60), efficiency=U(.7, .97), stages_inside=maybe(.7, lambda: r.randint(1, 4)))
    elif r.random() < .15:
        s["backward_efficiency"] = U(.6, .97)
    if s["kind"] == "planetary" and r.random() < .5:
        sun, planet = C([12, 15, 18]), C([12, 15, 18, 21])
        ring = sun + 2 * planet
        if (sun + ring) % 3 == 0:
            s.update(sun_teeth=sun, planet_teeth=planet, ring_teeth=ring, planets=3, ratio=1 + ring / sun, mesh_efficiency=U(.9, .99))
            if r.random() < .7:
                s["efficiency"] = None
    if r.random() < .04:
        s = {"kind": "worm", "ratio": U(8, 30), "friction": U(.01, .06), "lead_angle_rad": U(.15, .6), "idle_torque_nm": 0.0,
             "pressure_angle_rad": maybe(.5, lambda: U(.2, .4))}
    return s


def machine(volts):
    m = {"name": "motor", "k_vs_rad": U(.02, .25), "r_ohm": U(.05, 1.5), "i0_a": U(.02, .6), "j_kg_m2": U(1e-5, 1e-3), "brush_drop_v": maybe(.4, lambda: U(0, 1.5)),
         "i0_measured_with_gear": C(["no", "no", "yes", ""])}
    if r.random() < .5:
        m.update(rth_winding_k_w=logs(.5, 12), tau_winding_s=U(60, 2000), max_winding_c=U(60, 155))
    return m


def sheet(m, volts):
    """The same motor by what a sheet says of it."""
    rest = volts - (m["brush_drop_v"] or 0)
    m.update(sheet_voltage_v=volts, sheet_stall_current_a=rest / m["r_ohm"], sheet_no_load_speed_rad_s=max(1, (rest - m["i0_a"] * m["r_ohm"]) / m["k_vs_rad"]), k_vs_rad=None)
    if r.random() < .5:
        m["r_ohm"] = None
    if r.random() < .3:
        m["sheet_gear_ratio"] = U(2, 20)
        m["sheet_no_load_speed_rad_s"] /= m["sheet_gear_ratio"]


def terminals(u, k):
    """What hangs on the motor on the way down, for about u volts."""
    share = {"diode_v": maybe(.3, lambda: U(0, .7)), "efficiency": maybe(.4, lambda: U(.5, 1))}
    string = {"kind": "string", "name": "lamps", "threshold_v": u, "slope_ohm": U(.1, 3)}
    return C([[{**string, **share}], [{"kind": "resistor", "name": "wire", "resistance_ohm": U(2, 60), "efficiency": share["efficiency"]}],
              [{"kind": "cell", "name": "cell", "threshold_v": u, "slope_ohm": U(.01, .5), "diode_v": U(.2, .7)}],
              [{"kind": "governed", "name": "converter", "set_speed_rad_s": u / k, "efficiency": U(.7, 1), "min_voltage_v": maybe(.4, lambda: u * .3),
                "max_voltage_v": maybe(.4, lambda: u * 1.5)}],
              [string, {"kind": "clamp", "name": "clamp", "threshold_v": u * U(1, 1.3), "slope_ohm": U(.05, .5)}]])


def hoist():
    n, k, volts = C([1, 1, 2, 2, 3, 4]), r.randint(0, 2), C([12, 24, 36, 48])
    m, mass, drum = machine(volts), U(30, 900), U(.05, .2)
    stages = [stage() for _ in range(r.randint(1, 4))]
    fit(stages, mass * 9.8 / n * drum / 2 / (.2 * volts / m["r_ohm"] * m["k_vs_rad"]) / .7)
    loads = terminals(volts * U(.3, .9), m["k_vs_rad"])
    if r.random() < .3:
        sheet(m, volts)
    return {"name": "mass", "units": maybe(.3, lambda: r.randint(1, 5)), "travel_m": U(1, 8), "machine": m,
            "mass": [{"name": "block", "mass_kg": mass, "weighed": "scale"}, {"name": "hook", "mass_kg": U(1, 9), "weighed": "label"}],
            "rope": {"kind": "polyester", "diameter_m": U(.004, .016), "breaking_load_n": 20000, "length_m": 100},
            "reeving": {"rope_parts": n, "lead_sheaves": k, "sheave_efficiency": U(.82, .99),
                        "sheaves": [{"name": "x", "efficiency": maybe(.7, lambda: U(.85, .99))} for _ in range(r.randint(0, min(2, n + k - 1)))]},
            "drum": {"diameter_m": drum, "width_m": U(.05, .5), "dead_wraps": C([3, 3, 4, None]), "bearing_torque_nm": maybe(.3, lambda: U(0, .5))},
            "train": {"stages": stages, "breakaway": maybe(.7, lambda: U(1.1, 2))},
            "raise": {"feed": C(["drive", "drive", "relay"]), "voltage_v": volts, "current_limit_a": maybe(.5, lambda: U(2, 30)),
                      "wire_ohm": maybe(.5, lambda: U(0, .3)), "drive_efficiency": U(.8, 1), "auxiliary_w": U(0, 3)},
            "lower": {"loads": loads, "auxiliary_w": C([0, 0, U(0, 1)]), "ambient_c": maybe(.6, lambda: U(-10, 45))}}


def fit(stages, wanted):
    """Ratios with which lifting takes about a fifth of the current with the shaft held."""
    free = [s for s in stages if not s.get("sun_teeth")]
    for s in free:
        s["ratio"] = min(max(s["ratio"] * (wanted / math.prod(t["ratio"] for t in stages)) ** (1 / len(free)), 1), 5000) if s is free[0] else s["ratio"]


def panel():
    a = {"name": "roof", "count": r.randint(1, 3), "panel_w": logs(8, 300), "tilt_rad": U(0, 1.57), "azimuth_rad": U(0, 6.28)}
    some(a, .3, [("gamma_per_k", -.006, 0), ("soiling", 0, .2), ("mismatch", 0, .1), ("wiring", 0, .1), ("u0_w_m2k", 10, 40), ("u1_ws_m3k", 0, 10), ("wind_m_s", 0, 8)])
    if r.random() < .2:
        a["shade"] = [U(0, .6) for _ in range(12)]
    if r.random() < .2:
        a.update(cell_temperature="nominal", nominal_cell_c=U(35, 60))
    if q.random() < .25:
        low, high = q.uniform(0, .8), q.uniform(.8, 1.57)
        a.update(slant_m=q.uniform(.5, 3), lower_edge_m=q.uniform(.1, 2), snow_cleared=q.choice(["", "yes", "no"]))
        a["tilt_by_month_rad"] = [high if m in (0, 1, 9, 10, 11) else low for m in range(12)]
    return a


def part():
    return {"name": "part", "get": C(["have", "buy", "make"]), "of": C(["store", "store", "safety", "panel", "load"]), "count": maybe(.5, lambda: r.randint(0, 5)),
            "price": maybe(.97, lambda: U(0, 300)), "life_s": maybe(.4, lambda: U(.4, 25) * YEAR), "follows_cells": C(["", "", "yes", "no"]),
            "as": C(["", "", "battery", "rope"]), "upkeep_per_year": maybe(.2, lambda: U(0, 10))}


def variant():
    stores = [{"hoist": hoist()} if r.random() < .5 else {"cells": bank()} for _ in range(C([1, 1, 2, 2, 3]))]
    controller = {"kind": C(["tracking", "tracking", "pulse_width"]), "rated_w": maybe(.3, lambda: U(20, 400)), "standing_w": maybe(.5, lambda: U(0, .5)),
                  "line_voltage_v": maybe(.5, lambda: C([12.8, 25.6, 12])),
                  "efficiency_curve": maybe(.2, lambda: [{"load": x, "efficiency": U(.6, .99)} for x in (.05, .3, 1)])}
    return {"name": "plan", "panels": [panel() for _ in range(C([1, 1, 1, 2]))], "controller": controller, "stores": stores,
            "standing": [{"name": "router", "power_w": U(0, .3)}] if r.random() < .3 else [], "parts": [part() for _ in range(r.randint(0, 6))]}


def document():
    return {"duskweight": 1, "variants": [variant(), variant()],
            "project": {"name": "Random", "currency": "EUR", "seed": r.randrange(10 ** 6), "place": place(), "load": load(),
                        "money": {"horizon_years": maybe(.7, lambda: r.randint(1, 40)), "real_rate": maybe(.6, lambda: C([0, U(-.03, .12)])),
                                  "upkeep_per_year": maybe(.3, lambda: U(0, 20))}}}


json.dump([document() for _ in range(COUNT)], sys.stdout)
