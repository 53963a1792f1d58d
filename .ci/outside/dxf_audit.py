#!/usr/bin/python3
"""Reads every *.dxf below the given folders with ezdxf and judges it.

Usage: dxf_audit.py DIR...
Asks of each file: an audit without an error, millimeters, a closed outline, no polyline without
length, and a scale bar of exactly 100 mm. Fails when it looked at no file.
"""

import sys
from pathlib import Path

import ezdxf

MILLIMETERS = 4
DECIMALS = 4  # as written


def flaws(path):
    document = ezdxf.readfile(path)
    auditor = document.audit()
    space = document.modelspace()
    lines = list(space.query("POLYLINE"))
    found = [f"audit: {error.message}" for error in [*auditor.errors, *auditor.fixes]]
    if document.header.get("$INSUNITS") != MILLIMETERS:
        found.append(f"$INSUNITS is {document.header.get('$INSUNITS')}, not millimeters")
    if not any(line.is_closed for line in lines):
        found.append("no closed polyline")
    declared = {layer.dxf.name for layer in document.layers}
    for name in sorted({entity.dxf.layer for entity in space} - declared):
        found.append(f"layer {name} is not declared")
    if not any(is_scale_bar(line) for line in lines):
        found.append("no scale bar of 100 mm")
    for line in lines:
        points = corners(line) + (corners(line)[:1] if line.is_closed else [])
        if any(a == b for a, b in zip(points, points[1:])):
            found.append(f"segment without length on {line.dxf.layer} at {points[0]}")
    return found, len(space)


def corners(line):
    return [(v.dxf.location.x, v.dxf.location.y) for v in line.vertices]


def is_scale_bar(line):
    points = corners(line)
    if line.dxf.layer != "RULE" or len(points) != 2:
        return False
    (x1, y1), (x2, y2) = points
    return y1 == y2 and round(abs(x2 - x1), DECIMALS) == 100


def main(folders):
    files = sorted(path for folder in folders for path in Path(folder).rglob("*.dxf"))
    bad = entities = 0
    for path in files:
        found, count = flaws(path)
        entities += count
        bad += bool(found)
        for flaw in found:
            print(f"{path}: {flaw}")
    print(f"ezdxf {ezdxf.__version__}: {len(files)} files, {entities} entities, {bad} with flaws")
    return 1 if bad or not files else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
