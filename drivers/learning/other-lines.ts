import { grammar } from "./grammar.ts";
import type { MotionFound } from "./marked-parts.ts";
import { fewestLines } from "./motion.ts";
import { runsIn } from "./notations.ts";
import type { Part, Profile } from "./profile.ts";
import { atRest, lineKind, movingPhases, type Observed } from "./recording.ts";

export interface OtherLine {
  kind: Profile["others"][number]["kind"];
  line: Part[];
  example: Observed;
  /** how many came at rest, and how many while something was done to the pan */
  atRest: number;
  inMotion: number;
  count: number;
}

/**
 * Lines that carry no weight and came again and again between the readings. What was seen once is left out.
 */
export function otherLines(lines: readonly Observed[]): OtherLine[] {
  const kinds = new Map<string, Observed[]>();
  for (const line of lines) {
    if (line.text.trim() === "") continue;
    const kind = lineKind(line.text);
    kinds.set(kind, [...(kinds.get(kind) ?? []), line]);
  }
  const found: OtherLine[] = [];
  for (const some of kinds.values()) {
    if (some.length < 2) continue;
    const parts = some.map((line) => exactly(line.text));
    for (const line of new Map(parts.map((p) => [JSON.stringify(p), p])).values()) {
      const match = grammar(line);
      const matching = some.filter(({ text }) => match(text) !== null);
      if (matching.length < 2) continue;
      found.push({
        kind: "not-a-weight",
        line,
        example: matching[0] ?? some[0]!,
        atRest: matching.filter(atRest).length,
        inMotion: matching.filter((one) => movingPhases.includes(one.at.phase)).length,
        count: matching.length,
      });
    }
  }
  return found.slice(0, 24);
}

/** True when lines without a number come while the pan moves and hardly ever at rest, in the place of those with one. */
export function sentOnlyAtRest(readings: MotionFound, blind: readonly OtherLine[]): boolean {
  const blindLines = blind.reduce((sum, { inMotion }) => sum + inMotion, 0);
  const { steady, restLines, motionLines } = readings;
  return (
    steady.length === 0 && restLines >= fewestLines && blindLines >= Math.max(fewestLines, 3 * motionLines)
  );
}

/** A line that comes in motion and hardly ever at rest, and that carries one number less than a line with a weight. */
const isBlind = ({ kind, example, atRest, inMotion }: OtherLine, numbers: number) =>
  kind === "not-a-weight" &&
  inMotion > 0 &&
  atRest <= 0.1 * inMotion &&
  runsIn(example.text).length < numbers;

/** The lines that may stand for a number that is not sent in motion. `numbers` is how many a line with a weight has. */
export const blindLines = (others: readonly OtherLine[], numbers: number) =>
  others.filter((other) => isBlind(other, numbers));

/** The text as it is, digits free within their length. */
function exactly(text: string): Part[] {
  return (text.match(/\d+|\D+/g) ?? []).map((piece): Part => {
    if (/\d/.test(piece)) return { is: "digits", least: piece.length, most: piece.length };
    return { is: "text", text: piece };
  });
}
