import { decimalsShown } from "../../../calibration/decimal.ts";
import { toGrams } from "../../../calibration/units.ts";
import { waterRange } from "../../../calibration/water.ts";
import { type ComputeRequest, computeRequest } from "../../compute/contract.ts";
import { type Evaluate, inEnglish, isRefused } from "../../compute/evaluation.ts";
import type { Entry } from "../../ledger/entry.ts";
import { methods, readingsIn, rolesOf } from "../../methods/index.ts";
import { type Result, statedBy } from "../../reports/stated.ts";
import { programVersion } from "../../version.ts";
import { after, type Capture, type Piece, standing } from "../../weighing/piece.ts";
import { Refusal } from "../../weighing/refusal.ts";
import { mustBeAnotherPerson } from "../../weighing/second-person.ts";
import { typedCelsius, typedReading } from "../../weighing/typed-reading.ts";

/** A typed reading with what it should have been. */
export interface AmendedReading {
  capture: Capture;
  text: string;
  grams: string;
}

/** Readings that an amendment can put right: those of one load that were typed. What a balance sent stays as it came. */
export function amendableReadings(piece: Piece): Capture[] {
  return rolesOf(piece.method).flatMap((role) =>
    standing(piece, role).filter(({ takenBy }) => takenBy === "typed"),
  );
}

/**
 * The result of a recorded piece with what was typed wrongly put right, a water temperature or readings by the id of
 * their entry: everything else, the decision rule too, stays as it was recorded. Throws Refusal in words when the value
 * cannot be, and nothing is amended.
 */
export async function amendedResult(
  entries: readonly Entry[],
  typed: { celsius: string; readings: Readonly<Record<string, string>>; by: string },
  evaluate: Evaluate,
): Promise<{ result: Result; readings: AmendedReading[] }> {
  const { result } = statedBy(entries);
  const piece = entries.reduce<Piece | undefined>(after, undefined);
  if (!piece) throw new Refusal("There is no piece to amend. Look for it in the list of records.");
  let request = computeRequest.parse(result.request);
  if (typed.celsius.trim() !== "") request = withWater(request, entries, piece, typed.celsius);
  if (Object.keys(typed.readings).length > 0) mustBeAnotherPerson(piece, typed.by);
  const readings: AmendedReading[] = [];
  for (const [id, text] of Object.entries(typed.readings)) {
    const reading = putRight(piece, id, text);
    request = withReading(request, reading);
    readings.push(reading);
  }
  const evaluation = await evaluate(request);
  if (isRefused(evaluation)) throw new Refusal(`Nothing was amended. ${inEnglish(evaluation)}`);
  const { response, finding } = evaluation;
  const versions = { ...result.versions, program: programVersion, library: finding.libraryVersion };
  return { result: { ...result, request: evaluation.request, response, versions }, readings };
}

/** A correction of the thermometer by its check moves along. */
function withWater(
  request: ComputeRequest,
  entries: readonly Entry[],
  { waterCelsius: shown }: Piece,
  typed: string,
): ComputeRequest {
  if (request.liquid?.kind !== "water" || shown === undefined)
    throw new Refusal(
      "This piece was not weighed in water of a stated temperature, so there is none to correct.",
      "celsius",
    );
  const celsius = typedCelsius(typed, waterRange, { at: "celsius" });
  const first = entries.find((entry) => entry.kind === "result");
  const recorded = first ? computeRequest.parse(first.body.request).liquid : request.liquid;
  const offset = recorded?.kind === "water" ? recorded.temperature_c - Number(shown) : 0;
  const temperature_c = Number((Number(celsius) + offset).toFixed(6));
  return { ...request, liquid: { ...request.liquid, temperature_c } };
}

function putRight(piece: Piece, id: string, typed: string): AmendedReading {
  const capture = amendableReadings(piece).find((one) => one.id === id);
  if (!capture)
    throw new Refusal(
      "Only a reading that was typed and still counts can be amended. One from the balance stands as it was received: void the record and weigh again.",
    );
  const { text } = typedReading(typed, capture.unit, { at: `reading-${id}` });
  if (decimalsShown(text) !== decimalsShown(capture.text))
    throw new Refusal(
      `"${text}" has other decimals than the "${capture.text}" it replaces, and they say how fine the scale reads. Right: as many decimals.`,
    );
  return { capture, text, grams: toGrams(text, capture.unit) };
}

function withReading(request: ComputeRequest, { capture, grams }: AmendedReading): ComputeRequest {
  const load = methods[request.method].loads.find(({ role }) => role === capture.role);
  const readings = readingsIn(request).find(({ role }) => role === load?.role)?.readings ?? [];
  const place = readings.indexOf(capture.grams);
  if (!load || place < 0)
    throw new Refusal(
      "This reading went into a drift fit or together with others, and cannot be put right alone. Void the record and weigh again.",
    );
  return computeRequest.parse(withReadings(request, load.key, readings.with(place, grams)));
}

/** The request with other readings in the series under this key. */
function withReadings(within: object, [key, ...deeper]: readonly string[], readings: string[]): object {
  if (key === undefined) return { ...within, readings };
  return { ...within, [key]: withReadings(Object(Reflect.get(within, key)), deeper, readings) };
}
