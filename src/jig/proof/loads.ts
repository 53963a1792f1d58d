/** What a tool does to the workpiece: forces and twists of size one. */
import type { Point3 } from '../../geometry/vec.js';
import { cross3 } from '../../geometry/vec3.js';
import type { Tool } from '../fit.js';

export type Load = {
  /** Of the tool. */
  readonly tool: string;
  readonly called: string;
  /** 1 N, or 1 N·mm. */
  readonly unit: 'N' | 'N·mm';
  readonly at: Point3;
  /** Of the force, or of the twist by the right hand's rule. */
  readonly direction: Point3;
};

/**
 * A bit is pushed in and pulled out, and twists the wood with it and, when it is backed out, against
 * it. A blade drags both ways along its stroke, is pressed into the cut and leans to both sides.
 */
export function loadsOf(tool: Tool): Load[] {
  const { originMm: at, direction } = tool.axis;
  const load = (called: string, unit: Load['unit'], way: Point3): Load => ({
    tool: tool.called,
    called,
    unit,
    at,
    direction: way,
  });
  if (tool.kind === 'drill') {
    return [
      load('push', 'N', direction),
      load('pull', 'N', back(direction)),
      load('twist', 'N·mm', direction),
      load('twist', 'N·mm', back(direction)),
    ];
  }
  const across = cross3(direction, tool.stroke);
  return [
    load('stroke', 'N', tool.stroke),
    load('stroke', 'N', back(tool.stroke)),
    load('feed', 'N', direction),
    load('lean', 'N', across),
    load('lean', 'N', back(across)),
  ];
}

const back = ([x, y, z]: Point3): Point3 => [-x, -y, -z];
