/**
 * How the sheet looks on a screen and on paper: black on white, letters for an arm's length (common
 * practice, no source: 11 points and more), figures larger, rows and pictures never torn apart.
 */

/** Margins of a page, mm; every printer reaches so far. */
export const PAGE_MARGINS_MM = { top: 13, side: 12, bottom: 15 } as const;

/** Sizes of letters in points. */
export const POINTS = {
  title: 22,
  heading: 17,
  subheading: 13,
  figure: 15,
  text: 11.5,
  table: 11,
  head: 9.5,
  inches: 8.5,
  foot: 9,
} as const;

/** Side of a box to tick, mm. */
export const TICK_MM = 4;
/** Height of a row to write in, mm. */
export const WRITING_MM = 8;
/** Picture beside nothing: the width a page gives on the narrower paper (Letter is wider, A4 is 210). */
const SHEET_WIDTH_MM = 186;

export const STYLE = `
:root { color-scheme: light; }
* { box-sizing: border-box; }
html { background: #fff; color: #000; }
body { margin: 0 auto; padding: 6mm; max-width: ${SHEET_WIDTH_MM + 12}mm;
  font: ${POINTS.text}pt/1.35 Sheet, sans-serif; overflow-wrap: anywhere; }
h1 { font-size: ${POINTS.title}pt; line-height: 1.15; margin: 0 0 3mm; }
h2 { font-size: ${POINTS.heading}pt; line-height: 1.2; margin: 7mm 0 2.5mm; padding-bottom: 1mm; border-bottom: 0.6mm solid #000; }
h2[data-step]::before { content: attr(data-step); display: inline-block; min-width: 8mm; margin-right: 2.5mm; padding: 0 1.5mm;
  border: 0.6mm solid #000; text-align: center; }
h3 { font-size: ${POINTS.subheading}pt; line-height: 1.25; margin: 5mm 0 1.5mm; }
h1, h2, h3 { break-after: avoid; }
p { margin: 1.5mm 0; orphans: 3; widows: 3; }
section.page { break-before: page; }
.together, .whole, .caution, figure, tr, .figures, dl > div { break-inside: avoid; }
.scroll { margin: 3mm 0; overflow-x: auto; }
table { border-collapse: collapse; table-layout: fixed; width: 100%; font-size: ${POINTS.table}pt; }
thead { display: table-header-group; }
tr.title th { font-size: ${POINTS.subheading}pt; text-align: start; padding: 1.5mm 0; border: 0; }
th { font-size: ${POINTS.head}pt; line-height: 1.2; text-align: start; vertical-align: bottom; padding: 1mm 1.8mm; border-bottom: 0.4mm solid #000; }
td { vertical-align: top; padding: 1mm 1.8mm; border-bottom: 0.15mm solid #000; }
.end { text-align: end; }
.middle { text-align: center; }
.writing td { height: ${WRITING_MM}mm; }
td.blank { border: 0.15mm solid #000; }
data, .hash { font-variant-numeric: tabular-nums; }
.q { white-space: nowrap; }
td .in { font-size: ${POINTS.inches}pt; font-weight: 400; }
.tick { display: inline-block; width: ${TICK_MM}mm; height: ${TICK_MM}mm; border: 0.35mm solid #000; vertical-align: -0.6mm; }
.line { display: inline-block; border-bottom: 0.2mm solid #000; height: 1em; }
.caution { margin: 3mm 0; padding: 2mm 3mm 2mm 4mm; border: 0.3mm solid #000; border-left-width: 2mm; }
.caution h3 { margin: 0 0 1mm; }
.caution h3::before { content: "\\26a0\\00a0"; }
.caution ul { margin: 0; padding-left: 5mm; }
.note { margin: 2mm 0; padding-left: 3mm; border-left: 0.3mm solid #000; }
.figures { display: flex; flex-wrap: wrap; gap: 2mm 6mm; margin: 3mm 0; padding: 2mm 0; border: solid #000; border-width: 0.3mm 0; }
.figures > div { flex: 1 1 0; min-width: 30mm; }
.figures dt { font-size: ${POINTS.head}pt; }
.figures dd { margin: 0; }
.figures dd.value { font-size: ${POINTS.figure}pt; line-height: 1.2; font-weight: 700; }
.list { margin: 2mm 0; padding: 0; list-style: none; display: flex; flex-wrap: wrap; gap: 1mm 6mm; }
.list li { white-space: nowrap; max-width: 100%; overflow-wrap: anywhere; }
.list .tick { margin-right: 1.5mm; }
figure { margin: 2mm 0; }
figure svg { display: block; width: 100%; height: auto; font-family: Sheet, sans-serif; }
figcaption { font-size: ${POINTS.head}pt; }
@media print { body { padding: 0; max-width: none; } .scroll { overflow: visible; } }
@media screen and (max-width: 600px) { .scroll table { min-width: 170mm; } }
`.trim();
