"""The work of the benchmark of `batch` as a competent vectorised script: sizing, pressures with their SD, the chance
inside, and the chance of a rise of each pair of neighbouring marks. NumPy with pandas, or polars, reads and writes.

Usage: vectorised.py pandas|polars FOLDER OUT.csv [BATCH.csv]

With BATCH.csv, written by `tapeline batch limbs.csv chart.yaml --columns id,verdict,size,nearest,margin_cm,measure,
inside_chance,pressures,problem`, every row is held against it: sizes and margins exactly, figures to 1e-9 relative
(chances 1e-9 absolute).
"""

import pathlib
import sys

import numpy as np
from scipy.special import ndtr

K = 2 * np.pi * 100 / 133.322387415
TAPE, RELAXED, TENSION = 0.35, 0.3, 0.05
MARKS = ["wrist", "forearm", "elbow", "upper-arm", "axilla"]


def chart(folder):
    """Labels, ranges and relaxed girths of the invented chart, and the fabric's curve."""
    labels, low, high, relaxed = [], [], [], []
    for line in (folder / "chart.yaml").read_text().splitlines():
        if "- {size" not in line:
            continue
        labels.append(line.split('"')[1])
        girths = line.split("girths: {")[1].split("}")[0].split(", ")
        ends = [one.split(": ")[1].split("-") for one in girths]
        low.append([float(a) for a, _ in ends])
        high.append([float(b) for _, b in ends])
        relaxed.append([float(one.split(": ")[1]) for one in line.split("relaxed: {")[1].split("}")[0].split(", ")])
    curve = [
        (float(line.split("stretch: ")[1].split(" %")[0]) / 100, float(line.split("tension: ")[1].split(" N")[0]))
        for line in (folder / "knit.yaml").read_text().splitlines()
        if "stretch" in line
    ]
    tenths = lambda rows: np.rint(np.array(rows) * 100).astype(np.int32)
    return np.array(labels), tenths(low), tenths(high), np.array(relaxed), np.array(curve)


def work(girths, folder):
    """All figures of arms (rows of five girths, cm)."""
    labels, low, high, relaxed, curve = chart(folder)
    tenths = np.rint(girths * 100).astype(np.int32)
    rows, sizes = len(tenths), len(labels)
    least = np.full((rows, sizes), np.iinfo(np.int32).max, np.int32)
    relative = np.full((rows, sizes), np.inf)
    missed = np.zeros((rows, sizes), np.int32)
    for mark in range(5):
        margin = np.minimum(tenths[:, mark, None] - low[None, :, mark], high[None, :, mark] - tenths[:, mark, None])
        np.minimum(least, margin, out=least)
        np.minimum(relative, margin / (high - low)[None, :, mark], out=relative)
        missed += np.maximum(-margin, 0)
    inside = least >= 0
    score = np.where(inside, relative, -1.0)
    best = score.argmax(axis=1)
    any_inside = inside.any(axis=1)
    # Exact ties are the fitter's: two sizes with one relative margin.
    top = score[np.arange(rows), best]
    ties = any_inside & ((np.abs(score - top[:, None]) < 1e-12).sum(axis=1) > 1)
    key = np.maximum(-least, 0).astype(np.int64) * 1_000_000 + missed
    nearest = key.argmin(axis=1)
    shown = np.where(any_inside, best, nearest)
    at = np.arange(rows)
    margins = np.minimum(tenths - low[shown], high[shown] - tenths)
    inside_chance = np.prod(
        ndtr((high[shown] - tenths) / (100 * TAPE)) - ndtr((low[shown] - tenths) / (100 * TAPE)), axis=1
    )
    bare = relaxed[best]
    stretch = girths / bare - 1
    segment = np.clip(np.searchsorted(curve[:, 0], stretch + 1e-9, side="right") - 1, 0, len(curve) - 2)
    slope = (np.diff(curve[:, 1]) / np.diff(curve[:, 0]))[segment]
    tension = curve[segment, 1] + slope * (stretch - curve[segment, 0])
    pressure = K * tension / girths
    per_girth = K * ((1 + stretch) * slope - tension) / girths**2
    per_relaxed = K * slope * (1 + stretch) / (girths * bare)
    own = np.hypot(TAPE * per_girth, RELAXED * per_relaxed)
    sd = np.hypot(own, TENSION * pressure)
    slack, beyond = stretch <= 0, stretch > curve[-1, 0] + 1e-9
    pressure = np.where(slack, 0.0, np.where(beyond, np.nan, pressure))
    sd = np.where(slack | beyond, np.nan, sd)
    # The chance of a rise between neighbours, the joint left out.
    judged = [0, 1, 3, 4]
    with np.errstate(all="ignore"):
        y, s = np.log(pressure[:, judged]), (own / pressure)[:, judged]
        rises = ndtr(np.diff(y, axis=1) / np.hypot(s[:, 1:], s[:, :-1]))
    return {
        "size": np.where(any_inside, labels[best], ""),
        "nearest": np.where(any_inside, "", labels[nearest]),
        "ties": ties,
        "margin_cm": margins.min(axis=1) / 100,
        "inside_chance": inside_chance,
        "pressure": np.where(any_inside[:, None], pressure, np.nan),
        "sd": np.where(any_inside[:, None], sd, np.nan),
        "rises": rises,
        "at": at,
    }


def columns(ids, found):
    out = {"id": ids, "size": found["size"], "nearest": found["nearest"], "margin_cm": found["margin_cm"]}
    out["inside_chance"] = found["inside_chance"]
    for number, mark in enumerate(MARKS):
        out[f"{mark}_mmhg"] = found["pressure"][:, number]
        out[f"{mark}_sd_mmhg"] = found["sd"][:, number]
    for number in range(3):
        out[f"rise_{number + 1}"] = found["rises"][:, number]
    return out


def main():
    engine, folder, out = sys.argv[1], pathlib.Path(sys.argv[2]), sys.argv[3]
    if engine == "polars":
        import polars

        table = polars.read_csv(folder / "limbs.csv")
        found = work(table.select([f"{mark}_cm" for mark in MARKS]).to_numpy(), folder)
        polars.DataFrame(columns(table["id"].to_numpy(), found)).write_csv(out)
    else:
        import pandas

        table = pandas.read_csv(folder / "limbs.csv")
        found = work(table[[f"{mark}_cm" for mark in MARKS]].to_numpy(), folder)
        pandas.DataFrame(columns(table["id"].to_numpy(), found)).to_csv(out, index=False)
    if len(sys.argv) > 4:
        compare(found, sys.argv[4])


def compare(found, path):
    import pandas

    own = pandas.read_csv(path, keep_default_na=True, dtype={"size": str, "nearest": str, "id": str})
    decided = (own["verdict"] == "size").to_numpy()
    none = own["verdict"].isin(["measure-again", "made-to-measure"]).to_numpy()
    between = (own["verdict"] == "between").to_numpy()
    # A size that a certain rise takes out is the program's matter, and not worked out here.
    same = own["size"].fillna("").to_numpy() == found["size"]
    near = own["nearest"].fillna("").to_numpy() == found["nearest"]
    print(f"rows {len(own)}; size alike {(same & decided).sum()} of {decided.sum()}; nearest alike {(near & none).sum()} of {none.sum()}; ties alike {(between & found['ties']).sum()} of {found['ties'].sum()}")
    rows = (same & decided) | (near & none)
    worst = {"margin_cm": np.abs(own["margin_cm"].to_numpy() - found["margin_cm"])[rows].max()}
    worst["inside_chance"] = np.abs(own["inside_chance"].to_numpy() - found["inside_chance"])[rows].max()
    rows = same & decided
    for number, mark in enumerate(MARKS):
        for name, values in ((f"{mark}_mmhg", found["pressure"]), (f"{mark}_sd_mmhg", found["sd"])):
            mine, theirs = own[name].to_numpy()[rows], values[rows, number]
            both = ~np.isnan(mine) & ~np.isnan(theirs)
            assert (np.isnan(mine) == np.isnan(theirs)).all(), name
            apart = np.abs(mine - theirs)[both] / np.maximum(np.abs(theirs[both]), 1e-300)
            worst[name] = np.max(np.where(theirs[both] == 0, np.abs(mine[both]), apart), initial=0.0)
    name, most = max(worst.items(), key=lambda one: one[1])
    unlike = (decided & ~same).sum() + (none & ~near).sum()
    print(f"worst disagreement {most:.1e} ({name}; wanted 1e-9); rows decided otherwise {unlike}")
    raise SystemExit(0 if most <= 1e-9 else 1)


if __name__ == "__main__":
    main()
