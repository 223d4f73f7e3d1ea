/** What a comma inside a number means on one balance. Asked once, never guessed. */
export type Comma = "decimal" | "thousands" | "not-known";

/** A number as a balance wrote it, without its sign: digits with at most one point or comma. */
export const digitsPattern = "\\d+(?:[.,]\\d+)?|[.,]\\d+";

/** Signs in use: plus, hyphen-minus, the minus sign U+2212 of text sent over a network. */
export const signPattern = "[+\\-\\u2212]";

export type NumberMeaning = { text: string } | { unclear: string };

/**
 * Sign and digits as decimal text: point, no padding zeros, minus only when the value is negative, all decimals kept.
 * "1,234" may be one and a bit or one thousand: unclear unless the comma is known.
 */
export function decimalText(sign: string, digits: string, comma: Comma): NumberMeaning {
  let plain = digits;
  if (digits.includes(",")) {
    const [whole = "", fraction = ""] = digits.split(",");
    const couldBeThousands = fraction.length === 3 && /^[1-9]\d{0,2}$/.test(whole);
    if (comma === "thousands" && !couldBeThousands) return { unclear: digits };
    if (comma === "not-known" && couldBeThousands) return { unclear: digits };
    plain = comma === "thousands" ? whole + fraction : `${whole}.${fraction}`;
  }
  const [whole = "", fraction] = plain.split(".");
  const bare = whole.replace(/^0+(?=\d)/, "") || "0";
  const text = fraction === undefined ? bare : `${bare}.${fraction}`;
  const negative = sign !== "" && sign !== "+" && /[1-9]/.test(text);
  return { text: negative ? `-${text}` : text };
}
