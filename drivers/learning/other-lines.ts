import { grammar } from "./grammar.ts";
import type { Observed } from "./observed.ts";
import { skeleton } from "./observed.ts";
import type { Part, Profile } from "./profile.ts";

export interface OtherLine {
  kind: Profile["others"][number]["kind"];
  line: Part[];
  example: Observed;
  count: number;
}

/**
 * Lines that carry no weight, by their kind: those that came only when the pan was loaded beyond its range, and those
 * that came again and again between the readings. What was seen once is left out.
 */
export function otherLines(lines: readonly Observed[]): OtherLine[] {
  const kinds = new Map<string, Observed[]>();
  for (const line of lines) {
    if (line.text.trim() === "") continue;
    const kind = skeleton(line.text);
    kinds.set(kind, [...(kinds.get(kind) ?? []), line]);
  }
  const found: OtherLine[] = [];
  for (const some of kinds.values()) {
    const over = some.filter((line) => line.at.phase === "overloaded").length;
    if (some.length < 2) continue;
    const parts = some.map((line) => exactly(line.text));
    for (const line of new Map(parts.map((p) => [JSON.stringify(p), p])).values()) {
      const match = grammar(line);
      const matching = some.filter(({ text }) => match(text) !== null);
      if (matching.length < 2 && over < some.length) continue;
      found.push({
        kind: over === some.length ? "overload" : "not-a-weight",
        line,
        example: matching[0] ?? some[0]!,
        count: matching.length,
      });
    }
  }
  return found.slice(0, 24);
}

/** The text as it is, digits free within their length. */
function exactly(text: string): Part[] {
  return (text.match(/\d+|\D+/g) ?? []).map((piece): Part => {
    if (/\d/.test(piece)) return { is: "digits", least: piece.length, most: piece.length };
    return { is: "text", text: piece };
  });
}
