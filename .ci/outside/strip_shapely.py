#!/usr/bin/python3
"""Judges layouts of open strip-packing instances with shapely alone.

Usage: strip_shapely.py INSTANCE_DIR RESULT_DIR
Instances: NAME.json {name, strip_height, items: [{id, demand, allowed_orientations, shape: {data}}]}.
Results: NAME.json {name, stripHeight, length, placements: [{item, turnDeg, x, y}]}: the item's ring
turned about its own origin by turnDeg counter-clockwise, then moved by (x, y). A result may tell its
density, `densityPercent`, too. Asks:
  height   the strip is as high as the instance's
  item     every item is the instance's, as often as it is demanded
  turn     turned as it may be
  inside   nothing outside 0..length along and 0..stripHeight across
  overlap  no two items share more than a millionth of the smaller one's area
  density  item areas over stripHeight × length, as told; never above 100 %
Prints a line for each result, with the greatest overlap and how deep it goes (the short side of the
least rectangle around it). Ends with the flaws of each kind; 1 if there are any or there is no result.
"""

import json
import math
import sys
import warnings
from collections import Counter
from pathlib import Path

from shapely.geometry import Polygon
from shapely.strtree import STRtree

# shapely 1.8 tells that its tree will change; both ways are read below
warnings.filterwarnings("ignore", message="STRtree")

OVERLAP_RATIO = 1e-6
INSIDE_RATIO = 1e-6  # of the strip's height
TURN_DEG = 1e-9
DENSITY_PERCENT = 0.01  # what two decimals leave open
KINDS = ("height", "item", "turn", "inside", "overlap", "density")

QUARTERS = {0: (1, 0), 90: (0, 1), 180: (-1, 0), 270: (0, -1)}


def placed(ring, placement):
    turn, x0, y0 = placement["turnDeg"], placement["x"], placement["y"]
    a = math.radians(turn)
    c, s = QUARTERS.get(turn % 360, (math.cos(a), math.sin(a)))
    shape = Polygon([(c * x - s * y + x0, s * x + c * y + y0) for x, y in ring])
    # rings of the open literature may touch themselves
    return shape if shape.is_valid else shape.buffer(0)


def may_turn(turn, allowed):
    off = (abs((turn - a + 180) % 360 - 180) for a in allowed)
    return any(o <= TURN_DEG for o in off)


def order_flaws(items, placements):
    laid = Counter(p["item"] for p in placements)
    for key in sorted({*items, *laid}, key=str):
        demand = items[key]["demand"] if key in items else 0
        if laid[key] != demand:
            yield "item", f"item {key}: {laid[key]} laid, {demand} demanded"
    for i, p in enumerate(placements):
        allowed = items[p["item"]]["allowed_orientations"] if p["item"] in items else [p["turnDeg"]]
        if not may_turn(p["turnDeg"], allowed):
            yield "turn", f"placement {i}: item {p['item']} turned by {p['turnDeg']}°, not {allowed}"


def short_side(shape):
    around = shape.minimum_rotated_rectangle
    if around.geom_type != "Polygon":
        return 0.0
    corners = list(around.exterior.coords)
    return min(math.dist(corners[0], corners[1]), math.dist(corners[1], corners[2]))


def near(tree, index, shape):
    """Places of shapes whose boxes meet this one's; both generations of shapely's tree."""
    for hit in tree.query(shape):
        yield index[id(hit)] if hasattr(hit, "bounds") else int(hit)


def overlaps(shapes):
    """Every two shapes that share an area: (area, depth, share of the smaller one, i, j)."""
    tree, index = STRtree(shapes), {id(s): i for i, s in enumerate(shapes)}
    for i, a in enumerate(shapes):
        for j in near(tree, index, a):
            if j > i:
                common = a.intersection(shapes[j])
                if common.area > 0:
                    parts = getattr(common, "geoms", [common])
                    depth = max(short_side(p) for p in parts if p.area > 0)
                    share = common.area / min(a.area, shapes[j].area)
                    yield common.area, depth, share, i, j


def judge(instance, result):
    """Flaws of one result, its density in %, and its greatest overlap (area, depth)."""
    flaws = []
    items = {item["id"]: item for item in instance["items"]}
    height, length, placements = instance["strip_height"], result["length"], result["placements"]
    same = INSIDE_RATIO * height
    if abs(result["stripHeight"] - height) > same:
        flaws.append(("height", f"strip {result['stripHeight']} high, the instance's is {height}"))
    flaws += order_flaws(items, placements)
    known = [p for p in placements if p["item"] in items]
    shapes = [placed(items[p["item"]]["shape"]["data"], p) for p in known]
    for i, shape in enumerate(shapes):
        left, bottom, right, top = shape.bounds
        over = max(-left, -bottom, right - length, top - height)
        if not over <= same:
            flaws.append(("inside", f"item {known[i]['item']} lies {over:.6f} outside the strip"))
    worst = (0.0, 0.0)
    for area, depth, share, i, j in overlaps(shapes):
        worst = (max(worst[0], area), max(worst[1], depth))
        if share > OVERLAP_RATIO:
            names = f"items {known[i]['item']} and {known[j]['item']}"
            flaws.append(("overlap", f"{names} share an area of {area:.6f}, {depth:.6f} deep"))
    density = 100 * sum(s.area for s in shapes) / (height * length) if length > 0 else math.inf
    told = result.get("densityPercent")
    if told is not None and abs(told - density) > DENSITY_PERCENT:
        flaws.append(("density", f"{density:.4f} % measured, {told} % told"))
    if not density <= 100:
        flaws.append(("density", f"{density:.4f} % of the strip"))
    return flaws, density, worst


def main(instance_dir, result_dir):
    read = lambda path: json.loads(path.read_text(encoding="utf-8"))
    instances = {}
    for path in sorted(Path(instance_dir).glob("*.json")):
        data = read(path)
        if "items" in data:
            instances[path.stem] = data
    counts, ratios = Counter(), []
    records_path = Path(instance_dir) / "records.json"
    records = read(records_path) if records_path.exists() else {}
    results = {path.stem: read(path) for path in sorted(Path(result_dir).glob("*.json"))}
    placements = 0
    for name, result in results.items():
        if name not in instances:
            flaws = [("item", "no instance of this name")]
        else:
            flaws, density, (area, depth) = judge(instances[name], result)
            placements += len(result["placements"])
            record = records.get(name)
            if record:
                ratios.append(density / record)
            print(
                f"{name}: {density:.3f} %"
                + (f", record {record} %, ratio {density / record:.4f}" if record else "")
                + f"; greatest overlap {area:.3g}, {depth:.3g} deep"
            )
        for kind, flaw in flaws:
            counts[kind] += 1
            print(f"{name}: {kind}: {flaw}")
    for name in sorted(set(instances) - set(results)):
        print(f"{name}: no result")
    if ratios:
        print(f"ratio to the record: mean {sum(ratios) / len(ratios):.4f}, least {min(ratios):.4f}")
    print(
        f"shapely: {len(results)} results, {placements} placements; flaws: "
        + ", ".join(f"{k} {counts[k]}" for k in KINDS)
    )
    return 1 if sum(counts.values()) or placements == 0 else 0


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1], sys.argv[2]))
