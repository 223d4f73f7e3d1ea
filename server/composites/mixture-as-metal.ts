import type { Metal } from "../alloys/metal.ts";
import type { BinaryMixture } from "./binary-mixtures.ts";

/** A mixture written as a metal of the library, so that evidence and separation treat both alike. */
export function mixtureAsMetal(mixture: BinaryMixture, interval: readonly [number, number]): Metal {
  const { pair, share, known } = mixture;
  const middle = (share[0] + share[1]) / 2;
  const ends = known ? share.map((w) => known.conductivityIacsPercent(stated(mixture, w))) : [];
  return {
    id: mixture.id,
    name: mixture.name,
    family: "mixtures",
    composition: {
      [pair[0]]: [middle, share[0], share[1]],
      [pair[1]]: [1 - middle, 1 - share[1], 1 - share[0]],
    },
    densityGPerCm3: { nominal: (interval[0] + interval[1]) / 2, low: interval[0], high: interval[1] },
    expansionPerMillionK: null,
    magnetism: known?.magnetism ?? (pair.some((p) => ["Fe", "Ni", "Co"].includes(p)) ? "weak" : "none"),
    conductivityIacsPercent:
      ends.length > 0 ? [Math.min(...ends.map(([l]) => l)), Math.max(...ends.map(([, h]) => h))] : null,
    soundMPerS: known?.soundMPerS ?? null,
    elasticModulusGPa: null,
    poissonRatio: null,
    colour: known?.colour ?? "white",
    likelihood: mixture.likelihood,
    source: known?.source ?? "mixture law",
    verified: false,
  };
}

/** The known pair states the share of its own first component, which need not be the denser one. */
function stated(mixture: BinaryMixture, denseShare: number): number {
  return mixture.known?.pair[0] === mixture.pair[0] ? denseShare : 1 - denseShare;
}
