import { lastPlace } from "../../calibration/decimal.ts";
import { recordedDensity } from "../conformity/recorded-density.ts";
import type { State } from "../conformity/state.ts";
import { type AssayEntry, standingAssays } from "../laboratory/assay.ts";
import type { Entry } from "../ledger/entry.ts";
import type { FamilyFineness } from "../metals/fineness/family-fineness.ts";
import type { Library } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";
import { isPrecious, type PreciousMetal } from "../metals/precious-metal.ts";
import { liquidCelsius } from "../reports/conditions.ts";
import { type Result, standingBy } from "../reports/stated.ts";
import { commonShare } from "../weighing/common-share.ts";
import { isContradicted } from "../weighing/contradicted.ts";
import { meanGrams } from "../weighing/item.ts";
import { recordedFineness, unnarrowedFineness } from "../weighing/recorded-fineness.ts";
import { isMeasured, type RecordedStatement } from "../weighing/recorded-statement.ts";
import { claimedPermille, isLightFor } from "./light-for-claim.ts";
import type { LotFine, Weighed } from "./lot-fine.ts";
import { displayStepG } from "./weighed-mass.ts";

/** One weighed piece of a lot. */
export interface LotItem {
  id: string;
  ticket: string;
  claim: string | null;
  state: State;
  /** precious metal it is said to be an alloy of; null for others and where nothing is said */
  metal: PreciousMetal | null;
  /** mean of the dry readings, g, and one step of the display */
  dryG: number;
  stepG: number;
  /** the dry readings, exact decimal text in g */
  dryReadings: readonly string[];
  /** mass as the record states it, corrected for air, g; null where it states none */
  massG: number | null;
  /** the last dry reading as it came, unit and all */
  shown: { text: string; unit: string };
  /** g/cm³, with its expanded uncertainty; null where the readings are those of no density */
  density: { value: number; expanded: number } | null;
  /** true when a reading was typed instead of taken from the balance */
  typed: boolean;
  voided: boolean;
  /** false for a voided record, and for one that a check stops: it enters no sum and is not paid */
  counts: boolean;
  /** the piece back on the pan after it was wet and dried, g */
  again?: { grams: number; stepG: number; reading: string };
  /** place in the ledger of the newest entry that its sums rest on */
  changedSeq: number;
  /** what laboratories found in it, one result for each metal */
  assays: readonly AssayEntry[];
  /** what a list said it weighs, g; the customer's word */
  expected?: { grams: number; stepG: number };
  /** as light as gold of the claimed fineness gets; left out where it is not, or is excluded anyway */
  light?: true;
  /** denser than its claim allows, whose density excludes it */
  heavy?: true;
  /** a magnet or another test speaks against what its density says */
  testsAgainst?: true;
  /** what its fine metal is computed from; null when it is excluded or no fineness can be said */
  weighed: Weighed | null;
  /** fine metal if it is sound alloy of the claimed metal; null when it is excluded or no fineness can be said */
  fine: LotFine | null;
}

/** Kinds that change what a piece is paid for, or how it is flagged. */
const changing: ReadonlySet<Entry["kind"]> = new Set<Entry["kind"]>([
  "capture",
  "voiding",
  "result",
  "amendment",
  "statement",
  "laboratory-assay",
]);

/** A recorded piece as its lot counts it, from the entries about it. Throws RangeError while it has no result. */
export function lotItemOf(entries: readonly Entry[], library: Library): LotItem {
  const stated = standingBy(entries);
  const { statement } = stated;
  const dry = stated.captures.flatMap(({ entry: { body }, voided }) =>
    voided === null && body.what === "dry" && "reading" in body ? [body.reading] : [],
  );
  const back = stated.captures.flatMap(({ entry: { body }, voided }) =>
    voided === null && body.what === "dry-after" && "reading" in body ? [body.reading] : [],
  );
  const last = back.at(-1);
  // Somebody may have said already why it is the right piece although it weighs otherwise.
  const settled = entries.some(({ kind }) => kind === "right-piece");
  const listed = settled ? undefined : stated.piece.customerSupplied?.mass_g;
  const changedSeq = Math.max(...entries.filter(({ kind }) => changing.has(kind)).map(({ seq }) => seq));
  const stepG = Math.max(...dry.map(displayStepG));
  const dryG = meanGrams(dry);
  const { text = "", unit = "g" } = dry.at(-1) ?? {};
  const claim = stated.piece.claim ?? null;
  const state = statement.conformity.state;
  const family = claim !== null && library.has(claim) ? library.metal(claim).family : "";
  const metal = isPrecious(family) ? family : null;
  const measured = isMeasured(statement) ? statement : undefined;
  return {
    id: stated.entry.subject,
    ticket: stated.piece.ticket ?? "",
    claim,
    metal,
    state,
    dryG,
    stepG,
    dryReadings: dry.map(({ grams }) => grams),
    massG: statement.mass_g,
    changedSeq,
    assays: standingAssays(entries),
    shown: { text, unit },
    density: measured ? { value: measured.density_g_cm3, expanded: measured.expanded_g_cm3 } : null,
    typed: stated.captures.some(
      ({ entry: { body } }) => body.what !== "temperature" && body.source === "typed",
    ),
    voided: stated.voided !== undefined,
    counts: stated.voided === undefined && state !== "no-valid-reading",
    ...(last ? { again: { grams: Number(last.grams), stepG: displayStepG(last), reading: last.grams } } : {}),
    ...(listed === undefined ? {} : { expected: { grams: Number(listed), stepG: lastPlace(listed) } }),
    ...(isContradicted(statement) ? { testsAgainst: true } : {}),
    ...(measured && claim !== null && library.has(claim) && isDenser(measured, library.metal(claim))
      ? { heavy: true }
      : {}),
    ...(measured && metal && state !== "excluded" && state !== "no-valid-reading"
      ? metalOf(metal, measured, { claim, result: stated.result, library })
      : { weighed: null, fine: null }),
  };
}

/** True where the whole interval of a density lies above the band. */
function isDenser(
  { interval_g_cm3: [low] }: RecordedStatement,
  { densityGPerCm3 }: Pick<Metal, "densityGPerCm3">,
): boolean {
  return low > densityGPerCm3.high;
}

/** What a measured piece holds of a metal that is not excluded. */
function metalOf(
  metal: LotFine["metal"],
  statement: RecordedStatement,
  { claim, result, library }: { claim: string | null; result: Result; library: Library },
): Pick<LotItem, "light" | "weighed" | "fine"> {
  const { request } = result;
  const confidence = typeof request.confidence === "number" ? request.confidence : 0.9545;
  const celsius = liquidCelsius(result) ?? 20;
  const measured = recordedDensity(statement, confidence);
  const permille = claimedPermille(claim);
  const read = { confidence, celsius, library };
  const found = recordedFineness(statement, read);
  return {
    ...(metal === "gold" && permille !== undefined && isLightFor(permille, measured, celsius)
      ? { light: true }
      : {}),
    weighed: {
      metal,
      measured,
      celsius,
      massG: statement.mass_g,
      uMassG: statement.u_mass_g,
      commonShare: commonShare(statement.budget),
    },
    fine: found && lotFineOf(metal, found, confidence, unnarrowedFineness(statement, read)),
  };
}

function lotFineOf(
  metal: PreciousMetal,
  { permille: [low, high], fine_g: [lowG, highG], parts }: FamilyFineness,
  confidence: number,
  unnarrowed?: FamilyFineness,
): LotFine {
  const fine = { metal, lowG, highG, permille: { low, high }, parts, confidence };
  return unnarrowed ? { ...fine, unnarrowed: lotFineOf(metal, unnarrowed, confidence) } : fine;
}
