import { type Message, message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { toGrams } from "../../calibration/units.ts";
import type { EntryOf } from "../ledger/entry.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import { firstMethod } from "../methods/index.ts";
import { massNotExpected } from "./checks/mass-not-expected.ts";
import { type Item, meanGrams, standing } from "./item.ts";
import { readabilityGrams } from "./readability.ts";

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

/**
 * The dry mass held against the announced one: apart when it differs by more than twice one step of each, added in
 * squares (common practice), and nobody has said yet that it is the right piece all the same.
 */
export function otherMass(item: Item, announced: AnnouncedMass | undefined): OtherMass | undefined {
  const dry = standing(item, "dry");
  const [first] = dry;
  // Several pieces weighed together are not what one ticket announces.
  if (!announced || !first || item.details.pieces !== undefined) return undefined;
  const of = dry.map(({ id }) => id);
  if (item.rightPiece.some(({ body }) => of.every((id) => body.of.includes(id)))) return undefined;
  const hanger = item.details.hanger?.in_air;
  const hangerG = hanger === undefined ? 0 : Number(toGrams(hanger.text, hanger.unit));
  const dryG = meanGrams(dry) - hangerG;
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

/** Why it is the right item all the same. Throws Refusal without a reason, or when nothing is asked. */
export function rightItem(other: OtherMass | undefined, reason: string, by: string): BodyOf<"right-piece"> {
  if (!other) throw new Refusal("weighing.item.nothing-asked");
  if (reason.trim() === "") throw new Refusal("weighing.item.reason-missing", {}, "rightReason");
  const { of, shown, announced } = other;
  const named = by.trim() === "" ? {} : { by: by.trim() };
  return { of: [...of], announced: announced.shown, weighed: shown, reason: reason.trim(), ...named };
}

/** Why the weighing of an item that is not the ticket's is called off. Throws Refusal when nothing is asked. */
export function anotherItem(other: OtherMass | undefined): Message {
  if (!other) throw new Refusal("weighing.item.nothing-asked");
  return message("weighing.call-off.another-item", {
    weighed: other.shown,
    announced: other.announced.shown,
  });
}

/** Throws Refusal while nobody has said whether it is the right item. */
export function mustBeRightItem(ticket: string, other: OtherMass | undefined): void {
  if (other)
    throw new Refusal("weighing.item.unconfirmed", {
      ticket,
      weighed: other.shown,
      announced: other.announced.shown,
    });
}

/** The question of the check, where another unit would explain it. */
function askOf(dry: Item["captures"], { grams }: AnnouncedMass, withinG: number): { ask?: Message } {
  const expectedMass = { lowGrams: grams - withinG, highGrams: grams + withinG, from: "ticket" };
  const balance = { readabilityGrams: 0, repeatabilityGrams: 0, immersedRepeatabilityGrams: 0 };
  const seen = massNotExpected.detect({ method: firstMethod, dry, wet: [], expectedMass, balance });
  return seen?.params.case === "unit" ? { ask: message("check.mass-not-expected.ask", seen.params) } : {};
}
