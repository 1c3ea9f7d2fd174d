"""Writes what the benchmark of `batch` runs on: arms of a caseload and a chart of 24 sizes and 5 measures with a
fabric of six points. Invented; the arms follow mean and covariance of 507 adults (Heinz et al. 2003, J Stat Educ
11(2)).

Usage: make.py FOLDER ROWS
"""

import pathlib
import random
import sys

import numpy as np

MARKS = ["wrist", "forearm", "elbow", "upper-arm", "axilla"]
MEAN = [2.7750, 3.2500, 3.4302]
COV = [[0.00736, 0.00851, 0.00997], [0.00851, 0.01193, 0.01404], [0.00997, 0.01404, 0.01858]]
CURVE = [(0, 0), (15, 33), (30, 67), (50, 116), (80, 195), (130, 340)]
SIZES = 24


def main():
    folder, rows = pathlib.Path(sys.argv[1]), int(sys.argv[2])
    folder.mkdir(parents=True, exist_ok=True)
    dice = np.random.default_rng(20260314)
    wrist, forearm, upper = np.exp(dice.multivariate_normal(MEAN, COV, rows)).T
    arms = np.column_stack([wrist, forearm, 1.02 * forearm, upper, 1.1 * upper])
    arms = arms * np.exp(0.02 * dice.normal(size=arms.shape))
    with open(folder / "limbs.csv", "w") as file:
        file.write("id," + ",".join(f"{mark}_cm" for mark in MARKS) + "\n")
        for number, arm in enumerate(np.round(arms, 1)):
            file.write(f"L{number:07d}," + ",".join(f"{value:.1f}" for value in arm) + "\n")
    (folder / "knit.yaml").write_text(
        "tapeline: fabric/1\nlabel: knit B (invented)\nbasis: invented\ncurve:\n"
        + "".join(f"  - {{stretch: {e} %, tension: {t} N/m}}\n" for e, t in CURVE)
    )
    # Eight girths of the wrist, each slim, plain and wide further up.
    text = [
        "tapeline: chart/1\nlabel: bench chart (invented)\nlimb: arm\nfrom: wrist\nto: axilla\n"
        "scheme: ral-gz-387-2\nclass: \"2\"\nfabric: knit.yaml\nprinted_step: 0.1 cm\nunits: {length: cm}\nsizes:\n"
    ]
    for step in range(8):
        for width, name in enumerate(["slim", "plain", "wide"]):
            wrist = 12.6 + 0.9 * step
            lows = [wrist]
            for factor in (1.61, 1.64, 1.92, 2.11):
                lows.append(wrist * factor * (0.86 + 0.10 * width))
            widths = [1.3, 3.2, 3.3, 4.2, 4.8]
            girths = [f"{mark}: {low:.1f}-{low + wide:.1f}" for mark, low, wide in zip(MARKS, lows, widths)]
            shrink = [0.74, 0.76, 0.78, 0.80, 0.82]
            relaxed = [f"{mark}: {low * share:.1f}" for mark, low, share in zip(MARKS, lows, shrink)]
            text.append(
                f"  - {{size: \"{step} {name}\", girths: {{{', '.join(girths)}}}, relaxed: {{{', '.join(relaxed)}}}}}\n"
            )
    (folder / "chart.yaml").write_text("".join(text))


if __name__ == "__main__":
    main()
