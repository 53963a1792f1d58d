"""Clips the body meshes that were written and asks whether each lure floats where it is said to.

Shares nothing with the program: the STL is read here, cut here, and its volume and center are summed
here. For bare lures (no lip, no coats, nothing hung on) the mesh alone must displace the lure's mass,
to 1e-6, with its center on the vertical through the center of gravity, to 0.01 mm. For the shipped
patterns the wood's share must be what the program says, and the parts together the mass.
"""
import json
import pathlib
import random
import subprocess
import sys
import tempfile

import numpy as np

MASS, BESIDE_MM = 1e-6, 0.01


def read_stl(path):
    data = path.read_bytes()
    count = int.from_bytes(data[80:84], "little")
    rows = np.frombuffer(data, dtype=np.uint8, offset=84).reshape(count, 50)[:, :48]
    return np.ascontiguousarray(rows).view("<f4").reshape(count, 4, 3)[:, 1:, :].astype(float)


def below(triangles, up, offset):
    """Volume and center of what lies under up . p = offset: every triangle cut, then tetrahedra from a point of the surface."""
    apex = up * offset + (np.eye(3) - np.outer(up, up)) @ triangles.reshape(-1, 3).mean(axis=0)
    volume, moment = 0.0, np.zeros(3)
    heights = triangles @ up - offset
    whole = (heights <= 0).all(axis=1)
    pieces = [triangles[whole]]
    cut = []
    for corners, h in zip(triangles[~whole & (heights < 0).any(axis=1)], heights[~whole & (heights < 0).any(axis=1)]):
        ring = []
        for k in range(3):
            a, b, ha, hb = corners[k], corners[(k + 1) % 3], h[k], h[(k + 1) % 3]
            if ha <= 0:
                ring.append(a)
            if (ha < 0 < hb) or (hb < 0 < ha):
                ring.append(a + (b - a) * (ha / (ha - hb)))
        cut += [[ring[0], ring[k], ring[k + 1]] for k in range(1, len(ring) - 1)]
    pieces.append(np.array(cut).reshape(-1, 3, 3))
    t = np.concatenate(pieces) - apex
    six = np.einsum("ij,ij->i", t[:, 0], np.cross(t[:, 1], t[:, 2]))
    volume = six.sum() / 6
    moment = (six[:, None] * t.sum(axis=1)).sum(axis=0) / 24
    return volume, apex + moment / volume


def run(*args):
    done = subprocess.run(["node", "dist/cli.js", *args], capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit(f"{' '.join(args)}: {done.stderr or done.stdout}")
    return done.stdout


def check(ok, what):
    if not ok:
        sys.exit(f"float_clip: {what}")


def beside(center, cg, up):
    lever = np.array(center) - np.array(cg)
    return np.linalg.norm(lever - up * (lever @ up))


def attitudes_of(lure, triangles, bare):
    whole, _ = below(triangles, np.array([0.0, 0.0, 1.0]), 1e4)
    check(abs(whole / lure["volumeMm3"] - 1) < 1e-3, f"{lure['name']}: mesh of {whole} mm3")
    for a in lure["attitudes"]:
        up, rho = np.array(a["upInBody"]), lure["waterDensityKgM3"] * 1e-6
        wood, center = below(triangles, up, a["planeOffsetMm"])
        said = {part["name"]: part for part in a["immersed"]}
        check(abs(wood / said["body"]["volumeMm3"] - 1) < MASS, f"{lure['name']}: wood under water")
        total = sum(p["volumeMm3"] for p in a["immersed"]) * rho
        if lure["verdict"] == "floats":
            check(abs(total / lure["massG"] - 1) < MASS, f"{lure['name']}: parts displace {total} g")
        check(beside(a["cbMm"], lure["cgMm"], up) < BESIDE_MM, f"{lure['name']}: CB off the vertical")
        if bare and lure["verdict"] == "floats":
            check(abs(wood * rho / lure["massG"] - 1) < MASS, f"{lure['name']}: {wood * rho} g, not {lure['massG']} g")
            check(beside(center, lure["cgMm"], up) < BESIDE_MM, f"{lure['name']}: center of the cut mesh")
    return len(lure["attitudes"])


def bare_pattern(rng, name):
    length = rng.uniform(60, 160)
    stations = [0.08, 0.25, 0.45, 0.7, 0.92]
    full = [0.55, 0.92, 1, 0.75, 0.35]
    back, belly, half = (length * rng.uniform(*r) for r in ((0.09, 0.13), (0.1, 0.16), (0.07, 0.1)))
    hole = {"stationMm": 0.42 * length, "diameterMm": 0.06 * length, "depthMm": 0.1 * length, "metal": "lead"}
    return {
        "schema": 1, "kind": "pattern", "name": name, "version": "1",
        "body": {
            "lengthMm": length, "noseRadiusMm": 0.04 * length, "tailRadiusMm": 0.015 * length,
            "offsets": [
                {"stationRatio": s, "backMm": back * f, "bellyMm": belly * f, "halfBreadthMm": half * f}
                for s, f in zip(stations, full)
            ],
            "fullness": [{"stationRatio": 0.5, "upperExponent": rng.uniform(1.8, 4), "lowerExponent": rng.uniform(1.8, 4)}],
        },
        "ballast": [] if rng.random() < 0.3 else [hole],
        "timber": rng.choice(["balsa", "western-redcedar", "sugar-maple"]),
        "sandingAllowanceMm": 1.5, "blockThicknessMm": 3 * half,
        "water": {"temperatureC": rng.uniform(0, 40), "salinityPsu": rng.uniform(0, 40)},
    }


made, counted = pathlib.Path(sys.argv[1]), 0
for file in sorted(pathlib.Path("templates").glob("*.yaml")):
    lure = json.loads(run("float", str(file), "--json"))
    if "lures" in lure:
        continue
    stl = made / file.stem / "solids" / f"{lure['name']}-body.stl"
    counted += attitudes_of(lure, read_stl(stl), bare=False)
rng = random.Random(11)
with tempfile.TemporaryDirectory() as place:
    for i in range(6):
        file = pathlib.Path(place) / f"bare-{i}.yaml"
        file.write_text(json.dumps(bare_pattern(rng, f"bare-{i}")))
        run("make", str(file), "--out", f"{place}/set-{i}")
        lure = json.loads(run("float", str(file), "--json"))
        stl = pathlib.Path(place) / f"set-{i}" / "solids" / f"{lure['name']}-body.stl"
        counted += attitudes_of(lure, read_stl(stl), bare=True)
check(counted >= 20, f"only {counted} attitudes looked at")
print(f"{counted} attitudes: the meshes, cut by another hand, displace what they should")
