import type { FastifyRequest } from "fastify";
import { z } from "zod";
import { mean } from "../../../calibration/mean.ts";
import { type Code, message } from "../../../calibration/message.ts";
import { tellValue } from "../../../views/messages/tell.ts";
import { evidenceRanges } from "../../conformity/evidence/recorded.ts";
import { checkSize } from "../../conformity/evidence/size-check.ts";
import type { Library } from "../../metals/library.ts";
import type { Specification } from "../../metals/specifications/specification.ts";
import type { Stated } from "../../reports/stated.ts";
import { type Item, standing } from "../../weighing/item.ts";
import { readabilityGrams } from "../../weighing/readability.ts";
import { type Entries, postedForm } from "../forms/form.ts";
import { numbersOf } from "./evidence-form.ts";

const millimetres = { from: 0.05, to: 1000, unit: "mm" } as const;

interface Known {
  specifications: readonly Specification[];
  /** the dry reading; undefined before the first one, then the form asks for the mass */
  mass: { grams: number; uGrams: number } | undefined;
  library: Library;
}

/**
 * Mean of the dry readings that count, g. A coin's law states its weight against weights of brass or steel in air, so
 * the reading is compared as it stands, not the mass freed of the air's lift: that would be 0.6 mg less on a sovereign.
 */
export function weighedDry({ captures, statement }: Stated): { grams: number; uGrams: number } {
  const dry = captures.flatMap(({ entry: { body }, voided }) =>
    voided === null && body.what === "dry" && "reading" in body ? [Number(body.reading.grams)] : [],
  );
  const { u_mass_g: uGrams = 0 } = statement;
  return { grams: meanOf(dry), uGrams };
}

const meanOf = (grams: readonly number[]) => Number(mean(grams).toPrecision(8));

/** The same of a piece still on the bench; u of one reading as rectangular over its last digit (JCGM 100, 4.3.7). */
export function standingDry(item: Item): { grams: number; uGrams: number } | undefined {
  const dry = standing(item, "dry");
  if (dry.length === 0) return undefined;
  return {
    grams: meanOf(dry.map(({ grams }) => Number(grams))),
    uGrams: readabilityGrams(dry) / Math.sqrt(12),
  };
}

/** The comparison that the size form asks for, as the body of its entry; or what was refused. */
export function typedSize(request: FastifyRequest, { specifications, mass, library }: Known) {
  const read = postedForm(request, sizeForm(specifications, mass));
  if ("problems" in read) return read;
  const { specification, measured } = read.values;
  const check = checkSize(specification, measured, library);
  const lines = check.comparisons.map(({ message: sentence }) => sentence);
  return {
    body: {
      test: "size",
      outcome: message("test.found.size", { lines }),
      lines,
      specification: tellValue(specification.called, "en"),
      source: specification.source,
      size: { ...check.measured, specification: { ...specification } },
      ...(check.outline ? { evidence: check.outline } : {}),
    },
  };
}

/** What a piece is held against, and its size; its mass too, where the balance has not said it. */
const sizeForm = (specifications: readonly Specification[], weighed: Known["mass"]) => (entry: Entries) => {
  const { measured, within } = numbersOf(entry);
  const length = (what: Code) => entry.maybeNumber({ ...millimetres, what: message(what) });
  const size = z.object({
    "size-specification": entry.choice(
      specifications.map(({ id }) => id),
      { wrong: message("evidence.refused.no-specification") },
    ),
    "size-diameter": length("form.field.diameter"),
    "size-thickness": length("form.field.thickness"),
    "size-within": within("mm"),
  });
  const mass = weighed
    ? z.object({}).transform(() => ({ massG: weighed.grams, uMassG: weighed.uGrams }))
    : z
        .object({
          "size-mass": measured("form.field.mass", evidenceRanges.massG),
          "size-mass-within": within("g"),
        })
        .transform((of) => ({ massG: of["size-mass"], uMassG: of["size-mass-within"] }));
  return z.intersection(size, mass).transform(({ massG, uMassG, ...of }) => {
    const { "size-diameter": diameterMm, "size-thickness": thicknessMm, "size-within": uMm } = of;
    return {
      specification: specifications.find(({ id }) => id === of["size-specification"])!,
      measured: {
        massG,
        uMassG,
        ...(diameterMm === undefined ? {} : { diameterMm, uDiameterMm: uMm }),
        ...(thicknessMm === undefined ? {} : { thicknessMm, uThicknessMm: uMm }),
      },
    };
  });
};
