/** How text is spelled in XML. */
import { Fault } from '../problem.js';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/** For element content and attribute values. @throws Fault on characters XML 1.0 cannot hold */
export function escaped(text: string): string {
  // XML 1.0 has no way to write these.
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is refused
  if (/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/u.test(text)) {
    throw new Fault(`text that XML cannot hold: ${JSON.stringify(text)}`);
  }
  return text.replace(/[&<>"']/g, (letter) => ENTITIES[letter]);
}
