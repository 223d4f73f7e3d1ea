import type { Ledger } from "../ledger/ledger.ts";

/** Ends the id of a piece that was opened again after an earlier one of its ticket was set aside. */
const again = /-again-\d+$/;

/**
 * The id under which the piece of this id can be put on the bench now: its own, or the next one when pieces under the
 * ids before were set aside. Undefined when one of them is on the bench or recorded.
 */
export async function idFor(id: string, ledger: Ledger): Promise<string | undefined> {
  const first = id.replace(again, "");
  for (let time = 0; ; time += 1) {
    const next = time === 0 ? first : `${first}-again-${time}`;
    const entries = await ledger.entriesOf(next);
    if (entries.length === 0) return next;
    if (!entries.some(({ kind }) => kind === "piece-left")) return undefined;
  }
}
