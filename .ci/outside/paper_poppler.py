#!/usr/bin/python3
"""Measures every true-scale page in the builds below the given folders, as poppler renders it.

Usage: paper_poppler.py [--dpi 300,600] DIR...
Pages are rendered gray and without smoothing, so a line's place is known to about half a pixel at each
end: 0.085 mm over any length at 300 dpi, 0.042 mm at 600 dpi. A page that is corrected for a printer is
first "printed" by that printer: its pixels are moved as the two measured lengths say. Asks of each page:
its size, bars of 100 mm and 4 in, lines of the page that measures the printer, register crosses; of each
template and face, its pages put together by what the record says of them: every point of the outlines
has ink within 0.2 mm, the middle of its line lies there, and a template's outermost ink is its outline.
Fails when it looked at no page, at no drawing on several pages, or at no outline.
"""

import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np

MM_PER_INCH = 25.4
POINT_MM = MM_PER_INCH / 72
SIZE_MM = 0.01  # of a page
OVER_250_MM = 0.1  # what a length may be off, over 250 mm
OUTLINE_MM = 0.2
LINE_MM = 0.35  # of an outline
STEP_MM = 0.25  # along an outline


def rendered(path, dpi, folder):
    """Pages of a PDF, row 0 the lowest; true where there is ink."""
    command = ["pdftoppm", "-r", str(dpi), "-gray", "-aa", "no", "-aaVector", "no"]
    subprocess.run([*command, str(path), f"{folder}/page"], check=True)
    for file in sorted(Path(folder).glob("page*.pgm")):
        data = file.read_bytes()
        head = re.match(rb"P5\s+(\d+)\s+(\d+)\s+255\s", data)
        wide, high = int(head[1]), int(head[2])
        gray = np.frombuffer(data, np.uint8, wide * high, head.end()).reshape(high, wide)
        yield gray[::-1] < 128
        file.unlink()


def page_sizes(path, count):
    out = subprocess.run(
        ["pdfinfo", "-f", "1", "-l", str(count), "-box", str(path)],
        check=True, capture_output=True, text=True,
    ).stdout
    found = re.findall(r"MediaBox:\s+([\d.]+)\s+([\d.]+)\s+([\d.]+)\s+([\d.]+)", out)
    pages = int(re.search(r"Pages:\s+(\d+)", out)[1])
    return pages, [tuple((float(v[i + 2]) - float(v[i])) * POINT_MM for i in (0, 1)) for v in found]


class Printed:
    """A rendered page as the printer puts it on paper: lengths in mm from the sheet's lower left."""

    def __init__(self, ink, dpi, page, paper, kind):
        self.ink, self.pixel = ink, MM_PER_INCH / dpi
        self.middle = np.array([page["widthMm"] / 2, page["heightMm"] / 2])
        across = paper["printed"]["acrossMm"] / paper["check"]["acrossMm"]
        along = paper["printed"]["alongMm"] / paper["check"]["alongMm"]
        upright = page["widthMm"] == paper["acrossMm"]
        error = (1, 1) if kind == "printer-check" else (across, along) if upright else (along, across)
        self.error = np.array(error)

    def pixels(self, at):
        """Columns and rows, as fractions, of points on the printed sheet."""
        return ((np.asarray(at) - self.middle) / self.error + self.middle) / self.pixel - 0.5

    def places(self, columns, rows):
        written = (np.stack([columns, rows], -1) + 0.5) * self.pixel
        return (written - self.middle) * self.error + self.middle

    def crop(self, box):
        (c0, r0), (c1, r1) = self.pixels(box[:2]), self.pixels(box[2:])
        c0, r0 = max(0, int(np.floor(c0))), max(0, int(np.floor(r0)))
        return self.ink[r0 : int(np.ceil(r1)) + 1, c0 : int(np.ceil(c1)) + 1], c0, r0

    def ink_at(self, points, page):
        """Whether there is ink at points of the drawing."""
        at = points - page["drawingMm"][:2] + page["atMm"]
        cells = np.round(self.pixels(at)).astype(int)
        high, wide = self.ink.shape
        cells = np.clip(cells, 0, [wide - 1, high - 1])
        return self.ink[cells[..., 1], cells[..., 0]]

    def middle_of_mark(self, at, axis, aside):
        """Where the mark across a line lies near one of its ends, along the line; None without ink.

        It is looked at beside the line, from `aside[0]` to `aside[1]` mm.
        """
        low, high = list(at), list(at)
        low[axis] -= 1
        high[axis] += 1
        low[1 - axis] += aside[0]
        high[1 - axis] += aside[1]
        part, c0, r0 = self.crop([*low, *high])
        found = np.nonzero(part.all(axis=axis))[0] if part.size else []
        if len(found) == 0:
            return None
        column, row = (c0 + found.mean(), r0) if axis == 0 else (c0, r0 + found.mean())
        return self.places(column, row)[axis]

    def length(self, start, end, aside):
        axis = 0 if abs(end[0] - start[0]) > abs(end[1] - start[1]) else 1
        ends = [self.middle_of_mark(p, axis, aside) for p in (start, end)]
        return None if None in ends else ends[1] - ends[0]


def length_flaws(name, found, wanted, pixel, worst):
    if found is None:
        return [f"bar: {name} is not there"]
    off = abs(found - wanted)
    worst.append((off, wanted))
    within = max(pixel, OVER_250_MM * wanted / 250)
    return [] if off <= within else [f"bar: {name} measures {found:.3f}, {wanted} wanted"]


def page_flaws(shown, page, paper, kind, worst):
    found = []
    for start, end in page["barsMm"]:
        wanted = end[0] - start[0]
        length = shown.length(start, end, (1.2, 1.6))
        found += length_flaws(f"the bar of {wanted:g} mm", length, wanted, shown.pixel, worst)
    if kind == "printer-check":
        for way, ends in paper["checkLinesMm"].items():
            length = shown.length(*ends, (1, 3))
            wanted = paper["check"][f"{way}Mm"]
            found += length_flaws(f"the line {way}", length, wanted, shown.pixel, worst)
    for cross in page["crossesMm"]:
        at = np.array(cross) - page["drawingMm"][:2] + page["atMm"]
        arms = [at + d for d in ((2, 0), (-2, 0), (0, 2), (0, -2), (0, 0))]
        near = [shown.crop([*(p - 0.15), *(p + 0.15)])[0].any() for p in arms]
        if not all(near):
            found.append(f"cross: none at {cross}")
    return found


REACH = np.arange(-0.6, 0.6001, 0.02)  # across an outline, mm


def across(points, normals):
    return points[:, None, :] + REACH[None, :, None] * normals[:, None, :]


def own_flaws(shown, page, outline):
    """Each page alone has ink within reach of every point of the outline that it shows."""
    points, normals = sampled(outline)
    x0, y0, x1, y1 = page["drawingMm"]
    inside = np.all((points > [x0 + 1, y0 + 1]) & (points < [x1 - 1, y1 - 1]), axis=1)
    if not inside.any():
        return []
    ink = shown.ink_at(across(points[inside], normals[inside]), page)
    off = np.where(ink, np.abs(REACH), np.inf).min(axis=1).max()
    if off > OUTLINE_MM:
        return [f"outline: a point has no ink within {off:.3f} mm on page {page['number']}"]
    return []


class Mosaic:
    """Pages of one drawing put together, in the frame of the drawing."""

    def __init__(self, box, pixel):
        self.corner, self.pixel = np.array(box[:2]), pixel
        wide, high = (int(np.ceil(v / pixel)) + 2 for v in (box[2] - box[0], box[3] - box[1]))
        self.ink = np.zeros((high, wide), bool)

    def lay(self, shown, page):
        """All that the page shows of the drawing."""
        box = page["drawingMm"]
        size = [box[2] - box[0], box[3] - box[1]]
        part, c0, r0 = shown.crop([*page["atMm"], *(np.array(page["atMm"]) + size)])
        rows, columns = np.nonzero(part)
        at = shown.places(columns + c0, rows + r0) - page["atMm"] + box[:2]
        inside = np.all((at >= box[:2]) & (at <= box[2:]), axis=1)
        cells = np.round((at[inside] - self.corner) / self.pixel).astype(int)
        high, wide = self.ink.shape
        cells = np.clip(cells, 0, [wide - 1, high - 1])
        self.ink[cells[:, 1], cells[:, 0]] = True

    def at(self, points):
        cells = np.round((points - self.corner) / self.pixel).astype(int)
        high, wide = self.ink.shape
        inside = np.all((cells >= 0) & (cells < [wide, high]), axis=-1)
        cells = np.clip(cells, 0, [wide - 1, high - 1])
        return self.ink[cells[..., 1], cells[..., 0]] & inside


def sampled(outline):
    """Points along a closed outline with the unit normals there."""
    points = np.array(outline)
    ways = np.roll(points, -1, axis=0) - points
    lengths = np.hypot(*ways.T)
    at, normals = [], []
    for point, way, length in zip(points, ways, lengths):
        shares = (np.arange(max(1, int(np.ceil(length / STEP_MM)))) + 0.5) / max(
            1, int(np.ceil(length / STEP_MM))
        )
        at.append(point + shares[:, None] * way)
        normals.append(np.repeat([[way[1] / length, -way[0] / length]], len(shares), axis=0))
    return np.concatenate(at), np.concatenate(normals)


def outline_flaws(mosaic, outline, counted):
    """Each point has ink within reach; where a single line crosses the normal, its middle is near."""
    points, normals = sampled(outline)
    ink = mosaic.at(across(points, normals))
    off = np.where(ink, np.abs(REACH), np.inf).min(axis=1)
    counted["points"] += len(points)
    counted["furthest"] = max(counted["furthest"], off.max())
    starts = ink & ~np.pad(ink, ((0, 0), (1, 0)))[:, :-1]
    single = (starts.sum(axis=1) == 1) & ~ink[:, 0] & ~ink[:, -1]
    middles = np.abs((ink * REACH).sum(axis=1)[single] / ink.sum(axis=1)[single])
    widths = ink.sum(axis=1)[single] * 0.02
    # A mark that runs into the line widens it.
    clean = widths < LINE_MM + 1.5 * mosaic.pixel
    counted["lines"] += int(clean.sum())
    if clean.any():
        counted["middle"] = max(counted["middle"], middles[clean].max())
    found = []
    if off.max() > OUTLINE_MM:
        found.append(f"outline: a point has no ink within {off.max():.3f} mm")
    if not clean.any() or clean.mean() < 0.3:
        found.append(f"outline: a single line at {clean.mean():.0%} of its points")
    elif middles[clean].max() > OUTLINE_MM:
        found.append(f"outline: its line lies {middles[clean].max():.3f} mm off")
    return found


def distance_to(points, outline):
    a = np.array(outline)
    b = np.roll(a, -1, axis=0)
    way = b - a
    square = (way**2).sum(axis=1)
    least = np.full(len(points), np.inf)
    for k in range(len(a)):
        share = np.clip(((points - a[k]) @ way[k]) / square[k], 0, 1)
        least = np.minimum(least, np.hypot(*(points - a[k] - share[:, None] * way[k]).T))
    return least


def outermost_flaws(mosaic, outline, pages, overlap, counted):
    """In every column of the drawing the highest and lowest ink is the outline's."""
    ink = mosaic.ink
    columns = np.nonzero(ink.any(axis=0))[0]
    lowest = ink.argmax(axis=0)[columns]
    highest = ink.shape[0] - 1 - ink[::-1].argmax(axis=0)[columns]
    cells = np.concatenate([np.stack([columns, rows], 1) for rows in (lowest, highest)])
    at = mosaic.corner + cells * mosaic.pixel
    clear = np.ones(len(at), bool)
    for page in pages:
        # Register crosses and cut lines stand in the overlaps.
        x0, _, x1, _ = page["drawingMm"]
        columns_joined = [x for x in (x0, x1) if len(pages) > 1]
        for x in columns_joined:
            clear &= np.abs(at[:, 0] - x) > overlap + 1
    off = distance_to(at[clear], outline) - LINE_MM / 2
    counted["outermost"] += int(clear.sum())
    if off.max() > OUTLINE_MM:
        return [f"outermost: ink {off.max():.3f} mm beyond the outline’s line"]
    return []


def outlines_on(build, file):
    """Outlines that a file's drawing shows; a template's with its slot, which is drawn or marked."""
    if file["kind"] == "template":
        (pattern,) = [p for p in build["patterns"] if p["name"] == file["pattern"]]
        return [pattern["outline"]]
    if file["kind"] == "face":
        face = build["nest"]["faces"][int(re.search(r"(\d+)\.pdf$", file["file"])[1]) - 1]
        return [placement["outline"] for placement in face["placements"]]
    return []


def file_flaws(folder, build, file, dpi, counted, worst):
    paper, path = build["paper"], folder / file["file"]
    found = []
    pages, sizes = page_sizes(path, len(file["pages"]))
    if pages != len(file["pages"]):
        return [f"pages: {pages}, the record says {len(file['pages'])}"]
    for page, size in zip(file["pages"], sizes):
        off = max(abs(size[0] - page["widthMm"]), abs(size[1] - page["heightMm"]))
        if off > SIZE_MM:
            found.append(f"size: page {page['number']} is {size[0]:.2f} x {size[1]:.2f} mm")
    outlines, mosaic = outlines_on(build, file), None
    with tempfile.TemporaryDirectory() as temporary:
        for page, ink in zip(file["pages"], rendered(path, dpi, temporary)):
            shown = Printed(ink, dpi, page, paper, file["kind"])
            counted["pages"] += 1
            flaws = page_flaws(shown, page, paper, file["kind"], worst)
            found += [f"{flaw} (page {page['number']})" for flaw in flaws]
            if not outlines:
                continue
            for outline in outlines:
                found += own_flaws(shown, page, outline)
            mosaic = mosaic or Mosaic(file["sheets"][0]["boxMm"], shown.pixel)
            mosaic.lay(shown, page)
    counted["joined"] += mosaic is not None and len(file["pages"]) > 1
    for outline in outlines:
        found += outline_flaws(mosaic, outline, counted)
        counted["outlines"] += 1
        if file["kind"] == "template":
            found += outermost_flaws(mosaic, outline, file["pages"], paper["overlapMm"], counted)
    return found


def main(arguments):
    dpis = [300, 600]
    if arguments[:1] == ["--dpi"]:
        dpis = [int(v) for v in arguments[1].split(",")]
        arguments = arguments[2:]
    records = sorted(path for folder in arguments for path in Path(folder).rglob("build.json"))
    bad = 0
    enough = True
    for dpi in dpis:
        counted = dict.fromkeys(("pages", "joined", "outlines", "points", "lines", "outermost"), 0)
        counted |= {"furthest": 0.0, "middle": 0.0}
        worst = []
        for record in records:
            build = json.loads(record.read_text(encoding="utf-8"))
            for file in build.get("paper", {}).get("files", []):
                flaws = file_flaws(record.parent, build, file, dpi, counted, worst)
                bad += bool(flaws)
                for flaw in flaws:
                    print(f"{record.parent / file['file']}: {flaw}")
        off, over = max(worst, default=(0, 0))
        print(
            f"poppler at {dpi} dpi, pixel {MM_PER_INCH / dpi:.3f} mm: {counted['pages']} pages, "
            f"{len(worst)} lengths, the worst {off:.3f} mm off on {over:g} mm; "
            f"{counted['outlines']} outlines, {counted['joined']} drawings put together from several pages; "
            f"{counted['points']} points, ink within {counted['furthest']:.3f} mm, "
            f"middles of {counted['lines']} lines within {counted['middle']:.3f} mm; "
            f"{counted['outermost']} points of outermost ink"
        )
        enough &= all(counted[k] > 0 for k in ("pages", "joined", "outlines", "outermost"))
    return 1 if bad or not enough else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
