import type { Ledger } from "../../ledger/ledger.ts";
import { flagsOf } from "../../lots/flags.ts";
import type { Lot } from "../../lots/lot.ts";
import type { LotBook } from "../../lots/lot-book.ts";
import type { LotPiece } from "../../lots/lot-piece.ts";
import { lotSums } from "../../lots/totals.ts";
import type { Bench } from "../../station/bench.ts";
import { Refusal } from "../../weighing/refusal.ts";
import { captureOf, type Reading } from "../../weighing/taken-reading.ts";
import { typedReading } from "../../weighing/typed-reading.ts";
import { grossOf } from "./lot-view.ts";

/** What a form of the lot does apart from its weighings. Throws Refusal or LedgerTrouble; then nothing was written. */
export interface LotDeedParts {
  bench: Bench;
  ledger: Ledger;
  book: LotBook;
  simulated: boolean;
}

type Fields = Record<string, string>;

/** The piece of the lot with this ticket; the newest when a voided one has the same. */
function pieceOf(pieces: readonly LotPiece[], ticket: string, field: string): LotPiece {
  const found = pieces.findLast((piece) => piece.ticket === ticket.trim());
  if (found) return found;
  throw new Refusal(`No piece of this lot has the ticket "${ticket.trim()}". Right: one of its list.`, field);
}

const saidBy = (by: string | undefined) => (by?.trim() ? { by: by.trim() } : {});

/** Sets or clears a flag of a piece. */
export async function flagPiece(
  { ledger }: LotDeedParts,
  lot: Lot,
  pieces: readonly LotPiece[],
  fields: Fields,
): Promise<void> {
  const { flagTicket = "", flag = "", own = "", deed = "set", reason = "", by } = fields;
  const piece = pieceOf(pieces, flagTicket, "flagTicket");
  const name = own.trim() || flag;
  if (name === "") throw new Refusal("Which flag? Choose one, or write one in own words.", "own");
  if (reason.trim() === "")
    throw new Refusal("A flag needs a reason, such as: magnet held the clasp.", "reason");
  await ledger.append("lot-flag", lot.id, {
    piece: piece.id,
    flag: name,
    set: deed !== "clear",
    reason: reason.trim(),
    ...saidBy(by),
  });
}

/** Keeps the dry mass of a piece that comes back to the pan; it is held against the first one. */
export async function weighAgain(
  { bench, ledger, book, simulated }: LotDeedParts,
  pieces: readonly LotPiece[],
  fields: Fields,
): Promise<void> {
  const { again = "", againTyped = "", unit = "g", take } = fields;
  const piece = pieceOf(pieces, again, "again");
  const reading = take === undefined ? typed(againTyped, unit) : await taken(bench);
  const body = { ...captureOf("dry", reading, simulated), what: "dry-after" as const };
  await ledger.append("capture", piece.id, body);
  book.forget(piece.id);
}

function typed(text: string, unit: string): Reading {
  const reading = typedReading(text, unit, { at: "againTyped" });
  return { ...reading, takenBy: "typed", balance: "typed", lines: [] };
}

async function taken({ scale, waitingFor }: Bench): Promise<Reading> {
  if (!scale || waitingFor)
    throw new Refusal(
      "The balance is not free for this now. Finish the piece on the bench, or type the mass.",
    );
  return scale.take().settled.catch((error: Error) => {
    throw new Refusal(error.message);
  });
}

/** Closes the lot with its totals; the same closing again gives the one that stands. */
export async function closeLot(
  { bench, ledger }: LotDeedParts,
  lot: Lot,
  pieces: readonly LotPiece[],
  { note = "", by }: Fields,
): Promise<void> {
  if (lot.closed) return;
  if (bench.piece && !bench.piece.closed && bench.piece.lot === lot.id)
    throw new Refusal(
      `Ticket ${bench.piece.ticket} is still on the bench. Finish it or put it aside, then close the lot.`,
    );
  const sums = lotSums(pieces, grossOf(lot), lot.count, lot.flags);
  const text = (grams: number) => grams.toFixed(Math.max(sums.decimals, 2));
  const flagged = pieces.filter(
    (piece) =>
      !piece.voided && flagsOf(piece, sums.checks, lot.flags).some(({ cleared }) => cleared === undefined),
  );
  await ledger.append(
    "lot-closed",
    lot.id,
    {
      pieces: sums.pieces,
      sum_g: sums.sumG.toFixed(sums.decimals),
      ...(sums.missingG === undefined ? {} : { missing_g: sums.missingG.toFixed(sums.decimals) }),
      fine_g: Object.fromEntries(
        Object.entries(sums.fine).map(([metal, { lowG, highG }]) => [
          metal,
          { low: text(lowG), high: text(highG) },
        ]),
      ),
      flagged: flagged.length,
      ...saidBy(by),
      ...(note.trim() ? { note: note.trim() } : {}),
    },
    { key: `closed-${lot.id}` },
  );
}
