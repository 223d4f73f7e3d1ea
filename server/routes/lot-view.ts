import { lastPlace } from "../../calibration/decimal.ts";
import type { LotRow } from "../../views/lots/index.tsx";
import type { LotPiece as LotPieceRow, LotStep, LotTotals, LotView, Tray } from "../../views/lots/show.tsx";
import { fixed, plusMinus } from "../../views/numbers.ts";
import type { Locale } from "../../views/words/index.ts";
import type { Library } from "../alloys/library.ts";
import type { Bench } from "../bench/bench.ts";
import { standing } from "../bench/piece.ts";
import type { Lot } from "../lots/lot.ts";
import type { LotFine, LotPiece } from "../lots/lot-piece.ts";
import { decimalsOf, type LotSums, lotSums } from "../lots/totals.ts";
import { nameIn, whenOf } from "./record-view.ts";

const states = ["agrees", "agrees-not-alone", "undecided", "disagrees"] as const;
/** Tickets told on a tray, and rows shown of the list. */
const ticketsTold = 6;
const piecesShown = 12;

/** The gross weighing in grams with one step of its display. */
export function grossOf({ gross }: Lot) {
  return gross && { grams: Number(gross.grams), stepG: lastPlace(gross.grams) };
}

const nowWords: Record<LotStep, string> = {
  water: "Measure the water",
  ticket: "Scan the next ticket",
  dry: "Lay the dry piece on the pan",
  immersed: "Hang the piece in the water",
  rise: "Hang the piece into the beaker",
  elsewhere: "Another piece is on the bench",
};

/** What is due in the lot, from the water and the piece on the bench. */
export function stepOf(lot: Lot, bench: Bench): { ticket: string; step: LotStep } {
  const { piece } = bench;
  if (piece && !piece.closed) {
    if (piece.lot !== lot.id) return { ticket: piece.ticket, step: "elsewhere" };
    const dry = standing(piece, "dry").length === 0;
    return { ticket: piece.ticket, step: dry ? "dry" : piece.method === "displaced" ? "rise" : "immersed" };
  }
  return { ticket: "", step: lot.waterCelsius === undefined ? "water" : "ticket" };
}

/** The screening page, but for its live reading, claims and token. */
export function lotView(
  lot: Lot,
  pieces: readonly LotPiece[],
  bench: Bench,
  library: Library,
  locale: Locale,
): Pick<
  LotView,
  "id" | "name" | "now" | "current" | "water" | "trays" | "totals" | "doubts" | "pieces" | "more" | "locale"
> {
  const sums = lotSums(pieces, grossOf(lot), lot.count);
  const current = stepOf(lot, bench);
  const newestFirst = [...pieces].reverse();
  return {
    id: lot.id,
    name: lot.name,
    now: nowWords[current.step],
    current,
    water: lot.waterCelsius ?? "",
    trays: states.map((state) => tray(state, newestFirst, locale)),
    totals: totalsOf(lot, sums, locale),
    doubts: sums.doubts,
    pieces: newestFirst.slice(0, piecesShown).map((piece) => pieceRow(piece, library, sums, locale)),
    more: Math.max(0, pieces.length - piecesShown),
    locale,
  };
}

function tray(state: Tray["state"], newestFirst: readonly LotPiece[], locale: Locale): Tray {
  const on = newestFirst.filter((piece) => piece.state === state && !piece.voided);
  const massG = on.reduce((sum, { dryG }) => sum + dryG, 0);
  return {
    state,
    pieces: on.length,
    mass: `${fixed(massG, decimalsOf(Math.max(0, ...on.map(({ stepG }) => stepG))), locale)} g`,
    tickets: on.slice(0, ticketsTold).map(({ ticket }) => ticket),
  };
}

function totalsOf(lot: Lot, sums: LotSums, locale: Locale): LotTotals {
  const { pieces, sumG, withinG, missingG, fine } = sums;
  const grams = (g: number) => `${fixed(g, sums.decimals, locale)} g`;
  const metals = Object.entries(fine) as [LotFine["metal"], { lowG: number; highG: number }][];
  return {
    pieces: lot.count === undefined ? `${pieces}` : `${pieces} of ${lot.count} counted`,
    sum: grams(sumG),
    ...(lot.gross ? { gross: `${lot.gross.text} ${lot.gross.unit}` } : {}),
    ...(missingG === undefined
      ? {}
      : {
          against:
            Math.abs(missingG) <= withinG
              ? `agree within ${grams(withinG)}`
              : missingG > 0
                ? `${grams(missingG)} not weighed yet`
                : `${grams(-missingG)} too much`,
        }),
    fine:
      metals.length === 0
        ? "none yet"
        : metals
            .map(
              ([metal, { lowG, highG }]) =>
                `${fixed(lowG, 2, locale)} to ${fixed(highG, 2, locale)} g ${metal}`,
            )
            .join("; "),
    fineWords:
      "If the pieces are sound alloy of what they are said to be; pieces that disagree are left out. Added end by end: water, thermometer, balance and the free rest of the alloy are common to all pieces and do not average away.",
  };
}

function pieceRow(piece: LotPiece, library: Library, { doubts }: LotSums, locale: Locale): LotPieceRow {
  const { id, ticket, claim, state, dryG, stepG, density, expanded, fine, typed, voided } = piece;
  const flags = [
    ...(voided ? ["voided"] : []),
    ...(typed ? ["typed"] : []),
    ...(doubts.some(({ tickets }) => tickets.includes(ticket)) ? ["same mass as another"] : []),
  ];
  return {
    recordId: id,
    ticket,
    claimName: claim === null ? "" : nameIn(library, claim),
    dry: `${fixed(dryG, decimalsOf(stepG), locale)} g`,
    density: plusMinus(density, expanded, locale),
    state,
    ...(fine ? { fine: `${fixed(fine.lowG, 2, locale)} to ${fixed(fine.highG, 2, locale)} g` } : {}),
    flags,
    voided,
  };
}

/** One line of the list of lots. */
export function lotRow(lot: Lot, pieces: number): LotRow {
  const priced = Object.keys(lot.prices);
  return {
    id: lot.id,
    name: lot.name,
    opened: whenOf(lot.openedAt),
    pieces,
    gross: lot.gross ? `${lot.gross.text} ${lot.gross.unit}` : "not weighed",
    state: priced.length === 0 ? "open" : `priced: ${priced.join(" and ")}`,
  };
}
