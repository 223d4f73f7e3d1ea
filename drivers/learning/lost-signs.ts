import type { grammar } from "./grammar.ts";
import type { Observed } from "./recording.ts";

/** Lines this close follow each other without time to tare and lift between, ms. */
const nextMs = 1200;
/** Share of the greatest number from which on a number is far from zero. */
const farFromZero = 0.05;
const sameSize = 0.25;

/**
 * Two lines, one right after the other, of about the same size far from zero and of different signs: one of them has lost its
 * sign. So do two such pairs at any pace. Empty where there are none.
 */
export function lostSigns(readings: readonly Observed[], match: ReturnType<typeof grammar>): Observed[] {
  const values = readings.map(({ text }) => Number(match(text)?.text ?? 0));
  const far = farFromZero * Math.max(...values.map(Math.abs));
  const turns = values.flatMap((value, i) => {
    const before = values[i - 1] ?? 0;
    const [least, most] = [value, before].map(Math.abs).sort((a, b) => a - b) as [number, number];
    return value * before < 0 && least > far && most - least <= sameSize * most ? [i] : [];
  });
  const soon = turns.find((i) => readings[i]!.atMs - readings[i - 1]!.atMs <= nextMs);
  const at = soon ?? (turns.length > 1 ? turns[0] : undefined);
  return at === undefined ? [] : readings.slice(at - 1, at + 1);
}
