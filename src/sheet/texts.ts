/**
 * Every word of the shop sheet, in English, a file for each part of it in `texts/`; another language is
 * another object of this shape. `{name}` is filled with a value of the record, `*…*` is strong. No digit
 * stands in a text: numbers come from the record alone. What is said of trade and safety is common
 * practice without a source, unless it says so.
 */
import { ballast } from './texts/ballast.js';
import { cautions } from './texts/cautions.js';
import { coats } from './texts/coats.js';
import { drill } from './texts/drill.js';
import { hardware } from './texts/hardware.js';
import { head } from './texts/head.js';
import { saw } from './texts/saw.js';
import { shape } from './texts/shape.js';
import { slot } from './texts/slot.js';
import { timber } from './texts/timber.js';
import { timeline } from './texts/timeline.js';
import { tub } from './texts/tub.js';
import { weights } from './texts/weights.js';

export const TEXTS = {
  language: 'en',
  page: 'page {page} of {pages}',
  footer: '{name} · {tool}',
  dash: '–',
  space: ' ',
  comma: ', ',
  stop: '.',
  semicolon: '; ',
  times: ' × ',
  comes: 'Local rules, the maker’s data sheet and a qualified person come before this sheet.',

  head,
  timber,
  saw,
  slot,
  drill,
  ballast,
  shape,
  weights,
  coats,
  hardware,
  timeline,
  tub,
  cautions,
} as const;
