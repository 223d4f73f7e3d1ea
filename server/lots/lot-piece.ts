import { lastPlace } from "../../calibration/decimal.ts";
import type { Library } from "../alloys/library.ts";
import { recordedDensity } from "../findings/recorded-density.ts";
import { fineMass } from "../fineness/fine-mass.ts";
import { goldFineness, silverFineness } from "../fineness/fineness.ts";
import type { Entry } from "../ledger/entry.ts";
import { liquidCelsius } from "../reports/conditions.ts";
import { statedBy } from "../reports/stated.ts";

/** One weighed piece of a lot. */
export interface LotPiece {
  id: string;
  ticket: string;
  claim: string | null;
  state: "agrees" | "agrees-not-alone" | "disagrees" | "undecided";
  /** mean of the dry readings, g, and one step of the display */
  dryG: number;
  stepG: number;
  density: number;
  expanded: number;
  /** true when a reading was typed instead of taken from the balance */
  typed: boolean;
  voided: boolean;
  /** fine metal if it is sound alloy of the claimed metal; null when it disagrees or no fineness can be said */
  fine: LotFine | null;
}

export interface LotFine {
  metal: "gold" | "silver";
  lowG: number;
  highG: number;
  permille: { low: number; high: number };
}

/** A recorded piece as its lot counts it, from the entries about it. Throws RangeError while it has no result. */
export function lotPieceOf(entries: readonly Entry[], library: Library): LotPiece {
  const stated = statedBy(entries);
  const { response, request } = stated.result;
  const dry = stated.captures.flatMap(({ entry: { body }, voided }) =>
    voided === null && body.what === "dry" && "reading" in body ? [body.reading.grams] : [],
  );
  const stepG = Math.max(...dry.map(lastPlace));
  const dryG = dry.reduce((sum, grams) => sum + Number(grams), 0) / dry.length;
  const claim = stated.piece.claim ?? null;
  const state = response.finding?.state ?? "undecided";
  const confidence = typeof request.confidence === "number" ? request.confidence : 0.9545;
  const family = claim !== null && library.has(claim) ? library.metal(claim).family : "";
  const measured = recordedDensity(response, confidence);
  const celsius = liquidCelsius(stated.result) ?? 20;
  return {
    id: stated.entry.subject,
    ticket: stated.piece.ticket ?? "",
    claim,
    state,
    dryG,
    stepG,
    density: response.density_g_cm3,
    expanded: response.expanded_g_cm3,
    typed: stated.captures.some(
      ({ entry: { body } }) => body.what !== "temperature" && body.source === "typed",
    ),
    voided: stated.voided !== undefined,
    fine: state === "disagrees" ? null : fineOf(family, measured, celsius, { dryG, stepG }),
  };
}

function fineOf(
  family: string,
  measured: ReturnType<typeof recordedDensity>,
  celsius: number,
  { dryG, stepG }: Pick<LotPiece, "dryG" | "stepG">,
): LotFine | null {
  if (family !== "gold" && family !== "silver") return null;
  const found =
    family === "gold" ? goldFineness(measured, "any", celsius) : silverFineness(measured, celsius);
  if (!found.possible) return null;
  const { lowG, highG } = fineMass(dryG, stepG, found.corrected);
  return { metal: family, lowG, highG, permille: found.corrected };
}
