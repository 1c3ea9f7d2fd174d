"""The benchmark of `batch`: pairs alternating, medians of five, ratio per pair, peak memory.

Usage: run.py TAPELINE FLOOR FOLDER [PYTHON]

FOLDER is written by make.py; FLOOR is the program of tests/bench/floor; PYTHON has NumPy, SciPy, pandas and polars,
without it the scripts are left out. It is no timed test: a busy machine gives other figures, the ratios less so.
"""

import os
import pathlib
import statistics
import subprocess
import sys
import time

COLUMNS = "id,verdict,size,nearest,margin_cm,measure,inside_chance,pressures,problem"


def run(command):
    with open(os.devnull, "wb") as nowhere:
        start = time.perf_counter()
        child = subprocess.Popen(command, stdout=nowhere, stderr=nowhere)
        _, status, usage = os.wait4(child.pid, 0)
        wall = time.perf_counter() - start
    if os.waitstatus_to_exitcode(status) not in (0, 1):
        raise SystemExit(f"failed: {command}")
    return wall, usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024


def main():
    tapeline, floor, folder = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])
    limbs, chart = str(folder / "limbs.csv"), str(folder / "chart.yaml")
    batch = [tapeline, "batch", limbs, chart, "--columns", COLUMNS]
    ways = {
        "floor (csv crate, one thread)": [floor, limbs, "18"],
        "batch, one thread": [*batch, "--threads", "1"],
        "batch, two threads": [*batch, "--threads", "2"],
    }
    if len(sys.argv) > 4:
        script = str(pathlib.Path(__file__).with_name("vectorised.py"))
        for engine in ("polars", "pandas"):
            ways[engine] = [sys.argv[4], script, engine, str(folder), str(folder / f"{engine}.csv")]
    seen = {name: [] for name in ways}
    for _ in range(5):
        for name, command in ways.items():
            seen[name].append(run(command))
    base = statistics.median(wall for wall, _, _ in seen["floor (csv crate, one thread)"])
    for name, all_seen in seen.items():
        wall, cpu, memory = (statistics.median(one[at] for one in all_seen) for at in range(3))
        print(f"{name:32} wall {wall:6.2f} s  cpu {cpu:6.2f} s  of the floor {wall / base:5.2f}  peak {memory:7.1f} MiB")


if __name__ == "__main__":
    main()
