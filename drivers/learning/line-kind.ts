/** A line with digits, signs and the width of gaps taken out: equal for lines that differ by their number only. */
export function lineKind(text: string): string {
  return text
    .replace(/\d+/g, "9")
    .replace(/[+\-\u2212]/g, "")
    .replace(/ +/g, " ")
    .trim();
}
