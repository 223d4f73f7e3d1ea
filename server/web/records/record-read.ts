import type { CurvePoint } from "../../../calibration/distribution.ts";
import { type Evaluate, isRefused } from "../../compute/evaluation.ts";
import type { Entry } from "../../ledger/entry.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Library } from "../../metals/library.ts";
import { type Standing, standingBy } from "../../reports/stated.ts";
import { libraryAt } from "../../station/current-library.ts";
import { weighingOf } from "../../weighing/evolve.ts";
import type { Item } from "../../weighing/item.ts";

/** A measured piece as the ledger has it. */
export interface RecordRead {
  item: Item;
  /** the result as it stands now, with what it rests on */
  stated: Standing;
  curve: readonly CurvePoint[];
}

/** The measurement among the entries about a piece; undefined when none was recorded. */
export async function readRecord(
  entries: readonly Entry[],
  evaluate: Evaluate,
): Promise<RecordRead | undefined> {
  const item = weighingOf(entries);
  if (!item || !entries.some(({ kind }) => kind === "result")) return undefined;
  const stated = standingBy(entries);
  // The curve is drawn anew from the recorded request: the same request gives the same digits.
  const again = await evaluate(stated.result.request);
  return { item, stated, curve: isRefused(again) ? [] : again.curve };
}

/** The library as of the version that the statement of a record names. */
export function judgedBy(
  ledger: Ledger,
  { result, statement }: Pick<Standing, "result" | "statement">,
  now: Library,
): Promise<Library> {
  return libraryAt(ledger, statement.versions?.library ?? result.versions.library, now);
}
