import type { Entry } from "../ledger/entry.ts";
import type { Melt } from "./melt.ts";

/** The melt that the entries about one subject tell, oldest first; undefined while none of them makes one. */
export function meltOf(entries: readonly Entry[]): Melt | undefined {
  return entries.reduce<Melt | undefined>(evolveMelt, undefined);
}

function evolveMelt(melt: Melt | undefined, entry: Entry): Melt | undefined {
  if (entry.kind === "melt-made") {
    const none = { drillings: [], tolerances: {}, assays: [], settlings: [] };
    return { ...entry.body, ...none, id: entry.subject, madeAt: entry.at };
  }
  if (melt === undefined || melt.id !== entry.subject) return melt;
  switch (entry.kind) {
    case "melt-poured":
      return { ...melt, poured: entry };
    case "melt-drilled":
      return { ...melt, drillings: [...melt.drillings, entry] };
    case "melt-tolerance":
      return { ...melt, tolerances: { ...melt.tolerances, [entry.body.metal]: entry.body } };
    case "melt-assay":
      return { ...melt, assays: [...melt.assays, { entry }] };
    case "melt-assay-excluded": {
      const { entry: id, reason } = entry.body;
      const assays = melt.assays.map((one) => (one.entry.id === id ? { ...one, excluded: reason } : one));
      return { ...melt, assays };
    }
    case "melt-settled":
      return { ...melt, settled: entry, settlings: [...melt.settlings, entry] };
    case "melt-reopened": {
      const { settled: _, ...open } = melt;
      return { ...open, reopened: entry };
    }
    default:
      return melt;
  }
}
