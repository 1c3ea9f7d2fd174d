"""Runs the program on made-up and on measured limbs and works volumes and courses out again.

Source of each figure: V is the integral of C^2/(4 pi) along the limb (derived); SD(V) by numerical
derivatives; the loss is a line through ln V with known errors (statsmodels); segments of measured people
by the package yeadon, whose solids between circular levels are cut cones.
"""

import contextlib
import datetime
import io
import json
import math
import pathlib
import random
import subprocess
import sys
import time

import numpy as np
import statsmodels.api as sm
from scipy import integrate, optimize, stats
from yeadon import Human

PROGRAM, FOLDER, PEOPLE = sys.argv[1], pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3])
TAPE_SD = 0.35
TWO_SIDED = 1.96
ONE_SIDED = stats.norm.ppf(0.95)
counts = {"passed": 0, "failed": 0}
worst = {}


def count(good, said):
    counts["passed" if good else "failed"] += 1
    if not good:
        print(said)


def near(what, found, wanted, relative, floor=1e-9):
    off = abs(found - wanted) / max(abs(wanted), floor)
    worst[what] = max(worst.get(what, 0.0), off)
    count(off <= relative, f"{what}: {found} is not {wanted} to {relative}")


def run(files, today):
    done = subprocess.run([PROGRAM, "volume", *files, "--today", today, "--format", "json"], capture_output=True, text=True)
    if done.returncode != 0:
        raise SystemExit(f"{files[:2]}: {done.stderr}")
    return json.loads(done.stdout)


def marks(limb, indent="  "):
    """limb: [(landmark or None, position, girth)]"""
    lines = []
    for landmark, at, girth in limb:
        named = f"landmark: {landmark}, " if landmark else ""
        lines.append(f"{indent}- {{{named}at: {at:.2f}, girth: {girth:.2f}}}\n")
    return "".join(lines)


def record(name, on, limb, other=None, kind="left arm", origin="wrist", more=""):
    text = f"""tapeline: record/1
client: K-0001
measured_on: {on}
limb: {kind}
affected: left
positions_from: {origin}
units: {{length: cm}}
{more}marks:
{marks(limb)}"""
    if other:
        text += "other_limb:\n  marks:\n" + marks(other, "    ")
    path = FOLDER / name
    path.write_text(text)
    return str(path)


def exact(limb):
    """The integral of C^2/(4 pi) of straight-sided pieces, by quadrature."""
    at, girth = np.array([one[1] for one in limb]), np.array([one[2] for one in limb])
    whole = 0.0
    for low, high in zip(at, at[1:]):
        value, _ = integrate.quad(lambda x: np.interp(x, at, girth) ** 2 / (4 * math.pi), low, high, epsabs=0, epsrel=1e-12)
        whole += value
    return whole


def sd_of(limb, volume):
    """SD of the volume for independent errors of the tape, by derivatives."""
    girths = np.array([one[2] for one in limb])
    slope = optimize.approx_fprime(girths, lambda c: volume([(n, a, g) for (n, a, _), g in zip(limb, c)]), 1e-5)
    return TAPE_SD * math.sqrt((slope ** 2).sum())


def cones(limb):
    return sum((b[1] - a[1]) * (a[2] ** 2 + a[2] * b[2] + b[2] ** 2) / (12 * math.pi) for a, b in zip(limb, limb[1:]))


def made_up(dice, step=None):
    at, limb, girth = 0.0, [("wrist", 0.0, round(dice.uniform(14, 20), 2))], 0.0
    girth = limb[0][2]
    for _ in range(dice.randint(2, 12)):
        at = round(at + (step or dice.uniform(1.5, 9)), 2)
        girth = round(max(10.0, girth + dice.uniform(-1.0, 3.0)), 2)
        limb.append((None, at, girth))
    return limb


def one_visit(dice):
    for number in range(60):
        other = made_up(dice)
        limb = [(n, a, round(g * dice.uniform(0.98, 1.2), 2)) for n, a, g in other]
        report = run([record("one.yaml", "2026-03-14", limb, other)], "2026-03-14")["limbs"][0]["volume"]
        near("volume, quadrature", report["measured_ml"], exact(limb), 1e-9)
        near("other limb, quadrature", report["other_ml"], exact(other), 1e-9)
        excess = exact(limb) - exact(other)
        near("excess", report["excess_ml"], excess, 1e-7, 1.0)
        near("excess, per cent", report["excess_percent"], 100 * excess / exact(other), 1e-7, 0.1)
        near("SD of the excess, derivatives", report["sd_ml"], math.hypot(sd_of(limb, cones), sd_of(other, cones)), 1e-5)
        step = round(dice.uniform(2, 6), 2)
        limb = made_up(dice, step)
        report = run([record("disc.yaml", "2026-03-14", limb, more="volume_method: disc\n")], "2026-03-14")
        wanted = integrate.quad(lambda x: limb[min(int(x / step), len(limb) - 1)][2] ** 2 / (4 * math.pi), 0, step * len(limb), points=[step * n for n in range(1, len(limb))], limit=500, epsabs=0, epsrel=1e-12)[0]
        near("discs, quadrature", report["limbs"][0]["volume"]["measured_ml"], wanted, 1e-9)


def people():
    names = [("upper-thigh", "Lj1"), ("mid-thigh", "Lj2"), ("knee", "Lj3"), ("calf", "Lj4"), ("ankle", "Lj5")]
    for path in sorted(PEOPLE.glob("*.txt")):
        for side, letter in (("left", "j"), ("right", "k")):
            with contextlib.redirect_stdout(io.StringIO()):
                human = Human(str(path))
            solids = (human._j_solids if letter == "j" else human._k_solids)[1:5]
            at, limb = 100.0, []
            levels = [solids[0].stads[1]] + [one.stads[0] for one in solids]
            for (name, _), level, height in zip(names, levels, [0.0] + [one.height for one in solids]):
                at -= 100 * height
                limb.append((name, at, 100 * level.perimeter))
            limb.reverse()
            report = run([record("leg.yaml", "2026-03-14", limb, kind=f"{side} leg", origin="floor")], "2026-03-14")
            found = [one["measured_ml"] for one in report["limbs"][0]["detail"]["segments"]]
            for one, solid in zip(found, reversed(solids)):
                # Positions and girths are stored to a tenth of a millimetre: half of one on a girth of 400 mm and a
                # height of 140 mm changes a volume by up to 0.04 %.
                near("segments of measured people, yeadon", one, 1e6 * solid.mass / solid.density, 4e-4)


def cylinder(ml):
    girth = round(math.sqrt(ml * 4 * math.pi / 40), 2)
    limb = [("wrist" if n == 0 else None, 4.0 * n, girth) for n in range(11)]
    return limb, exact(limb)


def courses(dice):
    states = set()
    for number in range(40):
        days, day = [0], 0
        for _ in range(dice.randint(2, 9)):
            day += dice.choice([1, 2, 3, 3, 4, 4, 7])
            days.append(day)
        loss = dice.choice([0.0, 0.0, 0.3, 1.0, 4.0, -4.0])
        start = datetime.date(2026, 1, 5)
        files, volumes = [], []
        for at in days:
            limb, ml = cylinder(2000 * math.exp(-loss / 100 * at / 7) * (1 + 0.006 * dice.gauss(0, 1)))
            volumes.append(ml)
            files.append(record(f"visit-{at}.yaml", start + datetime.timedelta(at), limb))
        dice.shuffle(files)
        report = run(files, str(start + datetime.timedelta(days[-1])))
        ready = report["course"]["ready"][0]
        near_days = [n for n, at in enumerate(days) if days[-1] - at <= 14]
        if len(near_days) < 4:
            near_days = [n for n, at in enumerate(days) if days[-1] - at <= 28]
        if len(near_days) < 3 or days[-1] - days[near_days[0]] < 7:
            count(ready["state"] == "cannot-tell" and ready["loss_percent_a_week"] is None, f"too few: {ready}")
            continue
        # The SD of a visit: 1.2 % or, with these marks, the tape's own where that is larger.
        sd = [max(1.2, 100 * sd_of(cylinder(volumes[n])[0], cones) / volumes[n]) / 100 for n in near_days]
        line = sm.WLS(
            np.log([volumes[n] for n in near_days]),
            sm.add_constant([float(days[n]) for n in near_days]),
            weights=[1 / one ** 2 for one in sd],
        ).fit(cov_type="fixed scale")
        r, se = -700 * line.params[1], 700 * line.bse[1]
        near("loss a week, statsmodels", ready["loss_percent_a_week"], r, 1e-6, 0.1)
        near("lower bound, statsmodels", ready["low"], r - ONE_SIDED * se, 1e-6, 0.1)
        near("upper bound, statsmodels", ready["high"], r + ONE_SIDED * se, 1e-6, 0.1)
        slope = stats.linregress([days[n] for n in near_days], np.log([volumes[n] for n in near_days])).slope
        near("loss a week, linregress", ready["loss_percent_a_week"], -700 * slope, 1e-6, 0.1)
        if r + ONE_SIDED * se < 0:
            wanted = "rising"
        elif abs(r) + ONE_SIDED * se < 2:
            wanted = "settled"
        elif r - ONE_SIDED * se > 0:
            wanted = "not-yet"
        else:
            wanted = "cannot-tell"
        states.add(wanted)
        count(ready["state"] == wanted, f"state: {ready} is not {wanted}")
        change = [one for one in report["course"]["changes"] if one["from"] == str(start + datetime.timedelta(days[-2]))][0]
        near("change since the last visit", change["change_percent"], 100 * (volumes[-1] / volumes[-2] - 1), 1e-6, 0.01)
    count(len(states) == 4, f"only {states} came up")


def worsenings(dice):
    limit = TWO_SIDED * math.sqrt(2) * 1.2 / 100
    seen = set()
    for number in range(40):
        other, u = cylinder(1700)
        rises = [0.0]
        for _ in range(dice.randint(1, 3)):
            rises.append(rises[-1] + dice.choice([-0.02, 0.01, 0.02, 0.025, 0.045, 0.08]))
        files, volumes = [], []
        for month, rise in enumerate(rises):
            limb, ml = cylinder(1900 * (1 + rise))
            volumes.append(ml)
            files.append(record(f"worse-{month}.yaml", f"2026-0{month + 1}-14", limb, other))
        report = run(files, f"2026-0{len(rises)}-14")
        found = [one["severity"] for one in report["findings"] if one["id"] == "worsening"]
        last = (volumes[-1] - volumes[-2]) / volumes[-2]
        wanted = []
        if last > limit:
            wanted = ["caution"]
        if last > 2 * limit:
            wanted = ["clear-first"]
        if len(volumes) > 2:
            before = volumes[-2] - volumes[-3]
            if before > 0 and last > 0 and (volumes[-1] - volumes[-3]) / volumes[-3] > limit:
                wanted = ["clear-first"]
        seen.add(tuple(wanted))
        count(found == wanted, f"worsening of {volumes}: {found} is not {wanted}")
    count(len(seen) == 3, f"only {seen} came up")


def speed(dice):
    files = []
    for visit in range(100):
        limb = [("wrist" if n == 0 else None, 2.0 * n, round(17 + 0.6 * n + dice.uniform(-0.2, 0.2), 2)) for n in range(20)]
        on = datetime.date(2025, 1, 1) + datetime.timedelta(3 * visit)
        files.append(record(f"speed-{visit}.yaml", on, limb, limb))
    begun = time.perf_counter()
    run(files, "2026-03-14")
    print(f"100 visits of 20 marks: {time.perf_counter() - begun:.3f} s, built for debugging")


dice = random.Random(20260314)
one_visit(dice)
people()
courses(dice)
worsenings(dice)
speed(dice)
for what, off in worst.items():
    print(f"  {what}: worst {off:.1e}")
print(f"course: {counts['passed']} passed, {counts['failed']} failed")
sys.exit(counts["failed"] > 0)
