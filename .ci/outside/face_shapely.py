#!/usr/bin/python3
"""Judges the nest and the sheets in every build.json below the given folders with shapely.

Usage: face_shapely.py DIR...
Asks of each face: outlines that are the pattern's outline turned and moved, along the grain but for
the tilt allowed, no two nearer than the gap, none in the margin, on a knot or on a split, no nose part
on a poor zone; of its plan of cuts: every outline once in the order, and for a saw led by hand a way
in from the block's edge to each outline, half a kerf clear of all others, and parting and relief cuts
as clear; of each nest: as many blanks as it says, and as many as were ordered; of each sheet:
templates and lips of the patterns' own size, turned by quarters, no two nearer than the gap, none in
the margin, and as many as they should be. Fails when it looked at no face, at no cut or at no sheet.
"""

import json
import math
import sys
from collections import Counter
from itertools import combinations
from pathlib import Path

from shapely.affinity import rotate, translate
from shapely.geometry import LineString, Point, Polygon, box

SAME_MM = 0.001
ROOM_MM = 0.01
SAME_DEG = 1e-6


def moved(points, placement):
    a = math.radians(placement["turnDeg"])
    x0, y0 = placement["xMm"], placement["yMm"]
    c, s = math.cos(a), math.sin(a)
    return [(c * x - s * y + x0, s * x + c * y + y0) for x, y in points]


def nose_part(points, ratio):
    """What lies within a share of the length from the nose, in the pattern's own frame."""
    outline = Polygon(points)
    left, bottom, right, top = outline.bounds
    return outline.intersection(box(left, bottom, left + ratio * (right - left), top))


def flaw_flaws(face, outlines, rules):
    """Outlines too near to a flaw of the wood, and outlines tilted further than the rules allow."""
    room = face["gapMm"] / 2 - ROOM_MM
    knots = [Point(k["xMm"], k["yMm"]).buffer(k["radiusMm"], 256) for k in face["knots"]]
    splits = [
        LineString([s["fromMm"], s["toMm"]]).buffer(s["widthMm"] / 2, 256) for s in face["splits"]
    ]
    zones = [Point(z["xMm"], z["yMm"]).buffer(z["radiusMm"], 256) for z in face["poorZones"]]
    found = []
    for i, placement in enumerate(face["placements"]):
        tilt = placement["turnDeg"] - 180 * round(placement["turnDeg"] / 180)
        if abs(tilt) > rules["largestTiltDeg"] + SAME_DEG:
            found.append(f"outline {i} is tilted by {tilt} degrees")
        shape = Polygon(placement["outline"])
        ratio = rules["clearNoseRatio"]
        nose = nose_part(outlines[placement["pattern"]], ratio) if ratio > 0 else None
        kept = [("knot", knots, shape), ("split", splits, shape)]
        if nose is not None:
            turned = rotate(nose, placement["turnDeg"], origin=(0, 0))
            placed = translate(turned, placement["xMm"], placement["yMm"])
            kept.append(("poor zone", zones, placed))
        for kind, flaws, part in kept:
            for flaw in flaws:
                if part.distance(flaw) < room:
                    found.append(f"outline {i} is {part.distance(flaw):.3f} mm from a {kind}")
    return found


def face_flaws(face, outlines):
    """What is wrong with one face, and how many pairs of outlines were measured."""
    found = []
    shapes = []
    for i, placement in enumerate(face["placements"]):
        wanted = moved(outlines[placement["pattern"]], placement)
        given = placement["outline"]
        far = max((math.dist(p, q) for p, q in zip(wanted, given)), default=math.inf)
        if len(wanted) != len(given) or not far <= SAME_MM:
            found.append(f"outline {i} is not {placement['pattern']} turned and moved ({far} mm)")
        shapes.append(Polygon(given))
        if not shapes[-1].is_valid:
            found.append(f"outline {i} is no simple polygon")
    gap, margin = face["gapMm"], face["marginMm"]
    inside = box(
        margin - ROOM_MM,
        margin - ROOM_MM,
        face["lengthMm"] - margin + ROOM_MM,
        face["widthMm"] - margin + ROOM_MM,
    )
    for i, shape in enumerate(shapes):
        if not inside.contains(shape):
            found.append(f"outline {i} is not inside the margin of {margin} mm: {shape.bounds}")
    pairs = 0
    for (i, a), (j, b) in combinations(enumerate(shapes), 2):
        pairs += 1
        apart = a.distance(b)
        if apart < gap - ROOM_MM or (apart == 0 and a.intersection(b).area > 0):
            found.append(f"outlines {i} and {j} are {apart:.3f} mm apart, not {gap} mm")
    return found, pairs


def cut_flaws(face, saw):
    """What is wrong with the plan of cuts of one face, and how many lines were measured."""
    shapes = [Polygon(p["outline"]) for p in face["placements"]]
    found = []
    if sorted(face["cutOrder"]) != list(range(len(shapes))):
        found.append(f"the order of cuts {face['cutOrder']} is not each outline once")
    if len(face["entryPaths"]) != len(shapes):
        found.append(f"{len(face['entryPaths'])} ways in for {len(shapes)} outlines")
        return found, 0
    least = saw["kerfMm"] / 2 - ROOM_MM
    edge = box(0, 0, face["lengthMm"], face["widthMm"]).exterior
    steered = saw["guidance"] == "steered"
    lines = [("way in", i, path, i) for i, path in enumerate(face["entryPaths"])]
    lines += [("relief cut", i, c["path"], c["placement"]) for i, c in enumerate(face["reliefCuts"])]
    lines += [("parting cut", i, path, None) for i, path in enumerate(face["partingCuts"])]
    for what, i, path, own in lines:
        line = LineString(path)
        for j, shape in enumerate(shapes):
            if j != own and line.distance(shape) < least:
                found.append(f"{what} {i} is {line.distance(shape):.3f} mm from outline {j}")
        if own is not None:
            end = Point(path[-1]).distance(shapes[own])
            room = SAME_MM if steered and what == "way in" else saw["kerfMm"] / 2 + 0.03
            if end > room:
                found.append(f"{what} {i} ends {end:.3f} mm from its outline")
            if line.intersection(shapes[own]).length > 0.03:
                found.append(f"{what} {i} runs into its own outline")
        if steered and what != "relief cut" and edge.distance(Point(path[0])) > SAME_MM:
            found.append(f"{what} {i} does not begin on the block's edge")
        if what == "parting cut" and edge.distance(Point(path[-1])) > SAME_MM:
            found.append(f"{what} {i} does not end on the block's edge")
    return found, len(lines)


def part_flaws(sheet, patterns):
    """Parts of a sheet that are not what their patterns say."""
    found = []
    for name, points in sheet["outlines"].items():
        pattern, shape = patterns[name], Polygon(points)
        if sheet["kind"] == "lip-sheet":
            lip = pattern["resolved"]["lip"]
            wanted = [box(0, 0, lip["widthMm"], lip["lengthMm"])]
        else:
            wanted = [Polygon(pattern["outline"]), Polygon(pattern["profile"])]
        if not any(shape.symmetric_difference(w).area < SAME_MM for w in wanted):
            found.append(f"{sheet['kind']} {sheet['id']}: {name} has another shape")
    return found


def sheet_flaws(sheets, nest, patterns):
    """What is wrong with the sheets of one build, and how many parts lie on them."""
    found = []
    counted = {"template-sheet": Counter(), "lip-sheet": Counter()}
    for sheet in sheets:
        flaws, _ = face_flaws(sheet, sheet["outlines"])
        found += part_flaws(sheet, patterns)
        found += [f"{sheet['kind']} {sheet['id']}: {flaw}" for flaw in flaws]
        for placement in sheet["placements"]:
            counted[sheet["kind"]][placement["pattern"]] += sheet["copies"]
            if placement["turnDeg"] % 90:
                found.append(f"{sheet['kind']} {sheet['id']}: turned by {placement['turnDeg']}")
    ordered = nest["ordered"] if nest else {}
    templates, lips = counted["template-sheet"], counted["lip-sheet"]
    if templates != Counter(dict.fromkeys(ordered, 1)):
        found.append(f"templates on sheets: {dict(templates)}")
    for name, count in lips.items():
        if count != ordered.get(name):
            found.append(f"{name}: {count} lips for an order of {ordered.get(name)}")
    return found, sum(templates.values()) + sum(lips.values())


def count_flaws(nest):
    counted = Counter()
    for face in nest["faces"]:
        for placement in face["placements"]:
            counted[placement["pattern"]] += face["layers"] * face["copies"]
    found = []
    for name in sorted({*nest["ordered"], *nest["made"], *counted}):
        made, ordered = nest["made"].get(name, 0), nest["ordered"].get(name, 0)
        if made != counted[name]:
            found.append(f"{name}: the faces give {counted[name]} blanks, the nest says {made}")
        if made < ordered:
            found.append(f"{name}: {made} blanks for an order of {ordered}")
    return found, sum(counted.values())


def main(folders):
    files = sorted(path for folder in folders for path in Path(folder).rglob("build.json"))
    faces = pairs = blanks = laid = lines = bad = 0
    for path in files:
        build = json.loads(path.read_text(encoding="utf-8"))
        patterns = {pattern["name"]: pattern for pattern in build["patterns"]}
        outlines = {name: pattern["outline"] for name, pattern in patterns.items()}
        nest = build.get("nest")
        if not nest:
            continue
        found, made = count_flaws(nest)
        on_sheets, parts = sheet_flaws(build["sheets"], nest, patterns)
        found += on_sheets
        blanks += made
        laid += parts
        for k, face in enumerate(nest["faces"]):
            flaws, measured = face_flaws(face, outlines)
            more, cuts = cut_flaws(face, nest["saw"])
            flaws += flaw_flaws(face, outlines, nest) + more
            found += [f"face {k + 1}: {flaw}" for flaw in flaws]
            lines += cuts
            faces += 1
            pairs += measured
        bad += bool(found)
        for flaw in found:
            print(f"{path}: {flaw}")
    print(
        f"shapely: {len(files)} builds, {faces} faces, {pairs} pairs of outlines, "
        f"{lines} cuts, {blanks} blanks, {laid} parts on sheets, {bad} builds with flaws"
    )
    return 1 if bad or faces == 0 or lines == 0 or laid == 0 else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
