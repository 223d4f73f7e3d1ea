import type { ToldPair } from "../../told-pair.ts";
import { assays } from "./assays.ts";
import { cautions } from "./cautions.ts";
import { decision } from "./decision.ts";
import { demo } from "./demo.ts";
import { entries, entryParts } from "./entries.ts";
import { evidence } from "./evidence.ts";
import { findings } from "./findings.ts";
import { lots } from "./lots.ts";
import { inputs, measurement } from "./measurement.ts";
import { metals } from "./metals.ts";
import { names } from "./names.ts";
import { entryNames, numberEntries, prices } from "./number-entries.ts";
import { photos } from "./photos.ts";
import { planNames } from "./plan.ts";
import { refusals } from "./refusals.ts";
import { testNames, tests } from "./tests.ts";
import { weighing, weighingNames } from "./weighing.ts";

/** Every sentence that the bench tells from behind its pages, in German, and the names that stand inside them. */
export const germanBook: { sentences: readonly ToldPair[]; names: readonly ToldPair[] } = {
  sentences: [
    ...refusals,
    ...findings,
    ...measurement,
    ...demo,
    ...decision,
    ...evidence,
    ...cautions,
    ...tests,
    ...photos,
    ...weighing,
    ...lots,
    ...assays,
    ...numberEntries,
    ...prices,
    ...entries,
  ],
  names: [
    ...names,
    ...inputs,
    ...metals,
    ...planNames,
    ...testNames,
    ...weighingNames,
    ...entryNames,
    ...entryParts,
  ],
};
