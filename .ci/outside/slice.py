#!/usr/bin/python3
"""Slices solids with a slicer from outside (slic3r of Debian, without its window) and judges the paths.

Usage: slice.py [--count N] PATH...
PATH is a file or a folder, of which every *.3mf and *.stl in a folder named jigs is meant; of more than
N (12) files the N are taken evenly from the sorted list. The slicer mends in silence, so what it holds
is compared with what was in the file: as many facets, manifold, one part an object, the same volume.
Then it slices, full, and must do so without a word of complaint: layers from the bed to the top with
none left out, and as much plastic as the solid's volume within what a full print is known to vary
(1.00 to 1.03 measured on prisms and jigs).
Flaws are told as `file: kind: what`. Fails when it looked at no file.
"""

import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as xml
import zipfile
from pathlib import Path

import numpy as np

LAYER_MM = 0.3
SECONDS = 300  # far above what any jig needs
OPTIONS = [
    "--no-gui",
    "--nozzle-diameter=0.4",
    f"--layer-height={LAYER_MM}",
    f"--first-layer-height={LAYER_MM}",
    "--fill-density=100",
    "--fill-pattern=rectilinear",
    "--skirts=0",
    "--merge",
]
PLASTIC = (0.97, 1.08)
VOLUME = 1e-5  # it sums in 32-bit floats
CORE = "{http://schemas.microsoft.com/3dmanufacturing/core/2015/02}"


def stl_solids(path):
    data = path.read_bytes()
    count = int.from_bytes(data[80:84], "little")
    rows = np.frombuffer(data, dtype=np.uint8, offset=84).reshape(count, 50)[:, :48]
    return [np.ascontiguousarray(rows).view("<f4").reshape(count, 4, 3)[:, 1:, :].astype(float)]


def threemf_solids(path):
    with zipfile.ZipFile(path) as package:
        root = xml.fromstring(package.read("3D/3dmodel.model"))
    solids = []
    for mesh in root.iter(f"{CORE}mesh"):
        corners = [[float(v.get(k)) for k in "xyz"] for v in mesh.iter(f"{CORE}vertex")]
        facets = [[int(t.get(k)) for k in ("v1", "v2", "v3")] for t in mesh.iter(f"{CORE}triangle")]
        solids.append(np.array(corners)[facets])
    return solids


def volume(triangles):
    a, b, c = triangles.transpose(1, 0, 2)
    return np.einsum("ij,ij->", a, np.cross(b, c)) / 6


def slicer(*arguments):
    # it leaves members of a 3MF package where it is started
    with tempfile.TemporaryDirectory() as place:
        done = subprocess.run(
            ["slic3r", *arguments], capture_output=True, text=True, timeout=SECONDS, cwd=place
        )
    return done.returncode, done.stdout, done.stderr.strip()


def held_flaws(path, solids):
    status, out, complaint = slicer("--info", str(path))
    if status != 0 or complaint:
        yield "read", complaint or f"status {status}"
    told = [dict(re.findall(r"^(\w+) = +(\S+)", part, re.M)) for part in out.split("[")[1:]]
    if len(told) != len(solids):
        yield "read", f"{len(told)} objects of {len(solids)}"
        return
    for triangles, solid in zip(solids, told):
        if int(solid["number_of_facets"]) != len(triangles):
            yield "mended", f"{solid['number_of_facets']} facets of {len(triangles)}"
        if solid["manifold"] != "yes" or int(solid["number_of_parts"]) != 1:
            yield "mended", f"manifold {solid['manifold']}, {solid['number_of_parts']} parts"
        if abs(float(solid["volume"]) / volume(triangles) - 1) > VOLUME:
            yield "mended", f"volume {solid['volume']} mm3 of {volume(triangles):.3f}"


def sliced_flaws(path, solids):
    with tempfile.TemporaryDirectory() as place:
        paths = Path(place) / "paths.gcode"
        status, out, complaint = slicer(*OPTIONS, "--output", str(paths), str(path))
        if status != 0 or complaint or not paths.exists():
            yield "slice", complaint or f"status {status}"
            return
        text = paths.read_text()
    if re.search(r"warn|repair|error|empty", out, re.I):
        yield "slice", out.strip().splitlines()[-1]
    heights = sorted({float(z) for z in re.findall(r"^G1 Z([\d.]+) F", text, re.M)} - {5.0})
    top = max(t[:, :, 2].max() - t[:, :, 2].min() for t in solids)
    layers = {round(z / LAYER_MM) for z in heights}
    missing = set(range(1, int(top / LAYER_MM))) - layers
    if missing or max(layers, default=0) > top / LAYER_MM + 1:
        yield "layers", f"{len(layers)} layers for {top:.2f} mm, missing {sorted(missing)[:5]}"
    used = re.search(r"^; filament used = .*\(([\d.]+)cm3\)", text, re.M)
    ratio = float(used.group(1)) * 1000 / sum(map(volume, solids)) if used else 0
    if not PLASTIC[0] < ratio < PLASTIC[1]:
        yield "plastic", f"{ratio:.3f} of the solid's volume"


def flaws(path):
    solids = threemf_solids(path) if path.suffix == ".3mf" else stl_solids(path)
    yield from held_flaws(path, solids)
    yield from sliced_flaws(path, solids)


def jigs_of(place):
    if place.is_file():
        return [place]
    return [p for p in place.rglob("*") if p.suffix in (".3mf", ".stl") and p.parent.name == "jigs"]


def main(arguments):
    most = 12
    if arguments[:1] == ["--count"]:
        most, arguments = int(arguments[1]), arguments[2:]
    files = sorted({path for place in arguments for path in jigs_of(Path(place))})
    chosen = [path.resolve() for path in files][:: max(1, -(-len(files) // most))]
    bad = 0
    for path in chosen:
        found = list(flaws(path))
        bad += bool(found)
        for kind, what in found:
            print(f"{path}: {kind}: {what}")
    print(f"slic3r: {len(chosen)} of {len(files)} files sliced, {bad} with flaws")
    return 1 if bad or not chosen else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
