import { measuredDensity } from "../../../calibration/distribution.ts";
import type { MeasuredDensity } from "../../../calibration/measured-density.ts";
import { wouldHide } from "../../../calibration/pool.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { called } from "../../metals/called.ts";
import { builtIn, type Library } from "../../metals/library.ts";
import type { Metal } from "../../metals/metal.ts";
import { needsFiner } from "../alternative.ts";
import { type Conformity, conformityFor } from "../conformity.ts";
import { bandAt, excludes } from "../exclusion.ts";
import { worthPassingOff } from "../worth.ts";
import { notPossible, sentencesOf } from "./plan-messages.ts";
import type { Plan } from "./planned-result.ts";
import { asStated, type Evaluate, expectedResult, type PlannedWeighing } from "./planned-weighing.ts";
import { type Remedy, remedies } from "./remedies.ts";

/**
 * The plan of a weighing before the piece is wetted: expected displaced mass, expected uncertainty, which alternatives it
 * will and will not exclude, and what readability, method, mass or number of pieces would. The claim is taken as true and
 * at its nominal density. Refuses an unknown claim and a value outside its range.
 */
export function planFor(
  weighing: PlannedWeighing,
  library: Library = builtIn,
  evaluate: Evaluate = asStated,
): Plan {
  checked(weighing);
  const claimed = library.metal(weighing.claim);
  const seen = expectedOf(weighing, claimed, library, evaluate);
  const ways = () =>
    remedies(weighing, (other) => decides(expectedOf(other, claimed, library, evaluate), library));
  if (!seen) return blind(weighing, claimed, ways());
  const { result, conformity } = seen;
  const cannotExclude = conformity.notExcluded.filter(({ metal }) => metal !== claimed);
  const excluded = cheaperThan(claimed, library).filter((m) => isExcluded(m, seen));
  const plan = {
    claim: claimed.id,
    possible: true,
    expected: {
      dryG: weighing.massG * weighing.pieces,
      displacedG: result.displacedGrams,
      immersedG: weighing.massG * weighing.pieces - result.displacedGrams,
      gPerCm3: result.gPerCm3,
    },
    expandedGPerCm3: result.expandedGPerCm3,
    expandedPercent: (100 * result.expandedGPerCm3) / result.gPerCm3,
    intervalGPerCm3: result.intervalGPerCm3,
    state: conformity.state,
    excludes: excluded.map((m) => ({ id: m.id, called: called(m) })),
    fitting: library.metals.filter((m) => !isExcluded(m, seen)).map(({ id }) => id),
    cannotExclude,
    remedies: decides(seen, library) ? [] : ways(),
    pooled: weighing.pieces > 1 ? hiddenAmong(weighing.pieces, result, excluded) : [],
  };
  return { ...plan, message: sentencesOf(plan, claimed, weighing, library) };
}

interface Looked {
  result: ReturnType<Evaluate>;
  conformity: Conformity;
  measured: MeasuredDensity;
  celsius: number;
}

type Seen = Looked | null;

const isExcluded = (metal: Metal, { measured, celsius }: Looked) =>
  excludes(measured, bandAt(metal, celsius), measured.confidence);

/** What the claim's nominal density would be measured as, or null when the displaced mass cannot be told from zero. */
function expectedOf(weighing: PlannedWeighing, claimed: Metal, library: Library, evaluate: Evaluate): Seen {
  const celsius = weighing.celsius ?? 20;
  try {
    const result = expectedResult(weighing, bandAt(claimed, celsius).nominal, evaluate);
    const measured = measuredDensity(result);
    const { confidence } = weighing;
    const conformity = conformityFor(measured, { library, confidence, celsius, claim: claimed.id });
    return { result, conformity, measured, celsius };
  } catch (error) {
    if (error instanceof Refusal && isBlind(weighing, claimed)) return null;
    throw error;
  }
}

/** A displaced mass within a few steps of the display is what measure refuses; any other refusal is the caller's fault. */
function isBlind({ massG, pieces, readabilityG }: PlannedWeighing, claimed: Metal): boolean {
  return (massG * pieces) / claimed.densityGPerCm3.nominal < 10 * readabilityG;
}

function decides(seen: Seen, { worth }: Library): boolean {
  if (seen === null) return false;
  const { claimed, notExcluded } = seen.conformity;
  return !claimed || !notExcluded.some((one) => one.metal !== claimed && needsFiner(one, claimed, worth));
}

const order = { common: 0, possible: 1, rare: 2 } as const;

function cheaperThan(claimed: Metal, library: Library): Metal[] {
  const away = (m: Metal) => Math.abs(m.densityGPerCm3.nominal - claimed.densityGPerCm3.nominal);
  return library.metals
    .filter((m) => m.likelihood !== "rare" && worthPassingOff(m, claimed, library.worth))
    .sort((a, b) => order[a.likelihood] - order[b.likelihood] || away(a) - away(b));
}

/** How many kinds of odd pieces a plan names. */
const oddKinds = 3;

/** The excluded kinds of which at least one piece would hide among the others. */
function hiddenAmong(pieces: number, result: ReturnType<Evaluate>, excluded: Metal[]): Plan["pooled"] {
  return excluded
    .map((m) => ({
      id: m.id,
      called: called(m),
      hidden: wouldHide(result, pieces, m.densityGPerCm3.nominal),
    }))
    .filter(({ hidden }) => hidden > 0)
    .slice(0, oddKinds);
}

function blind(weighing: PlannedWeighing, claimed: Metal, ways: Remedy[]): Plan {
  const dryG = weighing.massG * weighing.pieces;
  const displacedG = dryG / claimed.densityGPerCm3.nominal;
  return {
    claim: claimed.id,
    possible: false,
    expected: { dryG, displacedG, immersedG: dryG - displacedG, gPerCm3: claimed.densityGPerCm3.nominal },
    expandedGPerCm3: Number.POSITIVE_INFINITY,
    expandedPercent: Number.POSITIVE_INFINITY,
    intervalGPerCm3: [0, Number.POSITIVE_INFINITY],
    state: null,
    excludes: [],
    fitting: [],
    cannotExclude: [],
    remedies: ways,
    pooled: [],
    message: notPossible(displacedG, weighing.readabilityG, ways),
  };
}

function checked({ massG, readabilityG, pieces }: PlannedWeighing): void {
  if (!(massG > 0) || !Number.isFinite(massG))
    throw new Refusal("plan.refusal.mass", { mass_g: massG }, "mass");
  if (!(readabilityG > 0) || !Number.isFinite(readabilityG))
    throw new Refusal("plan.refusal.readability", { readability_g: readabilityG }, "readability");
  if (!Number.isInteger(pieces) || pieces < 1) throw new Refusal("plan.refusal.pieces", { pieces }, "pieces");
}
