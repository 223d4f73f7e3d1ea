import { lastPlace } from "../../calibration/decimal.ts";
import { mean } from "../../calibration/mean.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { type MassUnit, stepGrams, toGrams } from "../../calibration/units.ts";
import { waterRange } from "../../calibration/water.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { Metal } from "../metals/metal.ts";
import { type NeededRole, rolesOf } from "../methods/index.ts";
import { isSamePerson, mustBeTwo, type NamedPerson } from "../settlements/person.ts";
import type { LotPrice } from "../settlements/price.ts";
import { worthAtPrice } from "../settlements/worth.ts";
import { type Capture, type Item, standing } from "./item.ts";
import { readabilityGrams } from "./readability.ts";
import { typedCelsius } from "./typed-reading.ts";

type SecondReading = BodyOf<"second-reading">;

/** A reading as the second person typed it. */
export interface TypedAgain {
  text: string;
  unit: MassUnit;
}

/** Typed readings that count, by what they are, in the order of the method. */
export function typedReadings(item: Item): { role: NeededRole; captures: Capture[] }[] {
  return rolesOf(item.method).flatMap((role) => {
    const captures = standing(item, role).filter(({ takenBy }) => takenBy === "typed");
    return captures.length === 0 ? [] : [{ role, captures }];
  });
}

/** Above which a second person is asked for; decimal text, empty for never. */
export interface Limits {
  massG: string;
  worth: string;
}

/**
 * The limit that a mass passes, as text such as "50 g" or "800 EUR"; undefined when it passes none. Where it is known
 * what it is worth that counts, elsewhere the mass.
 */
export function limitPassedBy(
  dryG: number,
  { massG, worth }: Limits,
  worthNow: { amount: number; currency: string } | undefined,
): string | undefined {
  if (worth !== "" && worthNow)
    return worthNow.amount > Number(worth) ? `${worth} ${worthNow.currency}` : undefined;
  return massG !== "" && dryG > Number(massG) ? `${massG} g` : undefined;
}

/** The limit that a piece passes, by its heaviest dry reading. In a lot its price tells what it is worth. */
export function limitOfItem(
  item: Item,
  limits: Limits,
  lot?: { prices: readonly LotPrice[]; claimed: Metal | undefined },
): string | undefined {
  const dry = standing(item, "dry").map(({ grams }) => Number(grams));
  if (dry.length === 0) return undefined;
  const dryG = Math.max(...dry);
  return limitPassedBy(dryG, limits, lot && worthAtPrice(dryG, lot.claimed, lot.prices));
}

/** The same where something of the piece was typed: a reading or the water temperature; undefined where nothing was. */
export function secondPersonAbove(
  item: Item,
  limits: Limits,
  lot?: { prices: readonly LotPrice[]; claimed: Metal | undefined },
): string | undefined {
  const isTyped = typedReadings(item).length > 0 || item.waterCelsius !== undefined;
  return isTyped ? limitOfItem(item, limits, lot) : undefined;
}

/** The newest word of a second person on just the typed readings and the temperature that count now. */
export function lastSecondReading(item: Item): Item["secondReadings"][number] | undefined {
  const counting = typedReadings(item).flatMap(({ captures }) => captures.map(({ id }) => id));
  return item.secondReadings.findLast(
    ({ body }) =>
      body.of.length === counting.length &&
      counting.every((id) => body.of.includes(id)) &&
      body.temperature?.against === item.waterCelsius,
  );
}

/**
 * Throws Refusal when a reading that a second person had to confirm would be put right by the one who typed it: what
 * two had to see before is not changed by one of them alone.
 */
export function mustBeAnotherPerson({ secondReadings }: Item, by: string): void {
  const last = secondReadings.at(-1)?.body;
  if (last && isSamePerson(by, last.typedBy))
    throw new Refusal("weighing.second.not-by-the-first", { who: by, limit: last.above }, "by");
}

/**
 * What a second person read, held against the typed readings. Two readings of one load agree within twice one step of
 * each display, added in squares (common practice). Throws Refusal for one and the same person, or none named.
 */
export function heldAgainst(
  item: Item,
  {
    by,
    typedBy,
    again,
    celsius = "",
    above,
    people,
  }: {
    by: string;
    typedBy: string;
    again: readonly TypedAgain[];
    celsius?: string | undefined;
    above: string;
    people?: readonly NamedPerson[] | undefined;
  },
): SecondReading {
  const first = item.operator ?? typedBy.trim();
  if (first === "") throw new Refusal("weighing.second.first-missing", {}, "typedBy");
  if (by.trim() === "") throw new Refusal("weighing.second.by-missing", {}, "by");
  if (isSamePerson(by, first)) throw new Refusal("weighing.second.same-person", { who: by.trim() }, "by");
  mustBeTwo([first, "typedBy"], [by.trim(), "by"], people);
  const temperature = temperatureAgainst(item, celsius);
  const typed = typedReadings(item);
  const readings = typed.map(({ role, captures }, place) => {
    const { text, unit } = again[place]!;
    const grams = toGrams(text, unit);
    const meanG = mean(captures.map((one) => Number(one.grams)));
    const within_g = 2 * Math.hypot(readabilityGrams(captures), stepGrams(text, unit));
    const against_g = captures.length === 1 ? captures[0]!.grams : String(Number(meanG.toPrecision(12)));
    const agrees = Math.abs(Number(grams) - meanG) <= within_g + 1e-9;
    return { what: role, reading: { text, unit, grams }, against_g, within_g, agrees };
  });
  return {
    by: by.trim(),
    typedBy: first,
    of: typed.flatMap(({ captures }) => captures.map(({ id }) => id)),
    readings,
    ...(temperature ? { temperature } : {}),
    agrees: readings.every(({ agrees }) => agrees) && temperature?.agrees !== false,
    above,
  };
}

/** The water temperature, where it was typed, by the same rule: one step of a thermometer is its last place. */
function temperatureAgainst({ waterCelsius: against }: Item, typed: string): SecondReading["temperature"] {
  if (against === undefined) return undefined;
  const celsius = typedCelsius(typed, waterRange, { at: "celsius" });
  const within_celsius = 2 * Math.hypot(lastPlace(against), lastPlace(celsius));
  const agrees = Math.abs(Number(celsius) - Number(against)) <= within_celsius + 1e-9;
  return { celsius, against, within_celsius, agrees };
}
