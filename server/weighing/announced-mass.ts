import { lastPlace } from "../../calibration/decimal.ts";
import { type Message, message } from "../../calibration/message.ts";
import { type MassUnit, stepGrams, toGrams } from "../../calibration/units.ts";
import type { EntryOf } from "../ledger/entry.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { setAsideIn } from "../ledger/set-aside.ts";
import { firstMethod } from "../methods/index.ts";
import { massNotExpected } from "./checks/mass-not-expected.ts";
import { type Piece, standing } from "./piece.ts";
import { readabilityGrams } from "./readability.ts";
import { Refusal } from "./refusal.ts";

/** What the piece of a ticket is known to weigh before it is laid on the pan. */
export interface AnnouncedMass {
  /** as stated or shown: "31.1 g" */
  shown: string;
  grams: number;
  stepG: number;
  /** the word of a list or of the customer, or the voided weighing of the same ticket */
  from: "told" | "earlier";
  /** of that earlier weighing */
  photos: readonly EntryOf<"photo">[];
}

/** A dry mass that is not the one announced, by more than both displays explain. */
export interface OtherMass {
  announced: AnnouncedMass;
  /** readings it rests on */
  of: readonly string[];
  /** "12.95 g", or the mean of several */
  shown: string;
  dryG: number;
  apartG: number;
  withinG: number;
  /** a question that would explain it, such as a unit, in words */
  ask?: Message;
}

/** The announced mass of a piece: what was told of it, else the voided weighing of its ticket in the same lot. */
export async function announcedMass(piece: Piece, ledger: Ledger): Promise<AnnouncedMass | undefined> {
  const told = piece.customerSupplied?.mass_g;
  if (told !== undefined)
    return { shown: `${told} g`, grams: Number(told), stepG: lastPlace(told), from: "told", photos: [] };
  if (piece.ticket === "") return undefined;
  const { records } = await ledger.records({
    filters: { ticket: piece.ticket, voided: true, ...(piece.lot === undefined ? {} : { lot: piece.lot }) },
    page: { size: 1 },
  });
  const [before] = records;
  const [, text = "", unit = ""] = /^(\S+) (\S+)$/.exec(before?.dry ?? "") ?? [];
  if (!before || text === "") return undefined;
  const entries = await ledger.entriesOf(before.subject);
  const setAside = setAsideIn(entries);
  return {
    shown: before.dry,
    grams: before.dry_g,
    stepG: stepGrams(text, unit as MassUnit),
    from: "earlier",
    photos: entries.filter((entry) => entry.kind === "photo").filter(({ id }) => !setAside.has(id)),
  };
}

/**
 * The dry mass held against the announced one: apart when it differs by more than twice one step of each, added in
 * squares (common practice), and nobody has said yet that it is the right piece all the same.
 */
export function otherMass(piece: Piece, announced: AnnouncedMass | undefined): OtherMass | undefined {
  const dry = standing(piece, "dry");
  const [first] = dry;
  // Several pieces weighed together are not what one ticket announces.
  if (!announced || !first || piece.details.pieces !== undefined) return undefined;
  const of = dry.map(({ id }) => id);
  if (piece.rightPiece.some(({ body }) => of.every((id) => body.of.includes(id)))) return undefined;
  const hanger = piece.details.hanger?.in_air;
  const hangerG = hanger === undefined ? 0 : Number(toGrams(hanger.text, hanger.unit as MassUnit));
  const dryG = dry.reduce((sum, { grams }) => sum + Number(grams), 0) / dry.length - hangerG;
  const stepG = readabilityGrams(dry);
  const withinG = 2 * Math.hypot(stepG, announced.stepG);
  const apartG = Math.abs(dryG - announced.grams);
  if (apartG <= withinG + 1e-9) return undefined;
  const plain = dry.length === 1 && hanger === undefined;
  return {
    announced,
    of,
    shown: plain ? `${first.text} ${first.unit}` : `${Number(dryG.toFixed(6))} g`,
    dryG,
    apartG,
    withinG,
    ...askOf(dry, announced, withinG),
  };
}

const settled = "The dry mass is the announced one by now. Nothing needs an answer.";

/** Why it is the right piece all the same. Throws Refusal without a reason, or when nothing is asked. */
export function rightPiece(other: OtherMass | undefined, reason: string, by: string): BodyOf<"right-piece"> {
  if (!other) throw new Refusal(settled);
  if (reason.trim() === "")
    throw new Refusal(
      "Going on needs the reason why it weighs otherwise, such as: the list rounds to whole grams.",
      "rightReason",
    );
  const { of, shown, announced } = other;
  const named = by.trim() === "" ? {} : { by: by.trim() };
  return { of: [...of], announced: announced.shown, weighed: shown, reason: reason.trim(), ...named };
}

/** Why the piece on the pan is set aside. Throws Refusal when nothing is asked. */
export function anotherPiece(other: OtherMass | undefined): string {
  if (!other) throw new Refusal(settled);
  return `another piece than the ticket's: weighed ${other.shown}, announced ${other.announced.shown}`;
}

/** Throws Refusal while nobody has said whether it is the right piece. */
export function mustBeRightPiece(ticket: string, other: OtherMass | undefined): void {
  if (other)
    throw new Refusal(
      `The piece weighs ${other.shown}, and ${other.announced.shown} is announced for ticket ${ticket}. Say first whether it is the right piece.`,
    );
}

/** The question of the check, where another unit would explain it. */
function askOf(dry: Piece["captures"], { grams }: AnnouncedMass, withinG: number): { ask?: Message } {
  const expectedMass = { lowGrams: grams - withinG, highGrams: grams + withinG, from: "ticket" };
  const balance = { readabilityGrams: 0, repeatabilityGrams: 0, immersedRepeatabilityGrams: 0 };
  const seen = massNotExpected.look({ method: firstMethod, dry, wet: [], expectedMass, balance });
  return seen?.params.case === "unit" ? { ask: message("check.mass-not-expected.ask", seen.params) } : {};
}
