"""Looks at the sheets from outside. Called by .ci/sheets."""

import html.parser
import json
import pathlib
import re
import subprocess
import sys
import tempfile
import time

import textstat  # this version counts syllables by hyphenation patterns and fetches nothing
from PIL import Image, ImageChops

TOOLS = pathlib.Path(sys.argv[1]).resolve()
PROGRAM = "target/debug/tapeline"
SLEEVES = [f"demo/sleeve-chart-{letter}.yaml" for letter in "abcde"]
STOCKINGS = [f"demo/stocking-chart-{letter}.yaml" for letter in "ab"]
A4, LETTER = (595.276, 841.89), (612.0, 792.0)

# name: record, charts, paper, status. The pages of the fitter's leaf are at most four, the client's two.
KINDS = {
    "try-on": ("demo/first-visit.yaml", SLEEVES, "a4", 0),
    "letter": ("demo/first-visit.yaml", SLEEVES, "letter", 0),
    "made-to-measure": ("demo/first-visit.yaml", SLEEVES[:1], "a4", 1),
    "unproven": ("demo/first-visit.yaml", SLEEVES[4:], "a4", 1),
    "no-chart": ("demo/first-visit.yaml", [], "a4", 0),
    "leg": ("demo/leg.yaml", STOCKINGS, "a4", 0),
    "narrow-ankle": ("demo/narrow-ankle.yaml", STOCKINGS, "a4", 1),
    "stop": ("demo/stop.yaml", STOCKINGS, "a4", 3),
    "blank-screening": ("demo/blank-screening.yaml", SLEEVES[:1], "a4", 1),
    "long": (None, SLEEVES[3:4], "a4", 1),
}

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
    done = subprocess.run(command, capture_output=True, text=True, env=env)
    if done.returncode not in ok:
        raise SystemExit(f"{command}: {done.returncode}\n{done.stdout}\n{done.stderr}")
    return done.stdout


def long_record():
    """Twenty marks, letters of several alphabets, many findings; made from the first visit."""
    text = pathlib.Path("demo/first-visit.yaml").read_text()
    text = text.replace("K-0417", "Kœłőα-0099").replace("measured_by: R2", "measured_by: Łucja Őri αβ")
    text = text.replace("measured: 2026-03-14", "measured: 2025-11-20").replace("asked_on: 2026-03-14", "asked_on: 2025-11-20")
    girths = {2: 17.5, 4: 18.4, 5: 19.0, 6: 19.8, 8: 21.6, 9: 22.4, 10: 23.1, 12: 24.4, 16: 26.0, 18: 26.4, 20: 26.9, 26: 28.9, 29: 30.4, 37: 34.8}
    more = "".join(f"  - {{at: {at}, girth: {girth}}}\n" for at, girth in girths.items())
    text = text.replace("other_limb:", more + "other_limb:", 1)
    text = text.replace("hand_swelling: no, pitting: no", "hand_swelling: yes, pitting: yes")
    text = text.replace("yes: [weak-hands]", "yes: [weak-hands, tingling, reduced-feeling, fragile-skin, open-wound, cannot-remove-alone, cannot-report, pregnancy-child-frail, new-two-sided-swelling, suspected-recurrence]")
    return text


class Leaf(html.parser.HTMLParser):
    """The sentences of the client's leaf: paragraphs and items, without headings and blanks."""

    def __init__(self):
        super().__init__()
        self.leaf, self.kind, self.boxes, self.found = False, None, False, []

    def handle_starttag(self, tag, attributes):
        kind = dict(attributes).get("class") or ""
        if tag == "section":
            self.leaf = "client" in kind
        if self.leaf and tag in ("p", "li"):
            self.kind = kind
            if kind not in ("blanks", "run"):
                self.found.append("")
        if tag == "span":
            self.boxes = kind == "boxes"

    def handle_endtag(self, tag):
        if tag in ("p", "li"):
            self.kind = None
        if tag == "span":
            self.boxes = False

    def handle_data(self, data):
        if self.leaf and not self.boxes and self.kind not in (None, "blanks", "run"):
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


def look_at_pdf(name, pdf, report, paper, pictures):
    """What holds of a printed sheet, whoever wrote the PDF."""
    client = report["record"]["client"]
    limb = f"{report['record']['side']} {report['record']['limb']}".upper()
    pages = words(pdf)
    # Four pages for the fitter and two for the client; a crowd of findings may take two more.
    check(2 <= len(pages) <= (8 if name == "long" else 6), f"{name}: {len(pages)} pages")
    wide, high = LETTER if paper == "letter" else A4
    for number, (size, boxes) in enumerate(pages, 1):
        at = f"{pdf.name} page {number}"
        check(abs(size[0] - wide) < 1.5 and abs(size[1] - high) < 1.5, f"{at}: paper {size}")
        head = " ".join(box[4] for box in sorted(boxes, key=lambda box: (round(box[1] / 4), box[0])) if box[1] < 62)
        for part in (client, limb, f"measured {report['record']['measured']}", f"printed {report['today']}", f"page {number} of {len(pages)}"):
            check(part in head, f"{at}: `{part}` not in head `{head}`")
        if report["outcome"] == "stop":
            check("STOP: DO NOT FIT" in head, f"{at}: no stop in the head")
        check(not overlaps(boxes), f"{at}: {overlaps(boxes)}")
        clipped = [box[4] for box in boxes if box[0] < 20 or box[1] < 20 or box[2] > size[0] - 20 or box[3] > size[1] - 20]
        check(not clipped, f"{at}: near or over the edge: {clipped}")
    raw = out("pdftotext", pdf, "-")
    raw = re.sub(r"(?m)^.*(page \d+ of \d+|\u00b7 (TRIAL FITTING|STOP: DO NOT FIT|NO FITTING YET)).*$", "", raw)
    text = tight(raw)
    for finding in report["findings"]:
        check(tight(finding["message"].rstrip(".")) in text, f"{pdf.name} lacks: {finding['message']}")
    for question in report["screening"]["questions"]:
        check(tight(question["question"]) in text, f"{pdf.name} lacks: {question['question']}")
    for mark in report["record"]["marks"] + (report["record"]["other_limb"] or []):
        check(f"{mark['girth_cm']:.1f}" in text, f"{pdf.name} lacks {mark['girth_cm']}")
    best = report["summary"]["best_chart"]
    chart = next((one for one in report["charts"] if one["label"] == best), None)
    blocks = [one for one in report["pressure"] if one["garment"] == best]
    if chart and (chart["size"] or chart["nearest"]):
        blocks = [one for one in blocks if one["size"] == (chart["size"] or chart["nearest"])]
    for mark in (mark for block in blocks[:1] for mark in block["marks"] if mark["pressure_mmhg"] is not None):
        cell = "{:.0f}({:.0f}\u2013{:.0f})".format(mark["pressure_mmhg"], mark["low_mmhg"], mark["high_mmhg"])
        check(cell in text, f"{pdf.name}: pressure {cell} of the JSON")
    out("pdftoppm", "-r", "70", "-png", pdf, pictures / pdf.stem)
    drawn = sorted(pictures.glob(f"{pdf.stem}-*.png"))
    check(len(drawn) == len(pages), f"{pdf.name}: {len(drawn)} pictures")
    for picture in drawn:
        red, green, blue = Image.open(picture).convert("RGB").split()
        check(not ImageChops.difference(red, green).getbbox() and not ImageChops.difference(red, blue).getbbox(), f"{picture.name} has colour")
        ink = sum(red.histogram()[:128]) / (red.width * red.height)
        check(0.003 < ink < 0.3, f"{picture.name}: {ink:.3f} of it is ink")
    return len(pages)


def look_at_direct(pdf):
    """What the program's own PDF promises."""
    check("No syntax or stream encoding errors" in out("qpdf", "--check", pdf), f"{pdf.name}: qpdf")
    fonts = [line for line in out("pdffonts", pdf).splitlines()[2:] if line]
    check(bool(fonts) and all(re.search(r"\byes yes yes\b", line) for line in fonts), f"{pdf.name}: fonts {fonts}")
    info = out("pdfinfo", pdf)
    check("Tagged:          yes" in info and "JavaScript:      no" in info and "Encrypted:       no" in info, f"{pdf.name}: {info}")
    tags = out("pdfinfo", "-struct", pdf)
    for tag in ("H1", "H2", "H3", "P", "L", "LI", "Lbl", "LBody", "Table", "Caption", "THead", "TH", "TD", "Figure"):
        check(re.search(rf"(?m)^\s*{tag}\b", tags), f"{pdf.name}: no tag {tag}")
    meta = out("pdfinfo", "-meta", pdf)
    check("pdfaid:part" in meta and "pdfuaid:part" in meta, f"{pdf.name}: the metadata name no PDF/A and PDF/UA")


def main():
    work = pathlib.Path(tempfile.mkdtemp())
    pictures = pathlib.Path(sys.argv[2]).resolve() if sys.argv[2] else work
    pictures.mkdir(parents=True, exist_ok=True)
    (work / "long.yaml").write_text(long_record())
    reports, table = {}, []
    for name, (record, charts, paper, status) in KINDS.items():
        record = record or str(work / "long.yaml")
        common = [record, *(part for chart in charts for part in ("--chart", chart)), "--today", "2026-03-14"]
        reports[name] = json.loads(out(PROGRAM, "check", *common, "--format", "json", ok=(status,)))
        took = {}
        for ending in ("html", "pdf", "txt"):
            path = work / f"{name}.{ending}"
            start = time.perf_counter()
            out(PROGRAM, "sheet", *common, "--paper", paper, "-o", str(path), ok=(status,))
            took[ending] = (path.stat().st_size, (time.perf_counter() - start) * 1000)
        again = work / "again.pdf"
        # Another place and time of day, the same bytes.
        elsewhere = {"TZ": "Pacific/Apia", "LANG": "tr_TR.UTF-8", "HOME": "/nonexistent", "PATH": "/usr/bin:/bin"}
        out(PROGRAM, "sheet", *common, "--paper", paper, "-o", str(again), "--force", ok=(status,), env=elsewhere)
        check(again.read_bytes() == (work / f"{name}.pdf").read_bytes(), f"{name}: other bytes elsewhere")
        table.append((name, took))

    pages = [str(work / f"{name}.html") for name in KINDS]
    faults = subprocess.run(["java", "-jar", TOOLS / "node_modules/vnu-jar/build/dist/vnu.jar", "--stdout", *pages], capture_output=True, text=True)
    check(faults.returncode == 0 and not faults.stdout, f"vnu: {faults.stdout}{faults.stderr}")
    local = [page for page in pages]
    faults = subprocess.run(["node", TOOLS / "node_modules/html-validate/bin/html-validate.mjs", "--config", str(validator_rules(work)), *local], capture_output=True, text=True)
    check(faults.returncode == 0, f"html-validate: {faults.stdout}{faults.stderr}")

    seen = out("node", TOOLS / "browser.mjs", out("sh", "-c", "command -v chromium").strip(), *pages)
    for line in seen.splitlines():
        result = json.loads(line)
        name = pathlib.Path(result["page"]).stem
        check(not result["faults"], f"{name}: {result['faults'][:6]}")
        check(not result["scroll"], f"{name} scrolls sideways: {result['scroll']}")
        check(not result["outside"], f"{name} asks for {result['outside']}")
        serious = [one for one in result["axe"] if one["impact"] in ("serious", "critical")]
        check(not serious, f"{name}: axe {serious}")
        check(not result["axe"], f"{name}: axe, lesser {result['axe']}")
        check(result["contrast"], f"{name}: contrast")
        levels = [int(tag[1]) for tag in result["headings"]]
        check(levels[0] == 1 and all(after - before <= 1 for before, after in zip(levels, levels[1:])), f"{name}: headings {levels}")

    ages = {}
    for (name, took), (_, _, paper, _) in zip(table, KINDS.values()):
        direct, printed = work / f"{name}.pdf", work / f"{name}.browser.pdf"
        counts = [look_at_pdf(name, pdf, reports[name], paper, pictures) for pdf in (direct, printed)]
        look_at_direct(direct)
        text = (work / f"{name}.txt").read_text()
        leaf = Leaf()
        leaf.feed((work / f"{name}.html").read_text())
        # A US school grade and five is the age of a reader; the hardest of four formulas counts.
        said, score = leaf.sentences(), textstat.textstat
        grades = [score.flesch_kincaid_grade(said), score.automated_readability_index(said), score.coleman_liau_index(said), score.gunning_fog(said)]
        ages[name] = 5 + max(grades)
        check(len(said) > 300 and ages[name] <= 12.5, f"{name}: reading age {ages[name]:.1f} by {grades}")
        sizes = ", ".join(f"{ending} {size} bytes {ms:.0f} ms" for ending, (size, ms) in took.items())
        print(f"{name}: pages {counts[0]} pdf, {counts[1]} printed, {text.count(chr(12)) + 1} text; {sizes}; reading age {ages[name]:.1f}")
    print(f"sheets: {passed} passed, {failed} failed")
    raise SystemExit(1 if failed else 0)


def validator_rules(work):
    path = work / ".htmlvalidate.json"
    path.write_text(json.dumps({"root": True, "extends": ["html-validate:recommended"]}))
    return path


main()
