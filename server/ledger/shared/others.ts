import { dirname } from "node:path";
import { keysOf } from "../../../calibration/keyed.ts";
import { laboratoryKinds } from "../../laboratory/kinds.ts";
import { lotKinds } from "../../lots/kinds.ts";
import { ticketKinds } from "../../lots/ticket-kinds.ts";
import { meltKinds } from "../../melts/kinds.ts";
import { photoKinds } from "../../photos/kinds.ts";
import { settlementKinds } from "../../settlements/kinds.ts";
import { answerKinds } from "../../weighing/kinds/answers.ts";
import { weighingKinds } from "../../weighing/kinds/details.ts";
import { pieceKinds } from "../../weighing/kinds/piece.ts";
import { secondPersonKinds } from "../../weighing/kinds/second-person.ts";
import { LedgerError } from "../error.ts";
import type { Ledger } from "../ledger.ts";
import { entryOf } from "../rows.ts";
import { RowsReached } from "../rows-reached.ts";
import type { ChainRow, NamedHead, SharedLedger } from "./shared-ledger.ts";

/** What the benches of a site see of each other: pieces, lots, tickets and what came of them; no settings, keys or checks. */
const seenKinds = keysOf({
  ...pieceKinds,
  ...weighingKinds,
  ...answerKinds,
  ...secondPersonKinds,
  ...photoKinds,
  ...laboratoryKinds,
  ...lotKinds,
  ...ticketKinds,
  ...meltKinds,
  ...settlementKinds,
});

const atOnce = 200;

/**
 * Writes into a bench's own ledger what the other benches of its site did, each entry with its id, time, bench and place
 * in the chain it comes from, so that lists, lots and duplicates hold for all of them, also while the network is away.
 * What was written once is passed over.
 */
export function othersOf(own: Ledger) {
  const reached = new RowsReached(dirname(own.place), "others-reached.json");

  return async (shared: SharedLedger, chains: readonly NamedHead[]): Promise<void> => {
    const head = await own.head();
    for (const { chain, seq, hash } of chains) {
      const [here] = head && seq <= head.seq ? await own.entries({ after: seq - 1, limit: 1 }) : [];
      // its own chain, as far as it was handed over
      if (here?.hash === hash) continue;
      for (let after = reached.row(chain) ?? 0; after < seq; ) {
        const rows = await shared.rowsOf(chain, after, atOnce, seenKinds);
        await take(
          own,
          rows.filter((row) => row.here),
        );
        after = rows.length < atOnce ? seq : (rows.at(-1)?.seq ?? seq);
        reached.set(chain, after);
      }
    }
  };
}

/** Two benches may have given one id to different entries: then each keeps its own, and the other stays in its chain. */
async function take(own: Ledger, rows: readonly ChainRow[]): Promise<void> {
  if (rows.length === 0) return;
  try {
    await own.appendReplicated(rows.map(entryOf));
  } catch (cause) {
    if (!(cause instanceof LedgerError) || cause.code !== "ledger.replication.other-content") throw cause;
    if (rows.length > 1) for (const row of rows) await take(own, [row]);
  }
}
