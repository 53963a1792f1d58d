/** What the judge of nests can complain of. */

/** What is wrong with a nest, as facts. `a` and `b` are indices into the face's placements. */
export type NestComplaint =
  /** Two outlines nearer than the gap; 0 if they overlap or one lies inside the other. */
  | {
      readonly kind: 'gap';
      readonly face: number;
      readonly a: number;
      readonly b: number;
      readonly distanceMm: number;
      readonly gapMm: number;
    }
  | {
      readonly kind: 'margin';
      readonly face: number;
      readonly a: number;
      readonly insideMm: number;
      readonly marginMm: number;
    }
  | {
      readonly kind: 'knot';
      readonly face: number;
      readonly a: number;
      readonly knot: number;
      readonly distanceMm: number;
      readonly leastMm: number;
    }
  /** An outline on a split. */
  | {
      readonly kind: 'split';
      readonly face: number;
      readonly a: number;
      readonly split: number;
      readonly distanceMm: number;
      readonly leastMm: number;
    }
  /** An outline's nose part on a poor zone. */
  | {
      readonly kind: 'poor-zone';
      readonly face: number;
      readonly a: number;
      readonly zone: number;
      readonly distanceMm: number;
      readonly leastMm: number;
    }
  /** Turned further from 0° and 180° than the rules allow. */
  | {
      readonly kind: 'turn';
      readonly face: number;
      readonly a: number;
      readonly turnDeg: number;
      readonly largestTiltDeg: number;
    }
  /** The placed outline is not the part's outline turned and moved, or there is no such part. */
  | { readonly kind: 'outline'; readonly face: number; readonly a: number; readonly part: string }
  /** The part does not have the thickness of the face's blocks. */
  | { readonly kind: 'thickness'; readonly face: number; readonly a: number; readonly part: string }
  /** The face is not that of a block it is sawn from: size, margin, gap or a flaw differs. */
  | { readonly kind: 'block'; readonly face: number; readonly block: string; readonly what: string }
  /** Layers, copies or height of a stack are not what its blocks or the rules say. */
  | { readonly kind: 'stack'; readonly face: number; readonly what: string }
  /** A number told is not the number counted. `of` is a part, a block entry, or the nest. */
  | {
      readonly kind: 'count';
      readonly what: 'made' | 'ordered' | 'missing' | 'blocks used' | 'stacks';
      readonly of: string;
      readonly told: number;
      readonly counted: number;
    }
  /** The volume told is not that of the blocks used, or no bound on it: area bound ≤ bound ≤ used. */
  | {
      readonly kind: 'timber';
      readonly what: 'used' | 'bound' | 'area bound';
      readonly toldMm3: number;
      /** What is used, or the limit that was passed. */
      readonly againstMm3: number;
    }
  /** A part's limit is no share of wood. */
  | { readonly kind: 'limit'; readonly part: string; readonly limitRatio: number }
  /** A face of one part takes more of its wood than the part's limit allows. */
  | {
      readonly kind: 'beyond-limit';
      readonly face: number;
      readonly part: string;
      readonly usedRatio: number;
      readonly mostRatio: number;
    }
  /** More blocks used than there are. */
  | {
      readonly kind: 'blocks';
      readonly block: string;
      readonly used: number;
      readonly available: number;
    };

/** Distances are right to rounding of coordinates up to some meters; nothing a saw can see, mm. */
export const ROUNDING_MM = 1e-6;
