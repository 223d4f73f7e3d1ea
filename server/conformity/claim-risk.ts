import { remembered } from "../../calibration/remembered.ts";
import type { Library } from "../metals/library.ts";
import type { DensityBand, Metal } from "../metals/metal.ts";
import { type Occurrence, occurrences } from "../metals/worth-table.ts";
import { satisfies } from "./alternative.ts";
import { met } from "./candidate.ts";
import { bandAt } from "./exclusion.ts";
import { globalRisk, type PriorPart } from "./global-risk.ts";
import type { AcceptanceInterval } from "./tolerance.ts";
import { canLookLike, worthPassingOff, worthPerGram } from "./worth.ts";

/** What a rule leaves undone over many pieces offered as one metal: shares of all of them (JCGM 106:2012, clause 9). */
export interface ClaimRisk {
  /** something else with a density outside the band of the claim, and accepted */
  consumers: number;
  /** the claim itself, and rejected */
  producers: number;
  /** something else with a density inside the band: no density rejects it */
  beyondDensity: number;
}

/**
 * The risks of an acceptance interval, g/cm³, for pieces offered as the claim and measured with standard uncertainty u at
 * a temperature. What is offered is taken from the table of worth and occurrence (common practice): each recipe of the
 * claim as often as the other, evenly over its band; of each occurrence what can look like the claim and is worth less.
 */
export function claimRisk(
  claimed: Metal,
  library: Library,
  { u, celsius, acceptance }: { u: number; celsius: number; acceptance: AcceptanceInterval },
): ClaimRisk {
  const band = bandAt(claimed, celsius);
  const { others, genuine } = offered(library)(claimed);
  const partOf = ({ metal, share }: Offered) => spread(bandAt(metal, celsius), share);
  const ofOthers = globalRisk(others.map(partOf), u, band, acceptance);
  const shareOfOthers = others.reduce((sum, { share }) => sum + share, 0);
  return {
    consumers: ofOthers.consumers,
    producers: globalRisk(genuine.map(partOf), u, band, acceptance).producers,
    beyondDensity: shareOfOthers - ofOthers.nonConforming - ofOthers.producers,
  };
}

interface Offered {
  metal: Metal;
  share: number;
}

/** What is offered as a claim hangs on no measurement. */
const offered = remembered((library: Library) => remembered((claimed: Metal) => offeredAs(claimed, library)));

/** What is offered as the claim: its recipes, and what passes for it, each with its share of all pieces. */
function offeredAs(claimed: Metal, library: Library): { genuine: Offered[]; others: Offered[] } {
  const { worth } = library;
  const passing = library.metals.filter(
    (m) =>
      !m.recipes &&
      !satisfies(m, claimed) &&
      worthPassingOff(m, claimed, worth) &&
      canLookLike(m, claimed, worth),
  );
  const of = (occurrence: Occurrence) =>
    // a body made to a density has that of the claim
    occurrence === "purpose-made"
      ? worthPerGram(claimed, worth) > 2
        ? [claimed]
        : []
      : passing.filter(({ likelihood }) => met[likelihood] === occurrence);
  const others = occurrences.flatMap((occurrence) =>
    shared(of(occurrence), worth.otherInThousand[occurrence]),
  );
  const rest = 1000 - 1000 * others.reduce((sum, { share }) => sum + share, 0);
  const recipes = claimed.recipes?.filter(library.has).map(library.metal) ?? [claimed];
  return { others, genuine: shared(recipes, rest) };
}

const shared = (metals: readonly Metal[], inThousand: number): Offered[] =>
  metals.map((metal) => ({ metal, share: inThousand / 1000 / metals.length }));

/** A band narrower than this share of itself is one density. */
const narrowest = 1e-6;

function spread({ low, high, nominal }: DensityBand, share: number): PriorPart {
  const widen = Math.max(0, narrowest * nominal - (high - low)) / 2;
  return { from: low - widen, to: high + widen, share };
}
