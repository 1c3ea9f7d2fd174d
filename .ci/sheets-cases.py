"""Invented clients for the look at the sheets: each as the files of one run. Called by .ci/sheets.py."""

import json

GROUPS = ["today", "skin", "feeling", "cause", "operations", "heart-kidneys", "circulation", "devices", "daily-life"]
LEG_GROUPS = [group for group in GROUPS if group != "devices"]
ARM = [("hand", -7, 19.4), ("wrist", 0, 17.0), ("lower-forearm", 7, 20.9), ("forearm", 14, 25.7), ("elbow", 22, 26.3), ("upper-arm", 31, 30.8), ("axilla", 40, 34.1)]
LEG = [("forefoot", 2, 24.0), ("ankle", 11, 23.4), ("lower-calf", 20, 29.2), ("calf", 30, 37.6), ("below-knee", 39, 34.6)]


def screening(**more):
    return {"asked_on": "2026-03-14", "by": "M2", "absent": GROUPS, **more}


def marks(all_marks, add=0.0):
    return [{"landmark": name, "at": at, "girth": round(girth + add, 1)} for name, at, girth in all_marks]


def arm(**more):
    record = {
        "tapeline": "record/1", "client": "L-0417", "measured_on": "2026-03-14", "measured_by": "M2",
        "units": {"length": "cm", "pressure": "mmHg"}, "limb": "left arm", "affected": "left",
        "cause": {"known": "yes", "note": "after breast cancer treatment", "by": "physician"},
        "posture": "seated, arm supported, palm down", "positions_from": "wrist", "marks": marks(ARM),
        "other_limb": {"marks": marks(ARM, -1.3)},
        "observed": {"pitting": "none", "folds": "no", "distortion": "no", "hand_swelling": "no", "swelling_beyond": "no"},
        "prescribed": {"scheme": "ral-gz-387-2", "class": "2", "style": "sleeve", "by": "consultant"},
        "screening": screening(), "allergies": "none",
    }
    return {**record, **more}


def leg(**more):
    record = {
        **arm(), "client": "L-0520", "limb": "right leg", "affected": "right", "posture": "standing", "positions_from": "floor",
        "marks": marks(LEG), "other_limb": {"marks": marks(LEG, -1.1)},
        "observed": {"pitting": "none", "folds": "no", "distortion": "no", "foot_swelling": "no", "swelling_beyond": "no"},
        "prescribed": {"scheme": "ral-gz-387-1", "class": "2", "style": "below-knee stocking", "by": "consultant"},
        "screening": screening(absent=LEG_GROUPS), "arterial": {"taken_on": "2026-03-10", "abpi": 1.04},
        "cause": {"known": "yes", "note": "after an operation", "by": "physician"},
    }
    return {**record, **more}


KNIT = {
    "tapeline": "fabric/1", "label": "knit R2 (invented)", "basis": "invented",
    "curve": [{"stretch": f"{at} %", "tension": f"{pull} N/m"} for at, pull in [(0, 0), (10, 22.5), (20, 46.7), (30, 72.7), (45, 114.9), (60, 160.9), (80, 228.3), (100, 302.7), (130, 427.1), (160, 567), (200, 777.7)]],
}


def chart(label, style, limb, scheme, places, ends, stretch, **more):
    """Sizes 1 to 5 around the girths given, size 3 in the middle."""
    sizes = []
    for size, shift in zip("12345", (-4, -2, 0, 2, 4)):
        girths = {name: f"{girth + shift - 1:.1f}-{girth + shift + 1:.1f}" for name, _, girth in places}
        relaxed = {name: round((girth + shift) / (1 + stretch - 0.02 * at), 1) for at, (name, _, girth) in enumerate(places)}
        sizes.append({"size": size, "girths": girths, "relaxed": relaxed})
    return {
        "tapeline": "chart/1", "label": label, "limb": limb, "style": style, "from": ends[0], "to": ends[1],
        "scheme": scheme, "class": "2", "materials": ["elastane", "polyamide"], "hand_part": "no", "fabric": "knit.yaml",
        "units": {"length": "cm"}, "sizes": sizes, **more,
    }


SLEEVE = chart("sleeve chart A (invented)", "sleeve", "arm", "ral-gz-387-2", [mark for mark in ARM if mark[0] != "hand"], ("wrist", "axilla"), 0.32)
OTHER = {**SLEEVE, "label": "sleeve chart B (invented)", "sizes": SLEEVE["sizes"][:2]}
SMALL = {**SLEEVE, "label": "sleeve chart C (invented)", "sizes": SLEEVE["sizes"][:2]}
HAND = chart("hand piece chart D (invented)", "hand piece", "arm", "ral-gz-387-2", ARM[:2], ("hand", "wrist"), 0.34, hand_part="yes")
STOCKING = chart("stocking chart A (invented)", "below-knee stocking", "leg", "ral-gz-387-1", [mark for mark in LEG if mark[0] != "forefoot"], ("ankle", "below-knee"), 0.42)


def sided(side):
    keys = ("marks", "observed", "arterial")
    return {**{key: leg()[key] for key in keys}, "screening": {"absent": ["skin", "feeling", "cause", "operations", "circulation", "devices"]}}


def both():
    record = leg(client="L-0621", limb="both legs", affected="both", left=sided("left"), right=sided("right"))
    for key in ("marks", "observed", "arterial", "other_limb"):
        del record[key]
    record["screening"] = screening(absent=["today", "heart-kidneys", "daily-life"])
    return record


def present(items, record):
    return {**record, "screening": {**record["screening"], "present": items}}


def long():
    serial = [{"at": at, "girth": girth} for at, girth in [(2, 17.4), (4, 18.6), (10, 23.2), (12, 24.6), (18, 26.0), (26, 28.2), (28, 29.2), (35, 32.0)]]
    record = arm(client="Kœłőα-0099", measured_by="Łucja Őri αβ", measured_on="2025-11-20")
    record["marks"] = sorted(record["marks"] + serial, key=lambda mark: mark["at"])
    record["observed"] = {**record["observed"], "pitting": "strong", "folds": "yes"}
    return present(["weak-hands", "feeling-altered", "feeling-reduced", "fragile-skin", "open-wound", "cannot-remove-alone", "cannot-report", "suspected-recurrence", "diabetes"], record)


# name: files of the run, paper, language
CASES = {
    "trial": ([arm(), SLEEVE, OTHER], "a4", "en"),
    "trial-letter": ([arm(), SLEEVE, OTHER], "letter", "en"),
    "trial-german": ([arm(), SLEEVE, OTHER], "a4", "de"),
    "made-to-measure": ([arm(observed={**arm()["observed"], "folds": "yes"}), SMALL], "a4", "en"),
    "refer": ([leg(arterial={"taken_on": "2026-03-10", "abpi": 0.72}, cleared=[{"item": "feeling-reduced", "role": "podiatry", "reason": "a carer looks each day", "cleared_on": "2026-03-14"}], screening=screening(absent=LEG_GROUPS, present=["feeling-reduced"])), STOCKING], "a4", "en"),
    "refer-letter": ([leg(arterial={"taken_on": "2026-03-10", "abpi": 0.72}), STOCKING], "letter", "en"),
    "emergency": ([present(["cold-or-blue-limb", "suspected-clot"], leg()), STOCKING], "a4", "en"),
    "emergency-german": ([present(["cold-or-blue-limb"], leg()), STOCKING], "a4", "de"),
    "same-day": ([present(["acute-infection"], arm()), SLEEVE], "letter", "en"),
    "soon": ([leg(cause={"known": "no"}), STOCKING], "a4", "en"),
    "both-legs": ([both(), STOCKING], "a4", "en"),
    "set": ([arm(observed={**arm()["observed"], "hand_swelling": "yes"}), SLEEVE, HAND], "a4", "en"),
    "no-chart": ([arm()], "a4", "en"),
    "blank": ([{key: value for key, value in arm().items() if key != "screening"}, SLEEVE], "a4", "en"),
    "long": ([long(), SLEEVE], "a4", "en"),
}


def text(content):
    """As YAML: each key on its line, its value as JSON."""
    lines = [f"tapeline: {content['tapeline']}"]
    lines += [f"{key}: {json.dumps(value, ensure_ascii=False)}" for key, value in content.items() if key != "tapeline"]
    return "\n".join(lines) + "\n"


def write(folder, name):
    """Writes the files of a case; their paths."""
    place = folder / name
    place.mkdir(exist_ok=True)
    (place / "knit.yaml").write_text(text(KNIT))
    paths = []
    for number, content in enumerate(CASES[name][0]):
        path = place / f"{number}.yaml"
        path.write_text(text(content))
        paths.append(str(path))
    return paths
