/**
 * Text as the search compares it: lower case, without accents, everything but letters and digits a space. Both
 * databases index this text, so a ticket H-0412 is found by the same words in either.
 */
export function searchable(...texts: (string | null | undefined)[]): string {
  return texts
    .filter((text) => text !== null && text !== undefined)
    .join(" ")
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
}

/** The words to look for, at most 8; each is the beginning of a word in the text. */
export function wordsOf(search: string): string[] {
  return searchable(search)
    .split(" ")
    .filter((word) => word !== "")
    .slice(0, 8);
}
