import { keysOf } from "../../calibration/keyed.ts";
import type { Check } from "./profile.ts";

type Rule = { bits: 8 | 16; of: (bytes: Uint8Array) => number };

const total = (bytes: Uint8Array) => bytes.reduce((sum, byte) => sum + byte, 0);

/** A cyclic redundancy check, bit by bit, by its polynomial and start value; reflected: the low bit comes first. */
function cyclic(bits: 8 | 16, polynomial: number, start: number, reflected: boolean): Rule {
  const top = 1 << (bits - 1);
  const all = (1 << bits) - 1;
  const mirrored = Number.parseInt([...polynomial.toString(2).padStart(bits, "0")].reverse().join(""), 2);
  const step = (value: number) =>
    reflected
      ? (value >> 1) ^ (value & 1 ? mirrored : 0)
      : ((value << 1) ^ (value & top ? polynomial : 0)) & all;
  return {
    bits,
    of(bytes) {
      let value = start;
      for (const byte of bytes) {
        value ^= reflected ? byte : byte << (bits - 8);
        for (let bit = 0; bit < 8; bit += 1) value = step(value);
      }
      return value;
    },
  };
}

const rules: Record<Check["kind"], Rule> = {
  xor: { bits: 8, of: (bytes) => bytes.reduce((all, byte) => all ^ byte, 0) },
  sum: { bits: 8, of: (bytes) => total(bytes) & 0xff },
  "sum-to-zero": { bits: 8, of: (bytes) => -total(bytes) & 0xff },
  "sum-mod-100": { bits: 8, of: (bytes) => total(bytes) % 100 },
  "crc-8-07": cyclic(8, 0x07, 0, false),
  "crc-8-31-reflected": cyclic(8, 0x31, 0, true),
  "crc-16-1021-ffff": cyclic(16, 0x1021, 0xffff, false),
  "crc-16-1021-0000": cyclic(16, 0x1021, 0, false),
  "crc-16-8005-ffff-reflected": cyclic(16, 0x8005, 0xffff, true),
  "crc-16-8005-0000-reflected": cyclic(16, 0x8005, 0, true),
};

/** How many bytes the check takes in the line. */
function checkSize({ kind, written }: Pick<Check, "kind" | "written">): number {
  const bytes = rules[kind].bits / 8;
  if (written === "byte" || written === "byte-low-first") return bytes;
  return written === "decimal" ? (kind === "sum-mod-100" ? 2 : 3) : 2 * bytes;
}

/** The line without its check bytes when the check fits; null when it does not. */
export function withoutCheck(body: Uint8Array, check: Check): Uint8Array | null {
  const size = checkSize(check);
  const at = body.length - check.behind - size;
  if (at - check.gap <= check.from) return null;
  const value = rules[check.kind].of(body.subarray(check.from, at - check.gap));
  if (!fits(body.subarray(at, at + size), value, check)) return null;
  return Uint8Array.from([...body.subarray(0, at), ...body.subarray(at + size)]);
}

function fits(sent: Uint8Array, value: number, { kind, written }: Check): boolean {
  const { bits } = rules[kind];
  if (written === "byte" || written === "byte-low-first") {
    const bytes = bits === 8 ? [value] : [value >> 8, value & 0xff];
    if (written === "byte-low-first") bytes.reverse();
    // A raw check byte on a line of seven data bits has lost its eighth bit.
    return bytes.every((byte, i) => sent[i] === byte || (bits === 8 && sent[i] === (byte & 0x7f)));
  }
  const text = Buffer.from(sent).toString("latin1");
  if (written === "decimal") return text === String(value).padStart(kind === "sum-mod-100" ? 2 : 3, "0");
  const hex = value.toString(16).padStart(bits / 4, "0");
  return text === (written === "hex-upper" ? hex.toUpperCase() : hex);
}

const candidates: readonly Check[] = (
  ["byte", "byte-low-first", "hex-upper", "hex-lower", "decimal"] as const
).flatMap((written) =>
  keysOf(rules)
    .filter(
      (kind) =>
        (written === "decimal" ? rules[kind].bits === 8 : kind !== "sum-mod-100") &&
        (written !== "byte-low-first" || rules[kind].bits === 16),
    )
    .flatMap((kind) =>
      [0, 1, 2, 3].flatMap((behind) =>
        [0, 1].flatMap((gap) => [0, 1, 2].map((from): Check => ({ kind, from, gap, behind, written }))),
      ),
    ),
);

const bytesAt = (bodies: readonly Uint8Array[], at: number, behind: number) =>
  bodies.flatMap((body) => [...body.subarray(body.length - at, body.length - behind)]);
const isDigit = (byte: number) => byte >= 0x30 && byte <= 0x39;

/**
 * The check that fits the lines, or null. A chance fit is one in 128 a line, so a dozen different lines that fit
 * with several different check values leave no doubt. Lines without a check may stand between.
 */
export function checkOf(bodies: readonly Uint8Array[]): Check | null {
  const different = [...new Map(bodies.map((body) => [Buffer.from(body).toString("latin1"), body])).values()];
  const tried = different.slice(0, 160);
  const few = tried.slice(0, 12);
  let best: { check: Check; fitting: number } | null = null;
  for (const check of candidates) {
    // most rules fit none of the first lines
    if (tried.length > 24 && few.filter((body) => withoutCheck(body, check) !== null).length < 3) continue;
    const fitting = tried.filter((body) => withoutCheck(body, check) !== null);
    if (fitting.length < 6 || fitting.length < 0.5 * tried.length) continue;
    const at = check.behind + checkSize(check);
    const values = new Set(
      fitting.map((body) => body.subarray(body.length - at, body.length - check.behind).join()),
    );
    // The exclusive or of two equal numbers is the last digit of one of them: a check byte is not always a digit.
    if (check.written.startsWith("byte") && bytesAt(fitting, at, check.behind).every(isDigit)) continue;
    if (values.size >= 4 && fitting.length > (best?.fitting ?? 0)) best = { check, fitting: fitting.length };
  }
  return best?.check ?? null;
}
