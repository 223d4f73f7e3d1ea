/** Words of the trade for the three weights of a tared balance: OIML R 76-1, marks N, G and T [from memory]. */
const labels = new Map<string, WeightLabel>([
  ["N", "net"],
  ["NET", "net"],
  ["G", "gross"],
  ["GROSS", "gross"],
  ["T", "tare"],
  ["TARE", "tare"],
  // German, Spanish, French, Italian, Portuguese [common words of these languages]
  ...["NETTO", "NETO"].map((word): [string, WeightLabel] => [word, "net"]),
  ...["BRUTTO", "BRUTO", "BRUT", "LORDO"].map((word): [string, WeightLabel] => [word, "gross"]),
  ["TARA", "tare"],
]);

export type WeightLabel = "net" | "gross" | "tare";

/** The label as part of a regular expression; always followed by a blank, a colon or a sign. */
export const labelPattern = [...labels.keys()]
  .flatMap((word) => [word, word.toLowerCase(), word.charAt(0) + word.slice(1).toLowerCase()])
  .filter((word) => word.length > 1 || word === word.toUpperCase())
  .sort((a, b) => b.length - a.length)
  .join("|");

/** The weight a label stands for; undefined for a word that is no label. */
export function labelMeaning(word: string): WeightLabel | undefined {
  return labels.get(word.toUpperCase());
}
