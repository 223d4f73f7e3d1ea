import { exactly, roundedText } from "../../calibration/fraction.ts";
import type { TotalsAtClosing } from "../lots/totals-at-closing.ts";
import { type PreciousMetal, preciousMetals } from "../metals/precious-metal.ts";
import type { Settled, SettledLine } from "./settlement.ts";
import type { LeftOutReason } from "./source.ts";

/** Why the fine metal of a settlement is another than that of its lot, each with the tickets it concerns. */
export const differences = [
  "laboratory",
  "other-word",
  "deducted",
  "again",
  "not-narrowed",
  "left-out",
] as const;

/** A metal whose fine mass the lot counts otherwise than its settlement, g. */
export interface AgainstLot {
  metal: PreciousMetal;
  lot: { low: string; high: string };
  here: { low: string; high: string };
  because: { why: (typeof differences)[number]; tickets: string[] }[];
}

/** Pieces that count nowhere, in the lot neither. */
const nowhere: ReadonlySet<LeftOutReason> = new Set(["voided", "no-valid-reading", "excluded", "no-metal"]);

/** Every metal that is settled and whose fine mass differs from that of the lot in the digits that the lot shows. */
export function againstLot(settled: Settled, lotFine: TotalsAtClosing["fine_g"]): AgainstLot[] {
  return preciousMetals.flatMap((metal): AgainstLot[] => {
    const lot = lotFine[metal];
    const found = settled.metals.find((one) => one.metal === metal);
    if (!lot || !found) return [];
    const decimals = lot.low.split(".")[1]?.length ?? 0;
    const shown = (text: string) => roundedText(exactly(text), decimals, "half-even");
    const here = { low: shown(found.fine_g.low), high: shown(found.fine_g.high) };
    if (here.low === lot.low && here.high === lot.high) return [];
    return [{ metal, lot, here, because: reasonsFor(metal, settled) }];
  });
}

function reasonsFor(metal: PreciousMetal, { lines, left_out }: Settled): AgainstLot["because"] {
  const of = lines.filter((line) => line.metal === metal);
  const tickets = (holds: (line: SettledLine) => boolean) =>
    of.filter(holds).flatMap(({ pieces }) => pieces.map(({ ticket }) => ticket));
  const left = left_out.filter((one) => (one.metal ?? metal) === metal && !nowhere.has(one.why));
  const found: Record<(typeof differences)[number], string[]> = {
    laboratory: tickets(({ rests_on: { source } }) => source === "laboratory"),
    "other-word": tickets(({ rests_on: { source } }) => source !== "density" && source !== "laboratory"),
    deducted: tickets(({ deducted_g }) => Number(deducted_g) > 0),
    again: tickets(({ mass }) => mass === "again"),
    "not-narrowed": of.flatMap(({ rests_on }) => rests_on.not_narrowed ?? []),
    "left-out": left.map(({ ticket }) => ticket),
  };
  return differences.flatMap((why) => (found[why].length > 0 ? [{ why, tickets: found[why] }] : []));
}
