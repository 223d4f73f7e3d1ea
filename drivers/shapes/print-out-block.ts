import { lastPlace, minus } from "../../calibration/decimal.ts";
import { lineEvent, type Reading } from "../reading.ts";
import { labelBefore } from "./label-before.ts";
import type { Shape } from "./shape.ts";

//   "G    131.10 g" / "T    100.00 g" / "N     31.10 g"     Three lines, one weight: the net one.
const tare = /^ *(?:T|TARE|Tare|tare)[ :]+([\d.,]+) *\S* *$/;

/**
 * Reads a print-out of gross, tare and net as one reading, the net one, and refuses it when net is not gross less
 * tare. A balance that sends the gross weight again and again, with no net between, is left to other shapes.
 */
export const printOutBlock: Shape = {
  id: "print-out-block",
  reader(settings) {
    const labelled = labelBefore.reader(settings);
    let gross: Reading | null = null;
    let tareText: string | null = null;
    return (text) => {
      const meaning = labelled(text);
      if (meaning === null) return null;
      if (!("reading" in meaning)) {
        tareText = tare.exec(text)?.[1]?.replace(",", ".") ?? tareText;
        return meaning;
      }
      const { reading } = meaning;
      if (reading.label === "gross") {
        const alone = gross !== null && tareText === null;
        gross = reading;
        tareText = null;
        if (alone) return null;
        return lineEvent("line.housekeeping.gross", { gross: { decimal: reading.text }, unit: reading.unit });
      }
      const block = gross !== null && tareText !== null ? { gross, tareText } : null;
      gross = null;
      tareText = null;
      if (!block) return null;
      // Each of the three is rounded on its own, so they may be one last place apart.
      const off = Number(minus(minus(block.gross.text, block.tareText), reading.text));
      if (block.gross.unit === reading.unit && Math.abs(off) <= 1.01 * lastPlace(reading.text))
        return meaning;
      return lineEvent("line.damaged.sum", {
        gross: { decimal: block.gross.text },
        tare: { decimal: block.tareText },
        net: { decimal: reading.text },
        unit: reading.unit,
      });
    };
  },
};
