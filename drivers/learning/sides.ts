import type { Candidate } from "./candidates.ts";
import { partsOf } from "./parts.ts";
import type { Placed } from "./places.ts";
import type { NumberPart, Part } from "./profile.ts";
import { type SignForm, wrapOf } from "./signs.ts";
import { numberStyle, type Placed as Zonable, zoned } from "./zones.ts";

export interface WeightParts {
  parts: Part[];
  style: NumberPart;
  /** false when text beside the number changed in more ways than marks do */
  explained: boolean;
  /** only numbers of one length were seen */
  oneLength: boolean;
}

/** How a weight is written: every line cut at its number, then what stands before and behind as parts. */
export function weightParts(
  { notation, lines }: Pick<Candidate, "notation" | "lines">,
  sign: SignForm,
  anyLeading: boolean,
): WeightParts {
  const placed = lines.map((line) => around(line, sign));
  const fill = fillOf(placed.map(({ zonable }) => zonable));
  const own = zoned(
    placed.map(({ zonable }) => (fill === null ? zonable : blanked(zonable, fill))),
    sign.is === "before",
  );
  const above = partsOf(placed.map(({ above }) => above));
  const before = partsOf(own.before);
  const after = partsOf(own.after);
  const below = partsOf(placed.map(({ below }) => below));
  const style = numberStyle(own.zones, notation, sign, { align: own.align, fill, anyLeading });
  const pad: Part[] = own.padTo === null ? [] : [{ is: "pad-to", total: own.padTo }];
  return {
    style,
    parts: joinedText([...above.parts, ...before.parts, style, ...after.parts, ...pad, ...below.parts]),
    explained: [above, before, after, below].every(({ explained }) => explained),
    oneLength: new Set(own.zones.map(({ digits }) => digits.length)).size === 1 && style.digits === null,
  };
}

/** The line of a block that carries the number, without closing control characters, and what stands around it. */
function around(line: Placed, { wraps }: SignForm) {
  const { text } = line.observed;
  const wrap = wrapOf(wraps, line);
  const start = line.run.start - wrap.before.length;
  const end = line.run.end + wrap.after.length;
  const from = text.lastIndexOf("\n", start) + 1;
  const next = text.indexOf("\n", end);
  const last = next < 0 ? text.length : next;
  const to = last - /[\x00-\x08\x0a-\x1f]*$/.exec(text.slice(0, last))![0].length;
  return {
    above: text.slice(0, from),
    zonable: { text: text.slice(from, to), number: { start: start - from, end: end - from } },
    below: text.slice(to),
  };
}

/** Characters that fill a field in place of blanks: their run before the digits gets shorter as the number gets longer. */
const fillings = ["*", "_", ".", "=", "~", "#", ":", "/"];

function fillOf(lines: readonly Zonable[]): string | null {
  for (const fill of fillings) {
    const runs = lines.map(({ text, number }) => {
      const before = text.slice(0, number.start).replace(/[+\-\u2212]$/, "");
      let length = 0;
      while (before.at(-1 - length) === fill) length += 1;
      return length;
    });
    if (new Set(runs).size > 1 && Math.max(...runs) > 1) return fill;
  }
  return null;
}

/** The line with blanks in place of the filling before its digits. */
function blanked({ text, number }: Zonable, fill: string): Zonable {
  const before = text.slice(0, number.start);
  const lead = new RegExp(`[\\${fill} ]*[+\\-\\u2212]?[\\${fill} ]*$`).exec(before)![0];
  return {
    text:
      before.slice(0, before.length - lead.length) + lead.replaceAll(fill, " ") + text.slice(number.start),
    number,
  };
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
