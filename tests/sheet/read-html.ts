/** A reader of well-formed HTML for tests: every run of text with the elements it stands in. It shares nothing with the writer. */

export type Element = {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
};
export type Text = { readonly text: string; readonly inside: readonly Element[] };

const ENTITIES: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
};

const decoded = (raw: string): string =>
  raw.replace(/&(\w+);|&/g, (all, name?: string) => {
    const letter = name === undefined ? undefined : ENTITIES[name];
    if (letter === undefined) throw new Error(`not escaped: ${all}`);
    return letter;
  });

/** @throws on tags that do not nest, and on anything that is neither a tag nor escaped text */
export function readHtml(source: string): {
  readonly texts: readonly Text[];
  readonly elements: readonly Element[];
} {
  const body = source.replace(/^<!DOCTYPE html>\n/, '');
  const token = /<\/([\w:-]+)>|<([\w:-]+)((?:\s+[\w:-]+="[^"]*")*)\s*(\/?)>|([^<]+)|</g;
  const open: Element[] = [];
  const texts: Text[] = [];
  const elements: Element[] = [];
  for (const [all, close, name, attributes, closed, text] of body.matchAll(token)) {
    if (close !== undefined) {
      if (open.pop()?.name !== close) throw new Error(`</${close}> closes nothing`);
    } else if (name !== undefined) {
      const pairs = [...attributes.matchAll(/([\w:-]+)="([^"]*)"/g)];
      const element: Element = {
        name,
        attributes: Object.fromEntries(pairs.map(([, key, value]) => [key, decoded(value)])),
      };
      elements.push(element);
      if (!closed) open.push(element);
    } else if (text === undefined) {
      throw new Error(`not HTML: ${all}`);
    } else {
      const raw = open[open.length - 1]?.name === 'style' ? text : decoded(text);
      texts.push({ text: raw, inside: [...open] });
    }
  }
  if (open.length > 0) throw new Error(`<${open[open.length - 1].name}> is not closed`);
  return { texts, elements };
}

export const isInside = ({ inside }: Text, name: string): boolean =>
  inside.some((element) => element.name === name);
