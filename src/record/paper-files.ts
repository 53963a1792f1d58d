/** True-scale paper as PDF files, text in as much of the faces as all of them use. */
import { facesFor } from '../formats/face-subset.js';
import { type Faces, type PageItem, pdf } from '../formats/pdf.js';
import type { PaperKind, Papers } from '../paper/paper-file.js';

export type WrittenPaper = {
  readonly path: string;
  readonly kind: PaperKind;
  readonly format: 'pdf';
  readonly pattern?: string;
  readonly bytes: Uint8Array;
};

export async function paperFiles({ files }: Papers, faces: Faces): Promise<WrittenPaper[]> {
  const used = files.flatMap(({ pages }) => pages.flatMap(({ page }) => textsIn(page.items)));
  const fewer = await facesFor(faces, used.join(''));
  return Promise.all(
    files.map(
      async ({ file, kind, pattern, title, pages }): Promise<WrittenPaper> => ({
        path: file,
        kind,
        format: 'pdf',
        ...(pattern === null ? {} : { pattern }),
        bytes: await pdf(
          pages.map(({ page }) => page),
          { title, faces: fewer },
        ),
      }),
    ),
  );
}

const textsIn = (items: readonly PageItem[]): string[] =>
  items.flatMap((item) =>
    item.kind === 'text' ? [item.text] : item.kind === 'group' ? textsIn(item.items) : [],
  );
