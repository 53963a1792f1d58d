/** How far a line or text of a sketch reaches, ink and all. */
import type { PageItem } from '../formats/pdf.js';
import { pathBox } from '../geometry/arcpath.js';
import type { Box } from '../geometry/vec.js';
import { Fault } from '../problem.js';
import { grown } from './pens.js';
import { textBox } from './words.js';

export function itemBox(item: PageItem): Box {
  switch (item.kind) {
    case 'path':
      return grown(pathBox(item.path), (item.pen?.widthMm ?? 0) / 2);
    case 'circle': {
      const { center, radius } = item.circle;
      return grown([...center, ...center], radius + (item.pen?.widthMm ?? 0) / 2);
    }
    case 'text':
      return textBox(item);
    case 'image':
    case 'group':
      throw new Fault(`a sketch with a ${item.kind} in it`);
  }
}

export const meet = (a: Box, b: Box): boolean =>
  a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];
