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

/** So many bytes without a single eighth bit carry no parity: the driver has already taken it off. */
const hasNone = 24;

/**
 * Checks seven data bits with parity that are received as eight, since serial drivers may drop the check. Gives the bytes
 * without their parity bit; one whose parity is wrong keeps its eighth bit set, so that nobody takes it for a character.
 */
export function checkingParity(parity: "even" | "odd"): (bytes: Uint8Array) => Uint8Array {
  const wrong = parity === "even" ? 1 : 0;
  let sinceHigh = Number.POSITIVE_INFINITY;
  return (bytes) =>
    bytes.map((byte) => {
      sinceHigh = byte >= 0x80 ? 0 : sinceHigh + 1;
      if (sinceHigh > hasNone) return byte;
      return oddOnes[byte] === wrong ? byte | 0x80 : byte & 0x7f;
    });
}

/** Seven data bits with their parity bit, to be sent as eight. */
export function carryingParity(bytes: Uint8Array, parity: "even" | "odd"): Uint8Array {
  const right = parity === "even" ? 0 : 1;
  return bytes.map((byte) => (oddOnes[byte & 0x7f] === right ? byte & 0x7f : byte | 0x80));
}
