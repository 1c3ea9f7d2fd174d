"""The benchmark of `batch`, whole: builds the program and the floor, writes the limbs and the chart, runs every way in
turn, and prints one table. It is no timed test: run it on an idle machine.

Usage: run.py [ROWS] [FOLDER]

ROWS is 1000000 unless said; FOLDER keeps what is made (about 600 MB), else it goes. Needs a Rust toolchain and Python with
`venv`; NumPy, SciPy, pandas and polars are fetched, pinned, into target/bench-python. Under twelve minutes for a million
rows on two cores.
"""

import os
import pathlib
import shutil
import statistics
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parents[2]
HERE = pathlib.Path(__file__).resolve().parent
COLUMNS = "id,verdict,size,nearest,margin_cm,measure,inside_chance,pressures,problem"
FALL = COLUMNS + ",grade,rise_chance,rise_at,judged"
AGAIN = COLUMNS + ",same_again_chance,runner_up"
PINNED = ["numpy==2.2.6", "scipy==1.15.3", "pandas==2.2.3", "polars==1.30.0"]
ROUNDS = 5
FLOOR, ONE, TWO, POLARS, PANDAS = "floor (csv crate)", "batch, 1 thread", "batch, 2 threads", "polars", "pandas"


def python():
    """A Python with the libraries of the scripts."""
    place = ROOT / "target" / "bench-python"
    own = place / "bin" / "python"
    if not own.exists():
        subprocess.run([sys.executable, "-m", "venv", place], check=True)
    subprocess.run([own, "-m", "pip", "install", "--quiet", "--disable-pip-version-check", *PINNED], check=True)
    return str(own)


def built():
    """The program and the floor, optimised."""
    target = pathlib.Path(os.environ.get("CARGO_TARGET_DIR", ROOT / "target")).resolve()
    environment = {**os.environ, "CARGO_TARGET_DIR": str(target)}
    if "TAPELINE" not in os.environ:
        subprocess.run(["cargo", "build", "--release", "--quiet"], cwd=ROOT, env=environment, check=True)
    floor = target / "bench-floor"
    subprocess.run(["cargo", "build", "--release", "--quiet", "--locked", "--target-dir", floor], cwd=HERE / "floor", check=True)
    return os.environ.get("TAPELINE", str(target / "release" / "tapeline")), str(floor / "release" / "floor")


def run(command, out=os.devnull):
    """Seconds and peak memory in MiB of a command."""
    with open(out, "wb") as place, open(os.devnull, "wb") as nowhere:
        start = time.perf_counter()
        child = subprocess.Popen(command, stdout=place, stderr=nowhere)
        _, status, usage = os.wait4(child.pid, 0)
        wall = time.perf_counter() - start
    if os.waitstatus_to_exitcode(status) not in (0, 1):
        raise SystemExit(f"failed: {command}")
    return wall, usage.ru_maxrss / 1024


def repeated(source, target, times):
    """The rows of a table so many times under one header."""
    with open(source, "rb") as table, open(target, "wb") as out:
        out.write(table.readline())
        begin = table.tell()
        for _ in range(times):
            table.seek(begin)
            shutil.copyfileobj(table, out, 1 << 20)


def first(source, target, rows):
    with open(source) as table, open(target, "w") as out:
        for _, line in zip(range(rows + 1), table):
            out.write(line)


def main():
    rows = int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000
    kept = len(sys.argv) > 2
    folder = pathlib.Path(sys.argv[2] if kept else tempfile.mkdtemp())
    own = python()
    tapeline, floor = built()
    subprocess.run([own, HERE / "make.py", folder, str(rows)], check=True)
    limbs, chart = str(folder / "limbs.csv"), str(folder / "chart.yaml")

    def batch(table, columns, threads):
        return [tapeline, "batch", table, chart, "--columns", columns, "--threads", str(threads)]

    script = str(HERE / "vectorised.py")
    ways = {
        FLOOR: [floor, limbs, "18"],
        ONE: batch(limbs, COLUMNS, 1),
        TWO: batch(limbs, COLUMNS, 2),
        POLARS: [own, script, "polars", str(folder), str(folder / "polars.csv")],
        PANDAS: [own, script, "pandas", str(folder), str(folder / "pandas.csv")],
    }
    seen = {name: [] for name in ways}
    for _ in range(ROUNDS):
        for name, command in ways.items():
            seen[name].append(run(command))
    median = {name: statistics.median(wall for wall, _ in all_seen) for name, all_seen in seen.items()}
    print(f"{rows} arms, 24 sizes, 5 measures, fabric of 6 knots; medians of {ROUNDS}, in turn; {os.cpu_count()} cores")
    for name, all_seen in seen.items():
        peak = max(memory for _, memory in all_seen)
        print(f"{name:18} {median[name]:8.3f} s  {rows / median[name]:12.0f} rows/s  peak {peak:7.1f} MiB")

    def ratio(name, other):
        return statistics.median(one[0] / two[0] for one, two in zip(seen[name], seen[other]))

    for name, other, wanted in (
        (ONE, FLOOR, "at most 1.2"),
        (TWO, FLOOR, "at most 0.7"),
        (POLARS, TWO, "at least 3"),
        (PANDAS, TWO, "none"),
    ):
        print(f"{name} / {other}: {ratio(name, other):.2f} (median of the pairs; wanted {wanted})")
    print(f"rows a second and core: {rows / median[ONE]:.0f} (1 thread), {rows / median[TWO] / 2:.0f} (2 threads)")

    # One output for any number of threads, and row by row what the vectorised script has.
    outs = [str(folder / f"batch-{threads}.csv") for threads in (1, 2)]
    for threads, out in zip((1, 2), outs):
        run(batch(limbs, COLUMNS, threads), out)
    with open(outs[0], "rb") as one, open(outs[1], "rb") as two:
        alike = all(a == b for a, b in zip(iter(lambda: one.read(1 << 20), b""), iter(lambda: two.read(1 << 20), b"")))
    same_size = os.path.getsize(outs[0]) == os.path.getsize(outs[1])
    print(f"the same bytes with 1 and 2 threads: {'yes' if alike and same_size else 'NO'}")
    held = subprocess.run([own, script, "pandas", str(folder), str(folder / "pandas.csv"), outs[0]])

    # What is asked for beyond that, on fewer rows, since it costs more.
    few = min(rows, 20_000)
    first(limbs, folder / "few.csv", few)
    table = str(folder / "few.csv")
    costs = {}
    for name, columns in (("plain", COLUMNS), ("the whole fall", FALL), ("the same size again", AGAIN)):
        costs[name] = statistics.median(run(batch(table, columns, 1))[0] for _ in range(3))
    for name, wall in costs.items():
        if name != "plain":
            print(f"{name}: {1e6 * (wall - costs['plain']) / few:.0f} µs a row more, {100 * (1 - costs['plain'] / wall):.0f} % of a run with it")

    # Peak memory at two lengths.
    first(limbs, folder / "short.csv", min(rows, 100_000))
    times = max(1, 5_000_000 // rows) if rows >= 1_000_000 else 5
    repeated(limbs, folder / "long.csv", times)
    for threads in (1, 2):
        peaks = [run(batch(str(folder / name), COLUMNS, threads))[1] for name in ("short.csv", "long.csv")]
        print(f"peak memory, {threads} thread(s): {peaks[0]:.1f} MiB for {min(rows, 100_000)} rows, {peaks[1]:.1f} MiB for {rows * times} rows (wanted at most 20, alike)")
    if not kept:
        shutil.rmtree(folder)
    raise SystemExit(held.returncode)


if __name__ == "__main__":
    main()
