/** Inlines without looks, in the order they are spoken. */
import type { Inlines } from './document.js';

export const plainText = (inlines: Inlines): string =>
  inlines.map((inline) => ('text' in inline ? inline.text : '')).join('');
