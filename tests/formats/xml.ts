/** A reader of simple XML for tests; it shares nothing with the writer. */

export type Tag = {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Tag[];
  text: string;
};

const ENTITIES: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
};

const decoded = (raw: string): string =>
  raw.replace(/&(\w+);|[<&]/g, (all, name?: string) => {
    const character = name === undefined ? undefined : ENTITIES[name];
    if (character === undefined) throw new Error(`not escaped: ${all}`);
    return character;
  });

/** The root element. Throws on tags that do not nest, repeated attributes, and bare `<` or `&`. */
export function readXml(source: string): Tag {
  const top: Tag = { name: '', attributes: {}, children: [], text: '' };
  const open = [top];
  const token =
    /<!\[CDATA\[([\s\S]*?)\]\]>|<\/([\w:-]+)>|<([\w:-]+)((?:\s+[\w:-]+="[^"]*")*)\s*(\/?)>|([^<]+)|</g;
  for (const [all, cdata, close, name, attributes, selfClosed, text] of source.matchAll(token)) {
    const here = open[open.length - 1];
    if (cdata !== undefined) here.text += cdata;
    else if (text !== undefined) here.text += decoded(text);
    else if (close !== undefined) {
      if (open.length < 2 || open.pop()?.name !== close)
        throw new Error(`</${close}> closes nothing`);
    } else if (name !== undefined) {
      const tag: Tag = { name, attributes: readAttributes(attributes), children: [], text: '' };
      here.children.push(tag);
      if (!selfClosed) open.push(tag);
    } else throw new Error(`not XML: ${all}`);
  }
  if (open.length !== 1 || top.children.length !== 1) throw new Error('not one whole element');
  return top.children[0];
}

function readAttributes(source: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const [, key, value] of source.matchAll(/([\w:-]+)="([^"]*)"/g)) {
    if (key in found) throw new Error(`${key} twice`);
    found[key] = decoded(value);
  }
  return found;
}
