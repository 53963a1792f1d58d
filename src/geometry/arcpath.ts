/**
 * Paths of straight lines and circular arcs. A vertex holds the bulge of the segment that leaves it:
 * tan(θ/4) of the arc's included angle, positive counter-clockwise, 0 for a line (the convention of
 * DXF R12 polylines, DXF Reference, LWPOLYLINE/VERTEX group 42).
 */
import type { Point2 } from './vec.js';

export type PathVertex = { readonly x: number; readonly y: number; readonly bulge: number };

export type ArcPath = { readonly closed: boolean; readonly vertices: readonly PathVertex[] };

export type Circle = { readonly center: Point2; readonly radius: number };
