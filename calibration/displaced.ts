import { load } from "./balance.ts";
import { lastPlace } from "./decimal.ts";
import type { MeasurementCheck } from "./measurement-check.ts";
import type { Series } from "./series.ts";
import { gramsPerUnit } from "./units.ts";
import { displacedWithinUncertainty, sumOfLoads, type Weighing } from "./weighing.ts";

/** On a display of such steps or finer, what evaporates or an automatic zero swallows shows in the density, g. */
const fineGrams = 0.01;

/** Without a zero after it, nothing tells what a rise lost on its way: vapour, a drop, or a slow step of an automatic zero. */
function notesOn(rise: Series): MeasurementCheck[] {
  if ("timed" in rise || rise.zeroAfter !== undefined) return [];
  const step = Math.min(...rise.readings.map(lastPlace)) * Number(gramsPerUnit[rise.unit]);
  if (step > fineGrams * (1 + 1e-9)) return [];
  return [{ code: "measurement.no-zero-after", severity: "warn", params: {} }];
}

/** Vessel on the pan, piece hung in it from a stand: displaced is the rise itself. */
export function displaced(rise: Series): Weighing {
  return {
    key: "rise",
    series: [rise],
    notes: notesOn(rise),
    term: (inputs, { inLiquid }) =>
      sumOfLoads([{ load: load(inputs, "rise", rise, inLiquid), sign: 1 }], false),
    nothing: "measurement.nothing-displaced.rise",
    drowned: displacedWithinUncertainty,
  };
}
