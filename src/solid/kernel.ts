/** The door to manifold-3d: starting it, and freeing what it allocates. */
import start from 'manifold-3d';
import type { Point2 } from '../geometry/vec.js';
import { Fault } from '../problem.js';

declare const kernelMark: unique symbol;
/** The started mesh kernel. Opaque: only `solid/` can use what is behind it. */
export type SolidKernel = { readonly [kernelMark]: true };

/** What lives in the kernel's memory until it is deleted. */
type Handle = { delete(): void };

type Vec2 = { readonly x: number; readonly y: number };
type List<T> = Handle & { size(): number; get(index: number): T; push_back(item: T): void };
export type Polygon = List<Vec2>;
export type Polygons = List<Polygon>;

/** Outlines made simple by the kernel's own polygon booleans: outer ones counter-clockwise, holes clockwise. */
type Outlines = Handle & { toPolygons(): readonly (readonly Point2[])[] };

/**
 * A solid in the kernel. Written out here because the package's own types import each other
 * without a file ending, which leaves `any` under NodeNext resolution.
 */
export type KernelSolid = Handle & {
  status(): string;
  volume(): number;
  numTri(): number;
  genus(): number;
  decompose(): KernelSolid[];
  subtract(other: KernelSolid): KernelSolid;
  intersect(other: KernelSolid): KernelSolid;
  translate(move: readonly number[]): KernelSolid;
  transform(matrix: readonly number[]): KernelSolid;
  getMesh(): KernelMesh;
  _Slice(height: number): Polygons;
  project(): Outlines;
  /** What lies on the side the normal points to. */
  trimByPlane(normal: readonly number[], offset: number): KernelSolid;
};

export type KernelMesh = {
  readonly numProp: number;
  readonly vertProperties: Float32Array;
  readonly triVerts: Uint32Array;
};

/**
 * The kernel's functions used here. Names with an underscore and the two lists are what the
 * package's wrappers of extrude and slice call; the wrappers do not free their lists (8 kB for each
 * outline of 300 points in 3.2.1), so these are called directly.
 */
export type Wasm = {
  setup(): void;
  readonly Mesh: new (mesh: KernelMesh) => KernelMesh;
  readonly Manifold: {
    ofMesh(mesh: KernelMesh): KernelSolid;
    cylinder(height: number, low: number, high: number, segments: number): KernelSolid;
    union(solids: readonly KernelSolid[]): KernelSolid;
    intersection(solids: readonly KernelSolid[]): KernelSolid;
  };
  readonly Vector_vec2: new () => Polygon;
  readonly Vector2_vec2: new () => Polygons;
  _Extrude(
    polygons: Polygons,
    height: number,
    divisions: number,
    twistDeg: number,
    scaleTop: Vec2,
  ): KernelSolid;
};

let started: Promise<SolidKernel> | undefined;

/** Starts the kernel, once in a process. */
export function loadKernel(): Promise<SolidKernel> {
  started ??= start().then((loaded) => {
    const wasm = loaded as unknown as Wasm;
    wasm.setup();
    return wasm as unknown as SolidKernel;
  });
  return started;
}

export const wasmOf = (kernel: SolidKernel): Wasm => kernel as unknown as Wasm;

/** Marks a handle to be deleted when the scope ends, and gives it back. */
export type Keep = <H extends Handle>(handle: H) => H;

/**
 * Runs `body` and then deletes every handle it kept, also when it throws. Without that the kernel's
 * memory grows until it is full: 2,000 undeleted spheres take 0.9 GB.
 */
export function scoped<T>(body: (keep: Keep) => T): T {
  const handles: Handle[] = [];
  const keep: Keep = (handle) => {
    handles.push(handle);
    return handle;
  };
  try {
    return body(keep);
  } finally {
    for (const handle of handles.reverse()) handle.delete();
  }
}

/**
 * The kernel does not throw on bad input: a status sticks to the solid, or the solid is empty.
 * @throws Fault unless the solid is sound and encloses `expected` mm³ (to 1e-6 of it) or, without
 * one, any positive volume.
 */
export function sound(what: string, solid: KernelSolid, expected?: number): KernelSolid {
  const status = solid.status();
  const volume = solid.volume();
  const right =
    expected === undefined || Math.abs(volume - expected) <= VOLUME_ERROR * Math.abs(expected);
  if (status !== 'NoError' || !(volume > 0) || !right) {
    throw new Fault(
      `${what}: status ${status}, ${solid.numTri()} triangles, volume ${volume}` +
        (expected === undefined ? '' : ` instead of ${expected}`),
    );
  }
  return solid;
}

/** Relative; rounding of coordinates to float32 on the way in or out is 1e-7. */
export const VOLUME_ERROR = 1e-6;
