import { repeats } from "../../calibration/repeats.ts";
import type { Entry } from "../ledger/entry.ts";
import { excludedIn } from "../ledger/excluded.ts";

/** How much repeats of one load scattered, over many weighings on one balance. */
export interface LoadScatter {
  balance: string;
  /** dry, or with water about the piece */
  load: "dry" | "wet";
  /** pooled standard deviation of one reading, g */
  s_g: number;
  /** degrees of freedom behind it */
  dof: number;
}

/** Readings that are repeats of no load of the piece. */
const besides = ["zero", "dry-after"];

/**
 * The scatter of repeats by balance and load, from the readings of many pieces: the sums of squares of each load about its
 * own mean, over their degrees of freedom (pooled standard deviation). Excluded readings count for nothing.
 */
export function loadScatter(entries: readonly Entry[]): LoadScatter[] {
  const excluded = excludedIn(entries);
  const loads = new Map<string, { balance: string; load: LoadScatter["load"]; grams: number[] }>();
  for (const { kind, id, subject, body } of entries) {
    if (kind !== "capture" || !("reading" in body) || excluded.has(id) || besides.includes(body.what))
      continue;
    const balance = body.balance ?? "typed";
    const of = `${subject} ${body.what} ${balance}`;
    const load = loads.get(of) ?? { balance, load: body.what === "dry" ? "dry" : "wet", grams: [] };
    load.grams.push(Number(body.reading.grams));
    loads.set(of, load);
  }
  const pooled = new Map<string, LoadScatter & { squares: number }>();
  for (const { balance, load, grams } of loads.values()) {
    if (grams.length < 2) continue;
    const { s, n } = repeats(grams);
    const of = `${balance} ${load}`;
    const before = pooled.get(of) ?? { balance, load, s_g: 0, dof: 0, squares: 0 };
    const squares = before.squares + s ** 2 * (n - 1);
    const dof = before.dof + n - 1;
    pooled.set(of, { ...before, squares, dof, s_g: Math.sqrt(squares / dof) });
  }
  return [...pooled.values()].map(({ squares: _squares, ...one }) => one);
}
