import { load, traitsFor } from "./balance.ts";
import type { Series } from "./series.ts";
import { displacedWithinUncertainty, type SignedLoad, sumOfLoads, type Weighing } from "./weighing.ts";

/** Hung from the balance: displaced is dry less immersed. A hanger that was not zeroed is weighed in. */
export function hung(immersed: Series): Weighing {
  return {
    key: "immersed",
    series: [immersed],
    term(inputs, { balance, inLiquid, hanger }) {
      const offDry = hanger.inAir && load(inputs, "hanger in air", hanger.inAir, traitsFor(balance, "dry"));
      const loads: SignedLoad[] = [{ load: load(inputs, "immersed", immersed, inLiquid), sign: -1 }];
      if (hanger.inLiquid)
        loads.push({ load: load(inputs, "hanger in liquid", hanger.inLiquid, inLiquid), sign: 1 });
      return { ...(offDry && { offDry }), ...sumOfLoads(loads, true) };
    },
    nothing: "measurement.nothing-displaced.hung",
    drowned: displacedWithinUncertainty,
  };
}
