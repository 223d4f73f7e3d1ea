import { toGrams } from "../../calibration/units.ts";
import { wordsMeaning } from "../plain-words.ts";
import { type LineMeaning, lineEvent, type Stability } from "../reading.ts";
import { bodyText, parityHolds, withoutParity } from "./bytes.ts";
import { withoutCheck } from "./check.ts";
import { grammar, type Matched } from "./grammar.ts";
import type { Part, Profile } from "./profile.ts";

/** Reads the lines of one connection. Keeps the lines of a block that is not yet whole, nothing else. */
export type ProfileReader = (line: string, bytes: Uint8Array) => LineMeaning;

/**
 * A reader for lines as this profile learned them. `bytes` are those of one line, its line end may be on it; `line` is
 * the same for people and only used in messages. A line that differs in any place is an unknown line, never a number.
 */
export function readByProfile(profile: Profile): ProfileReader {
  const weight = grammar(profile.weight);
  const members = profile.blockLines === 1 ? [] : linesOf(profile.weight).map(grammar);
  const others = profile.others.map(({ kind, line }) => ({ kind, match: grammar(line) }));
  let block: string[] = [];

  return (line, bytes) => {
    const shown = line.trim();
    if (!parityHolds(bytes, profile.parity)) return lineEvent("line.error.parity", { line: shown });
    const body = withoutEnd(withoutParity(bytes, profile.parity), profile);
    const checked = profile.check === null ? body : withoutCheck(body, profile.check);
    const text = bodyText(checked ?? body, profile);
    block = [...block, text].slice(-profile.blockLines);
    const matched = checked === null ? null : weight(block.join("\n"));
    if (matched?.text) {
      block = [];
      return meaning(matched, matched.text, profile, shown);
    }
    const other = others.find(({ match }) => match(text) !== null);
    if (other?.kind === "overload") return lineEvent("line.overload.learned", { line: shown });
    if (other) return lineEvent("line.housekeeping.between", { line: shown });
    if (checked !== null && members.some((match) => match(text) !== null))
      return lineEvent("line.housekeeping.block", { line: shown, lines: profile.blockLines });
    const words = wordsMeaning(text);
    if (words) return words;
    return lineEvent(checked === null ? "line.error.check" : "line.unknown-line.not-as-learned", {
      line: shown,
    });
  };
}

function withoutEnd(body: Uint8Array, { ending }: Profile): Uint8Array {
  if (ending.kind === "frame" || ending.kind === "silence" || ending.kind === "length") return body;
  const end = ending.kind === "characters" ? [...Buffer.from(ending.hex, "hex")] : [];
  if (end.length > 0 && end.every((byte, i) => body.at(i - end.length) === byte))
    return body.subarray(0, body.length - end.length);
  let to = body.length;
  if (ending.kind === "any") while (to > 0 && (body[to - 1] === 0x0d || body[to - 1] === 0x0a)) to -= 1;
  return body.subarray(0, to);
}

/** The parts of each line of a block. */
function linesOf(parts: readonly Part[]): Part[][] {
  const lines: Part[][] = [[]];
  for (const part of parts) {
    if (part.is !== "text") {
      lines.at(-1)!.push(part);
      continue;
    }
    part.text.split("\n").forEach((text, i) => {
      if (i > 0) lines.push([]);
      if (text !== "") lines.at(-1)!.push({ is: "text", text });
    });
  }
  return lines;
}

function meaning(
  matched: Matched,
  text: string,
  { unit, weight, restByNumber }: Profile,
  shown: string,
): LineMeaning {
  const said = restByNumber ? ["steady"] : matched.marks.map((mark) => mark.means);
  const unitMarked = weight.some((part) => part.is === "mark" && part.marks.some((mark) => mark.unit));
  const unitSent = !unitMarked || matched.marks.some((mark) => mark.unit);
  const stability: Stability = said.includes("moving")
    ? "moving"
    : said.includes("unsure") || !said.includes("steady")
      ? "unknown"
      : "stable";
  if (!unitSent && stability !== "moving") return lineEvent("line.unit-missing.learned", { line: shown });
  const label = matched.marks.find((mark) => mark.label !== undefined)?.label;
  return {
    reading: {
      text,
      unit: unit.unit,
      grams: toGrams(text, unit.unit),
      stability,
      ...((label === "net" || label === "gross") && { label }),
    },
  };
}
