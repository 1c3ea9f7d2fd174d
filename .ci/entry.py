"""What goes in, held against general libraries; prints one line for each check that fails and a count."""

import csv
import json
import pathlib
import shutil
import subprocess
import sys

import jsonschema
import openpyxl
import pexpect
import yaml
from odf.opendocument import OpenDocumentSpreadsheet
from odf.table import CoveredTableCell, Table, TableCell, TableRow
from odf.text import P

PROGRAM, FOLDER = sys.argv[1], pathlib.Path(sys.argv[2])
ROOT = pathlib.Path.cwd()
passed, failed = 0, 0


def hold(name, holds, seen=""):
    global passed, failed
    if holds:
        passed += 1
    else:
        failed += 1
        print(f"  {name}: {seen}")


def run(*args, cwd=FOLDER, typed=None):
    return subprocess.run([PROGRAM, *args], cwd=cwd, input=typed, capture_output=True, text=True)


class Strings(yaml.SafeLoader):
    """YAML 1.1 as PyYAML reads it, but days stay texts, as in JSON."""


Strings.yaml_implicit_resolvers = {
    first: [(tag, pattern) for tag, pattern in pairs if tag != "tag:yaml.org,2002:timestamp"]
    for first, pairs in yaml.SafeLoader.yaml_implicit_resolvers.items()
}

# --- a guided record at a terminal: back, a wrong word, an interruption, on again, to a passing check


def sits(child, *pairs):
    """Waits for each prompt and types its answer; the prompts and the keystrokes, Enter among them."""
    for prompt, typed in pairs:
        child.expect_exact(prompt)
        child.sendline(typed)
    return len(pairs), sum(len(typed) + 1 for _, typed in pairs)


def at_terminal(name, kind="record"):
    args = ["new", kind, str(FOLDER / name), "--today", "2026-03-14"]
    return pexpect.spawn(PROGRAM, args, timeout=20, encoding="utf-8", dimensions=(50, 160))


def ends(child):
    child.expect(pexpect.EOF)
    child.close()
    return child.exitstatus


def guided():
    name = FOLDER / "arm.yaml"
    child = at_terminal("arm.yaml")
    sits(
        child,
        ("never a name:", "K-0417"),
        ("Which limb", "left arn"),
        ("Did you mean left arm?", ""),
    )
    child.expect_exact("This one is needed")
    sits(child, ("Which limb", "left arm"), ("affected", "right"), ("tape in cm", "back"), ("affected", "left"))
    child.expect_exact("tape in cm")
    second = run("new", "record", str(name), typed="K-2\n")
    hold("a second writer at the same time is refused", second.returncode == 2 and "is being written by another run" in second.stderr, second.stderr)
    child.sendintr()
    hold("an interrupted run ends with 2", ends(child) == 2, child.exitstatus)
    kept = name.read_text()
    hold("an interruption keeps every answer", "affected: left" in kept and "client: K-0417" in kept, kept)
    hold("an interruption says how to go on", "To go on: the same command again" in (child.before or ""), child.before)
    hold("an interruption leaves no lock", not [path for path in FOLDER.iterdir() if "lock" in path.name], list(FOLDER.iterdir()))

    # Killed, not interrupted: nothing can be said then, and nothing is lost either.
    child = at_terminal("arm.yaml")
    child.expect_exact("tape in cm")
    child.sendline("no")
    child.expect_exact("Measured on")
    child.sendline("2026-03-13")
    child.expect_exact("Age")
    child.kill(9)
    child.close()
    hold("a killed run keeps every answer", "measured_on: 2026-03-13" in name.read_text(), name.read_text())

    child = at_terminal("arm.yaml")
    sits(
        child,
        ("Age", ""),
        ("tape is in", ""),
        ("Distances count from", ""),
        ("Measured by", "M2"),
        ("who found it", "physician"),
        ("Posture", "skip"),
        ("wrist (C), girth:", "16,9"),
        ("lower forearm (C1), distance", ""),
        ("forearm (D), distance", "14 256"),
        ("Measure again and type the girth", "25.6 25,8"),
        ("elbow (E), distance", ""),
        ("upper arm (F), distance", "17"),
        ("upper arm (F), girth:", "30.5"),
        ("axilla (G), distance", "12 34.2"),
        ("thumb web (B), distance", "end"),
        ("Length wrist to axilla, 43 cm", ""),
        ("other arm measured too", "no"),
        ("0 none of these", "0"),
    )
    groups = 0
    while child.expect_exact(["0 none · numbers", "Prescribed: scheme"]) == 0:
        child.sendline("0")
        groups += 1
    child.sendline("1 2")
    sits(child, ("Style", "sleeve"), ("Prescribed by", ""), ("Allergies", "0"), ("Body weight", ""), ("Next: tapeline check", ""))
    hold("a guided record ends whole", ends(child) == 0, (child.exitstatus, name.read_text()))
    hold("the questions come by group", groups == 9, groups)
    written = yaml.safe_load(name.read_text())
    girths = {mark["landmark"]: mark["girth"] for mark in written["marks"]}
    hold("what was measured again stands", girths == {"wrist": 16.9, "forearm": [25.6, 25.8], "upper-arm": 30.5, "axilla": 34.2}, girths)
    shutil.copy(ROOT / "demo/sleeve-chart-a.yaml", FOLDER)
    chart = (FOLDER / "sleeve-chart-a.yaml").read_text().replace("../", str(ROOT) + "/")
    (FOLDER / "sleeve-chart-a.yaml").write_text(chart)
    for fabric in (ROOT / "demo").glob("knit*.yaml"):
        shutil.copy(fabric, FOLDER)
    checked("arm.yaml", "sleeve-chart-a.yaml")


def checked(record, *charts):
    report = run("check", record, *charts, "--today", "2026-03-14", "--format", "json")
    hold(f"{record} is checked", report.returncode in (0, 1), report.stderr)
    if report.returncode in (0, 1):
        screening = json.loads(report.stdout)["screening"]
        hold(f"{record}: no question is open", screening["unanswered"] == [], screening["unanswered"])


NONE = ("0 none · numbers", "0")


def counted():
    """Prompts and keystrokes of two whole records, as a hand that measures would type them."""
    child = at_terminal("six.yaml")
    prompts, keys = sits(
        child,
        ("never a name:", "K-0417"),
        ("Which limb", "1"),
        ("affected", ""),
        ("tape in cm", ""),
        ("Measured by", "M2"),
        ("who found it", "p"),
        ("Posture", ""),
        ("wrist (C), girth:", "16.9"),
        ("lower forearm (C1), distance", "7 20.9"),
        ("forearm (D), distance", "7 25.7"),
        ("elbow (E), distance", "8 27.6"),
        ("upper arm (F), distance", "11 32.4"),
        ("axilla (G), distance", "9 37.2"),
        ("thumb web (B), distance", "end"),
        ("Length wrist to axilla, 42 cm", ""),
        ("other arm measured too", ""),
        ("0 none of these", "0"),
        *[NONE] * 9,
        ("Prescribed: scheme", "1 2"),
        ("Style", ""),
        ("Prescribed by", ""),
        ("Allergies", "0"),
        ("Body weight", ""),
    )
    hold("an arm of six marks is whole", ends(child) == 0, child.before)
    print(f"  a six-mark arm without a finding: {prompts} prompts, {keys} keystrokes with Enter")
    hold("an arm takes no more than 31 prompts and 105 keystrokes", prompts <= 31 and keys <= 105, (prompts, keys))
    checked("six.yaml")
    child = at_terminal("leg.yaml")
    prompts, keys = sits(
        child,
        ("never a name:", "K-0520"),
        ("Which limb", "5"),
        ("affected", ""),
        ("tape in cm", ""),
        ("Measured by", "M2"),
        ("who found it", "p"),
        ("Posture", ""),
        ("ankle (B), distance from the floor", "11 23.4"),
        ("lower calf (B1), distance", "9 29.2"),
        ("calf (C), distance", "10 37.6"),
        ("below knee (D), distance", "9 34.6"),
        ("knee (E), distance", "end"),
        ("Length ankle to below-knee, 28 cm", ""),
        ("other leg measured too", ""),
        ("0 none of these", "0"),
        *[NONE] * 8,
        ("Ankle-brachial", "1.04"),
        ("Toe pressure", ""),
        ("On which day", "2026-03-10"),
        ("Prescribed: scheme", "1 2"),
        ("Style", ""),
        ("Prescribed by", ""),
        ("Allergies", "0"),
        ("Body weight", ""),
    )
    hold("a leg with an index is whole", ends(child) == 0, child.before)
    print(f"  a leg of four marks with its index: {prompts} prompts, {keys} keystrokes with Enter")
    hold("a leg takes no more than 31 prompts and 105 keystrokes", prompts <= 31 and keys <= 105, (prompts, keys))
    checked("leg.yaml")


def others_guided():
    """A chart, a garment and a fabric, typed at a terminal and read back."""
    child = at_terminal("sizes.yaml", "chart")
    sits(
        child,
        ("Label", "sleeve chart X"),
        ("Limb", "arm"),
        ("Style", "sleeve"),
        ("Claims which scheme", "1 2"),
        ("Materials", "polyamide, elastane"),
        ("cover the hand", "no"),
        ("Fabric file", ""),
        ("Lengths are in", ""),
        ("Which marks", "C D G"),
        ("label, smallest first", "S"),
        ("wrist (C), as", "14-16"),
        ("forearm (D), as", "21-24,5"),
        ("axilla (G), as", "over 28"),
        ("own measures", "flat_width"),
        ("wrist (C), flat", "5.3"),
        ("forearm (D), flat", "7.7"),
        ("axilla (G), flat", ""),
        ("Next size", ""),
    )
    hold("a guided chart is whole", ends(child) == 0, child.before)
    seen = run("inspect", "sizes.yaml")
    hold("a guided chart is read", seen.returncode in (0, 1) and "24.5" in seen.stdout, seen.stdout + seen.stderr)
    child = at_terminal("one.yaml", "garment")
    sits(
        child,
        ("Label", "sleeve 1"),
        ("Limb", "arm"),
        ("Style", ""),
        ("Claims which scheme", ""),
        ("Materials", ""),
        ("cover the hand", "no"),
        ("Fabric file", ""),
        ("Lengths are in", "in"),
        ("hand (A), flat", ""),
        ("thumb web (B), flat", ""),
        ("wrist (C), flat", "2 1/2"),
        ("lower forearm (C1), flat", ""),
        ("forearm (D), flat", "3½"),
        ("elbow (E), flat", ""),
        ("upper arm (F), flat", ""),
        ("axilla (G), flat", "5"),
    )
    hold("a guided garment is whole", ends(child) == 0, child.before)
    written = yaml.safe_load((FOLDER / "one.yaml").read_text())
    hold("inch fractions are read", written["flat_width"] == {"wrist": 2.5, "forearm": 3.5, "axilla": 5}, written)
    child = at_terminal("cloth.yaml", "fabric")
    sits(child, ("Label", "knit X"), ("What is known", "curve"), ("Next point", "20 62"), ("Next point", "45 120"), ("Next point", ""))
    hold("a guided fabric is whole", ends(child) == 0, child.before)
    hold("a guided fabric is read", run("fabric", "cloth.yaml").returncode == 0)


# --- the schemas: every demo file passes, every malformed one that a schema can refuse is refused

KINDS = ["record", "chart", "garment", "wrap", "fabric", "scheme", "rules", "visits"]


def schemas():
    validators = {}
    for kind in KINDS:
        schema = json.loads(run("print", "schema", kind).stdout)
        jsonschema.Draft202012Validator.check_schema(schema)
        validators[kind] = jsonschema.Draft202012Validator(schema)
    folders = [ROOT / "demo", *(ROOT / "garment-tables").iterdir()]
    files = [path for folder in folders for path in sorted(folder.rglob("*.yaml"))]
    hold("there are files to hold", len(files) > 30, len(files))
    for path in files:
        content = yaml.load(path.read_text(), Loader=Strings)
        kind = str(content.get("tapeline", "")).split("/")[0] if isinstance(content, dict) else ""
        if kind in validators:
            faults = [fault.message for fault in validators[kind].iter_errors(content)]
            hold(f"{path.relative_to(ROOT)} passes its schema", not faults, faults[:3])
    # Every malformed file is refused, but for those of which a list says why no schema can.
    cannot = [line.strip() for line in (ROOT / ".ci/schemas-cannot.txt").read_text().splitlines() if line.startswith("  ")]
    passing, total = [], 0
    for kind in KINDS:
        for path in sorted((ROOT / "tests/malformed" / kind).glob("*.yaml")):
            total += 1
            try:
                if validators[kind].is_valid(yaml.load(path.read_text(), Loader=Strings)):
                    passing.append(f"{kind}/{path.stem}")
            except (yaml.YAMLError, UnicodeDecodeError, ValueError):
                pass
    hold("malformed files pass a schema as listed and no others", sorted(passing) == sorted(cannot), sorted(set(passing) ^ set(cannot)))
    print(f"  schemas refuse {total - len(passing)} of {total} malformed files")
    # Of every kind, what is right is made wrong in three ways: a key that is none, one that is missing, a value of another form.
    changed = {kind: 0 for kind in KINDS}
    for path in files:
        content = yaml.load(path.read_text(), Loader=Strings)
        kind = str(content["tapeline"]).split("/")[0]
        schema = validators[kind].schema
        wrong = [{**content, "no_such_key": 1}, {**content, "tapeline": "other/1"}]
        wrong += [{key: value for key, value in content.items() if key != gone} for gone in schema["required"]]
        wrong += [{**content, key: [[]]} for key in content]
        for one in wrong:
            hold(f"{path.name} made wrong is refused", not validators[kind].is_valid(one), str(one)[:200])
        changed[kind] += len(wrong)
    hold("every kind was made wrong", all(count > 5 for count in changed.values()), changed)


# --- spreadsheets: the same sizes as the CSV


def sheets():
    rows = [
        ["size", "wrist (cm)", "forearm (cm)", "axilla (cm)"],
        ["1", "14-16", "21-24", "28-32"],
        ["2", "16-18", "24-27", "32-36"],
        ["3", "18-20", "27-30", "36-40.5"],
    ]
    with open(FOLDER / "t.csv", "w", newline="") as out:
        csv.writer(out).writerows(rows)
    book = openpyxl.Workbook()
    for row in rows:
        book.active.append(row)
    book.save(FOLDER / "t.xlsx")
    document = OpenDocumentSpreadsheet()
    table = Table(name="Sizes")
    for row in rows:
        line = TableRow()
        for cell in row:
            one = TableCell(valuetype="string")
            one.addElement(P(text=cell))
            line.addElement(one)
        table.addElement(line)
    document.spreadsheet.addElement(table)
    document.save(FOLDER / "t.ods")
    plain = run("inspect", "t.csv").stdout.split("\n", 1)[1]
    for name in ["t.xlsx", "t.ods"]:
        seen = run("inspect", name)
        hold(f"{name} reads as the CSV", seen.stdout.split("\n", 1)[-1] == plain and len(plain) > 100, seen.stderr or seen.stdout)

    def refused(name, change, wanted):
        book = openpyxl.Workbook()
        for row in rows:
            book.active.append(row)
        change(book.active)
        book.save(FOLDER / name)
        seen = run("inspect", name)
        hold(f"{name} is a problem with sheet and cell", seen.returncode == 2 and wanted in seen.stderr, seen.stderr)

    import datetime

    def date(sheet):
        sheet["B3"] = datetime.date(2026, 10, 12)

    def formula(sheet):
        sheet["C2"] = "=1+1"

    def merged(sheet):
        sheet.merge_cells("B2:B3")

    def two_headers(sheet):
        sheet.insert_rows(2)
        for column, word in enumerate(["", "range", "range", "range"], 1):
            sheet.cell(2, column, word)

    def wrong(sheet):
        sheet["D4"] = "wide"

    def title(sheet):
        sheet.insert_rows(1)
        sheet["A1"] = "Sizes of 2026"

    def fault(sheet):
        sheet["B2"] = "#N/A"

    refused("date.xlsx", date, "sheet Sheet: B3: holds a date")
    refused("formula.xlsx", formula, "sheet Sheet: C2: holds a formula")
    refused("merged.xlsx", merged, "sheet Sheet: B2: is merged")
    refused("headers.xlsx", two_headers, "sheet Sheet: row 2: looks like a second header row")
    refused("wrong.xlsx", wrong, "sheet Sheet: D4")
    refused("title.xlsx", title, "sheet Sheet: row 1: is a title")
    refused("fault.xlsx", fault, "sheet Sheet: B2: holds an error")

    def ods(name, table, change=lambda row, column: None):
        document = OpenDocumentSpreadsheet()
        sheet = Table(name="Sizes")
        for down, row in enumerate(table):
            line = TableRow()
            for across, cell in enumerate(row):
                one = change(down, across)
                if one is None:
                    one = TableCell(valuetype="string")
                    one.addElement(P(text=cell))
                line.addElement(one)
            sheet.addElement(line)
        document.spreadsheet.addElement(sheet)
        document.save(FOLDER / name)
        return run("inspect", name)

    def cell(text, **about):
        one = TableCell(**about)
        one.addElement(P(text=text))
        return one

    def spanned(down, across):
        if (down, across) == (2, 1):
            return cell("16-18", valuetype="string", numberrowsspanned="2", numbercolumnsspanned="1")
        return CoveredTableCell() if (down, across) == (3, 1) else None

    def at(place, one):
        return lambda down, across: one() if (down, across) == place else None

    for name, change, wanted in [
        ("merged.ods", spanned, "sheet Sizes: B3: is merged"),
        ("formula.ods", at((1, 2), lambda: cell("21", formula="of:=20+1", valuetype="float", value="21")), "sheet Sizes: C2: holds a formula"),
        ("date.ods", at((2, 1), lambda: cell("16/10/26", valuetype="date", datevalue="2026-10-16")), "sheet Sizes: B3: holds a date"),
    ]:
        seen = ods(name, rows, change)
        hold(f"{name} is a problem with sheet and cell", seen.returncode == 2 and wanted in seen.stderr, seen.stderr)
    seen = ods("headers.ods", [rows[0], ["", "range", "range", "range"], *rows[1:]])
    hold("headers.ods is a problem with sheet and row", seen.returncode == 2 and "sheet Sizes: row 2: looks like a second header row" in seen.stderr, seen.stderr)

    # A history has days, and days in a column of days are read; elsewhere they are a problem.
    with open(ROOT / "demo/followed/history.csv", newline="") as text:
        history = list(csv.reader(text))
    days = history[0].index("date")

    def typed(row):
        return [datetime.date.fromisoformat(one) if at == days else float(one) if one[:1].isdigit() else one for at, one in enumerate(row)]

    book = openpyxl.Workbook()
    for row in [history[0], *[typed(row) for row in history[1:]]]:
        book.active.append(row)
    book.save(FOLDER / "history.xlsx")
    ods("history.ods", history, lambda down, across: cell("x", valuetype="date", datevalue=history[down][across]) if down and across == days else None)
    told = {}
    for name in [str(ROOT / "demo/followed/history.csv"), "history.xlsx", "history.ods"]:
        seen = run("volume", str(ROOT / "demo/followed/visit-7.yaml"), name, "--today", "2026-03-14")
        told[name] = seen.stdout
        hold(f"{name} is a history", seen.returncode in (0, 1) and "2025-06-26" in seen.stdout, seen.stderr)
    hold("a history reads the same from every sheet", len(set(told.values())) == 1, told)
    book.active["D3"] = datetime.date(2026, 10, 17)
    book.save(FOLDER / "slip.xlsx")
    seen = run("volume", str(ROOT / "demo/followed/visit-7.yaml"), "slip.xlsx", "--today", "2026-03-14")
    hold("a date where a girth belongs is a problem", seen.returncode == 2 and "D3: holds a date" in seen.stderr, seen.stderr)

    # Inch fractions in a file of semicolons, and a long and a wide form of one table.
    (FOLDER / "inch.csv").write_text("size;wrist (in);forearm (in);axilla (in)\n1;5 1/2-6 1/4;8½-9 5/8;under 12\n2;6 1/4 - 7;9 5/8-10 3/4;over 12\n")
    seen = run("inspect", "inch.csv")
    # 6 1/4 in is 15.875 cm, 9 5/8 in is 24.4475 cm (1 in = 2.54 cm, published: 1959 agreement).
    hold("inch fractions between semicolons are read", seen.returncode in (0, 1) and "15.88" in seen.stdout and "24.45" in seen.stdout, seen.stdout + seen.stderr)

    (FOLDER / "euro.csv").write_text("size;wrist (cm);forearm (cm);axilla (cm)\n1;14-16;21-24;28-32\n3;18-20;27-30;36-40,5\n")
    seen = run("inspect", "euro.csv")
    hold("a decimal comma is told", seen.returncode == 2 and "--decimal-comma" in seen.stderr, seen.stderr)
    seen = run("inspect", "euro.csv", "--decimal-comma")
    hold("a decimal comma is read when asked for", "36.0–40.5" in seen.stdout and "semicolons" in seen.stdout, seen.stdout + seen.stderr)


# --- records loaded and saved by another YAML library


def resaved():
    demo = sorted(path for path in (ROOT / "demo").glob("*.yaml") if "tapeline: record/1" in path.read_text())
    hold("there are records to save again", len(demo) >= 8, len(demo))
    for path in demo:
        saved = yaml.safe_dump(yaml.safe_load(path.read_text()), sort_keys=False, allow_unicode=True)
        (FOLDER / path.name).write_text(saved)
        args = ["--today", "2026-03-14", "--format", "json"]
        first = run("check", str(path), *args)
        again = run("check", str(FOLDER / path.name), *args)
        if first.returncode == 2:
            continue
        one, other = json.loads(first.stdout), json.loads(again.stdout or "{}")
        one["record"].pop("file", None)
        other.get("record", {}).pop("file", None)
        hold(f"{path.name} saved again reads the same", one == other, again.stderr[:300])


# --- the manual and the completions


def reference():
    manual = run("print", "manual").stdout
    (FOLDER / "tapeline.1").write_text(manual)
    if shutil.which("man"):
        seen = subprocess.run(
            ["man", "--warnings", "-l", str(FOLDER / "tapeline.1")], capture_output=True, text=True, env={"MANROFFOPT": "", "PATH": "/usr/bin:/bin", "LC_ALL": "C.UTF-8"}
        )
        hold("man reads the manual without a warning", seen.returncode == 0 and not seen.stderr, seen.stderr[:300])
    for command in ["new", "check", "sheet", "volume", "gradient", "pattern", "inspect", "fabric", "explain", "print"]:
        hold(f"the manual has {command}", f'"{command.upper()}"' in manual, "")
    for shell, check in [("bash", ["-n"]), ("zsh", ["-n"]), ("fish", ["--no-execute"])]:
        path = FOLDER / f"completions.{shell}"
        path.write_text(run("print", "completions", shell).stdout)
        if shutil.which(shell):
            seen = subprocess.run([shell, *check, str(path)], capture_output=True, text=True)
            hold(f"{shell} loads its completions", seen.returncode == 0, seen.stderr[:300])
        else:
            print(f"  {shell} is not here: its completions were not loaded")
    hold("powershell has completions", "Register-ArgumentCompleter" in run("print", "completions", "powershell").stdout)


for part in [guided, counted, others_guided, schemas, sheets, resaved, reference]:
    try:
        part()
    except Exception as fault:  # one part that breaks is one failure; the others still run
        hold(part.__name__, False, f"{type(fault).__name__}: {str(fault)[:1500]}")
print(f"entry: {passed} passed, {failed} failed")
sys.exit(failed > 0)
