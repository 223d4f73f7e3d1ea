import type { Ledger } from "../ledger/ledger.ts";
import type { BenchParts } from "../station/bench-parts.ts";
import { firstSettings } from "../station/bench-settings.ts";
import type { PieceOnBench } from "../station/piece-on-bench.ts";
import { anotherPiece, type OtherMass } from "./announced-mass.ts";
import { openingBody, ticketOf } from "./opening.ts";

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

/** Sets the piece aside as another one than its ticket's and opens the ticket anew, with the water as it was stated. */
export async function openAgain(
  onBench: PieceOnBench,
  parts: BenchParts,
  other: OtherMass | undefined,
): Promise<void> {
  const { open } = onBench;
  await onBench.write("piece-left", open.id, { reason: anotherPiece(other) });
  const id = await idFor(open.id, parts.ledger);
  if (id === undefined) return;
  const body = openingBody(ticketOf(open), parts.preferences?.() ?? firstSettings, parts.conditions());
  await onBench.write("piece-opened", id, body, id);
  const { waterCelsius: celsius } = open;
  if (celsius === undefined) return;
  await onBench.write(
    "capture",
    id,
    { what: "temperature", celsius, source: "typed", lines: [] },
    `${id}-water`,
  );
}
