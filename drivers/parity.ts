/** What the eighth bit of a run of bytes looks like. */
export type EighthBit = "unused" | "even-parity" | "odd-parity" | "always-set" | "data";

const oddOnes = Uint8Array.from({ length: 256 }, (_, byte) => {
  let ones = 0;
  for (let rest = byte; rest > 0; rest >>= 1) ones ^= rest & 1;
  return ones;
});

/** A chance bit flip sets one eighth bit; a parity bit shows in about half of the bytes. */
const leastHighBytes = 3;

/**
 * Recognises seven data bits with parity that were received as eight without: the eighth bit then makes every
 * byte even (or every byte odd); with a second stop bit in place of parity it is always set. Fewer than three high
 * bytes prove nothing and count as data.
 */
export function eighthBit(bytes: Uint8Array): EighthBit {
  let high = 0;
  let odd = 0;
  for (const byte of bytes) {
    if (byte >= 0x80) high += 1;
    odd += oddOnes[byte]!;
  }
  if (high === 0) return "unused";
  if (high < leastHighBytes) return "data";
  if (high === bytes.length) return "always-set";
  if (odd === 0) return "even-parity";
  if (odd === bytes.length) return "odd-parity";
  return "data";
}

/** The bytes without their eighth bit. */
export function withoutEighthBit(bytes: Uint8Array): Uint8Array {
  return bytes.map((byte) => byte & 0x7f);
}
