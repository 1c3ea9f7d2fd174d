"""Works out sizing, choice, pressure, residual pressure and volume of records against charts, from the rules
as the documentation states them, and holds the program's JSON against it: demo records with their charts, and
400 seeded random limbs against random charts. The fall along the limb has a check of its own (.ci/fall); here
only what a rise does to the choice is followed.

Usage: figures.py PROGRAM FOLDER
Prints `figures: N passed, N failed`; one report is one count.
"""

import json
import math
import pathlib
import random
import re
import subprocess
import sys
from decimal import Decimal
from fractions import Fraction

import yaml

MMHG = 133.322387415  # Pa, definition
LANDMARKS = {
    "arm": ["hand", "thumb-web", "wrist", "lower-forearm", "forearm", "elbow", "upper-arm", "axilla"],
    "leg": ["forefoot", "instep", "ankle", "lower-calf", "calf", "below-knee", "knee", "mid-thigh", "upper-thigh"],
}
REFERENCE = {"arm": "wrist", "leg": "ankle"}
JOINT = {"arm": "elbow", "leg": "knee"}
TENTHS = {"mm": Decimal(10), "cm": Decimal(100), "m": Decimal(10000), "in": Decimal(254)}


def nearest(number):
    """The nearest whole number, ties away from zero."""
    number = Fraction(number)
    whole = (abs(number) * 2 + 1) // 2
    return int(whole if number >= 0 else -whole)


def phi(z):
    return 0.5 * math.erfc(-z / math.sqrt(2))


def split(text, unit):
    number, stated = re.fullmatch(r"\s*([-+]?[\d.]+)\s*(\S*)\s*", str(text)).groups()
    return Decimal(number), stated or unit


def length(text, unit, times=1):
    number, unit = split(text, unit)
    return nearest(number * TENTHS[unit] * times)


def ends(text, unit):
    if text.startswith("under "):
        return None, length(text[6:], unit)
    if text.startswith("over "):
        return length(text[5:], unit), None
    low, high = re.split(r"\s*[-–]\s*|\s+to\s+", text.strip())
    return length(low, split(high, unit)[1]), length(high, unit)


def load(path):
    return yaml.load(pathlib.Path(path).read_text(encoding="utf-8"), Loader=yaml.BaseLoader)


class Mark:
    def __init__(self, entry, unit):
        self.name, self.at = entry.get("landmark"), length(entry["at"], unit)
        girths = entry["girth"] if isinstance(entry["girth"], list) else [entry["girth"]]
        readings = [length(text, unit) for text in girths]
        self.tapes = len(readings)
        self.girth = nearest(Fraction(sum(readings), len(readings)))
        self.sd = 0.35 / math.sqrt(len(readings))


class Limb:
    def __init__(self, path):
        data = load(path)
        unit = data.get("units", {}).get("length")
        self.side, self.kind = data["limb"].split()
        self.affected = data["affected"]
        self.marks = sorted((Mark(one, unit) for one in data["marks"]), key=lambda mark: mark.at)
        other = data.get("other_limb", {}).get("marks", [])
        self.other = sorted((Mark(one, unit) for one in other), key=lambda mark: mark.at)
        self.named = {mark.name: mark for mark in self.marks if mark.name}
        self.lengths = {name: length(text, unit) for name, text in data.get("lengths", {}).items()}

    def length(self, key):
        """As stated, else by the positions."""
        if key in self.lengths:
            return self.lengths[key]
        distal, proximal = key.split(" to ")
        if distal in self.named and proximal in self.named:
            return self.named[proximal].at - self.named[distal].at
        return None

    def order(self, name):
        return LANDMARKS[self.kind].index(name)


class Knit:
    def __init__(self, path):
        data = load(path)
        self.points = [
            (float(split(point["stretch"], "%")[0]) / 100, float(split(point["tension"], "N/m")[0]))
            for point in data["curve"]
        ]
        self.tension_sd = float(split(data.get("tension_sd", "5 %"), "%")[0]) / 100
        self.relaxed_sd = length(data.get("relaxed_sd", "0.3 cm"), "cm") / 100

    def at(self, stretch):
        found = None
        if stretch > self.points[-1][0] + 1e-9:
            return None
        for (low, below), (high, above) in zip(self.points, self.points[1:]):
            if found is None or stretch >= low - 1e-9:
                slope = (above - below) / (high - low)
                found = below + slope * (stretch - low), slope
        return found


class Chart:
    def __init__(self, path):
        data = load(path)
        unit = data.get("units", {}).get("length")
        self.between, self.layers = data.get("between_sizes", "fitter"), int(data.get("layers", 1))
        step = data.get("printed_step")
        self.step = None if step is None else Fraction(split(step, unit)[0] * TENTHS[split(step, unit)[1]])
        self.knit = Knit(pathlib.Path(path).parent / data["fabric"]) if "fabric" in data else None
        self.sizes = []
        for size in data["sizes"]:
            girths = {name: ends(text, unit) for name, text in size["girths"].items()}
            relaxed = {name: length(text, unit) for name, text in size.get("relaxed", {}).items()}
            relaxed.update({name: length(text, unit, 2) for name, text in size.get("flat_width", {}).items()})
            variants = [
                (one.get("variant"), {key: ends(text, unit) for key, text in one.items() if key != "variant"})
                for one in size.get("lengths", [])
            ]
            self.sizes.append((size["size"], girths, relaxed, variants))
        self.to = data.get("to") or list(self.sizes[0][1])[-1]

    def stepped(self, tenths):
        return tenths if self.step is None else nearest(max(nearest(tenths / self.step), 1) * self.step)


def holds(value, band):
    return (band[0] is None or band[0] <= value) and (band[1] is None or value <= band[1])


def fit(limb, chart, size):
    _, girths, _, variants = size
    chance, measures, missing = 1.0, [], False
    for name in sorted(girths, key=limb.order):
        low, high = girths[name]
        mark = limb.named.get(name)
        if mark is None:
            missing = True
            continue
        girth = chart.stepped(mark.girth)
        margin = min(room for room in (low is not None and girth - low, high is not None and high - girth) if room is not False)
        upper = 1.0 if high is None else phi((high / 100 - girth / 100) / mark.sd)
        lower = 0.0 if low is None else phi((low / 100 - girth / 100) / mark.sd)
        chance *= upper - lower
        width = None if None in (low, high) else max(high - low, 1)
        measures.append((name, girth, margin, width, (low, high), mark.tapes))
    known = lambda key: limb.length(key)
    fits = [one for one in variants if all(known(key) is not None and holds(chart.stepped(known(key)), band) for key, band in one[1].items())]
    variant = fits[0][0] if fits else None
    length_holds = bool(fits) or not variants
    return {
        "measures": measures,
        "chance": None if missing else chance,
        "missing": missing,
        "variant": variant,
        "length_holds": length_holds,
        "outside": any(one[2] < 0 for one in measures),
        "inside": not missing and all(one[2] >= 0 for one in measures),
        "misses": (max((max(-one[2], 0) for one in measures), default=0), sum(max(-one[2], 0) for one in measures)),
    }


def estimate(limb, chart, size):
    """Pressure, slopes and errors at every mark with a relaxed girth, distal to proximal."""
    marks = []
    relaxed_sd = chart.knit.relaxed_sd if chart.knit else 0.3
    for name in sorted(size[2], key=limb.order):
        if name not in limb.named:
            continue
        mark, c0 = limb.named[name], size[2][name] / 100
        c = mark.girth / 100
        one = {"name": name, "at": mark.at, "c": c, "c0": c0, "sc": mark.sd, "s0": relaxed_sd, "e": c / c0 - 1, "p": None}
        if chart.knit:
            tensed = chart.knit.at(one["e"]) if c > c0 else (0.0, 0.0)
            if tensed:
                tension, slope = (part * chart.layers for part in tensed)
                unit = 200 * math.pi / MMHG
                one["t"], one["p"] = tension, unit * tension / c
                by_c = unit * ((1 + one["e"]) * slope - tension) / c**2
                by_c0 = unit * slope * (1 + one["e"]) / (c * c0)
                one["own"] = math.hypot(mark.sd * by_c, relaxed_sd * by_c0)
                one["sd"] = math.hypot(one["own"], chart.knit.tension_sd * one["p"])
        marks.append(one)
    return marks


def choose(chart, fits, removed):
    """Verdict, size, nearest and the pair between; `removed` tells which sizes a certain rise takes out."""
    near = min(range(len(fits)), key=lambda at: fits[at]["misses"])
    inside = [at for at, one in enumerate(fits) if one["inside"]]
    upright = [at for at in inside if not removed[at]]
    if upright:
        room = lambda at: min((Fraction(one[2], one[3]) for one in fits[at]["measures"] if one[3]), default=Fraction(10**9))
        best = [at for at in upright if room(at) == max(map(room, upright))]
        if len(best) == 1 or chart.between != "fitter":
            return "size", best[0] if chart.between != "larger" else best[-1], None, []
        return "between", None, None, best
    if inside:
        return "made-to-measure", None, None, []
    if any(one["missing"] and not one["outside"] for one in fits):
        return "not-judged", None, near, []
    # A missing girth rules out a pair between.
    pairs = [] if fits[0]["missing"] else list(zip(fits, fits[1:]))
    for at, (small, large) in enumerate(pairs):
        gaps = [(one[1], one[4][1], other[4][0]) for one, other in zip(small["measures"], large["measures"])]
        if all(None not in gap and gap[1] <= gap[0] <= gap[2] for gap in gaps):
            picked = {"smaller": at, "larger": at + 1}.get(chart.between)
            if picked is not None and (fits[picked]["misses"][0] > 50 or removed[picked]):
                picked = None
            return "between", picked, near, [at, at + 1]
    again = lambda one: all(miss[2] >= -50 and miss[5] == 1 for miss in one["measures"] if miss[2] < 0)
    if any(again(one) for one in fits):
        return "measure-again", None, near, []
    return "made-to-measure", None, near, []


def frusta(marks):
    volume, slopes = 0.0, [0.0] * len(marks)
    for at, (low, high) in enumerate(zip(marks, marks[1:])):
        h, a, b = (high.at - low.at) / 100, low.girth / 100, high.girth / 100
        volume += h * (a * a + a * b + b * b) / (12 * math.pi)
        slopes[at] += h * (2 * a + b) / (12 * math.pi)
        slopes[at + 1] += h * (2 * b + a) / (12 * math.pi)
    return volume, sum((mark.sd * slope) ** 2 for mark, slope in zip(marks, slopes))


class Held:
    """The program's report, held against figures; what differs is kept."""

    def __init__(self, report):
        self.report, self.wrong = report, []

    def same(self, path, found, wanted):
        if isinstance(wanted, float) and isinstance(found, (int, float)) and not isinstance(found, bool):
            if abs(found - wanted) <= 1e-9 * max(abs(found), abs(wanted)) or abs(found - wanted) < 1e-13:
                return
        elif found == wanted:
            return
        self.wrong.append(f"{path}: {found} in the report, {wanted} worked out")


def hold(report, limb, chart):
    held, limb_block = Held(report), report["limbs"][0]
    block = limb_block["charts"][0]
    if "acute-infection" in [one["item"] for one in report["screening"]["present"]]:
        held.same("not judged", block["verdict"], "not-judged")
        return held.wrong
    fits = [fit(limb, chart, size) for size in chart.sizes]
    marks = [estimate(limb, chart, size) for size in chart.sizes]
    removed = [size["reversed"] for size in block["sizes"]]
    verdict, size, near, pair = choose(chart, fits, removed)
    held.same("verdict", block["verdict"], verdict)
    held.same("size", block["size"], size)
    held.same("nearest", block["nearest"], near)
    held.same("between", block["between"], pair)
    held.same("variant", block["variant"], None if size is None else fits[size]["variant"])
    for at, (one, found) in enumerate(zip(fits, block["sizes"])):
        where = f"size {chart.sizes[at][0]}"
        held.same(where, found["verdict"], "inside" if one["inside"] else "outside" if one["outside"] else "open")
        held.same(f"{where} chance", found["inside_chance"], one["chance"])
        known = [measure for measure in found["measures"] if measure["verdict"] != "missing"]
        held.same(f"{where} measures", [measure["measure"] for measure in known], [measure[0] for measure in one["measures"]])
        for (name, girth, margin, *_), measure in zip(one["measures"], known):
            held.same(f"{where} {name}", measure["girth_cm"], girth / 100)
            held.same(f"{where} {name} margin", measure["margin_cm"], margin / 100)
            held.same(f"{where} {name} verdict", measure["verdict"], "outside" if margin < 0 else "close" if margin < 50 else "inside")
    shown = {at for at, one in enumerate(fits) if one["inside"]} or ({size, near, *pair} - {None})
    held.same("pressures of", [one["size"] for one in limb_block["pressure"]], sorted(shown))
    for at, pressure in zip(sorted(shown), limb_block["pressure"]):
        held.same("marks", [one["landmark"] for one in pressure["marks"]], [one["name"] for one in marks[at]])
        for one, found in zip(marks[at], pressure["marks"]):
            where = f"size {chart.sizes[at][0]} {one['name']}"
            held.same(f"{where} stretch", found["stretch_percent"], 100 * one["e"])
            held.same(f"{where} pressure", found["pressure_mmhg"], one["p"])
            if one["p"]:
                held.same(f"{where} tension", found["tension_n_per_m"], one["t"])
                held.same(f"{where} sd", found["sd_mmhg"], one["sd"])
                held.same(f"{where} low", found["low_mmhg"], max(one["p"] - 1.96 * one["sd"], 0.0))
                worn = math.hypot(one["sd"], 4.1)
                held.same(f"{where} low as worn", found["low_worn_mmhg"], max(one["p"] - 1.96 * worn, 0.0))
            elif one["p"] is None and chart.knit:
                end = chart.knit.points[-1][1] * chart.layers * 200 * math.pi / MMHG / one["c"]
                held.same(f"{where} bound", found["bound"], end)
    start = limb.named.get(REFERENCE[limb.kind])
    proper = lambda marks: [mark for mark in marks if mark.at >= start.at]
    one, other = proper(limb.marks), proper(limb.other)
    if other and [mark.at for mark in one] == [mark.at for mark in other] and len(one) > 1:
        (v1, s1), (v2, s2) = frusta(one), frusta(other)
        held.same("volume", limb_block["volume"]["measured_ml"], v1)
        held.same("other volume", limb_block["volume"]["other_ml"], v2)
        if limb.affected == limb.side:
            held.same("excess", limb_block["volume"]["excess_ml"], v1 - v2)
            held.same("excess share", limb_block["volume"]["excess_percent"], 100 * (v1 - v2) / v2)
            held.same("excess sd", limb_block["volume"]["sd_ml"], math.sqrt(s1 + s2))
    return held.wrong


MEAN = {
    "arm": [("hand", -8, 21), ("wrist", 0, 16.5), ("lower-forearm", 7, 20), ("forearm", 14, 25.5), ("elbow", 23, 27), ("upper-arm", 33, 31), ("axilla", 42, 36)],
    "leg": [("forefoot", 0, 24), ("ankle", 11, 22.5), ("lower-calf", 20, 30), ("calf", 31, 37.5), ("below-knee", 40, 36), ("knee", 46, 38), ("mid-thigh", 59, 51), ("upper-thigh", 72, 57)],
}


def invent(folder, seed):
    """A random record, chart and fabric around it; invented."""
    draw = random.Random(seed)
    kind = draw.choice(["arm", "leg"])
    unit, per, places = draw.choice([("cm", 1, 1), ("cm", 1, 2), ("mm", 10, 1), ("in", 1 / 2.54, 2)])
    write = lambda cm: f"{cm * per:.{places}f}"
    scale = draw.uniform(0.85, 1.2)
    marks = [
        (name, at, girth * scale * draw.uniform(0.94, 1.07))
        for name, at, girth in MEAN[kind]
        if name in ("wrist", "ankle") or draw.random() > 0.08
    ]

    def lines(indent, factor, twice):
        text = ""
        for name, at, girth in marks:
            one = write(girth * factor)
            if twice and draw.random() < 0.2:
                one = f"[{one}, {write(girth * factor + draw.choice([0.1, -0.2, 0.6]))}]"
            text += f"{indent}- {{landmark: {name}, at: {write(at)}, girth: {one}}}\n"
        return text

    side = draw.choice(["left", "right"])
    record = f"tapeline: record/1\nclient: K-1\nmeasured_on: 2026-03-14\nunits: {{length: {unit}}}\nlimb: {side} {kind}\naffected: {side}\n"
    record += f"positions_from: {'wrist' if kind == 'arm' else 'floor'}\nmarks:\n{lines('  ', 1, True)}"
    if draw.random() < 0.5:
        record += f"other_limb:\n  marks:\n{lines('    ', draw.uniform(0.85, 1.0), False)}"
    reference, top = ("wrist", "axilla") if kind == "arm" else ("ankle", "upper-thigh")
    long = 41.0 if kind == "arm" else 61.0
    if draw.random() < 0.8:
        record += f"lengths: {{{reference} to {top}: {write(long)}}}\n"
    proper = [mark for mark in marks if mark[0] not in ("hand", "forefoot")]
    measured = [mark for mark in proper if mark[0] == reference or draw.random() < 0.7]
    end = draw.choice([measured[-1][0], top, JOINT[kind]]) if len(measured) > 1 else top
    chart = f"tapeline: chart/1\nlabel: T\nlimb: {kind}\nfrom: {reference}\nto: {end}\n"
    last = LANDMARKS[kind].index(end)
    chart += f"between_sizes: {draw.choice(['fitter', 'smaller', 'larger'])}\n"
    if draw.random() < 0.7:
        chart += f"printed_step: {draw.choice(['0.1 cm', '0.5 cm', '1 cm', '0.25 in'])}\n"
    if draw.random() < 0.6:
        chart += f"fabric: fabric.yaml\nlayers: {draw.choice([1, 1, 2])}\n"
    chart += "units: {length: cm}\nsizes:\n"
    mode, count = draw.choice([0.6, 1.0, 1.15]), draw.randint(1, 5)
    here, shape, flat = draw.randrange(count), draw.uniform(0.62, 0.85), draw.random() < 0.4
    places_in = {name: draw.choice([0, 0.5, 1, draw.random(), draw.random()]) for name, _, _ in measured}
    shapes = {name: shape * draw.uniform(0.94, 1.06) + 0.02 * at for at, (name, _, _) in enumerate(measured)}
    shift = draw.choice([0, 0, -0.55])
    for size in range(count):
        girths, relaxed = [], []
        for name, _, girth in measured:
            width = girth * 0.13
            low = round(round(girth, 1) - places_in[name] * width + (size - here + shift) * mode * width, 1)
            high = round(low + width, 1)
            girths.append(f"{name}: {low}-{high}")
            if shapes[name] > 0 and draw.random() < 0.97 and LANDMARKS[kind].index(name) <= last:
                rest = (low + high) / 2 * shapes[name]
                relaxed.append(f"{name}: {rest / 2 if flat else rest:.2f}")
        chart += f'  - size: "{size + 1}"\n    girths: {{{", ".join(girths)}}}\n'
        if relaxed:
            chart += f"    {'flat_width' if flat else 'relaxed'}: {{{', '.join(relaxed)}}}\n"
        if seed % 3 == 0:
            chart += f"    lengths: [{{variant: short, {reference} to {top}: {long - 6}-{long - 0.5}}}, {{variant: long, {reference} to {top}: {long - 0.5}-{long + 5}}}]\n"
    tension, before, points = 0.0, 0, []
    for percent in [0, 10, 25, 40, 70, 100, 140][: draw.randint(4, 7)]:
        tension += (percent - before) / 100 * draw.uniform(150, 900)
        before = percent
        points.append(f"  - {{stretch: {percent} %, tension: {tension:.1f} N/m}}")
    fabric = f"tapeline: fabric/1\nlabel: F\nbasis: invented\ntension_sd: {draw.choice([3, 5, 8])} %\ncurve:\n" + "\n".join(points) + "\n"
    for name, text in (("record", record), ("chart", chart), ("fabric", fabric)):
        (folder / f"{name}.yaml").write_text(text, encoding="utf-8")
    return folder / "record.yaml", folder / "chart.yaml"


def run(program, record, chart):
    command = [program, "check", str(record), str(chart), "--today", "2026-03-14", "--format", "json"]
    done = subprocess.run(command, capture_output=True, text=True)
    if done.returncode not in (0, 1, 3):
        return [f"status {done.returncode}: {done.stderr.splitlines()[0]}"]
    return hold(json.loads(done.stdout), Limb(record), Chart(chart))


def main():
    program, folder = sys.argv[1], pathlib.Path(sys.argv[2])
    passed = failed = 0
    demo = pathlib.Path("demo")
    records = {"arm": ["first-visit", "blank-screening"], "leg": ["leg", "narrow-ankle", "stop"]}
    charts = {"arm": sorted(demo.glob("sleeve-chart-*.yaml")), "leg": sorted(demo.glob("stocking-chart-*.yaml"))}
    cases = [(demo / f"{name}.yaml", chart) for kind in records for name in records[kind] for chart in charts[kind]]
    for number in range(len(cases) + 400):
        record, chart = cases[number] if number < len(cases) else invent(folder, number - len(cases))
        wrong = run(program, record, chart)
        passed, failed = passed + (not wrong), failed + bool(wrong)
        if wrong:
            name = f"{record.name} with {chart.name}" if number < len(cases) else f"random limb {number - len(cases)}"
            print(f"{name}: {len(wrong)} differ")
            print("\n".join(f"  {line}" for line in wrong[:5]))
    print(f"figures: {passed} passed, {failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
