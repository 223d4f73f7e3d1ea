import { toGrams } from "../../calibration/units.ts";
import { wordsMeaning } from "../plain-words.ts";
import type { LineMeaning, Steadiness } from "../reading.ts";
import { framedText, parityHolds, textOf, withoutCheck, withoutParity } from "./bytes.ts";
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
    if (!parityHolds(bytes, profile.parity))
      return trouble(shown, "came with a wrong parity bit, so a character in it is damaged");
    const body = withoutEnd(withoutParity(bytes, profile.parity), profile);
    const checked = profile.check === null ? body : withoutCheck(body, profile.check);
    const text = (profile.ending.kind === "frame" ? framedText : textOf)(checked ?? body);
    block = [...block, text].slice(-profile.blockLines);
    const matched = checked === null ? null : weight(block.join("\n"));
    if (matched?.text) {
      block = [];
      return meaning(matched, matched.text, profile, shown);
    }
    const other = others.find(({ match }) => match(text) !== null);
    if (other?.kind === "overload")
      return {
        event: {
          kind: "overload",
          says: `The balance sent "${shown}", as it did when it was loaded beyond its range. Take the load off; nothing was taken.`,
        },
      };
    if (other)
      return noWeight(
        `The balance sent "${shown}", a line without a weight that stands between its readings.`,
      );
    if (checked !== null && members.some((match) => match(text) !== null))
      return noWeight(
        `The balance sent "${shown}", one of the ${profile.blockLines} lines that together are one reading.`,
      );
    const words = wordsMeaning(text);
    if (words) return words;
    if (checked === null) return trouble(shown, "came with a check byte that does not fit");
    return {
      event: {
        kind: "unknown-line",
        says: `"${shown}" is not written as the lines this balance was learned from. Nothing was taken. If this goes on, learn its lines again.`,
      },
    };
  };
}

function noWeight(says: string): LineMeaning {
  return { event: { kind: "not-a-weight", says } };
}

function trouble(shown: string, what: string): LineMeaning {
  return {
    event: {
      kind: "trouble",
      says: `"${shown}" ${what}. Nothing was taken. If this goes on, check the cable, the speed and the parity.`,
    },
  };
}

function withoutEnd(body: Uint8Array, { ending }: Profile): Uint8Array {
  if (ending.kind === "frame" || ending.kind === "silence") return body;
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
  const steady: Steadiness = said.includes("moving")
    ? "moving"
    : said.includes("unsure") || !said.includes("steady")
      ? "not-told"
      : "steady";
  if (!unitSent && steady !== "moving")
    return {
      event: {
        kind: "unit-missing",
        says: `The balance sent "${shown}" without its unit. A number without a unit is no weight; set the balance to send it.`,
      },
    };
  return { reading: { text, unit: unit.unit, grams: toGrams(text, unit.unit), steady } };
}
