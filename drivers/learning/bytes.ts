import type { Parity } from "./profile.ts";

const ones = (byte: number) => {
  let rest = byte;
  let count = 0;
  for (; rest > 0; rest >>= 1) count += rest & 1;
  return count;
};

/** Share of bytes that must agree before the eighth bit is called a parity bit; noise may spoil the others. */
const enough = 0.97;

/**
 * What the eighth bit of a whole recording carries. Seven data bits with parity that are received as eight without
 * show it: every byte comes out even (or odd) in its count of ones.
 */
export function parityOf(bytes: Uint8Array): Parity {
  let high = 0;
  let even = 0;
  for (const byte of bytes) {
    if (byte > 0x7f) high += 1;
    if (ones(byte) % 2 === 0) even += 1;
  }
  const share = (count: number) => count / Math.max(1, bytes.length);
  // Blanks are odd by themselves: in a line filled up with them few bytes need their parity bit.
  if (share(high) < 0.005) return "none";
  if (share(high) >= enough) return "mark";
  if (share(even) >= enough) return "even";
  if (share(bytes.length - even) >= enough) return "odd";
  return "none";
}

/** True when every byte carries the parity it should. With "none" nothing can be told, so it holds. */
export function parityHolds(bytes: Uint8Array, parity: Parity): boolean {
  if (parity === "none") return true;
  if (parity === "mark") return bytes.every((byte) => byte > 0x7f);
  return bytes.every((byte) => ones(byte) % 2 === (parity === "even" ? 0 : 1));
}

/** The bytes without their parity bit. */
export function withoutParity(bytes: Uint8Array, parity: Parity): Uint8Array {
  return parity === "none" ? bytes : bytes.map((byte) => byte & 0x7f);
}

/** Text of a framed line: CR and LF behind the closing character are no part of it. */
export const framedText = (body: Uint8Array) => textOf(body).replace(/[\r\n]+$/, "");

/** Bytes as text: UTF-8 where it is that, Latin-1 otherwise. XON, XOFF, byte-order marks and padding NULs are no text. */
export function textOf(bytes: Uint8Array): string {
  let text = Buffer.from(bytes).toString("latin1");
  if (bytes.some((byte) => byte > 0x7f))
    try {
      text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
    } catch {
      // not UTF-8: Latin-1 stands
    }
  // A NUL inside a line may stand for a lost character, so only those at its ends are taken off.
  return text
    .replace(/[\x11\x13\uFEFF]/g, "")
    .replace(/^\0+|\0+$/g, "")
    .replace(/\u00A0/g, " ");
}
