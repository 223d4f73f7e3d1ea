import { wordsMeaning } from "../plain-words.ts";
import { type BalanceEvent, type LineReader, lineEvent } from "../reading.ts";
import { auxiliaryDigit } from "./auxiliary-digit.ts";
import { dateAndIdLines } from "./date-and-id-lines.ts";
import { framed } from "./framed.ts";
import { labelBefore } from "./label-before.ts";
import { numberWithUnit } from "./number-with-unit.ts";
import { printOutBlock } from "./print-out-block.ts";
import type { Shape, ShapeSettings } from "./shape.ts";
import { signPinnedLeft } from "./sign-pinned-left.ts";
import { tokenAfter } from "./token-after.ts";
import { tokenBefore } from "./token-before.ts";
import { unitWhenSteady } from "./unit-when-steady.ts";

/** Every generic shape. Order matters where a line fits two: those that remember earlier lines come first. */
export const shapes: readonly Shape[] = [
  unitWhenSteady,
  printOutBlock,
  labelBefore,
  numberWithUnit,
  signPinnedLeft,
  auxiliaryDigit,
  framed,
  tokenBefore,
  tokenAfter,
  dateAndIdLines,
];

const nothingKnown: ShapeSettings = { comma: "not-known" };

/** The shape of a name, or undefined. */
export function shapeNamed(id: string): Shape | undefined {
  return shapes.find((shape) => shape.id === id);
}

/**
 * A reader of one shape that also knows plain words and the lines between weights; what it does not know is an
 * event, never a number.
 */
export function readShape(shape: Shape, settings: ShapeSettings = nothingKnown): LineReader {
  return reading([shape.reader(settings), dateAndIdLines.reader(settings)]);
}

/** A reader for a balance nothing is known about: the first shape that knows a line reads it. */
export function readAnyShape(settings: ShapeSettings = nothingKnown): LineReader {
  return reading(shapes.map((shape) => shape.reader(settings)));
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
export function unknownLine(line: string): { event: BalanceEvent } {
  return lineEvent("line.unknown-line", { line: line.length > 60 ? `${line.slice(0, 60)}…` : line });
}
