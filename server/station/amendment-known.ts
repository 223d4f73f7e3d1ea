import { decimalsShown } from "../../calibration/decimal.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { toGrams } from "../../calibration/units.ts";
import { waterRange } from "../../calibration/water.ts";
import { type ComputeRequest, computeRequest } from "../compute/contract.ts";
import type { Evaluated } from "../compute/evaluation.ts";
import { isRefused } from "../compute/evaluation.ts";
import type { Entry } from "../ledger/entry.ts";
import { builtIn } from "../metals/library.ts";
import { methods, readingsIn, rolesOf } from "../methods/index.ts";
import { type Result, standingBy } from "../reports/stated.ts";
import type { AmendmentTyped } from "../weighing/commands.ts";
import { type Capture, type Item, standing } from "../weighing/item.ts";
import { statement as frozen } from "../weighing/kinds/result.ts";
import type { AmendedReading, Known } from "../weighing/known.ts";
import { procedureChecks } from "../weighing/procedure-checks.ts";
import { mustBeAnotherPerson } from "../weighing/second-person.ts";
import { typedCelsius, typedReading } from "../weighing/typed-reading.ts";
import type { BenchParts } from "./bench-parts.ts";

/** Readings that an amendment can put right: those of one load that were typed. What a balance sent stays as it came. */
export function amendableReadings(item: Item): Capture[] {
  return rolesOf(item.method).flatMap((role) =>
    standing(item, role).filter(({ takenBy }) => takenBy === "typed"),
  );
}

/**
 * What an amendment makes of a recorded weighing: what was typed wrongly is put right, a water temperature or readings by
 * the id of their entry; everything else, the decision rule too, stays as it was recorded. Throws Refusal when the value
 * cannot be.
 */
export async function amendmentKnown(
  item: Item,
  typed: AmendmentTyped,
  entries: readonly Entry[],
  parts: BenchParts,
): Promise<Pick<Known, "result" | "readings" | "checks">> {
  const celsius = typed.celsius.trim();
  const retyped = Object.entries(typed.readings).filter(([, text]) => text.trim() !== "");
  if (item.closed?.how !== "recorded" || (celsius === "" && retyped.length === 0)) return {};
  if (retyped.length > 0) mustBeAnotherPerson(item, typed.by);
  const { result } = standingBy(entries);
  const readings = retyped.map(([id, text]) => putRight(item, id, text));
  const asked = readings.reduce(withReading, computeRequest.parse(result.request));
  const request = celsius === "" ? asked : withWater(asked, entries, item, celsius);
  const evaluation = await parts.evaluate(request, { asksPerson: true });
  const { conditions, profileOf } = parts;
  const library = parts.library?.() ?? builtIn;
  const checks = procedureChecks(asAmended(item, readings, celsius), {
    ...{ conditions: conditions(), profileOf, evaluation, library },
  });
  if (isRefused(evaluation)) return { result: evaluation, readings, checks };
  return { result: anew(result, evaluation, parts), readings, checks };
}

/** What a record comes to from the very request it holds, with nothing that stopped it. */
export async function restated(entries: readonly Entry[], parts: BenchParts): Promise<Pick<Known, "result">> {
  if (!entries.some(({ kind }) => kind === "result")) return {};
  const { result } = standingBy(entries);
  const evaluation = await parts.evaluate(result.request, { asksPerson: true });
  return { result: isRefused(evaluation) ? evaluation : anew(result, evaluation, parts) };
}

function anew(
  { stops: _, response: __, ...result }: Result,
  { request, statement }: Pick<Evaluated, "request" | "statement">,
  { versions, library }: BenchParts,
): Result {
  const now = { ...result.versions, ...versions, library: (library?.() ?? builtIn).version };
  return { ...result, request, statement: frozen.parse(statement), versions: now };
}

function asAmended(item: Item, readings: readonly AmendedReading[], celsius: string): Item {
  const captures = item.captures.map((capture) => {
    const right = readings.find((reading) => reading.capture.id === capture.id);
    return right ? { ...capture, text: right.text, grams: right.grams } : capture;
  });
  return { ...item, captures, ...(celsius === "" ? {} : { waterCelsius: celsius.replace(",", ".") }) };
}

/** A correction of the thermometer by its check moves along. */
function withWater(
  request: ComputeRequest,
  entries: readonly Entry[],
  { waterCelsius: shown }: Item,
  typed: string,
): ComputeRequest {
  if (request.liquid?.kind !== "water" || shown === undefined)
    throw new Refusal("record.amend.no-temperature", {}, "celsius");
  const celsius = typedCelsius(typed, waterRange, { at: "celsius" });
  const first = entries.find((entry) => entry.kind === "result");
  const recorded = first ? computeRequest.parse(first.body.request).liquid : request.liquid;
  const offset = recorded?.kind === "water" ? recorded.temperature_c - Number(shown) : 0;
  const temperature_c = Number((Number(celsius) + offset).toFixed(6));
  return { ...request, liquid: { ...request.liquid, temperature_c } };
}

function putRight(item: Item, id: string, typed: string): AmendedReading {
  const capture = amendableReadings(item).find((one) => one.id === id);
  if (!capture) throw new Refusal("record.amend.not-typed");
  const { text } = typedReading(typed, capture.unit, { at: `reading:${id}` });
  if (decimalsShown(text) !== decimalsShown(capture.text))
    throw new Refusal("record.amend.other-decimals", { text, before: capture.text }, `reading:${id}`);
  return { capture, text, grams: toGrams(text, capture.unit) };
}

function withReading(request: ComputeRequest, { capture, grams }: AmendedReading): ComputeRequest {
  const load = methods[request.method].loads.find(({ role }) => role === capture.role);
  const readings = readingsIn(request).find(({ role }) => role === load?.role)?.readings ?? [];
  const place = readings.indexOf(capture.grams);
  if (!load || place < 0) throw new Refusal("record.amend.not-alone");
  return computeRequest.parse(withReadings(request, load.key, readings.with(place, grams)));
}

/** The request with other readings in the series under this key. */
function withReadings(within: object, [key, ...deeper]: readonly string[], readings: string[]): object {
  if (key === undefined) return { ...within, readings };
  return { ...within, [key]: withReadings(Object(Reflect.get(within, key)), deeper, readings) };
}
