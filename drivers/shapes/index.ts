import type { Comma } from "../number.ts";
import { wordsMeaning } from "../plain-words.ts";
import type { LineReader } from "../reading.ts";
import { numberWithUnit } from "./number-with-unit.ts";
import type { Shape } from "./shape.ts";
import { signPinnedLeft } from "./sign-pinned-left.ts";
import { tokenAfter } from "./token-after.ts";
import { tokenBefore } from "./token-before.ts";
import { unitWhenSteady } from "./unit-when-steady.ts";

/** Every generic shape. Order matters where a line fits two: the one that remembers earlier lines comes first. */
export const shapes: readonly Shape[] = [
  unitWhenSteady,
  numberWithUnit,
  signPinnedLeft,
  tokenBefore,
  tokenAfter,
];

/** The shape of a name, or undefined. */
export function shapeNamed(id: string): Shape | undefined {
  return shapes.find((shape) => shape.id === id);
}

/** A reader of one shape that also knows the plain words; what it does not know is an event, never a number. */
export function readShape(shape: Shape, comma: Comma = "not-known"): LineReader {
  return reading([shape.reader({ comma })]);
}

/** A reader for a balance nothing is known about: the first shape that knows a line reads it. */
export function readAnyShape(comma: Comma = "not-known"): LineReader {
  return reading(shapes.map((shape) => shape.reader({ comma })));
}

function reading(readers: readonly LineReader[]): LineReader {
  return (line) => {
    const words = wordsMeaning(line);
    if (words) return words;
    for (const read of readers) {
      const meaning = read(line);
      if (meaning) return meaning;
    }
    return unknownLine(line);
  };
}

/** The event for a line that no shape knows. */
export function unknownLine(line: string): { event: { kind: "unknown-line"; says: string } } {
  const shown = line.length > 60 ? `${line.slice(0, 60)}…` : line;
  return {
    event: {
      kind: "unknown-line",
      says: `The balance sent a line that is not understood: "${shown}". No number was taken from it. If all lines look like this, check speed and parity, or learn its lines.`,
    },
  };
}
