import type { EntryOf } from "../ledger/entry.ts";
import type { PreciousMetal } from "../metals/precious-metal.ts";

/** An assay of a melt; set aside is not deleted. */
export interface MeltAssay {
  entry: EntryOf<"melt-assay">;
  excluded?: string;
}

/** A melt as the ledger tells it. */
export type Melt = EntryOf<"melt-made">["body"] & {
  id: string;
  madeAt: string;
  /** the bar as it was weighed last */
  poured?: EntryOf<"melt-poured">;
  drillings: readonly EntryOf<"melt-drilled">[];
  tolerances: Partial<Record<PreciousMetal, EntryOf<"melt-tolerance">["body"]>>;
  assays: readonly MeltAssay[];
  /** its final figures, until it is opened again */
  settled?: EntryOf<"melt-settled">;
  /** every final figure it ever had, oldest first */
  settlings: readonly EntryOf<"melt-settled">[];
  reopened?: EntryOf<"melt-reopened">;
};
