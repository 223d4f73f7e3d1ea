import type { Check, Parity } from "./profile.ts";

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

/** Bytes as text: UTF-8 where it is that, Latin-1 otherwise. NUL, XON, XOFF and byte-order marks are no text. */
export function textOf(bytes: Uint8Array): string {
  let text = Buffer.from(bytes).toString("latin1");
  if (bytes.some((byte) => byte > 0x7f))
    try {
      text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
    } catch {
      // not UTF-8: Latin-1 stands
    }
  return text.replace(/[\0\x11\x13\uFEFF]/g, "").replace(/\u00A0/g, " ");
}

/** How many bytes the check takes in the line. */
const checkSize = (check: Check) => (check.written === "byte" ? 1 : 2);

/** The line without its check bytes when the check fits; null when it does not. */
export function withoutCheck(body: Uint8Array, check: Check): Uint8Array | null {
  const size = checkSize(check);
  const at = body.length - check.behind - size;
  if (at - check.gap <= check.from) return null;
  let value = 0;
  for (const byte of body.subarray(check.from, at - check.gap))
    value = check.kind === "xor" ? value ^ byte : value + byte;
  if (check.kind === "sum-to-zero") value = -value;
  const sent = body.subarray(at, at + size);
  if (!fits(sent, value & 0xff, check.written)) return null;
  return Uint8Array.from([...body.subarray(0, at), ...body.subarray(at + size)]);
}

function fits(sent: Uint8Array, value: number, written: Check["written"]): boolean {
  // A raw check byte on a line of seven data bits has lost its eighth bit.
  if (written === "byte") return sent[0] === value || sent[0] === (value & 0x7f);
  const text = value.toString(16).padStart(2, "0");
  return Buffer.from(sent).toString("latin1") === (written === "hex-upper" ? text.toUpperCase() : text);
}

/**
 * The check that fits the lines, or null. A chance fit is one in 128 a line, so a dozen different lines that fit
 * with several different check values leave no doubt. Lines without a check may stand between.
 */
export function checkOf(bodies: readonly Uint8Array[]): Check | null {
  const different = [...new Map(bodies.map((body) => [Buffer.from(body).toString("latin1"), body])).values()];
  const tried = different.slice(0, 160);
  let best: { check: Check; fitting: number } | null = null;
  for (const check of candidates) {
    const fitting = tried.filter((body) => withoutCheck(body, check) !== null);
    if (fitting.length < 8 || fitting.length < 0.5 * tried.length) continue;
    const at = check.behind + checkSize(check);
    const values = new Set(
      fitting.map((body) => body.subarray(body.length - at, body.length - check.behind).join()),
    );
    if (values.size >= 5 && fitting.length > (best?.fitting ?? 0)) best = { check, fitting: fitting.length };
  }
  return best?.check ?? null;
}

const candidates: readonly Check[] = (["byte", "hex-upper", "hex-lower"] as const).flatMap((written) =>
  [0, 1, 2, 3].flatMap((behind) =>
    [0, 1].flatMap((gap) =>
      [0, 1, 2].flatMap((from) =>
        (["xor", "sum", "sum-to-zero"] as const).map((kind) => ({ kind, from, gap, behind, written })),
      ),
    ),
  ),
);
