"""Writes 100 visits of 20 marks on either arm, eight days apart: what `volume` and `check` are timed on. Invented.

Usage: visits.py FOLDER
"""

import datetime
import pathlib
import sys

NAMES = {0: "wrist", 7: "forearm", 11: "elbow", 15: "upper-arm", 19: "axilla"}


def marks(scale, pad):
    lines = []
    for place in range(20):
        named = f"landmark: {NAMES[place]}, " if place in NAMES else ""
        lines.append(f"{pad}- {{{named}at: {2 * place}, girth: {(16 + 0.6 * place) * scale:.1f}}}\n")
    return "".join(lines)


folder = pathlib.Path(sys.argv[1])
folder.mkdir(parents=True, exist_ok=True)
for number in range(100):
    on = datetime.date(2024, 1, 1) + datetime.timedelta(days=8 * number)
    share = 1.08 + 0.0005 * (number * 7 % 11)
    (folder / f"visit-{number:03}.yaml").write_text(
        f"tapeline: record/1\nclient: K-0900\nmeasured_on: {on}\nunits: {{length: cm}}\nlimb: left arm\n"
        f"affected: left\npositions_from: wrist\nmarks:\n{marks(share, '  ')}"
        f"other_limb:\n  marks:\n{marks(1.0, '    ')}"
    )
