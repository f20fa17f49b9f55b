"""A second calculation of the hoist, in plain Python, to hold against the program's own.

Written from the written equations alone. It reads a JSON list of hoists (the form of the project document) on standard
input and prints a JSON list of figures. It favours the dumb way (loops, bisection, small time steps avoided only where a
closed form is in the equations) so that a slip in a closed form of the program shows.
"""
import json
import math
import sys

from descent import Loads, descent

G = 9.80665
ALPHA = 0.00393


def num(x, otherwise=None):
    return otherwise if x is None else x


def bisect(f, lo, hi):
    """The place where f goes from negative at lo to positive at hi."""
    for _ in range(300):
        mid = (lo + hi) / 2
        if mid in (lo, hi):
            break
        if f(mid) < 0:
            lo = mid
        else:
            hi = mid
    return (lo + hi) / 2


def power(x):
    return math.exp(x) if x < 700 else math.inf


# 5.2 rope
def rope(h):
    r = h["reeving"]
    n, k = r["rope_parts"], r["lead_sheaves"]
    e = []
    for j in range(k + n - 1):
        own = r["sheaves"][j]["efficiency"] if r["sheaves"] and j < len(r["sheaves"]) else None
        e.append(num(own, r["sheave_efficiency"]))
    weight = sum(p["mass_kg"] for p in h["mass"]) * G

    def solve(step):
        part = [1.0]
        for x in e:
            part.append(step(part[-1], x))
        scale = weight / sum(part[k:k + n])
        return [scale * p for p in part]

    return solve(lambda t, x: t * x), solve(lambda t, x: t / x)


# 5.3 drum: (torque radius, length radius, share of the travel) by layer
def layers(h):
    D, d = h["drum"]["diameter_m"], h["rope"]["diameter_m"]
    want = h["reeving"]["rope_parts"] * h["travel_m"]
    width = h["drum"]["width_m"]
    if width is None:
        return [((D + d) / 2, (D + d) / 2, 1.0)]
    wraps = math.floor(width / d + 1e-9)
    dead = h["drum"]["dead_wraps"]
    out, left, j = [], want, 1
    while left > 1e-12 * want:
        rt, rl = (D + d) / 2 + d * (j - 1), (D + d) / 2 + 0.87 * d * (j - 1)
        free = max(0, wraps - dead)
        dead = max(0, dead - wraps)
        here = min(left, free * 2 * math.pi * rl)
        if here > 0:
            out.append((rt, rl, here / want))
        left -= here
        j += 1
    return out


# 5.4 gears: (ratio, forward, backward, idle torque at the input)
def stages(h):
    b = num(h["train"]["breakaway"], 1.5)
    run, brk, cls = [], [], []
    for s in h["train"]["stages"]:
        r, f, back = s["ratio"], s["efficiency"], s["backward_efficiency"]
        inside = 1
        if s["kind"] == "planetary" and s["sun_teeth"] is not None:
            zs, zp = s["sun_teeth"], s["planet_teeth"]
            i0 = (zs + 2 * zp) / zs
            r = 1 + i0
            e0 = s["mesh_efficiency"]
            f = (1 + e0 * i0) / (1 + i0)
            back = (1 + i0) / (1 + i0 / e0)
        elif s["kind"] == "worm" and s["lead_angle_rad"] is not None:
            lam, mu, phi = s["lead_angle_rad"], s["friction"], num(s["pressure_angle_rad"], math.radians(20))
            f = (math.cos(phi) - mu * math.tan(lam)) / (math.cos(phi) + mu / math.tan(lam))
            back = (math.cos(phi) - mu / math.tan(lam)) / (math.cos(phi) + mu * math.tan(lam))
        elif s["kind"] == "box":
            inside = num(s["stages_inside"], 1)
        t0 = num(s["idle_torque_nm"], 0.0)
        if h["machine"]["i0_measured_with_gear"] == "yes":
            t0 = 0.0
        one = f ** (1 / inside)
        one_back = 2 - 1 / one if back is None else back
        one_f_ba = 1 / (1 + b * (1 / one - 1))
        one_b_ba = 1 - b * (1 - one_back)
        for q in range(inside):
            own = t0 if q == 0 else 0.0
            run.append((r ** (1 / inside), one, one_back, own))
            brk.append((r ** (1 / inside), one_f_ba, one_b_ba, b * own))
        cls.append(one)
    return run, brk, cls, b


def up(train, torque):
    for r, f, _, t0 in reversed(train):
        torque = torque / (r * f) + t0
    return torque


def pull(train, torque):
    """What a torque of the motor makes at the drum, slowly."""
    for r, f, _, t0 in train:
        torque = max(0.0, torque - t0) * r * f
    return torque


def down(train, torque):
    ok = True
    for r, _, back, t0 in reversed(train):
        torque = torque * back / r - t0
        ok = ok and torque > 0
        if not ok:
            return torque if torque <= 0 else -torque, False
    return torque, ok


# 5.6 the voltage at which all loads together take the current
def load_current(loads, u):
    total, slope = 0.0, 0.0
    for x in loads:
        if x["kind"] == "resistor":
            total += u / x["resistance_ohm"]
            slope += 1 / x["resistance_ohm"]
        elif x["kind"] in ("string", "cell", "clamp"):
            over = u - x["threshold_v"] - num(x["diode_v"], 0.0)
            if over > 0:
                total += over / x["slope_ohm"]
                slope += 1 / x["slope_ohm"]
        elif x["kind"] == "constant_power":
            if u >= num(x["min_voltage_v"], 0.0) and u > 0:
                total += x["power_w"] / u
                slope -= x["power_w"] / u ** 2
    return total, slope


def settle(loads, amps, K, R, vb):
    """(voltage, stiff, slope) at the first steady root, or None."""
    for x in loads:
        if x["kind"] == "governed":
            u = K * x["set_speed_rad_s"] - vb - amps * R
            return (u, True, 0.0) if u >= 0 else None  # slower than with the wires joined: it cannot
    stiff = [x["threshold_v"] + num(x["diode_v"], 0.0) for x in loads
             if x["kind"] in ("string", "cell", "clamp") and not num(x["slope_ohm"], 0.0)]
    soft = [x for x in loads if not (x["kind"] in ("string", "cell", "clamp") and not num(x["slope_ohm"], 0.0))]
    top = min(stiff) if stiff else 1e9
    edges = {0.0, top}
    for x in soft:
        if x["kind"] in ("string", "cell", "clamp"):
            edges.add(x["threshold_v"] + num(x["diode_v"], 0.0))
        if x["kind"] == "constant_power":
            edges.add(num(x["min_voltage_v"], 0.0))
    edges = sorted(x for x in edges if x <= top)
    for lo, hi in zip(edges, edges[1:]):
        a, b = lo + (hi - lo) * 1e-15 + 1e-15, hi - (hi - lo) * 1e-15

        def g(u):
            return load_current(soft, u)[1]

        def f(u):
            return load_current(soft, u)[0] - amps
        if g(b) <= 0:
            continue
        if g(a) < 0:
            a = bisect(g, a, b)
        if f(a) <= 0 <= f(b):
            u = bisect(f, a, b)
            return u, False, g(u)
    if stiff and load_current(soft, top)[0] <= amps:
        return top, True, 0.0
    return None


def delivered(loads, amps, u):
    total, rest = 0.0, amps
    taker = None
    for x in loads:
        eta = num(x["efficiency"], 0.0 if x["kind"] in ("resistor", "clamp") else 1.0)
        if x["kind"] == "governed" or (x["kind"] in ("string", "cell", "clamp") and not num(x["slope_ohm"], 0.0)):
            if x["kind"] == "governed" or abs(x["threshold_v"] + num(x["diode_v"], 0.0) - u) < 1e-12:
                taker = taker or (x, eta)
            continue
        i, _ = load_current([x], u)
        total += (u - num(x["diode_v"], 0.0)) * i * eta
        rest -= i
    if taker:
        x, eta = taker
        total += (u - num(x["diode_v"], 0.0)) * rest * eta
    return total


def way_down(loads, layers, R, vb, K):
    """5.12: a way down from rest."""
    def held(x):
        return x["kind"] in ("string", "cell", "clamp") and not num(x["slope_ohm"], 0.0)
    soft = [x for x in loads if x["kind"] != "governed" and not held(x)]
    top = min([x["threshold_v"] + num(x["diode_v"], 0.0) for x in loads if held(x)], default=math.inf)
    begins = [x["threshold_v"] + num(x["diode_v"], 0.0) for x in soft if x["kind"] != "resistor"]
    bag = Loads(lambda u: load_current(soft, u)[0], lambda u, i: delivered(loads, i, u), [u for u in begins if u < top], top)
    governed = None
    for x in loads:
        if x["kind"] == "governed":
            def governed(i, speed=x["set_speed_rad_s"]):
                return delivered(loads, i, K * speed - vb - i * R)
            bag = Loads(lambda u: 0.0, lambda u, i: 0.0, [], math.inf)
    return descent(layers, bag, R, vb, governed)


# 5.9 heat of winding and case, in small steps (Runge and Kutta, fourth order)
def two_bodies(m, amps, friction, seconds, R, ta):
    r1, t1, r2, t2 = m["rth_winding_k_w"], m["tau_winding_s"], m["rth_case_k_w"], m["tau_case_s"]
    c1, c2 = t1 / r1, t2 / r2
    x = ALPHA * amps ** 2 * R * (r1 + r2)
    steps = 1500
    s = seconds / steps
    if ALPHA * amps ** 2 * R * seconds / c1 > 50 or seconds / min(t1, t2) > 60:
        return {"settles": x < 1}  # past any meaning, or past these steps

    def change(a, b):
        copper = amps ** 2 * R * (1 + ALPHA * (ta + a - 25))
        flow = (a - b) / r1
        return (copper - flow) / c1, (flow + friction - b / r2) / c2
    a = b = 0.0
    for _ in range(steps):
        a1, b1 = change(a, b)
        a2, b2 = change(a + s / 2 * a1, b + s / 2 * b1)
        a3, b3 = change(a + s / 2 * a2, b + s / 2 * b2)
        a4, b4 = change(a + s * a3, b + s * b3)
        a, b = a + s / 6 * (a1 + 2 * a2 + 2 * a3 + a4), b + s / 6 * (b1 + 2 * b2 + 2 * b3 + b4)
    return {"winding_in_steps": ta + a, "settles": x < 1}


# 5.9 heat of one body
def heat(h, amps, omega, seconds, K, R, i0):
    m = h["machine"]
    rth, tau, tmax = m["rth_winding_k_w"], m["tau_winding_s"], m["max_winding_c"]
    if rth is None or tau is None or tmax is None:
        return None
    ta = num(h["lower"]["ambient_c"], 25.0)
    if m["rth_case_k_w"] is not None:
        return two_bodies(m, amps, K * i0 * omega, seconds, R, ta)
    x = ALPHA * rth * amps ** 2 * R
    pa = amps ** 2 * R * (1 + ALPHA * (ta - 25)) + K * i0 * omega

    def rise(t):
        if abs(1 - x) < 1e-12:
            return rth * pa * t / tau
        return rth * pa * (1 - power(-(1 - x) * t / tau)) / (1 - x)
    allowed = tmax - ta - 20
    out = {"winding": ta + rise(seconds), "settles": x < 1}
    if allowed <= 0:
        return out
    for_ever = x < 1 and rth * pa / (1 - x) <= allowed
    if not for_ever and pa > 0:
        hi = tau
        while rise(hi) < allowed:
            hi *= 2
        out["run"] = bisect(lambda t: rise(t) - allowed, 0.0, hi)
    if rise(seconds) < allowed:
        keep = power(-(1 - x) * seconds / tau)

        def peak(rest):  # the last of ever so many runs
            q = keep * math.exp(-rest / tau)
            return math.inf if q >= 1 else rise(seconds) / (1 - q)
        if peak(0.0) <= allowed:
            out["rest"] = 0.0
        else:
            out["rest"] = bisect(lambda t: allowed - peak(t), 0.0, 1e4 * tau)
    return out


def figures(h):
    o = {}
    m = sum(p["mass_kg"] for p in h["mass"])
    n, hh = h["reeving"]["rope_parts"], h["travel_m"]
    tu, td = rope(h)
    o["part_up"], o["part_down"] = tu, td
    fu, fd = tu[0], td[0]
    lay = layers(h)
    bearing = num(h["drum"]["bearing_torque_nm"], 0.0)
    run, brk, cls, b = stages(h)
    N = math.prod(s[0] for s in run)
    o["layers"], o["ratio"] = len(lay), N
    mc = h["machine"]
    vb = num(mc["brush_drop_v"], 0.0)
    i0 = mc["i0_a"]
    if mc["k_vs_rad"] is None:
        v = mc["sheet_voltage_v"]
        R = (v - vb) / mc["sheet_stall_current_a"]
        K = (v - vb - i0 * R) / (mc["sheet_no_load_speed_rad_s"] * num(mc["sheet_gear_ratio"], 1.0))
    else:
        K, R = mc["k_vs_rad"], mc["r_ohm"]
    J = num(mc["j_kg_m2"], 0.0)
    o["K"], o["R"] = K, R
    rt, rl, _ = lay[-1]
    o["torque_up"], o["torque_down"] = fu * rt + bearing, fd * rt - bearing
    c = N * n / rl
    o["c"] = c

    # raising
    ra = h["raise"]
    V, wire = ra["voltage_v"], num(ra["wire_ohm"], 0.0)
    eta_d, pau = num(ra["drive_efficiency"], 1.0), num(ra["auxiliary_w"], 0.0)
    tg = up(run, fu * rt + bearing)
    I = tg / K + i0
    w = (V - vb - I * (R + wire)) / K
    lim = num(ra["current_limit_a"], math.inf)
    iav = min(lim, (V - vb) / (R + wire))
    tba = up(brk, fu * rt + bearing)
    margin = K * (iav - b * i0) / tba
    o["motor_up"], o["up_current"], o["margin"] = tg, I, margin
    # a light hoist may stall on an upper layer only; layers are lifted one after the other
    o["stalls"] = w <= 0 or I >= lim or margin < 1
    x1 = m * G * hh
    o["in_up"], torque = [], fu * rt + bearing
    for s in reversed(run):
        torque = torque / (s[0] * s[1]) + s[3]
        o["in_up"].insert(0, torque)
    # 5.8 the motor stalls against the stop
    o["stall_pull"] = max(0.0, pull(run, K * max(0.0, iav - i0)) - bearing) / rt
    # the greatest inertia that the rotor can have: half of the mass within 0.3 of the diameter, or all of it at the rim
    most = mc["j_kg_m2"]
    if most is None and mc.get("mass_kg") is not None and mc.get("diameter_m") is not None:
        most = mc["mass_kg"] / 2 * (0.3 * mc["diameter_m"]) ** 2 / 2 if mc["shell_turns"] == "no" else mc["mass_kg"] * mc["diameter_m"] ** 2 / 4
    if most is not None:
        o["reflected"] = most * c * c
    delay = h["holds"]["brake_delay_s"]
    if not o["stalls"]:
        o["up_rotor"], o["up_speed"] = w, w / c
        if delay is not None and most is not None:
            o["overtravel"] = w / c * delay + (w / c) ** 2 / (2 * m * G / (m + most * c * c))
        t = e = 0.0
        inv_a, thr = 0.0, 0.0
        for q, l, share in lay:
            i = up(run, fu * l + bearing) / K + i0
            cc = N * n / l
            vv = (V - vb - i * (R + wire)) / K / cc
            o.setdefault("up_speed_low", vv)
            t += share * hh / vv
            e += (V * i / eta_d + pau) * share * hh / vv
            inv_a += share / (m * G * eta_d / (cc * K * i))
        o["up_time"], o["up_energy"] = t, e
        units = num(h["units"], 1)
        if ra["feed"] == "drive":
            iba = tba / K + b * i0
            big = max(I, iba)
            o["p_th"] = pau + (big ** 2 * (R + wire) + big * vb) / eta_d
            o["p_f"] = e / t
            o["a_f"] = 1 / inv_a
            o["b_f"] = 1 / inv_a * e / t - x1 / t
            if len(lay) == 1 and rt == rl:  # the written form
                o["b_f"] = m * G / (c * K * I) * (I ** 2 * (R + wire) + vb * I + eta_d * pau)
                o["p_f"] = pau + V * I / eta_d
        o["capacity"] = units * x1
        o["heat_up"] = heat(h, I, w, t, K, R, i0)

    # lowering
    rt1 = lay[0][0]
    low, low_ok = down(run, fd * lay[0][1] - bearing)
    ba, ba_ok = down(brk, fd * rt1 - bearing)
    tg, ok = down(run, fd * rt - bearing)
    star = tg / K - i0
    o["motor_down"], o["down_current"] = tg, star
    runs = ok and low_ok and low / K - i0 > 0 and min(cls) >= 0.45
    o["runs_back"] = "no"
    if runs:
        o["runs_back"] = "yes" if ba_ok and ba / K - b * i0 > 0 and min(cls) > 0.55 else "nudge"
    back = math.prod(s[2] for s in run) if all(s[2] > 0 for s in run) else 0.0

    # the smallest mass that starts by itself: walk up to it
    if all(s[2] > 0 for s in brk) and min(cls) > 0.55:
        def starts(mass):
            tt, good = down(brk, fd * mass / m * rt1 - bearing)
            return tt / K - b * i0 if good else -1.0
        hi = m
        while starts(hi) <= 0 and hi < 1e12:
            hi *= 2
        o["needs_mass"] = bisect(starts, 0.0, hi)
    if not runs:
        return o
    lo = h["lower"]
    pad = num(lo["auxiliary_w"], 0.0)
    root = settle(lo["loads"], star, K, R, vb)
    o["steady"] = root is not None
    if root is None and len(lo["loads"]) == 1 and lo["loads"][0]["kind"] == "constant_power":
        p = lo["loads"][0]["power_w"]
        u = p / star
        o["down_voltage"] = u
        jt = J + m * n * fd / (m * G) * back / c ** 2
        if u * u > p * R:
            o["growth"] = K * K * p / ((u * u - p * R) * jt)
    if root is not None:
        u, stiff, slope = root
        w = (u + vb + star * R) / K
        o["down_voltage"], o["down_rotor"], o["down_speed"] = u, w, w / c
        o["steady_power"] = delivered(lo["loads"], star, u) - pad
        o["stiff"] = stiff
        if not stiff:
            o["slope"] = slope
        down_layers = []
        good = True
        for q, l, share in lay:
            tt, _ = down(run, fd * l - bearing)
            i = tt / K - i0
            rr = settle(lo["loads"], i, K, R, vb)
            if rr is None:
                good = False
                break
            cc = N * n / l
            vv = (rr[0] + vb + i * R) / K / cc
            down_layers.insert(0, (K * cc, i, n * fd / G * back + J * cc * cc, share * hh, vv))
        if good and not any(x["kind"] == "constant_power" for x in lo["loads"]):  # their going on and off is followed elsewhere
            t, e = way_down(lo["loads"], down_layers, R, vb, K)
            e -= pad * t
            o["down_time"], o["down_energy"], o["down_power"] = t, e, e / t
            o["heat_down"] = heat(h, star, w, t, K, R, i0)
            x = lo["loads"][0]
            governed = x["kind"] == "governed"
            eta = delivered(lo["loads"], star, u) / (u * star) if u else 0.0
            if len(lay) == 1 and rt == rl and e > 0 and "p_f" in o:  # 5.10, and a whole way down at full power as it is run
                a_d = m * G / (c * K * eta * star)
                o["p_d"] = o["p_dmin"] = e / t
                o["a_d"], o["b_d"] = a_d, x1 / t - a_d * e / t
                if o["b_d"] < 0:
                    o["a_d"], o["b_d"] = x1 / e, 0.0
                if governed:
                    top = min(u, num(x["max_voltage_v"], u))
                    low_u = min(top, num(x["min_voltage_v"], top))
                    o["p_d"] = eta * top * star - pad
                    o["p_dmin"] = max(0.0, eta * low_u * star - pad)
                    kept = (e + pad * t) / (delivered(lo["loads"], star, u) * hh / (w / c))
                    held = x1 / (a_d * o["p_d"] + m * G / (c * K) * (star * R + vb) + a_d * pad)
                    o["a_d"], o["b_d"] = a_d, x1 / (kept * held) - a_d * o["p_d"]
                    if o["p_d"] <= 0 or o["b_d"] < 0:
                        del o["a_d"], o["b_d"], o["p_d"]
        if not good:  # it must be steady all the way down
            o["steady"] = False
            for name in ("down_voltage", "down_rotor", "down_speed"):
                del o[name]
    # let go
    v2, first = 0.0, None
    for q, l, share in lay:
        cc = N * n / l
        tt, _ = down(run, fd * l - bearing)
        a = cc * (tt - K * i0) / (n * fd / G * back + J * cc * cc)
        v2 += 2 * max(a, 0.0) * share * hh
        first = first or (cc, max(a, 0.0))
    a = c * (down(run, fd * rl - bearing)[0] - K * i0) / (n * fd / G * back + J * c * c)
    o["fall"] = max(a, 0.0)
    o["open_speed"] = math.sqrt(v2)
    if v2 > 0:  # wires joined at the end speed: the motor brakes rotor and mass together
        cc, a = first
        brakes = K * max(0.0, K * math.sqrt(v2) * cc - vb) / R
        more = cc * brakes / (n * fd / G * back + J * cc * cc) - a
        o["burst"] = fd * (1 + max(0.0, more) / G)
    if root is not None and "down_speed" in o and not 0 < v2 < o["down_speed"] ** 2:
        o["down_fastest"] = o["down_speed"]
        if delay is not None:
            o["brake_fall"] = o["down_fastest"] * delay + o["fall"] * delay ** 2 / 2
            o["brake_speed"] = o["down_fastest"] + o["fall"] * delay
    o["joined_speed"] = (star * R + vb) / K / c
    return o


def told(x):
    if isinstance(x, dict):
        return {k: told(v) for k, v in x.items()}
    if isinstance(x, list):
        return [told(v) for v in x]
    return None if isinstance(x, float) and not math.isfinite(x) else x


def main():
    json.dump(told([figures(h) for h in json.load(sys.stdin)]), sys.stdout)


if __name__ == "__main__":
    main()
