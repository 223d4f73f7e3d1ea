import type { Quantity } from "../unit-words.ts";
import { numberStyle } from "./number-style.ts";
import { partsOf } from "./parts.ts";
import type { Part } from "./profile.ts";
import type { Answered } from "./questions.ts";
import { UNIT, type UnitPlace, unitPlace, unitStoodIn } from "./unit-place.ts";
import type { WeightLine } from "./weight-lines.ts";
import { type Zoned, zoned } from "./zones.ts";

export interface WeightShape {
  parts: Part[];
  unit: UnitPlace | null;
  notWeight: Quantity | null;
  zones: Zoned["zones"];
  /** false when text beside the number changed in more ways than marks do */
  explained: boolean;
}

/** How a weight is written: every line cut at its number, then what stands before and behind as parts. */
export function weightShape(
  lines: readonly WeightLine[],
  told: Pick<Answered, "comma" | "impliedPlaces">,
): WeightShape {
  const cut = lines.map(({ observed, number }) => around(observed.text, number.start, number.end));
  const own = zoned(cut.map(({ text, number }) => ({ text, number })));
  const found = unitPlace(own.before, own.after);
  const stand = (texts: readonly string[], side: UnitPlace["side"]) =>
    found.place?.side === side ? texts.map((text) => unitStoodIn(text, found.place!)) : texts;
  const above = partsOf(cut.map(({ above }) => above));
  const before = partsOf(stand(own.before, "before"));
  const after = partsOf(stand(own.after, "after"));
  const below = partsOf(cut.map(({ below }) => below));
  const number = numberStyle(own.zones, told, own.align);
  const pad: Part[] = own.padTo === null ? [] : [{ is: "pad-to", total: own.padTo }];
  return {
    parts: joinedText(
      [...above.parts, ...before.parts, number, ...after.parts, ...pad, ...below.parts].flatMap((part) =>
        withUnit(part, found.place),
      ),
    ),
    unit: found.place,
    notWeight: found.notWeight,
    zones: own.zones,
    explained: [above, before, after, below].every(({ explained }) => explained),
  };
}

/** The line of a block that carries the number, without closing control characters, and what stands around it. */
export function around(text: string, start: number, end: number) {
  const from = text.lastIndexOf("\n", start) + 1;
  const next = text.indexOf("\n", end);
  const last = next < 0 ? text.length : next;
  const to = last - /[\x00-\x1f]*$/.exec(text.slice(0, last))![0].length;
  return {
    above: text.slice(0, from),
    text: text.slice(from, to),
    below: text.slice(to),
    number: { start: start - from, end: end - from },
  };
}

const standIns = new RegExp(UNIT, "g");

/** Puts the unit back in the place of its stand-ins. */
function withUnit(part: Part, place: UnitPlace | null): Part[] {
  if (!place) return [part];
  const back = (text: string) => {
    let i = 0;
    return text.replace(standIns, () => place.word[i++ % place.word.length]!);
  };
  if (part.is === "text") return [{ is: "text", text: back(part.text) }];
  if (part.is !== "mark") return [part];
  return [
    {
      is: "mark",
      marks: part.marks.map((mark) => ({ ...mark, text: back(mark.text), unit: mark.text.includes(UNIT) })),
    },
  ];
}

function joinedText(parts: readonly Part[]): Part[] {
  const joined: Part[] = [];
  for (const part of parts) {
    const last = joined.at(-1);
    if (part.is === "text" && last?.is === "text")
      joined[joined.length - 1] = { is: "text", text: last.text + part.text };
    else joined.push(part);
  }
  return joined;
}
