#!/usr/bin/python3
"""Runs admesh on every *.stl below the given folders and judges what it would have to mend.

Usage: stl_admesh.py DIR...
Asks of each file: one part or more; nothing disconnected before any mending, nothing degenerate,
fixed, removed, added, reversed or backwards. Fails when it looked at no file.
"""

import os
import re
import subprocess
import sys
from pathlib import Path

SECONDS = 120  # admesh loops for ever on a binary file that it takes for text
MUST_BE_ZERO = [
    "Total disconnected facets",
    "Degenerate facets",
    "Edges fixed",
    "Facets removed",
    "Facets added",
    # admesh counts a facet that is turned over here and not as a backwards edge
    "Facets reversed",
    "Backwards edges",
]


def report(path):
    done = subprocess.run(
        ["admesh", str(path)],
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        errors="replace",
        timeout=SECONDS,
        env={**os.environ, "LC_ALL": "C"},
    )
    # of two columns the first is the file as it is, the second as mended
    rows = re.findall(r"^([A-Z][\w ]*?) *: +(\d+)", done.stdout, re.MULTILINE)
    return {name: int(value) for name, value in rows}


def flaws(path):
    try:
        counts = report(path)
    except subprocess.TimeoutExpired:
        return [f"admesh did not end in {SECONDS} s"], 0
    found = [
        f"{name}: {counts.get(name, 'not told')}" for name in MUST_BE_ZERO if counts.get(name) != 0
    ]
    if counts.get("Number of parts", 0) < 1 or counts.get("Number of facets", 0) < 4:
        found.append("no solid")
    return found, counts.get("Number of facets", 0)


def main(folders):
    files = sorted(path for folder in folders for path in Path(folder).rglob("*.stl"))
    bad = facets = 0
    for path in files:
        found, count = flaws(path)
        facets += count
        bad += bool(found)
        for flaw in found:
            print(f"{path}: {flaw}")
    print(f"admesh: {len(files)} files, {facets} facets, {bad} with flaws")
    return 1 if bad or not files else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
