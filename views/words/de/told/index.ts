import type { ToldPair } from "../../told-pair.ts";
import { entries, entryParts } from "./entries.ts";
import { measurement } from "./measurement.ts";
import { metals } from "./metals.ts";
import { names } from "./names.ts";
import { entryNames, numberEntries, prices } from "./number-entries.ts";
import { planNames } from "./plan.ts";
import { refusals } from "./refusals.ts";
import { weighing, weighingNames } from "./weighing.ts";

/** Every sentence that the bench tells from behind its pages, in German, and the names that stand inside them. */
export const germanBook: { sentences: readonly ToldPair[]; names: readonly ToldPair[] } = {
  sentences: [
    ...refusals,
    ...measurement,
    ...weighing,
    ...numberEntries,
    ...prices,
    ...entries,
  ],
  names: [...names, ...metals, ...planNames, ...weighingNames, ...entryNames, ...entryParts],
};
