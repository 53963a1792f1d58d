/** Text of a parameter file → plain data with the place of every key and value: the one door to yaml. */
import { isMap, isScalar, isSeq, LineCounter, type Node, type Pair, parseDocument } from 'yaml';
import { type KeyPath, type Place, type Problem, problem } from '../problem.js';

export type Source = {
  readonly file: string;
  /** The root mapping. */
  readonly data: Readonly<Record<string, unknown>>;
  /** Place of the value at a path, or of its nearest ancestor that is there. */
  readonly placeOf: (path: KeyPath) => Place;
  /** Place of a key itself. */
  readonly placeOfKey: (path: KeyPath) => Place;
  /** What stands behind a top-level key, its colon included, up to the end of its value; null when it is not there. */
  readonly behindKey: (key: string) => Span | null;
  /** The end of the root mapping's last entry, and whether the whole is written in braces. */
  readonly root: { readonly end: number; readonly braces: boolean };
  /** The key written before the one at a path, in the same mapping; null for the first. */
  readonly keyBefore: (path: KeyPath) => string | null;
};

/** A stretch of text, [from, to) in characters. */
export type Span = { readonly from: number; readonly to: number };

const MOST_ALIASES = 100;

/** Reads YAML into a source, or tells why not. An unknown tag or a second document is a problem too. */
export function readSource(file: string, text: string): Source | readonly Problem[] {
  const lines = new LineCounter();
  const document = parseDocument(text, {
    lineCounter: lines,
    prettyErrors: false,
    uniqueKeys: true,
  });
  const at = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { file, line: Math.max(1, line), column: Math.max(1, col) };
  };
  const broken = [...document.errors, ...document.warnings];
  if (broken.length > 0) {
    return broken.map((e) => ({
      ...problem('yaml-syntax', [], { reason: e.message.replace(/\.$/, '') }),
      at: at(e.pos[0]),
    }));
  }
  let data: unknown;
  try {
    data = document.toJS({ maxAliasCount: MOST_ALIASES });
  } catch {
    return [{ ...problem('yaml-aliases', [], { limit: MOST_ALIASES }), at: at(0) }];
  }
  if (data === null || data === undefined) return [{ ...problem('file-empty'), at: at(0) }];
  if (typeof data !== 'object' || Array.isArray(data)) {
    const facts = {
      key: 'The file',
      got: Array.isArray(data) ? 'a list' : 'a single value',
      expected: 'keys with values',
    };
    return [{ ...problem('wrong-type', [], facts), at: at(0) }];
  }
  const root = document.contents as Node;
  return {
    file,
    data: data as Record<string, unknown>,
    placeOf: (path) => at(offsetOf(root, path)),
    placeOfKey: (path) => at(keyOffset(root, path)),
    behindKey: (key) => behindKey(root, key),
    root: { end: lastEntryEnd(root), braces: isMap(root) && root.flow === true },
    keyBefore: (path) => keyBefore(root, path),
  };
}

function offsetOf(root: Node, path: KeyPath): number {
  let node: Node = root;
  for (const step of path) {
    const next = child(node, step);
    if (!next) break;
    node = next;
  }
  return node.range?.[0] ?? 0;
}

function keyOffset(root: Node, path: KeyPath): number {
  let node: Node = root;
  for (const step of path.slice(0, -1)) {
    const next = child(node, step);
    if (!next) return node.range?.[0] ?? 0;
    node = next;
  }
  const pair = pairOf(node, path[path.length - 1]);
  return (pair?.key as Node | undefined)?.range?.[0] ?? node.range?.[0] ?? 0;
}

function behindKey(root: Node, key: string): Span | null {
  const pair = pairOf(root, key);
  const from = (pair?.key as Node | undefined)?.range?.[1];
  const to = (pair?.value as Node | null | undefined)?.range?.[1];
  return from === undefined || to === undefined ? null : { from, to };
}

function lastEntryEnd(root: Node): number {
  const last = isMap(root) ? root.items[root.items.length - 1] : undefined;
  const node = (last?.value ?? last?.key) as Node | null | undefined;
  return node?.range?.[1] ?? root.range?.[1] ?? 0;
}

function keyBefore(root: Node, path: KeyPath): string | null {
  let node: Node | undefined = root;
  for (const step of path.slice(0, -1)) node = node && child(node, step);
  if (!node || !isMap(node)) return null;
  const names = node.items.map((p) => (isScalar(p.key) ? String(p.key.value) : ''));
  const index = names.indexOf(String(path[path.length - 1]));
  return index > 0 ? names[index - 1] : null;
}

function child(node: Node, step: string | number): Node | undefined {
  if (isSeq(node))
    return typeof step === 'number' ? (node.items[step] as Node | undefined) : undefined;
  return (pairOf(node, step)?.value ?? undefined) as Node | undefined;
}

const pairOf = (node: Node, key: string | number | undefined): Pair | undefined =>
  isMap(node)
    ? node.items.find((p) => isScalar(p.key) && String(p.key.value) === String(key))
    : undefined;
