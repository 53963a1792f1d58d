#!/usr/bin/python3
"""Judges every *.3mf below the given folders with readers that share nothing with the writer.

Usage: threemf_judge.py DIR...
Python's zipfile on the package and its fixed times; xmllint on the model by threemf-core.xsd; lib3mf,
the 3MF Consortium's own reader, strict: no warnings, millimeters, every object valid, manifold and
oriented, built in the positive octant, objects apart. An object has the name of the STL file it is
also delivered as, anywhere below the same folder: corners and volume must agree with that.
Flaws are told as `file: kind: what`. Fails when it looked at no file.
"""

import ctypes
import subprocess
import sys
import zipfile
from ctypes import byref, c_char_p, c_float, c_int32, c_uint32, c_void_p
from pathlib import Path

import numpy as np

HERE = Path(__file__).parent
MEMBERS = ["[Content_Types].xml", "_rels/.rels", "3D/3dmodel.model"]
MODEL = "3D/3dmodel.model"
MILLIMETER = 1  # eModelUnit of lib3mf
NEGATIVE_MM = -1e-4  # lib3mf keeps a placement in 32-bit floats
CORNER_MM = 2e-7  # corners under 1 mm are written to 1e-7 mm
VOLUME = 1e-6  # both are sums over 32-bit corners

lib = ctypes.CDLL("lib3MF.so.1")


class Transform(ctypes.Structure):
    _fields_ = [("axes", c_float * 4 * 3)]  # x, y, z of what is placed: three of a turn and a move


class Refused(Exception):
    pass


def call(name, *arguments):
    if getattr(lib, f"lib3mf_{name}")(*arguments) != 0:
        raise Refused(name)


def number(name, handle, kind=c_uint32):
    value = kind()
    call(name, handle, byref(value))
    return value.value


def handle_of(name, *arguments):
    handle = c_void_p()
    call(name, *arguments, byref(handle))
    return handle


def text(name, *arguments):
    buffer, needed = ctypes.create_string_buffer(4096), c_uint32()
    call(name, *arguments, buffer, c_uint32(4096), byref(needed))
    return buffer.value.decode()


def table(name, mesh, count, kind):
    buffer, told = (kind * 3 * count)(), c_uint32()
    call(name, mesh, buffer, c_uint32(count), byref(told))
    return np.array(buffer)


def volume(triangles):
    a, b, c = triangles.astype(float).transpose(1, 0, 2)
    return np.einsum("ij,ij->", a, np.cross(b, c)) / 6


def read_stl(path):
    data = path.read_bytes()
    count = int.from_bytes(data[80:84], "little")
    rows = np.frombuffer(data, dtype=np.uint8, offset=84).reshape(count, 50)[:, :48]
    return np.ascontiguousarray(rows).view("<f4").reshape(count, 4, 3)[:, 1:, :]


def package_flaws(path):
    with zipfile.ZipFile(path) as package:
        broken = package.testzip()
        if broken:
            yield "package", f"{broken} is damaged"
        names = package.namelist()
        if names != MEMBERS:
            yield "package", f"members {names}"
        times = {entry.date_time for entry in package.infolist()}
        if times != {(1980, 1, 1, 0, 0, 0)}:
            yield "package", f"times {sorted(times)}"


def schema_flaws(path):
    with zipfile.ZipFile(path) as package:
        model = package.read(MODEL)
    schema = str(HERE / "threemf-core.xsd")
    done = subprocess.run(
        ["xmllint", "--noout", "--nonet", "--schema", schema, "-"], input=model, capture_output=True
    )
    if done.returncode != 0:
        yield "schema", done.stderr.decode().splitlines()[0]


def model_flaws(path, stls):
    model = handle_of("createmodel")
    reader = handle_of("model_queryreader", model, c_char_p(b"3mf"))
    call("reader_setstrictmodeactive", reader, c_int32(1))
    if lib.lib3mf_reader_readfromfileutf8(reader, c_char_p(str(path).encode())) != 0:
        code, message = c_uint32(), c_char_p()
        lib.lib3mf_getlasterror(reader, byref(code), byref(message))
        yield "reader", f"{code.value} {(message.value or b'').decode()}"
        return
    warnings = number("reader_getwarningcount", reader)
    if warnings:
        yield "reader", f"{warnings} warnings"
    if number("model_getunit", model) != MILLIMETER:
        yield "unit", "not millimeter"
    count = number("model_getmetadatacount", model)
    told = {text("model_getmetadatakeyutf8", model, c_uint32(i)): i for i in range(count)}
    for name in ("Title", "Description", "Application"):
        if name not in told or not text("model_getmetadatavalueutf8", model, c_uint32(told[name])):
            yield "metadata", f"no {name}"
    items = handle_of("model_getbuilditems", model)
    boxes = []
    while number("builditemiterator_movenext", items, c_int32):
        item = handle_of("builditemiterator_getcurrent", items)
        yield from item_flaws(item, stls, boxes)
    if not boxes:
        yield "build", "nothing is built"
    for i, (name, low, high) in enumerate(boxes):
        for other, least, most in boxes[:i]:
            if (low < most).all() and (least < high).all():
                yield "place", f"boxes of {name} and {other} meet"


def item_flaws(item, stls, boxes):
    body = handle_of("builditem_getobjectresource", item)
    name = text("object_getnameutf8", body)
    if not number("object_isvalidobject", body, c_int32):
        yield "object", f"{name} is not valid"
    if not number("meshobject_ismanifoldandoriented", body, c_int32):
        yield "object", f"{name} is not manifold and oriented"
    corners = table("meshobject_getvertices", body, number("meshobject_getvertexcount", body), c_float)
    facets = table(
        "meshobject_gettriangleindices", body, number("meshobject_gettrianglecount", body), c_uint32
    )
    triangles = corners[facets]
    if not volume(triangles) > 0:
        yield "object", f"{name} encloses {volume(triangles)} mm3"
    place = Transform()
    call("builditem_getobjecttransform", item, byref(place))
    axes = np.array(place.axes, dtype=float)
    placed = corners.astype(float) @ axes[:, :3].T + axes[:, 3]
    if placed.min() < NEGATIVE_MM:
        yield "place", f"{name} reaches to {placed.min(axis=0)}"
    boxes.append((name, placed.min(axis=0), placed.max(axis=0)))
    if name not in stls:
        yield "stl", f"no STL is named {name}"
        return
    other = read_stl(stls[name])
    if other.shape != triangles.shape:
        yield "stl", f"{name} has {len(triangles)} facets, its STL {len(other)}"
    elif np.abs(other - triangles).max() > CORNER_MM:
        yield "stl", f"{name} differs from its STL by {np.abs(other - triangles).max()} mm"
    if abs(volume(triangles) / volume(other) - 1) > VOLUME:
        yield "stl", f"{name} of {volume(triangles)} mm3, its STL {volume(other)}"


def flaws(path, stls):
    yield from package_flaws(path)
    yield from schema_flaws(path)
    yield from model_flaws(path, stls)


def main(folders):
    files = bad = 0
    for folder in map(Path, folders):
        stls = {path.stem: path for path in sorted(folder.rglob("*.stl"))}
        for path in sorted(folder.rglob("*.3mf")):
            found = list(flaws(path, stls))
            files += 1
            bad += bool(found)
            for kind, what in found:
                print(f"{path}: {kind}: {what}")
    print(f"zipfile, xmllint and lib3mf: {files} files of 3MF, {bad} with flaws")
    return 1 if bad or files == 0 else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
