#!/usr/bin/python3
"""Judges every nest below the given folders, or in the given files, with shapely alone.

Usage: nest_shapely.py DIR|FILE...
Reads build.json as a build writes it, and what `npm run soak:nest` writes in the same shape. Asks of
each face, to 0.001 mm:
  outline  the placed outline is the pattern's, turned and moved, and is a simple polygon
  overlap  no two outlines share an area
  gap      none nearer than the face's gap
  knot     none nearer to a knot than half the gap
  margin   none outside the margins
  reach    a blade as wide as the kerf (the face's kerfMm; its gap if it tells none) can follow every
           outline all round, coming from outside the block and crossing no other outline
and of each nest:
  count    blanks made as counted, none missing that is not told, used ratios as measured
Ends with what it judged and the flaws of each kind; 1 if there are any or it looked at no outline.
"""

import json
import math
import sys
import warnings
from collections import Counter
from pathlib import Path

from shapely.geometry import Point, Polygon, box
from shapely.ops import unary_union
from shapely.prepared import prep
from shapely.strtree import STRtree

# shapely 1.8 tells that its tree will change; both ways are read below
warnings.filterwarnings("ignore", message="STRtree")

SAME_MM = 0.001
RATIO = 1e-5  # relative, of areas from coordinates of six decimals
ARC_STEPS = 16  # chords to a quarter circle of the blade
TOLD = 10  # flaws of a kind told one by one for each file
KINDS = ("outline", "overlap", "gap", "knot", "margin", "reach", "count")


def turned(points, placement):
    a = math.radians(placement["turnDeg"])
    x0, y0 = placement["xMm"], placement["yMm"]
    c, s = math.cos(a), math.sin(a)
    return [(c * x - s * y + x0, s * x + c * y + y0) for x, y in points]


def pieces(shape):
    return [p for p in getattr(shape, "geoms", [shape]) if not p.is_empty]


class Tree:
    """Pairs of shapes whose boxes come as near as `reach`; both generations of shapely's tree."""

    def __init__(self, shapes):
        self.shapes = shapes
        self.tree = STRtree(shapes)
        self.index = {id(s): i for i, s in enumerate(shapes)}

    def near(self, shape, reach):
        left, bottom, right, top = shape.bounds
        around = box(left - reach, bottom - reach, right + reach, top + reach)
        for hit in self.tree.query(around):
            yield self.index[id(hit)] if hasattr(hit, "bounds") else int(hit)


def outline_flaws(face, outlines, shapes):
    for i, (placement, shape) in enumerate(zip(face["placements"], shapes)):
        given, name = placement["outline"], placement["pattern"]
        if name not in outlines:
            yield "outline", f"outline {i}: no pattern {name}"
            continue
        wanted = turned(outlines[name], placement)
        far = max((math.dist(p, q) for p, q in zip(wanted, given)), default=math.inf)
        if len(wanted) != len(given) or not far <= SAME_MM:
            yield "outline", f"outline {i} is not {name} turned and moved: {far:.4f} mm off"
        if not shape.is_valid:
            yield "outline", f"outline {i} is no simple polygon"


def pair_flaws(gap, shapes, tree):
    for i, a in enumerate(shapes):
        for j in tree.near(a, gap):
            if j <= i:
                continue
            apart = a.distance(shapes[j])
            if apart == 0:
                area = a.intersection(shapes[j]).area
                if area > 0:
                    yield "overlap", f"outlines {i} and {j} share {area:.4f} mm²"
            if apart < gap - SAME_MM:
                yield "gap", f"outlines {i} and {j} are {apart:.4f} mm apart, not {gap} mm"


def edge_flaws(face, shapes):
    least = (face["marginMm"], face["marginMm"])
    most = (face["lengthMm"] - face["marginMm"], face["widthMm"] - face["marginMm"])
    for i, shape in enumerate(shapes):
        left, bottom, right, top = shape.bounds
        over = max(least[0] - left, least[1] - bottom, right - most[0], top - most[1])
        if not over <= SAME_MM:
            yield "margin", f"outline {i} lies {over:.4f} mm outside the margins"


def knot_flaws(face, tree):
    keep = face["gapMm"] / 2
    for k, knot in enumerate(face["knots"]):
        middle, radius = Point(knot["xMm"], knot["yMm"]), knot["radiusMm"]
        for i in tree.near(middle, radius + keep):
            apart = middle.distance(tree.shapes[i]) - radius
            if apart < keep - SAME_MM:
                yield "knot", f"outline {i} is {apart:.4f} mm from knot {k}, not {keep} mm"


def reach_flaws(kerf, shapes):
    """
    The middle of the blade moves outside the union of all outlines grown by half the kerf; it comes
    to the rims of that union's pieces that lie in no hole of another piece, and must follow the whole
    rim of each grown outline there. A hollow the blade cannot enter is a hole of one grown outline.
    """
    grown = [s.buffer(kerf / 2 - SAME_MM, ARC_STEPS) for s in shapes]
    joined = pieces(unary_union(grown))
    rims = [Polygon(p.exterior) for p in joined]
    tree = Tree(rims)
    open_rims, holes = [], []
    for i, rim in enumerate(rims):
        inside = any(j != i and prep(rims[j]).contains(rim) for j in tree.near(rim, 0))
        (holes if inside else open_rims).append(rim)
    open_tree = Tree(open_rims)
    for i, shape in enumerate(grown):
        for part in pieces(shape):
            alone = any(
                open_rims[j].exterior.equals(part.exterior)
                for j in open_tree.near(part, SAME_MM)
                if abs(open_rims[j].length - part.exterior.length) < SAME_MM
            )
            if not alone:
                near = unary_union(
                    [open_rims[j].exterior for j in open_tree.near(part, SAME_MM)]
                ).buffer(SAME_MM / 10)
                shut = part.exterior.difference(near).length
                if shut > SAME_MM:
                    yield "reach", f"outline {i}: {shut:.3f} mm of it out of a {kerf} mm blade's reach"
            for ring in part.interiors:
                hollow = Polygon(ring)
                if hollow.area > SAME_MM:
                    yield (
                        "reach",
                        f"outline {i}: a {kerf} mm blade cannot enter its hollow of {hollow.area:.3f} mm²",
                    )


def face_flaws(face, outlines, seen):
    shapes = [Polygon(p["outline"]) for p in face["placements"]]
    n = len(shapes)
    seen["outlines"] += n
    seen["pairs"] += n * (n - 1) // 2
    seen["distances to knots"] += n * len(face["knots"])
    yield from outline_flaws(face, outlines, shapes)
    area = sum(s.area for s in shapes)
    told = face["usedRatio"] * face["lengthMm"] * face["widthMm"]
    if abs(area - told) > RATIO * max(area, told):
        yield "count", f"outlines cover {area:.2f} mm², the used ratio says {told:.2f}"
    if not all(s.is_valid for s in shapes):
        return
    tree = Tree(shapes)
    yield from pair_flaws(face["gapMm"], shapes, tree)
    yield from edge_flaws(face, shapes)
    yield from knot_flaws(face, tree)
    yield from reach_flaws(face.get("kerfMm", face["gapMm"]), shapes)


def count_flaws(nest):
    counted = Counter()
    for face in nest["faces"]:
        for placement in face["placements"]:
            counted[placement["pattern"]] += face["layers"] * face["copies"]
    missing = nest.get("missing", {})
    for name in sorted({*nest["ordered"], *nest["made"], *counted}):
        made, ordered = nest["made"].get(name, 0), nest["ordered"].get(name, 0)
        if made != counted[name]:
            yield "count", f"{name}: the faces give {counted[name]} blanks, the nest says {made}"
        if missing.get(name, 0) != max(0, ordered - made):
            yield "count", f"{name}: {made} of {ordered} made, {missing.get(name, 0)} told missing"


def nests(arguments):
    """Files with a nest in them; a folder's other JSON is left aside."""
    for argument in arguments:
        given = Path(argument)
        for path in sorted(given.rglob("*.json")) if given.is_dir() else [given]:
            data = json.loads(path.read_text(encoding="utf-8"))
            nest = data.get("nest") if isinstance(data, dict) else None
            if nest:
                yield path, {p["name"]: p["outline"] for p in data["patterns"]}, nest
            elif not given.is_dir():
                print(f"{path}: no nest in it")


def main(arguments):
    seen, flaws = Counter(), Counter()
    for path, outlines, nest in nests(arguments):
        seen["files"] += 1
        found = [("nest", *flaw) for flaw in count_flaws(nest)]
        for face in nest["faces"]:
            seen["faces"] += 1
            found += [(f"face {face['id']}", *flaw) for flaw in face_flaws(face, outlines, seen)]
        here = Counter()
        for where, kind, flaw in found:
            here[kind] += 1
            if here[kind] <= TOLD:
                print(f"{path}: {kind}: {where}: {flaw}")
        flaws += here
    judged = ", ".join(
        f"{seen[what]} {what}"
        for what in ("files", "faces", "outlines", "pairs", "distances to knots")
    )
    print(f"shapely: {judged}; flaws: " + ", ".join(f"{k} {flaws[k]}" for k in KINDS))
    return 1 if sum(flaws.values()) or seen["outlines"] == 0 else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
