/** Words of the trade for the three weights of a tared balance: OIML R 76-1, marks N, G and T [from memory]. */
const labels = {
  N: "net",
  NET: "net",
  G: "gross",
  GROSS: "gross",
  T: "tare",
  TARE: "tare",
} as const;

export type WeightLabel = (typeof labels)[keyof typeof labels];

/** The label as part of a regular expression; always followed by a blank, a colon or a sign. */
export const labelPattern = "N|NET|Net|net|G|GROSS|Gross|gross|T|TARE|Tare|tare";

/** The weight a label stands for. Throws RangeError for a word that is no label: ask `labelPattern` first. */
export function labelMeaning(word: string): WeightLabel {
  const key = word.toUpperCase();
  if (!Object.hasOwn(labels, key))
    throw new RangeError(`"${word}" is not a label. Right: N, G, T or the words net, gross, tare.`);
  return labels[key as keyof typeof labels];
}
