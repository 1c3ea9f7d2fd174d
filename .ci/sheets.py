"""Looks at the sheets from outside. Called by .ci/sheets."""

import html.parser
import importlib.util
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import time

import textstat  # this version counts syllables by hyphenation patterns and fetches nothing
from PIL import Image, ImageChops

TOOLS = pathlib.Path(sys.argv[1]).resolve()
PROGRAM = os.path.join(os.environ.get("CARGO_TARGET_DIR", "target"), "debug/tapeline")
TODAY = ["--today", "2026-03-14"]
A4, LETTER = (595.276, 841.89), (612.0, 792.0)
# Result and signature stand on one side of one sheet.
ALONE = ("trial", "trial-letter", "trial-german", "made-to-measure", "refer", "refer-letter", "emergency", "emergency-german", "same-day", "soon", "both-legs", "set", "no-chart")
# What the client reads first, where it cannot wait.
FIRST = {
    "emergency": "Call for emergency help now: the blood may not be getting through to your limb.",
    "emergency-german": "Rufen Sie jetzt den Notruf: Vielleicht kommt zu wenig Blut in Arm oder Bein.",
    "same-day": "See a doctor today: your skin may be infected and you may need antibiotics.",
}
# Words of the files, of the command line and of the set of rules: none stands on paper.
CODES = ["clear-first", "fall-unknown", "trial-fitting", "ral-gz", "-part-needed", "awmf-037", "--", "_cm", "mmhg", "heart-kidneys", "daily-life"]

spec = importlib.util.spec_from_file_location("cases", pathlib.Path(__file__).parent / "sheets-cases.py")
cases = importlib.util.module_from_spec(spec)
spec.loader.exec_module(cases)

passed, failed = 0, 0


def check(holds, what):
    """Counts a check; says what failed."""
    global passed, failed
    if holds:
        passed += 1
    else:
        failed += 1
        print(f"FAILED {what}")


def out(*command, ok=(0,), env=None):
    done = subprocess.run(command, capture_output=True, text=True, errors="replace", env=env)
    if done.returncode not in ok:
        raise SystemExit(f"{command}: {done.returncode}\n{done.stdout}\n{done.stderr}")
    return done.stdout


class Leaf(html.parser.HTMLParser):
    """The sentences of the client's leaf: paragraphs and items, without headings and blanks."""

    def __init__(self):
        super().__init__()
        self.leaf, self.kind, self.boxes, self.found = False, None, False, []

    def handle_starttag(self, tag, attributes):
        kind = dict(attributes).get("class") or ""
        if tag == "section":
            self.leaf = "client" in kind
        if self.leaf and (tag in ("p", "li") or kind == "title"):
            self.kind = kind
            if kind not in ("blanks", "run", "small"):
                self.found.append("")
        if tag == "span":
            self.boxes = kind == "boxes"

    def handle_endtag(self, tag):
        if tag in ("p", "li", "h1", "h2"):
            self.kind = None
        if tag == "span":
            self.boxes = False

    def handle_data(self, data):
        if self.leaf and not self.boxes and self.kind not in (None, "blanks", "run", "small"):
            self.found[-1] += data

    def sentences(self):
        lines = [line.replace("_", "").strip() for line in self.found if line.strip()]
        # A line that ends in a colon goes on in the next.
        return " ".join(line.rstrip(":") if line[-1] in ".?!:" else line + "." for line in lines)


def tight(text):
    """Letters and signs alone: readers of PDF differ in blanks and in hyphens at line ends."""
    return re.sub(r"[\s\u00a0\u2010-]+", "", text)


def words(pdf):
    """Words with their boxes, page by page."""
    text = out("pdftotext", "-bbox", pdf, "-")
    pages = []
    for page in re.split(r"<page ", text)[1:]:
        size = tuple(float(one) for one in re.match(r'width="([\d.]+)" height="([\d.]+)"', page).groups())
        boxes = re.findall(r'<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)</word>', page)
        pages.append((size, [(*(float(one) for one in box[:4]), box[4]) for box in boxes]))
    return pages


def overlaps(boxes):
    """Pairs of words whose letters lie on one another."""
    found = []
    boxes = [(x, y + (b - y) * 0.22, r, b - (b - y) * 0.22, word) for x, y, r, b, word in boxes]
    for at, (x, y, r, b, word) in enumerate(boxes):
        for x2, y2, r2, b2, other in boxes[at + 1 :]:
            if min(r, r2) - max(x, x2) > 0.8 and min(b, b2) - max(y, y2) > 0.8:
                found.append(f"{word}/{other}")
    return found


def own_number(head):
    """The number and the count that the head of a page says of itself, and whether it is the client's."""
    found = re.search(r"(your page|Ihre Seite|page) (\d+)(?: (?:of|von) (\d+))?", head)
    return (int(found[2]), int(found[3] or 0), found[1] != "page") if found else (0, 0, False)


def look_at_pdf(name, pdf, report, paper, pictures, direct):
    """What holds of a printed sheet, whoever wrote the PDF."""
    client, limb = report["record"]["client"], report["limbs"][0]["limb"]
    outcome = report["decision"]["outcome"]
    pages = words(pdf)
    wide, high = LETTER if paper == "letter" else A4
    numbers, texts = [], []
    for number, (size, boxes) in enumerate(pages, 1):
        at = f"{pdf.name} page {number}"
        check(abs(size[0] - wide) < 1.5 and abs(size[1] - high) < 1.5, f"{at}: paper {size}")
        head = " ".join(box[4] for box in sorted(boxes, key=lambda box: (round(box[1] / 4), box[0])) if box[1] < 62)
        page = own_number(head)
        # A page left empty, so that the client's leaf begins on a sheet of paper of its own.
        empty = direct and not boxes and number < len(pages) and number % 2 == 0
        numbers.append(None if empty else page)
        texts.append(" ".join(box[4] for box in boxes))
        if empty:
            continue
        check(client in head and page[0] > 0, f"{at}: head `{head}`")
        if not page[2]:
            for part in (f"measured {report['record']['measured_on']}", f"printed {report['today']}"):
                check(part in head, f"{at}: `{part}` not in head `{head}`")
            check((outcome == "stop") == ("STOP: DO NOT FIT" in head), f"{at}: the head does not say the outcome")
        check(not overlaps(boxes), f"{at}: {overlaps(boxes)}")
        clipped = [box[4] for box in boxes if box[0] < 20 or box[1] < 18 or box[2] > size[0] - 20 or box[3] > size[1] - 18]
        check(not clipped, f"{at}: near or over the edge: {clipped}")
    fitters = [page for page in numbers if page and not page[2]]
    clients = [place for place, page in enumerate(numbers, 1) if page and page[2]]
    check([page[0] for page in fitters] == list(range(1, len(fitters) + 1)), f"{pdf.name}: fitter's numbers {fitters}")
    check(1 <= len(clients) <= 2, f"{pdf.name}: the client's leaf has {len(clients)} pages")
    check([numbers[place - 1][0] for place in clients] == list(range(1, len(clients) + 1)), f"{pdf.name}: the client's pages are not numbered by themselves")
    if not clients:
        return "?"
    if direct:
        check(clients[0] % 2 == 1, f"{pdf.name}: the client's leaf begins on page {clients[0]}")
    # A browser sets wider letters; a set printed from it may sign on page 2.
    if name in ALONE and (direct or name != "set"):
        check("Fitter, date" in texts[0] and "Clinician, date" in texts[0], f"{pdf.name}: the signature is not on page 1")
    opening = numbers[clients[0] - 1] and pages[clients[0] - 1][1]
    body = [box for box in opening if box[1] > 55]
    if name in FIRST:
        said = " ".join(box[4] for box in body)
        check(tight(said).startswith(tight(FIRST[name])), f"{pdf.name}: the client reads first: {said[:120]}")
        tallest = max(box[3] - box[1] for box in body)
        first = body[: len(FIRST[name].split())]
        check(all(box[3] - box[1] > tallest - 0.6 for box in first), f"{pdf.name}: what cannot wait is not the largest line")
    raw = out("pdftotext", pdf, "-")
    text = tight(raw)
    plain = " ".join(raw.split())
    for code in CODES + [one["id"] for one in report["findings"] if "-" in one["id"] and one["id"] not in ("same-day",)]:
        check(code not in plain, f"{pdf.name}: `{code}` stands on paper")
    if outcome in ("stop", "refer"):
        check("go on to a trial fitting" not in plain.lower() and ("Figures only" in plain or not report["limbs"][0]["charts"]), f"{pdf.name}: invites to fit")
    for finding in report["findings"]:
        check(tight(finding["message"].rstrip("."))[1:] in text, f"{pdf.name} lacks: {finding['message']}")
        if finding["decided_by"]:
            for part in (finding["decided_by"]["reason"], finding["decided_by"]["on"]):
                check(tight(part) in text, f"{pdf.name} lacks of what was cleared: {part}")
    for question in report["screening"]["questions"]:
        check(tight(question["question"]) in text, f"{pdf.name} lacks: {question['question']}")
    for one in report["limbs"]:
        for mark in one["marks"]:
            check(figure(mark["girth_cm"]) in text, f"{pdf.name} lacks {mark['girth_cm']}")
        for at, chart in enumerate(one["charts"]):
            shown = chart["size"] if chart["size"] is not None else chart["nearest"]
            if not chart["counted"] or shown is None:
                continue
            for measure in chart["sizes"][shown]["measures"]:
                ends = f"{figure(measure['low_cm'])}\u2013{figure(measure['high_cm'])}"
                check(ends in text, f"{pdf.name} lacks {measure['measure']} {ends}")
            if chart["verdict"] != "size":
                continue
            blocks = [block for block in one["pressure"] if block["chart"] == at and block["size"] == shown]
            for mark in (mark for block in blocks for mark in block["marks"] if mark["pressure_mmhg"]):
                cell = "{:.0f}({:.0f}\u2013{:.0f})".format(mark["pressure_mmhg"], mark["low_mmhg"], mark["high_mmhg"])
                check(cell in text, f"{pdf.name}: pressure {cell} of the JSON")
    out("pdftoppm", "-r", "70", "-png", pdf, pictures / pdf.stem)
    drawn = sorted(pictures.glob(f"{pdf.stem}-[0-9]*.png"))
    check(len(drawn) == len(pages), f"{pdf.name}: {len(drawn)} pictures")
    for picture, page in zip(drawn, numbers):
        red, green, blue = Image.open(picture).convert("RGB").split()
        check(not ImageChops.difference(red, green).getbbox() and not ImageChops.difference(red, blue).getbbox(), f"{picture.name} has colour")
        ink = sum(red.histogram()[:128]) / (red.width * red.height)
        check(page is None or 0.003 < ink < 0.3, f"{picture.name}: {ink:.3f} of it is ink")
    return f"{len(fitters)}+{len(clients)}"


def figure(value):
    """A length as the sheet prints it."""
    return f"{value:.1f}" if abs(value * 10 - round(value * 10)) < 1e-6 else f"{value:.2f}"


TAGS = ("H1", "H2", "H3", "P", "L", "LI", "Lbl", "LBody", "Table", "Caption", "THead", "TH", "TD", "Figure")


def look_at_direct(pdf, required=TAGS):
    """What the program's own PDF promises."""
    check("No syntax or stream encoding errors" in out("qpdf", "--check", pdf), f"{pdf.name}: qpdf")
    fonts = [line for line in out("pdffonts", pdf).splitlines()[2:] if line]
    check(bool(fonts) and all(re.search(r"\byes yes yes\b", line) for line in fonts), f"{pdf.name}: fonts {fonts}")
    info = out("pdfinfo", pdf)
    check("Tagged:          yes" in info and "JavaScript:      no" in info and "Encrypted:       no" in info, f"{pdf.name}: {info}")
    tags = out("pdfinfo", "-struct", pdf)
    for tag in required:
        check(re.search(rf"(?m)^\s*{tag}\b", tags), f"{pdf.name}: no tag {tag}")
    meta = out("pdfinfo", "-meta", pdf)
    check("pdfaid:part" in meta and "pdfuaid:part" in meta, f"{pdf.name}: the metadata name no PDF/A and PDF/UA")


# The marks of the couch form, restated from the published measuring points (letters of the standards).
FORM = {"arm": "C C1 D E F G B A".split(), "leg": "B B1 C D E F G Y A".split()}


def look_at_form(work, pictures):
    """The empty form for a pencil: one sheet of paper for each limb, drawn with its marks, in grey."""
    direct, printed = work / "form.pdf", work / "form.browser.pdf"
    look_at_direct(direct, [tag for tag in TAGS if tag != "H3"])
    for pdf in (direct, printed):
        pages = words(pdf)
        check(len(pages) == 4, f"{pdf.name}: {len(pages)} pages, not two for each limb")
        for number, (size, boxes) in enumerate(pages, 1):
            at = f"{pdf.name} page {number}"
            check(abs(size[0] - A4[0]) < 1.5 and abs(size[1] - A4[1]) < 1.5, f"{at}: paper {size}")
            check(not overlaps(boxes), f"{at}: {overlaps(boxes)}")
            clipped = [box[4] for box in boxes if box[0] < 20 or box[1] < 18 or box[2] > size[0] - 20 or box[3] > size[1] - 18]
            check(not clipped, f"{at}: near or over the edge: {clipped}")
        for page, letters in ((pages[0], FORM["arm"]), (pages[2], FORM["leg"])):
            said = [box[4] for box in page[1]]
            # Each letter stands on the drawing and in the table.
            short = [letter for letter in letters if sum(word.strip(":") == f"({letter})" for word in said) != 2]
            check(not short, f"{pdf.name}: {short} not both drawn and in the table")
        out("pdftoppm", "-r", "70", "-png", pdf, pictures / pdf.stem)
        for picture in sorted(pictures.glob(f"{pdf.stem}-[0-9]*.png")):
            red, green, blue = Image.open(picture).convert("RGB").split()
            check(not ImageChops.difference(red, green).getbbox() and not ImageChops.difference(red, blue).getbbox(), f"{picture.name} has colour")
            ink = sum(red.histogram()[:128]) / (red.width * red.height)
            check(0.003 < ink < 0.3, f"{picture.name}: {ink:.3f} of it is ink")
    text = (work / "form.txt").read_text()
    check(text.isascii() or all(char in "\u00b7\u2013\u2019\x0c" for char in text if not char.isascii()), "form.txt has signs that a line printer lacks")
    check(all(len(line) <= 78 for line in text.splitlines()), "form.txt is wider than its paper")


def look_at_inspect(work, pictures):
    """What `inspect` draws of a chart, printed: on the paper, in grey, with the ranges of the chart."""
    pdf = work / "inspect.browser.pdf"
    for number, (size, boxes) in enumerate(words(pdf), 1):
        at = f"{pdf.name} page {number}"
        check(abs(size[0] - A4[0]) < 1.5 and abs(size[1] - A4[1]) < 1.5, f"{at}: paper {size}")
        check(not overlaps(boxes), f"{at}: {overlaps(boxes)}")
        clipped = [box[4] for box in boxes if box[0] < 20 or box[1] < 18 or box[2] > size[0] - 20 or box[3] > size[1] - 18]
        check(not clipped, f"{at}: near or over the edge: {clipped}")
    text = tight(out("pdftotext", pdf, "-"))
    for one in cases.SLEEVE["sizes"]:
        for name, ends in one["girths"].items():
            # In the table and beside the bar.
            check(text.count(tight(ends.replace("-", "\u2013"))) >= 2, f"{pdf.name} lacks size {one['size']} {name} {ends}")
    out("pdftoppm", "-r", "70", "-png", pdf, pictures / pdf.stem)
    for picture in sorted(pictures.glob(f"{pdf.stem}-[0-9]*.png")):
        red, green, blue = Image.open(picture).convert("RGB").split()
        check(not ImageChops.difference(red, green).getbbox() and not ImageChops.difference(red, blue).getbbox(), f"{picture.name} has colour")


def main():
    work = pathlib.Path(tempfile.mkdtemp())
    pictures = pathlib.Path(sys.argv[2]).resolve() if sys.argv[2] else work
    pictures.mkdir(parents=True, exist_ok=True)
    reports, table = {}, []
    for name, (_, paper, language) in cases.CASES.items():
        files = cases.write(work, name)
        done = subprocess.run([PROGRAM, "check", *files, *TODAY, "--format", "json"], capture_output=True, text=True)
        check(done.stdout.startswith("{"), f"{name}: no report: {done.stderr}")
        reports[name] = json.loads(done.stdout)
        status = {"trial-fitting": 0, None: 0, "stop": 3}.get(reports[name]["decision"]["outcome"], 1)
        check(done.returncode == status, f"{name}: status {done.returncode}")
        common = [*files, *TODAY, "--paper", paper, "--language", language]
        took = {}
        for ending in ("html", "pdf", "txt"):
            path = work / f"{name}.{ending}"
            start = time.perf_counter()
            out(PROGRAM, "sheet", *common, "-o", str(path), ok=(status,))
            took[ending] = (path.stat().st_size, (time.perf_counter() - start) * 1000)
        again = work / "again.pdf"
        # Another place and time of day, the same bytes.
        elsewhere = {"TZ": "Pacific/Apia", "LANG": "tr_TR.UTF-8", "HOME": "/nonexistent", "PATH": "/usr/bin:/bin"}
        out(PROGRAM, "sheet", *common, "-o", str(again), "--force", ok=(status,), env=elsewhere)
        check(again.read_bytes() == (work / f"{name}.pdf").read_bytes(), f"{name}: other bytes elsewhere")
        table.append((name, took))

    for ending in ("html", "pdf", "txt"):
        out(PROGRAM, "new", "record", "--blank", str(work / f"form.{ending}"), *TODAY)
    # Charts and a record as `inspect` shows them.
    plain = str(work / "trial" / "1.yaml")
    out(PROGRAM, "inspect", plain, str(work / "set" / "2.yaml"), str(work / "trial" / "0.yaml"), "-o", str(work / "inspect.html"), ok=(0, 1))
    pages = [str(work / f"{name}.html") for name in (*cases.CASES, "form", "inspect")]
    faults = subprocess.run(["java", "-jar", TOOLS / "node_modules/vnu-jar/build/dist/vnu.jar", "--stdout", *pages], capture_output=True, text=True)
    check(faults.returncode == 0 and not faults.stdout, f"vnu: {faults.stdout}{faults.stderr}")
    faults = subprocess.run(["node", TOOLS / "node_modules/html-validate/bin/html-validate.mjs", "--config", str(validator_rules(work)), *pages], capture_output=True, text=True)
    check(faults.returncode == 0, f"html-validate: {faults.stdout}{faults.stderr}")

    seen = out("node", TOOLS / "browser.mjs", out("sh", "-c", "command -v chromium").strip(), *pages)
    for line in seen.splitlines():
        result = json.loads(line)
        name = pathlib.Path(result["page"]).stem
        check(not result["faults"], f"{name}: {result['faults'][:6]}")
        check(not result["broken"], f"{name}: broken inside a number: {result['broken'][:6]}")
        check(not result["scroll"], f"{name} scrolls sideways: {result['scroll']}")
        check(not result["outside"], f"{name} asks for {result['outside']}")
        check(not result["axe"], f"{name}: axe {result['axe']}")
        check(result["contrast"], f"{name}: contrast")
        levels = [int(tag[1]) for tag in result["headings"]]
        check(levels[0] == 1 and all(after - before <= 1 for before, after in zip(levels, levels[1:])), f"{name}: headings {levels}")

    for (name, took), (_, paper, language) in zip(table, cases.CASES.values()):
        direct, printed = work / f"{name}.pdf", work / f"{name}.browser.pdf"
        counts = [look_at_pdf(name, pdf, reports[name], paper, pictures, pdf is direct) for pdf in (direct, printed)]
        look_at_direct(direct)
        text = (work / f"{name}.txt").read_text()
        age = ""
        if language == "en":
            leaf = Leaf()
            leaf.feed((work / f"{name}.html").read_text())
            # A US school grade and five is the age of a reader; the hardest of four formulas counts.
            said, score = leaf.sentences(), textstat.textstat
            grades = [score.flesch_kincaid_grade(said), score.automated_readability_index(said), score.coleman_liau_index(said), score.gunning_fog(said)]
            check(len(said) > 150 and 5 + max(grades) <= 12.5, f"{name}: reading age {5 + max(grades):.1f} by {grades}")
            age = f"; reading age {5 + max(grades):.1f}"
        sizes = ", ".join(f"{ending} {size} bytes {ms:.0f} ms" for ending, (size, ms) in took.items())
        print(f"{name}: pages {counts[0]} pdf, {counts[1]} printed, {text.count(chr(12)) + 1} text; {sizes}{age}")
    look_at_form(work, pictures)
    look_at_inspect(work, pictures)
    print(f"sheets: {passed} passed, {failed} failed")
    raise SystemExit(1 if failed else 0)


def validator_rules(work):
    path = work / ".htmlvalidate.json"
    path.write_text(json.dumps({"root": True, "extends": ["html-validate:recommended"]}))
    return path


main()
