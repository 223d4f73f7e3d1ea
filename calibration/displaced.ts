import { load } from "./balance.ts";
import type { Series } from "./series.ts";
import { displacedWithinUncertainty, sumOfLoads, type Weighing } from "./weighing.ts";

/** Vessel on the pan, piece hung in it from a stand: displaced is the rise itself. */
export function displaced(rise: Series): Weighing {
  return {
    key: "rise",
    series: [rise],
    term: (inputs, { inLiquid }) =>
      sumOfLoads([{ load: load(inputs, "rise", rise, inLiquid), sign: 1 }], false),
    nothing: "measurement.nothing-displaced.rise",
    drowned: displacedWithinUncertainty,
  };
}
