import { lastPlace } from "../../calibration/decimal.ts";
import type { LotRow } from "../../views/lots/index.tsx";
import type { LotPieceRow, LotStep, LotTotals, LotView, Tray } from "../../views/lots/view.ts";
import { fixed, inLocale, plusMinus } from "../../views/numbers.ts";
import { type Locale, words } from "../../views/words/index.ts";
import { toldValue } from "../../views/words/told.ts";
import type { Library } from "../alloys/library.ts";
import type { Bench } from "../bench/bench.ts";
import { standing } from "../bench/piece.ts";
import { nextTicketOf, stillToCome } from "../lots/announced.ts";
import { flagsOf, type RaisedFlag, raisedFlags } from "../lots/flags.ts";
import type { Lot } from "../lots/lot.ts";
import type { Ends, LotFine } from "../lots/lot-fine.ts";
import type { LotPiece } from "../lots/lot-piece.ts";
import { decimalsOf, type LotSums, lotSums } from "../lots/totals.ts";
import { nameIn, whenOf } from "./record-view.ts";

const states = ["agrees", "agrees-not-alone", "undecided", "disagrees"] as const;
/** Tickets told on a tray and of a list, and rows shown of the pieces. */
const ticketsTold = 6;
const piecesShown = 12;

/** The gross weighing in grams with one step of its display. */
export function grossOf({ gross }: Lot) {
  return gross && { grams: Number(gross.grams), stepG: lastPlace(gross.grams) };
}

/** What is due in the lot, from the water and the piece on the bench. */
export function stepOf(lot: Lot, bench: Bench): { ticket: string; step: LotStep } {
  const { piece } = bench;
  if (lot.closed) return { ticket: "", step: "closed" };
  if (piece && !piece.closed) {
    if (piece.lot !== lot.id) return { ticket: piece.ticket, step: "elsewhere" };
    const dry = standing(piece, "dry").length === 0;
    return { ticket: piece.ticket, step: dry ? "dry" : piece.method === "displaced" ? "rise" : "immersed" };
  }
  return { ticket: "", step: lot.waterCelsius === undefined ? "water" : "ticket" };
}

/** The screening page, but for its live reading, claims, units and token. */
export function lotView(
  lot: Lot,
  pieces: readonly LotPiece[],
  announced: Parameters<typeof stillToCome>[0],
  { bench, library, locale }: { bench: Bench; library: Library; locale: Locale },
): Omit<LotView, "live" | "units" | "problem" | "claims" | "claim" | "csrfToken" | "stepKey"> {
  const sums = lotSums(pieces, grossOf(lot), lot.count, lot.flags);
  const newestFirst = [...pieces].reverse();
  const nextTicket = nextTicketOf(announced, pieces);
  const toCome = stillToCome(announced, pieces);
  const shown = newestFirst.slice(0, piecesShown);
  return {
    id: lot.id,
    name: lot.name,
    current: stepOf(lot, bench),
    ...(nextTicket === undefined ? {} : { nextTicket }),
    ...(toCome.length === 0
      ? {}
      : {
          waiting: {
            count: toCome.length,
            tickets: `${toCome
              .slice(0, ticketsTold)
              .map(({ ticket }) => ticket)
              .join(", ")}${toCome.length > ticketsTold ? " …" : ""}`,
          },
        }),
    water: inLocale(lot.waterCelsius ?? "", locale),
    trays: states.map((state) => tray(state, newestFirst, locale)),
    totals: totalsOf(lot, sums, locale),
    doubts: sums.doubts,
    pieces: shown.map((piece) => pieceRow(piece, { lot, library, sums, locale })),
    more: Math.max(0, pieces.length - piecesShown),
    flagNames: raisedFlags.map((id) => ({ id, name: flagName(id, locale) })),
    ...(lot.closed ? { closed: closedView(lot.closed, locale) } : {}),
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
  const say = words(locale).lots.totals;
  const { pieces, sumG, withinG, missingG, fine } = sums;
  const grams = (g: number) => `${fixed(g, sums.decimals, locale)} g`;
  return {
    pieces: lot.count === undefined ? `${pieces}` : say.of(pieces, lot.count),
    sum: grams(sumG),
    ...(lot.gross ? { gross: `${inLocale(lot.gross.text, locale)} ${lot.gross.unit}` } : {}),
    ...(missingG === undefined
      ? {}
      : {
          against:
            Math.abs(missingG) <= withinG
              ? say.agree(grams(withinG))
              : missingG > 0
                ? say.notYet(grams(missingG))
                : say.tooMuch(grams(-missingG)),
        }),
    fine: fineWords(fine, locale),
  };
}

function fineWords(fine: LotSums["fine"], locale: Locale): string {
  const { totals, metals } = words(locale).lots;
  const each = Object.entries(fine) as [LotFine["metal"], Ends][];
  if (each.length === 0) return totals.noneYet;
  return each
    .map(([metal, { lowG, highG }]) =>
      totals.range(fixed(lowG, 2, locale), fixed(highG, 2, locale), metals[metal]),
    )
    .join("; ");
}

function flagName(flag: string, locale: Locale): string {
  const names = words(locale).lots.flagNames;
  return names[flag as RaisedFlag] ?? flag;
}

function pieceRow(
  piece: LotPiece,
  { lot, library, sums, locale }: { lot: Lot; library: Library; sums: LotSums; locale: Locale },
): LotPieceRow {
  const { id, ticket, claim, state, dryG, stepG, density, expanded, fine, voided } = piece;
  const say = words(locale).lots.list;
  return {
    recordId: id,
    ticket,
    claimName: claim === null ? "" : toldValue(nameIn(library, claim), locale),
    dry: `${fixed(dryG, decimalsOf(stepG), locale)} g`,
    density: plusMinus(density, expanded, locale),
    state,
    ...(fine ? { fine: say.range(fixed(fine.lowG, 2, locale), fixed(fine.highG, 2, locale)) } : {}),
    flags: flagsOf(piece, sums.doubts, lot.flags).map(({ flag, ...said }) => ({
      name: flagName(flag, locale),
      ...said,
    })),
    voided,
  };
}

function closedView(closed: NonNullable<Lot["closed"]>, locale: Locale): NonNullable<LotView["closed"]> {
  const { closing, totals, metals } = words(locale).lots;
  const { facts: say } = closing;
  const when = whenOf(closed.at);
  const fine = (Object.entries(closed.fine_g) as [LotFine["metal"], { low: string; high: string }][])
    .map(([metal, { low, high }]) =>
      totals.range(inLocale(low, locale), inLocale(high, locale), metals[metal]),
    )
    .join("; ");
  return {
    when,
    facts: [
      [say.when, when],
      [say.by, closed.by ?? ""],
      [say.pieces, `${closed.pieces}`],
      [say.sum, `${inLocale(closed.sum_g, locale)} g`],
      [say.missing, closed.missing_g === undefined ? "" : `${inLocale(closed.missing_g, locale)} g`],
      [say.fine, fine],
      [say.flagged, `${closed.flagged}`],
      [say.note, closed.note ?? ""],
    ],
  };
}

/** One line of the list of lots. */
export function lotRow(lot: Lot, pieces: number, locale: Locale): LotRow {
  const say = words(locale).lots;
  const priced = (Object.keys(lot.prices) as LotFine["metal"][]).map((metal) => say.metals[metal]);
  return {
    id: lot.id,
    name: lot.name,
    opened: whenOf(lot.openedAt),
    pieces,
    gross: lot.gross ? `${inLocale(lot.gross.text, locale)} ${lot.gross.unit}` : say.notWeighed,
    state: [
      lot.closed ? say.closed(whenOf(lot.closed.at)) : say.open,
      ...(priced.length === 0 ? [] : [say.priced(priced.join(say.and))]),
    ].join("; "),
  };
}
