"""Faults around the program: what is tried, and what of it is lost or said wrongly.

Usage: lost.py PROGRAM [KILLS [PART...]]
"""

import json
import os
import pathlib
import random
import re
import shutil
import subprocess
import sys
import tempfile
import time

PROGRAM = os.path.abspath(sys.argv[1])
KILLS = int(sys.argv[2]) if len(sys.argv) > 2 else 600
TODAY = ["--today", "2026-03-14"]
TABLE = {}
# Open for writing alone, as a shell opens it.
NOWHERE = open(os.devnull, "wb")


def tried(kind, lost=0, wrong=0, what=""):
    """Counts one try; what went wrong is told."""
    row = TABLE.setdefault(kind, [0, 0, 0])
    row[0] += 1
    row[1] += lost
    row[2] += wrong
    if lost or wrong:
        print(f"{kind}: {what}")


def clinic(folder):
    """A copy of the demo to work in."""
    target = pathlib.Path(folder) / "clinic"
    shutil.copytree("demo", target)
    return target


def run(folder, args, seconds=30, **more):
    return subprocess.run([PROGRAM, *args], cwd=folder, capture_output=True, timeout=seconds, **more)


def inputs(folder):
    return {path: path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()}


WRITERS = {
    "check": (["check", "first-visit.yaml", "sleeve-chart-b.yaml", *TODAY, "-o"], "out.txt"),
    "sheet": (["sheet", "first-visit.yaml", "sleeve-chart-b.yaml", *TODAY, "-o"], "out.pdf"),
    "volume": (["volume", "followed/visits.yaml", *TODAY, "-o"], "out.html"),
    "batch": (["batch", "caseload.csv", "sleeve-chart-b.yaml", "-o"], "out.csv"),
    "pattern": (["pattern", "narrow-ankle.yaml", "knit-r3.yaml", "--class", "2", *TODAY, "--garment-out"], "out.yaml"),
    "fabric": (["fabric", "knit-r4-bench.yaml", "--fabric-out"], "out.yaml"),
    "explain": (["explain", "--all", "-o"], "out.txt"),
}


def kills():
    """A kill at any moment: the whole file or none (with `--force`: the old one or the new one), inputs as they were,
    and what is left beside it is cleared by the next run."""
    dice = random.Random(17)
    for name, (args, out) in WRITERS.items():
        with tempfile.TemporaryDirectory() as outer:
            folder = clinic(outer)
            began = time.monotonic()
            if run(folder, [*args, "whole-" + out]).returncode not in (0, 1):
                tried(f"kill: {name}", wrong=1, what="does not write at all")
                continue
            lasts = time.monotonic() - began
            whole = (folder / ("whole-" + out)).read_bytes()
            before = inputs(folder)
            parts = 0
            for turn in range(KILLS // len(WRITERS) + 1):
                force = turn % 2 == 1
                place = folder / out
                if force:
                    place.write_bytes(b"the old one")
                elif place.exists():
                    place.unlink()
                process = subprocess.Popen(
                    [PROGRAM, *args, out, *(["--force"] if force else [])],
                    cwd=folder, stdout=NOWHERE, stderr=NOWHERE,
                )
                time.sleep(dice.uniform(0, 1.2 * lasts))
                process.kill()
                process.wait()
                found = place.read_bytes() if place.exists() else None
                # The name of the output stands in nothing that is written.
                fine = found in ((whole, b"the old one") if force else (whole, None))
                left = [one for one in folder.iterdir() if one.name.endswith(".tapeline-part")]
                parts += bool(left)
                now = {path: data for path, data in inputs(folder).items() if path != place and path not in left}
                tried(f"kill: {name}", lost=now != before, wrong=not fine, what=f"turn {turn}, force {force}")
            if (folder / out).exists():
                (folder / out).unlink()
            run(folder, [*args, out])
            left = [one.name for one in folder.iterdir() if one.name.endswith(".tapeline-part")]
            tried("part left by a kill, cleared by the next run", wrong=bool(left), what=f"{name}: {left}")
            print(f"kill: {name}: {parts} of {KILLS // len(WRITERS) + 1} kills left a part behind for the next run to clear")


def pairs():
    """Two runs write one name: one wins and the other says so; with `--force` both write a whole file."""
    for turn in range(60):
        name = list(WRITERS)[turn % len(WRITERS)]
        args, out = WRITERS[name]
        for force in (False, True):
            with tempfile.TemporaryDirectory() as outer:
                folder = clinic(outer)
                run(folder, [*args, "whole-" + out])
                both = [
                    subprocess.Popen([PROGRAM, *args, out, *(["--force"] if force else [])], cwd=folder,
                                     stdout=NOWHERE, stderr=subprocess.PIPE)
                    for _ in range(2)
                ]
                ends = sorted((one.communicate()[1].decode(), one.returncode) for one in both)
                lost = [status for said, status in ends if status == 2]
                said = [said for said, status in ends if status == 2]
                fine = (folder / out).read_bytes() == (folder / ("whole-" + out)).read_bytes()
                left = [one.name for one in folder.iterdir() if one.name.endswith(".tapeline-part")]
                won = len(lost) == 0 if force else len(lost) == 1 and "kept" in said[0]
                kind = "two runs write one name, --force" if force else "two runs write one name"
                tried(kind, lost=not fine, wrong=not won or bool(left), what=f"{name}: {ends} {left}")


def own_inputs():
    """An output that is one of the run's inputs is refused, named or named in a file, `--force` or not."""
    with tempfile.TemporaryDirectory() as outer:
        folder = clinic(outer)
        rules = folder / "own-rules.yaml"
        rules.write_text("tapeline: rules/1\nid: own\nlabel: own\nsource: own\nextends: default\n")
        scheme = folder / "own-scheme.yaml"
        scheme.write_text('tapeline: scheme/1\nid: ours\nlimb: arm\nsource: invented\nclasses: [{class: "1", low: 15, high: 21, basis: invented}]\n')
        table = folder / "table-chart.yaml"
        table.write_text("tapeline: chart/1\nlabel: a\nlimb: arm\nfrom: wrist\nto: axilla\nsizes_from: leaflet.csv\n")
        check = ["check", "first-visit.yaml", "sleeve-chart-b.yaml", *TODAY]
        cases = [
            (check, "first-visit.yaml"), (check, "sleeve-chart-b.yaml"), (check, "knit-r2.yaml"),
            (["check", "first-visit.yaml", "table-chart.yaml", *TODAY], "leaflet.csv"),
            ([*check, "--rules", "own-rules.yaml"], "own-rules.yaml"),
            ([*check, "--scheme-file", "own-scheme.yaml"], "own-scheme.yaml"),
            (["check", "hand-swelling.yaml", "sleeve-and-hand-piece.yaml", *TODAY], "hand-piece.yaml"),
            (["volume", "followed/visits.yaml", *TODAY], "followed/visit-3.yaml"),
            (["volume", "followed/visit-7.yaml", "followed/history.csv", *TODAY], "followed/history.csv"),
            (["batch", "caseload.csv", "sleeve-chart-b.yaml"], "caseload.csv"),
            (["batch", "caseload.csv", "sleeve-chart-b.yaml"], "knit-r2.yaml"),
            (["cover", "caseload.csv", "sleeve-chart-b.yaml"], "caseload.csv"),
            (["inspect", "leaflet.csv"], "leaflet.csv"),
            (["gradient", "with-readings.yaml", "sleeve-one.yaml", *TODAY], "sleeve-one.yaml"),
        ]
        special = [
            (["sheet", "first-visit.yaml", "sleeve-chart-b.yaml", *TODAY, "--format", "text"], "-o", "knit-r2.yaml"),
            (["pattern", "narrow-ankle.yaml", "knit-r3.yaml", "--class", "2", *TODAY], "--garment-out", "knit-r3.yaml"),
            (["gradient", "with-readings.yaml", "sleeve-one.yaml", *TODAY], "--fabric-out", "knit-r2.yaml"),
            (["fabric", "knit-r4-bench.yaml"], "--fabric-out", "knit-r4-bench.yaml"),
        ]
        before = inputs(folder)
        for args, option, name in [(args, "-o", name) for args, name in cases] + special:
            link, hard = folder / "link", folder / "hard"
            for one in (link, hard):
                if one.is_symlink() or one.exists():
                    one.unlink()
            link.symlink_to(name)
            os.link(folder / name, hard)
            for spelled in (name, f"./{name}", "link", "hard", str(folder / name)):
                for force in ([], ["--force"]):
                    form = ["--format", "text"] if args[0] == "volume" else []
                    done = run(folder, [*args, *form, option, spelled, *force])
                    untouched = {path: data for path, data in inputs(folder).items() if path not in (link, hard)} == before
                    said = b"is an input of this run" in done.stderr or (not force and b"is kept" in done.stderr)
                    tried("output that is an input", lost=not untouched, wrong=done.returncode != 2 or not said,
                          what=f"{args} {option} {spelled} {force}: {done.returncode} {done.stderr.decode()}")
            link.unlink()
            hard.unlink()


def no_plain_files():
    """A FIFO, a device or a folder named as a file, on the command line or in a file: told at once, with the place
    that named it and the kind that was expected there."""
    def record(extra=""):
        return ("tapeline: record/1\nclient: K-1\nmeasured_on: 2026-03-14\nunits: {length: cm}\nlimb: left arm\naffected: left\n"
                "positions_from: wrist\nmarks: [{landmark: wrist, at: 0, girth: 17}]\n" + extra)

    def chart(extra):
        return ("tapeline: chart/1\nlabel: a\nlimb: arm\nfrom: wrist\nto: axilla\nunits: {length: cm}\n" + extra +
                ("" if "sizes_from" in extra else 'sizes: [{size: "1", girths: {wrist: 16-18}}]\n'))

    def garment(extra):
        return ("tapeline: garment/1\nlabel: a\nlimb: arm\n" + extra)

    body = "from: wrist\nto: axilla\nunits: {length: cm}\nrelaxed: {wrist: 13}\n"
    for odd in ("pipe", "/dev/zero", "/dev/null", "folder", "/dev/tty", "missing.yaml", "loop"):
        with tempfile.TemporaryDirectory() as folder:
            folder = pathlib.Path(folder)
            os.mkfifo(folder / "pipe")
            (folder / "folder").mkdir()
            (folder / "loop").symlink_to("loop")
            (folder / "r.yaml").write_text(record())
            (folder / "c.yaml").write_text(chart(""))
            cases = {
                "check file": (["check", odd, *TODAY], None),
                "check second": (["check", "r.yaml", odd, *TODAY], None),
                "rules": (["check", "r.yaml", "--rules", odd, *TODAY], None),
                "scheme": (["check", "r.yaml", "--scheme-file", odd, *TODAY], None),
                "fabric key": (["check", "r.yaml", "f.yaml", *TODAY], chart(f"fabric: {odd}\n")),
                "sizes_from key": (["check", "r.yaml", "f.yaml", *TODAY], chart(f"sizes_from: {odd}\n")),
                "fabric of a garment": (["gradient", "r.yaml", "f.yaml", *TODAY], garment(f"fabric: {odd}\n" + body)),
                "fabric_at": (["gradient", "r.yaml", "f.yaml", *TODAY], garment(f"fabric_at: {{wrist: {odd}}}\n" + body)),
                "worn_together": (["gradient", "r.yaml", "f.yaml", *TODAY], garment(f"worn_together: [{{garment: {odd}}}, {{garment: {odd}}}]\n")),
                "visits": (["volume", "f.yaml", *TODAY], f"tapeline: visits/1\nvisits: [r.yaml, {odd}]\n"),
                "inspect": (["inspect", odd], None),
                "fabric": (["fabric", odd], None),
                "batch limbs": (["batch", odd, "c.yaml"], None),
                "batch chart": (["batch", "l.csv", odd], None),
                "new": (["new", "record", odd, *TODAY], None),
            }
            (folder / "l.csv").write_text("id,wrist_cm\na,17\n")
            for name, (args, text) in cases.items():
                if name == "new" and odd in ("missing.yaml", "/dev/null", "/dev/tty", "/dev/zero"):
                    continue
                if text:
                    (folder / "f.yaml").write_text(text)
                began = time.monotonic()
                try:
                    done = run(folder, args, seconds=10, stdin=subprocess.DEVNULL)
                except subprocess.TimeoutExpired:
                    tried("no plain file", wrong=1, what=f"{name} {odd}: does not end")
                    continue
                said = done.stderr.decode()
                fine = done.returncode == 2 and time.monotonic() - began < 2 and "panicked" not in said
                fine = fine and os.path.basename(odd) in said and (text is None or "f.yaml:" in said)
                tried("no plain file", wrong=not fine, what=f"{name} {odd}: {done.returncode} {said}")


def streams():
    """A closed or full stream: status 2, never a panic; the report has gone nowhere and that is said or shown."""
    commands = ["check first-visit.yaml sleeve-chart-b.yaml --today 2026-03-14", "volume followed/visits.yaml --today 2026-03-14",
                "sheet first-visit.yaml --today 2026-03-14 --format html -o -", "sheet first-visit.yaml --today 2026-03-14 --format pdf -o -",
                "gradient with-readings.yaml sleeve-one.yaml --today 2026-03-14", "pattern narrow-ankle.yaml knit-r3.yaml --class 2 --today 2026-03-14",
                "inspect sleeve-chart-b.yaml", "fabric knit-r4-bench.yaml", "batch caseload.csv sleeve-chart-b.yaml", "cover caseload.csv sleeve-chart-b.yaml",
                "explain tourniquet", "print manual", "print schema record", "new record", "--help", "check --help", "--version"]
    with tempfile.TemporaryDirectory() as outer:
        folder = clinic(outer)
        before = inputs(folder)
        for line in commands:
            for where in (">/dev/full", ">&-"):
                done = subprocess.run(["sh", "-c", f'"$T" {line} {where}'], cwd=folder, capture_output=True, env={**os.environ, "T": PROGRAM})
                fine = done.returncode == 2 and b"panicked" not in done.stderr and b"error" in done.stderr
                tried("standard output full or closed", wrong=not fine, what=f"{line} {where}: {done.returncode} {done.stderr.decode()[:200]}")
            done = subprocess.run(["sh", "-c", f'"$T" {line} | head -c 1 >/dev/null'], cwd=folder, capture_output=True, env={**os.environ, "T": PROGRAM})
            tried("a reader that goes away", wrong=bool(done.stderr) and b"panicked" in done.stderr, what=f"{line}: {done.stderr.decode()[:200]}")
        for line in ["check missing.yaml", "--nonsense", "check", "explain nosuchword", "inspect leaflet.csv missing.yaml", "batch missing.csv sleeve-chart-b.yaml"]:
            for where in ("2>/dev/full", "2>&-", ">&- 2>&-"):
                done = subprocess.run(["sh", "-c", f'"$T" {line} {where}'], cwd=folder, capture_output=True, env={**os.environ, "T": PROGRAM})
                tried("standard error full or closed", wrong=done.returncode != 2, what=f"{line} {where}: {done.returncode}")
        tried("standard output full or closed", lost=inputs(folder) != before, what="files changed")


# A small process measures, since a child starts with the memory of its parent.
MEASURE = """
import os, resource, sys, time, json
resource.setrlimit(resource.RLIMIT_CPU, (20, 20))
null = os.open('/dev/null', os.O_WRONLY)
said = os.open('said', os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
began = time.monotonic()
child = os.posix_spawn(sys.argv[1], sys.argv[1:], os.environ, file_actions=[
    (os.POSIX_SPAWN_DUP2, null, 1), (os.POSIX_SPAWN_DUP2, said, 2)])
_, status, usage = os.wait4(child, 0)
print(json.dumps([time.monotonic() - began, usage.ru_maxrss / 1024, os.waitstatus_to_exitcode(status)]))
"""


def measured(folder, args):
    """Seconds, MiB, status and what was said."""
    done = subprocess.run([sys.executable, "-c", MEASURE, PROGRAM, *args], cwd=folder, capture_output=True, check=True)
    return (*json.loads(done.stdout), (folder / "said").read_text(errors="replace"))


def limits():
    """Time and memory at the limits of reading."""
    head = "tapeline: record/1\nclient: K-1\nmeasured_on: 2026-03-14\nunits: {length: cm}\nlimb: left arm\naffected: left\npositions_from: wrist\n"
    marks = "marks: [{landmark: wrist, at: 0, girth: 17}]\n"
    chart = "tapeline: chart/1\nlabel: many\nlimb: arm\nfrom: wrist\nto: upper-arm\nunits: {length: cm}\n"
    most = 8 * 1024 * 1024
    texts = {
        # name: text, wanted status, most seconds
        "100 aliases in 7 MB": (head + "note: &a " + "x" * 7_000_000 + "\n" + "".join(f"k{n}: *a\n" for n in range(100)), 2, 1.0),
        "nested aliases": (head + "a: &a [x, x]\n" + "".join(f"{chr(98 + n)}: &{chr(98 + n)} [*{chr(97 + n)}, *{chr(97 + n)}]\n" for n in range(24)), 2, 1.0),
        "a merge key": (head + "a: &a {b: 1}\nc: {<<: *a}\n", 2, 1.0),
        "a tag": (head + marks + "shown: !!python/object [a]\n", 2, 1.0),
        "40,000 unknown keys": (head + marks + "".join(f"key{n}: {n}\n" for n in range(40_000)), 2, 1.0),
        "40,000 keys of a block": (head + marks + "observed: {" + ", ".join(f"k{n}: no" for n in range(40_000)) + "}\n", 2, 1.0),
        "a line of 8 MiB": (head + marks + "posture: " + "x" * (most - len(head) - len(marks) - 20) + "\n", 2, 1.0),
        "a line of 8 MiB in quotes": (head + marks + 'posture: "' + "x " * ((most - len(head) - len(marks) - 40) // 2) + '"\n', 2, 1.0),
        "above 8 MiB": (head + marks + "posture: " + "x" * most + "\n", 2, 1.0),
        "10,000 brackets deep": (head + "marks: " + "[" * 10_000 + "]" * 10_000 + "\n", 2, 1.0),
        "20,000 marks": (head + "marks:\n" + "".join(f"  - {{at: {n / 1000:.3f}, girth: 17}}\n" for n in range(20_000)), 2, 1.0),
        "200 marks": (head + "marks:\n" + "".join(f"  - {{at: {n / 4:.2f}, girth: 17}}\n" for n in range(200)), 1, 1.0),
    }
    print(f"{'at the limit':40} {'seconds':>8} {'MiB':>7} status")
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)

        def hold(name, args, status, seconds, mib=200):
            took, memory, got, said = min(measured(folder, args) for _ in range(3))
            print(f"{name:40} {took:8.3f} {memory:7.1f} {got}")
            fine = got == status and took < seconds and memory < mib and (status != 2 or ":" in said)
            tried("limits of reading", wrong=not fine, what=f"{name}: {got}, {took:.2f} s, {memory:.0f} MiB: {said[:300]}")
            if status == 2 and "limbs" not in name and name != "above 8 MiB":
                tried("place told at a limit", wrong=not re.search(r":\d+:\d+: ", said), what=f"{name}: {said[:300]}")

        for name, (text, status, seconds) in texts.items():
            (folder / "x.yaml").write_text(text)
            hold(name, ["check", "x.yaml", *TODAY], status, seconds)
        table = "size,wrist_low_cm,wrist_high_cm\n" + "".join(f"{n},{10 + n / 1000:.3f},{10.5 + n / 1000:.3f}\n" for n in range(20_000))
        (folder / "many.csv").write_text(table)
        (folder / "many.yaml").write_text(chart + "sizes_from: many.csv\n")
        (folder / "r.yaml").write_text(head + marks)
        # The target is for the reading; the check of one limb against all of them is counted with it.
        hold("a table of 20,000 sizes, check", ["check", "r.yaml", "many.yaml", "--format", "json", *TODAY], 1, 1.0, 400)
        hold("a table of 20,000 sizes, inspect", ["inspect", "many.yaml"], 1, 1.0, 400)
        (folder / "long.csv").write_text("size,wrist_low_cm,wrist_high_cm\n1,10," + "1" * (most - 60) + "\n")
        hold("a table row of 8 MiB", ["inspect", "long.csv"], 2, 1.0)
        (folder / "quote.csv").write_text('id,wrist_cm\na,"' + "1\n" * 2_000_000)
        (folder / "c.yaml").write_text(chart + 'sizes: [{size: "1", girths: {wrist: 16-18}}]\n')
        hold("a quote of limbs that never closes", ["batch", "quote.csv", "c.yaml"], 2, 1.0)


def main():
    print(f"program {PROGRAM}, {KILLS} kills")
    for part in (own_inputs, no_plain_files, streams, limits, pairs, kills):
        if not sys.argv[3:] or part.__name__ in sys.argv[3:]:
            part()
    print(f"{'kind':52} {'tries':>6} {'lost':>5} {'wrong':>6}")
    for kind, (tries, lost, wrong) in TABLE.items():
        print(f"{kind:52} {tries:6} {lost:5} {wrong:6}")
    tries = sum(row[0] for row in TABLE.values())
    failed = sum(row[1] + row[2] for row in TABLE.values())
    print(f"lost: {tries - failed} passed, {failed} failed")
    sys.exit(1 if failed or not tries else 0)


main()
