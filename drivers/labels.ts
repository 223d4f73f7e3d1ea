/** Words of the trade for the three weights of a tared balance: OIML R 76-1, marks N, G and T [from memory]. */
const labels = new Map<string, WeightLabel>([
  ["N", "net"],
  ["NET", "net"],
  ["G", "gross"],
  ["GROSS", "gross"],
  ["T", "tare"],
  ["TARE", "tare"],
]);

export type WeightLabel = "net" | "gross" | "tare";

/** The label as part of a regular expression; always followed by a blank, a colon or a sign. */
export const labelPattern = "N|NET|Net|net|G|GROSS|Gross|gross|T|TARE|Tare|tare";

/** The weight a label stands for; undefined for a word that is no label. */
export function labelMeaning(word: string): WeightLabel | undefined {
  return labels.get(word.toUpperCase());
}
