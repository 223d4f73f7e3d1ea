/** Edits between two short texts (Levenshtein distance). */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + change));
    }
    row = next;
  }
  return row[b.length]!;
}

/** The ids most like a mistyped one, nearest first; ids of the same metal (the part before the dash) come before others. */
export function nearIds(wanted: string, ids: readonly string[], howMany = 6): string[] {
  const plain = wanted.toLowerCase();
  const metalOf = (id: string) => id.split("-")[0];
  const cost = (id: string) => distance(plain, id) + (metalOf(id) === metalOf(plain) ? 0 : 2);
  return [...ids].sort((a, b) => cost(a) - cost(b) || a.localeCompare(b)).slice(0, howMany);
}
