"""Runs the program on made-up limbs and garments and works its figures out again with SciPy.

Source of each figure: P = 2*pi*T/C, pool adjacent violators, first-order propagation of errors (derived);
SciPy 1.12 or later does the regression, the roots and the slopes.
"""

import json
import math
import pathlib
import re
import subprocess
import sys

import numpy as np
from scipy import optimize, stats

PROGRAM, FOLDER = sys.argv[1], pathlib.Path(sys.argv[2])
PASCAL = 133.322387415
DAY = ("--today", "2026-03-14")
counts = {"passed": 0, "failed": 0}
worst = {}


def near(what, found, wanted, relative):
    off = abs(found - wanted) / max(abs(wanted), 1e-300)
    worst[what] = max(worst.get(what, 0.0), off)
    good = off <= relative
    counts["passed" if good else "failed"] += 1
    if not good:
        print(f"{what}: {found} is not {wanted} to {relative}")


def write(name, text):
    (FOLDER / name).write_text(text)
    return str(FOLDER / name)


def run(*args):
    done = subprocess.run([PROGRAM, *args, "--format", "json"], capture_output=True, text=True)
    if done.returncode not in (0, 1, 3):
        raise SystemExit(f"{args}: {done.stderr}")
    return json.loads(done.stdout)


def record(marks):
    lines = "".join(f"  - {{{mark}}}\n" for mark in marks)
    return write("record.yaml", f"""tapeline: record/1
client: K-0001
measured_on: 2026-03-14
measured_by: R2
limb: left leg
affected: left
positions_from: floor
units: {{length: cm}}
marks:
{lines}""")


def fabric(points):
    lines = "".join(f"  - {{stretch: {e * 100:.9f} %, tension: {t:.9f} N/m}}\n" for e, t in points)
    write("fabric.yaml", f"tapeline: fabric/1\nlabel: knit\ntension_sd: 5 %\nrelaxed_sd: 0.3 cm\ncurve:\n{lines}")


def gradient(record_file, relaxed):
    block = ", ".join(f"{mark}: {girth:.2f} cm" for mark, girth in relaxed.items())
    text = f"tapeline: garment/1\nlabel: G\nlimb: leg\nfabric: fabric.yaml\nrelaxed: {{{block}}}\n"
    return run("gradient", record_file, write("garment.yaml", text), *DAY)["limbs"][0]


def curve(rng, top=1.5):
    stretches = np.cumsum(rng.uniform(0.05, 0.4, 8))
    stretches *= top / stretches[-1]
    tensions = np.cumsum(rng.uniform(8, 60, 8))
    return [(0.0, 0.0)] + [(round(float(e), 4), round(float(t), 2)) for e, t in zip(stretches, tensions)]


def pressure(points, c, c0):
    tension = np.interp(c / c0 - 1, [p[0] for p in points], [p[1] for p in points])
    return 2 * math.pi * float(tension) / (c / 100) / PASCAL


def marks(rng):
    at = {"ankle": 11, "calf": 31, "below-knee": 41}
    for _ in range(12):
        points = curve(rng)
        fabric(points)
        girths = {"ankle": round(rng.uniform(18, 26), 1), "calf": round(rng.uniform(30, 44), 1),
                  "below-knee": round(rng.uniform(28, 40), 1)}
        relaxed = {mark: round(c / (1 + rng.uniform(0.2, 1.2)), 2) for mark, c in girths.items()}
        file = record([f"landmark: {mark}, at: {at[mark]}, girth: {c}" for mark, c in girths.items()])
        report = gradient(file, relaxed)
        rows = {row["landmark"]: row for row in report["pressure"][0]["marks"]}
        own, step = {}, 1e-5
        for mark, c in girths.items():
            c0 = relaxed[mark]
            p = pressure(points, c, c0)
            near("pressure", rows[mark]["pressure_mmhg"], p, 1e-9)
            if min(abs(c / c0 - 1 - point[0]) for point in points) < 1e-4:
                continue  # a kink has no slope
            by_c = (pressure(points, c + step, c0) - pressure(points, c - step, c0)) / (2 * step)
            by_c0 = (pressure(points, c, c0 + step) - pressure(points, c, c0 - step)) / (2 * step)
            own[mark] = math.hypot(0.35 * by_c, 0.3 * by_c0)
            near("SD of a pressure", rows[mark]["sd_mmhg"], math.hypot(own[mark], 0.05 * p), 1e-6)
            if mark == "ankle":
                near("stiffness", report["pressure"][0]["reference"]["stiffness_mmhg_per_cm"], by_c, 1e-6)
        fall = report["gradient"][0]
        for pair in fall["pairs"]:
            below, above = pair["distal"], pair["proximal"]
            if below in own and above in own:
                rise = rows[above]["pressure_mmhg"] - rows[below]["pressure_mmhg"]
                near("a rise", pair["rise_mmhg"], rise, 1e-9)
                near("SD of a rise", pair["sd_mmhg"], math.hypot(own[below], own[above], 0.05 * rise), 1e-6)
        if len(own) == len(girths):
            ln = {mark: math.log(rows[mark]["pressure_mmhg"]) for mark in own}
            sd = {mark: min(1.0, max(0.005, own[mark] / rows[mark]["pressure_mmhg"])) for mark in own}
            pairs = [(below, above) for below in own for above in own if at[below] < at[above]]
            chances = [stats.norm.cdf((ln[j] - ln[i]) / math.hypot(sd[i], sd[j])) for i, j in pairs]
            near("highest chance of a rise", fall["any_rise"] + 1e-9, max(chances) + 1e-9, 1e-4)
        # The inverse by Brent's method.
        wanted = {mark: round(0.6 * 2 * math.pi * points[-1][1] / (c / 100) / PASCAL, 6) for mark, c in girths.items()}
        target = [part for mark, mmhg in wanted.items() for part in ("--at", f"{mark}={mmhg}mmHg")]
        made = run("pattern", file, str(FOLDER / "fabric.yaml"), *target, *DAY)
        for row in made["pattern"]["marks"]:
            c, goal = girths[row["landmark"]], wanted[row["landmark"]]
            low = c / (1 + points[-1][0])
            root = optimize.brentq(lambda c0: pressure(points, c, c0) - goal, low, c - 1e-9, xtol=1e-13)
            near("relaxed girth for a pressure", c / (1 + row["stretch_percent"] / 100), root, 1e-9)


def pooled(bench):
    """The points of the curve that the program writes."""
    out = FOLDER / "pooled.yaml"
    done = subprocess.run([PROGRAM, "fabric", bench, "--fabric-out", str(out), "--force"], capture_output=True, text=True)
    if done.returncode != 0:
        raise SystemExit(done.stderr)
    found = re.findall(r"stretch: ([0-9.]+) %, tension: ([0-9.]+) N/m", out.read_text())
    return [(float(stretch), float(tension)) for stretch, tension in found]


def benches(rng):
    weights = [100, 200, 300, 500, 700, 1000]
    for _ in range(12):
        kind, width, relaxed = ("strip", 5, 20) if rng.random() < 0.5 else ("loop", 7, 25)
        base = relaxed + 0.3 + np.cumsum(rng.uniform(0.3, 3.0, len(weights)))
        lengths = [[max(relaxed + 0.05, round(float(one + rng.normal(0, 0.35)), 2)) for _ in range(rng.integers(1, 5))]
                   for one in base]
        rows = "".join(f"    - {{weight: {w} g, length: [{', '.join(f'{one:.2f} cm' for one in row)}]}}\n"
                       for w, row in zip(weights, lengths))
        text = (f"tapeline: fabric/1\nlabel: bench\nbench:\n  kind: {kind}\n  width: {width} cm\n"
                f"  relaxed: {relaxed} cm\n  pulls:\n{rows}")
        found = pooled(write("bench.yaml", text))
        sides = 1 if kind == "strip" else 2
        t = np.array([w / 1000 * 9.80665 / (width / 100) / sides for w in weights])
        e = np.array([np.mean([one / relaxed - 1 for one in row]) for row in lengths])
        n = np.array([len(row) for row in lengths], dtype=float)
        fitted = optimize.isotonic_regression(e, weights=n).x
        points, start = [], 0
        while start < len(fitted):
            same = [i for i in range(len(fitted)) if abs(fitted[i] - fitted[start]) < 1e-12]
            points.append((fitted[start], float(np.average(t[same], weights=n[same]))))
            start = same[-1] + 1
        near("points of a pooled curve", len(found) - 1, len(points), 0)
        for (stretch_percent, tension), (stretch, pull) in zip(found[1:], points):
            # A file carries so many figures.
            near("pooled stretch", stretch_percent / 100, stretch, 1e-5)
            near("pooled tension", tension, pull, 1e-5)


def wraps(rng):
    for _ in range(8):
        drawn = (rng.uniform(2, 15), rng.uniform(6, 15), rng.uniform(1, 4), rng.uniform(0.2, 4))
        pull, width, layers, thick = (round(float(one), 2) for one in drawn)
        girth = round(float(rng.uniform(18, 50)), 1)
        file = record([f"landmark: ankle, at: 11, girth: {girth}", "landmark: calf, at: 31, girth: 55"])
        text = (f"tapeline: wrap/1\nlabel: wrap\ntension: {pull} N\nwidth: {width} cm\nlayers: {layers}\n"
                f"thickness: {thick} mm\nfrom: ankle\nto: calf\n")
        report = run("gradient", file, write("wrap.yaml", text), *DAY)["limbs"][0]

        def on(c):
            total, below, t = 0.0, 0.0, thick / 1000
            while below < layers - 1e-12:
                d = c / 100 / math.pi + 2 * t * below
                total += min(1.0, layers - below) * pull * (d + t) / (width / 100 * (d * d / 2 + t * (d + t)))
                below += 1
            return total / PASCAL

        row = report["pressure"][0]["marks"][0]
        near("thick wrap", row["pressure_mmhg"], on(girth), 1e-10)
        slope = (on(girth + 1e-4) - on(girth - 1e-4)) / 2e-4
        near("SD of a wrap", row["sd_mmhg"], math.hypot(0.35 * slope, 0.2 * on(girth)), 1e-6)


rng = np.random.default_rng(20260314)
marks(rng)
benches(rng)
wraps(rng)
for kind, off in worst.items():
    print(f"  {kind}: worst disagreement {off:.1e}")
print(f"physics: {counts['passed']} passed, {counts['failed']} failed")
raise SystemExit(1 if counts["failed"] else 0)
