/**
 * The known word a maker probably meant. Optimal string alignment distance (insert, delete, change,
 * swap neighbors); offered when at most 3 edits and under 60 % of the word change.
 */
export function nearest(word: string, known: readonly string[]): string | null {
  let best: { readonly name: string; readonly edits: number } | null = null;
  for (const name of [...known].sort()) {
    const edits = editDistance(word.toLowerCase(), name.toLowerCase());
    const close = edits <= 3 && edits < 0.6 * Math.max(word.length, name.length);
    if (close && (best === null || edits < best.edits)) best = { name, edits };
  }
  return best?.name ?? null;
}

function editDistance(a: string, b: string): number {
  if (Math.abs(a.length - b.length) > 3) return Infinity;
  const d = Array.from({ length: a.length + 1 }, (_, i) =>
    Array.from({ length: b.length + 1 }, (_, j) => (i === 0 ? j : j === 0 ? i : 0)),
  );
  for (let i = 1; i <= a.length; i++) {
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      d[i][j] = Math.min(d[i - 1][j] + 1, d[i][j - 1] + 1, d[i - 1][j - 1] + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
      }
    }
  }
  return d[a.length][b.length];
}
