"""Loads and saves every YAML file of the demo with PyYAML, keys as they stood and keys sorted, and holds what
`tapeline` makes of the copies against what it makes of the files.

Usage: saved-files.py PROGRAM FOLDER
"""

import pathlib
import shutil
import subprocess
import sys

import yaml


def copy(target, sort):
    """The demo in another folder; saved again by PyYAML unless `sort` is None."""
    for name in ("demo", "garment-tables"):
        shutil.copytree(name, target / name)
    for path in target.rglob("*.yaml"):
        if sort is not None:
            path.write_text(yaml.safe_dump(yaml.safe_load(path.read_text()), sort_keys=sort, allow_unicode=True))


def seen(program, folder, name):
    """Status and report of a file."""
    kind = (folder / name).read_text()
    if "record/1" in kind:
        args = ["check", name, "--today", "2026-04-14", "--format", "json"]
    else:
        args = ["inspect", name]
    ran = subprocess.run([program, *args], cwd=folder, capture_output=True, text=True)
    return ran.returncode, ran.stdout


def main():
    program, folder = sys.argv[1], pathlib.Path(sys.argv[2])
    folders = {"written": folder / "written", "kept": folder / "kept", "sorted": folder / "sorted"}
    for (word, target), sort in zip(folders.items(), (None, False, True)):
        copy(target, sort)
    passed = failed = 0
    names = sorted(path.relative_to(folders["written"]) for path in folders["written"].glob("demo/**/*.yaml"))
    for name in names:
        wanted = seen(program, folders["written"], str(name))
        for word in ("kept", "sorted"):
            if seen(program, folders[word], str(name)) == wanted and wanted[0] != 2:
                passed += 1
            else:
                failed += 1
                print(f"{name}: reads otherwise once saved with its keys {word}")
    print(f"saved: {passed} passed, {failed} failed")
    sys.exit(1 if failed or not passed else 0)


main()
