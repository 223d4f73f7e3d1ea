import { digitsPattern, signPattern } from "../number.ts";
import { unitMeaning, unitPattern } from "../unit-words.ts";
import { weight } from "../weight.ts";
import type { Shape } from "./shape.ts";

//   "+   31.10 g   "  at rest      "+   31.10     "  moving: blanks stand where the unit was
const line = new RegExp(`^( *${signPattern}? *)(${digitsPattern})( *)(${unitPattern}|)( *)$`);

/**
 * Knows what a missing unit means only after the same columns were seen with a unit and without one; until then
 * it leaves the line to others.
 */
export const unitWhenSteady: Shape = {
  id: "unit-when-steady",
  reader({ comma }) {
    let unit = "";
    let blankSeen = false;
    let columns = "";
    return (text) => {
      const [, lead = "", digits, gap = "", word = "", tail = ""] = line.exec(text) ?? [];
      if (digits === undefined) return null;
      const sign = lead.trim();
      // Where the number ends and how long the line is: both are the same with and without the unit.
      const here = `${lead.length + digits.length}/${text.length}`;
      if (word !== "") {
        if (here !== columns || word !== unit) blankSeen = false;
        columns = here;
        unit = word;
        return blankSeen ? weight({ sign, digits, unit, stability: "stable" }, comma) : null;
      }
      const known = unitMeaning(unit);
      const blanks = gap.length + tail.length >= unit.length;
      if (here !== columns || known === null || "notWeight" in known || !blanks) return null;
      blankSeen = true;
      return weight({ sign, digits, unit, stability: "moving" }, comma);
    };
  },
};
