import { shortest } from "../../checks/amounts.ts";
import type { Watch } from "./watch.ts";

/** Below this fraction gained, another immersion is work for nothing. */
const worthwhile = 0.1;

/** More repeats will not help: what is left of the uncertainty is not scatter. */
export const repeatsExhausted: Watch = {
  kind: "repeats-exhausted",
  look({ density, repeatsShare, wet }) {
    if (density === undefined || repeatsShare === undefined || wet.length < 3) return undefined;
    const floor = density.expandedGPerCm3 * Math.sqrt(1 - repeatsShare);
    if (1 - floor / density.expandedGPerCm3 >= worthwhile) return undefined;
    return {
      says:
        `Repeats make up ${Math.round(repeatsShare * 100)} % of the variance: even endless immersions would only bring ` +
        `U from ${shortest(density.expandedGPerCm3, 2)} to ${shortest(floor, 2)} g/cm³.`,
      ask: "Is the answer good enough, or should something other than the repeats be improved?",
      remedies: [
        { says: "Look at the largest bar of the budget: thermometer, readability, bubbles or wire." },
        { says: "Pool several identical pieces, or use a finer balance." },
      ],
      blocking: false,
    };
  },
};
