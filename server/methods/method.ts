import { z } from "zod";
import type { Temperature } from "../../calibration/liquid.ts";
import type { Code, Message, Param, Params } from "../../calibration/message.ts";
import type { Asked } from "../../calibration/typed-quantity.ts";
import type { Weighing } from "../../calibration/weighing.ts";
import type { series } from "../compute/series.ts";

/** A reading that a method needs, and the key of a compute request that holds its series. */
export interface NeededLoad<Role extends string = string> {
  readonly role: Role;
  readonly key: readonly [string, ...string[]];
}

/**
 * Which readings of the empty balance belong to a load. "of-hanger": the liquid stands beside the balance, and one zero
 * serves all loads. "of-load": only a zero with no other load in between. "of-vessel": the vessel stays on the pan; the
 * same, and no zero after the piece in the liquid, since the piece takes liquid along.
 */
export type Zeros = "of-hanger" | "of-load" | "of-vessel";

/** Parts of the form that states what is particular to one weighing. */
export type DetailGroupName = "pool" | "added" | "hanger" | "stand" | "flask" | "liquid" | "room" | "display";

/** The code of a check: its own message, and its question to the person under `CODE.ask`. */
export type CheckCode = { [Known in Code]: `${Known}.ask` extends Code ? Known : never }[Code];

/** What a check of the method's own is told. */
export interface Stated {
  /** kept by the method's own form */
  stated?: Readonly<Record<string, unknown>> | undefined;
  claim?: { lowGPerCm3: number; highGPerCm3: number };
  density?: { valueGPerCm3: number; expandedGPerCm3: number };
}

/** Something a method recognises in what its own form states. Says nothing while it knows too little. */
export interface MethodCheck {
  readonly code: CheckCode;
  detect(
    known: Stated,
  ): { severity: "stop" | "warn"; params: Params; remedies: { code: Code; params?: Params }[] } | undefined;
}

/**
 * What the last reading of a method is: what the piece still weighs as it hangs, the displaced mass itself, or a vessel
 * with the piece in it.
 */
export type WetReading = "remaining" | "displaced" | "contents";

/** Fields of a form as they were typed. */
export type Fields = Readonly<Record<string, string>>;

/** A form of its own, for what no reading of the balance tells: one more step before the record. */
export interface OwnForm {
  /** its step, whose words are the messages `step.NAME.title` and the like */
  readonly step: StepName;
  /** key of a compute request that holds what it states */
  readonly key: string;
  /** what was typed, to be kept under that key. `decimal` reads a field, or a part of what stands in it, as decimal text. Throws Refusal. */
  read(
    typed: Fields,
    decimal: (field: string, asked: Asked, text?: string) => string,
  ): Readonly<Record<string, unknown>>;
  /** the fields as they show what was kept */
  fieldsOf(kept: Readonly<Record<string, unknown>>): Fields;
  /** what was kept, line by line, for pages and reports */
  lines(kept: Readonly<Record<string, unknown>>): readonly StatedLine[];
}

export interface StatedLine {
  readonly label: Message;
  readonly value: Message;
}

/** A step of a weighing that has words. */
export type StepName = { [Known in Code]: Known extends `step.${infer Name}.title` ? Name : never }[Code];

/** What a compute request is built from: the series of each load, what was stated, and what the method's own form says. */
export interface Weighed<Role extends string> {
  load(role: Role): z.input<typeof series>;
  /** of what was stated about the weighing: the two fillings of a flask; decimal text */
  details: {
    /** kept by the method's own form */
    method?: Readonly<Record<string, unknown>> | undefined;
    flask?: { liquid_g: string; warmer_c: string; warmer_u_c: string } | undefined;
  };
}

/** What a way of weighing is: everything that differs between one and the next stands here, and nowhere else. */
export interface Method<Name extends string = string, Role extends string = string> {
  readonly name: Name;
  /** as the charts of a bench name it, in every language; it never changes */
  readonly called: string;
  /** the readings it needs, in the order they are taken, dry first; the last is the one that is repeated */
  readonly loads: readonly NeededLoad<Role>[];
  readonly zeros: Zeros;
  /** left out where no reading is taken in a liquid */
  readonly wetReading?: WetReading;
  /** checks on the procedure that say nothing about it */
  readonly without: readonly CheckCode[];
  /** checks of its own */
  readonly checks?: readonly MethodCheck[];
  readonly details: readonly DetailGroupName[];
  /** lots are screened by it: one dry and one further reading, and nothing else to state */
  readonly screensLots: boolean;
  /** the keys of a compute request that are its own, beside those all methods share */
  readonly keys: z.ZodRawShape;
  /** its part of the model, from a request that holds its keys */
  weighing(request: object): Weighing;
  /** of a method without a liquid: the temperature of the piece while it is measured */
  pieceTemperature?(request: object): Temperature;
  /** its keys of a compute request, from the readings of a piece that holds all of them */
  asked(weighed: Weighed<Role>): Record<string, unknown>;
  /** what is stated in a form of its own; a weighing is not whole without it */
  readonly form?: OwnForm;
  /** left out where its uncertainty cannot be foreseen from mass and metal alone */
  readonly plan?: MethodPlan;
  /** what its result is corrected for beside air, liquid and expansion */
  readonly corrections: readonly Code[];
}

/** How a weighing by a method is foreseen. */
export interface MethodPlan {
  /** the readings of a piece that displaces so much, in g as text of every digit */
  weighing(dryGrams: number, displacedGrams: number): Weighing;
  /** standard deviation that its handling adds to one reading in the liquid, g */
  scatterGrams: number;
  /** methods that may decide where this one does not */
  others: readonly string[];
  /** how a person is sent to it from another one */
  insteadSays: Message;
  /** what the scale shows, in words */
  showsWet(shown: { displaced_g: Param; immersed_g: Param; displacedGrams: number }): Message;
}

/** A method as its file writes it; its keys give the type of what it reads from a request. */
export interface WrittenMethod<Name extends string, Role extends string, Keys extends z.ZodRawShape>
  extends Omit<Method<Name, Role>, "keys" | "weighing" | "pieceTemperature" | "asked"> {
  readonly keys: Keys;
  weighing(request: z.output<z.ZodObject<Keys>>): Weighing;
  pieceTemperature?(request: z.output<z.ZodObject<Keys>>): Temperature;
  asked(weighed: Weighed<Role>): z.input<z.ZodObject<Keys>>;
}

/** The method as the program uses it: any request that holds its keys may be given. */
export function method<const Name extends string, const Role extends string, Keys extends z.ZodRawShape>(
  written: WrittenMethod<Name, Role, Keys>,
): Method<Name, Role> {
  const own = z.object(written.keys);
  const { pieceTemperature } = written;
  return {
    ...written,
    weighing: (request) => written.weighing(own.parse(request)),
    ...(pieceTemperature && { pieceTemperature: (request) => pieceTemperature(own.parse(request)) }),
  };
}

/** A planned reading: more decimals than any balance shows, since a plan asks for no rounding. */
export const planned = (grams: number) => ({ readings: [grams.toFixed(7)], unit: "g" as const });
