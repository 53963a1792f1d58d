/** Reads a written STL with a reader that shares nothing with our writer. */
import io from '@jscad/io';
import jscad from '@jscad/modeling';
import { Fault } from '../problem.js';

export type ReadBack = { readonly triangles: number; readonly volumeMm3: number };

/**
 * What @jscad/io finds in the bytes of an STL file. Its volume is that of the facets as written.
 * @throws Fault if it finds no solid, or more than one.
 */
export function readBackStl(bytes: Uint8Array): ReadBack {
  const buffer = Uint8Array.from(bytes).buffer;
  const found = io.deserializers.stl({ filename: 'readback.stl', output: 'geometry' }, buffer);
  const solids = Array.isArray(found) ? found : [found];
  if (solids.length !== 1) throw new Fault(`STL read back as ${solids.length} solids`);
  const polygons = jscad.geometries.geom3.toPolygons(solids[0]);
  if (polygons.length === 0) throw new Fault('STL read back empty');
  return { triangles: polygons.length, volumeMm3: jscad.measurements.measureVolume(solids[0]) };
}
