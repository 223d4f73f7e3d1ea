import { message } from "../../../calibration/message.ts";
import type { Metal } from "../metal.ts";
import { computedBy } from "../provenance.ts";
import type { BinaryMixture } from "./binary-mixtures.ts";
import { type KnownPair, knownPairs } from "./known-pairs.ts";
import { calledMixture, fractionsOf } from "./mixture-part.ts";

/** A mixture written as a metal of the library, so that evidence and separation treat both alike. */
export function mixtureAsMetal(mixture: BinaryMixture, interval: readonly [number, number]): Metal {
  const { parts, share, known } = mixture;
  const ends = known ? share.map((w) => known.conductivityIacsPercent(stated(mixture, w))) : [];
  return {
    id: mixture.id,
    made: message("composite.mixture-share", {
      mixture: calledMixture(parts, known),
      low_percent: 100 * share[0],
      high_percent: 100 * share[1],
      part: parts[0].called,
    }),
    family: "mixtures",
    composition: compositionOf(parts, share),
    densityGPerCm3: { nominal: (interval[0] + interval[1]) / 2, low: interval[0], high: interval[1] },
    expansionPerMillionK: null,
    magnetism: known?.magnetism ?? (parts.some((part) => part.magnetism !== "none") ? "weak" : "none"),
    conductivityIacsPercent:
      ends.length > 0 ? [Math.min(...ends.map(([l]) => l)), Math.max(...ends.map(([, h]) => h))] : null,
    soundMPerS: known?.soundMPerS ?? null,
    elasticModulusGPa: null,
    poissonRatio: null,
    colour: known?.colour ?? "white",
    likelihood: mixture.likelihood,
    provenance: provenanceOf(known),
    otherDensities: [],
    notes: [],
  };
}

const byLaw = computedBy("mixture-law");
const computed = { composition: byLaw, nominal: byLaw, low: byLaw, high: byLaw };
/** Of the known pairs, put together once: hundreds of results name them. */
const provenances = new Map(
  knownPairs.map((known) => [known, { ...known.provenance, ...computed }] as const),
);
const provenanceOf = (known: KnownPair | null) => (known && provenances.get(known)) ?? computed;

/** The known pair states the share of its own first component, which need not be the denser one. */
function stated(mixture: BinaryMixture, denseShare: number): number {
  return mixture.known?.pair[0] === mixture.parts[0].id ? denseShare : 1 - denseShare;
}

function compositionOf([dense, light]: BinaryMixture["parts"], [from, to]: readonly [number, number]) {
  const [low, middle, high] = [from, (from + to) / 2, to].map((share) => fractionsOf(dense, light, share));
  return Object.fromEntries(
    Object.entries(middle!).map(([symbol, w]) => {
      const ends = [low![symbol] ?? 0, high![symbol] ?? 0];
      return [symbol, [w, Math.min(...ends), Math.max(...ends)] as const];
    }),
  );
}
