import { z } from "zod";
import { entriesOf } from "../../calibration/keyed.ts";
import { reasonOf } from "../../calibration/reason.ts";
import { type AlloyState, alloyStates, lighterBy } from "./alloy-state.ts";
import { hasText } from "./catalogue-code.ts";
import { colours, type DensityBand, type Figure, likelihoods, type Metal, magnetisms } from "./metal.ts";
import { computedBy, type Provenance } from "./provenance.ts";
import { figure, provenanceOf } from "./sourced-figure.ts";

const share = z.number().min(0).max(1);
const density = z.number().min(0.5).max(23);

const metalRow = z
  .strictObject({
    id: z.string().regex(/^[a-z]+[a-z0-9-]*$/, "right is small letters, digits and dashes"),
    likelihood: figure(z.enum(likelihoods)),
    fineness: z.string().optional(),
    as_core: z.enum(["common", "possible", "never"]).optional(),
    as_skin: z.int().min(1).optional(),
    composition: figure(z.record(z.string(), share)),
    limits: figure(z.record(z.string(), z.tuple([share, share]))).optional(),
    /** given for a recipe: its densities are computed from its limits */
    states: z.array(z.enum(alloyStates)).min(1).optional(),
    nominal_g_cm3: figure(density).optional(),
    low_g_cm3: figure(density).optional(),
    high_g_cm3: figure(density).optional(),
    expansion_per_million_k: figure(z.number().min(0).max(100)).optional(),
    magnetism: figure(z.enum(magnetisms)),
    conductivity_low_iacs_percent: figure(z.number().min(0).max(110)).optional(),
    conductivity_high_iacs_percent: figure(z.number().min(0).max(110)).optional(),
    sound_m_s: figure(z.number().min(300).max(20_000)).optional(),
    elastic_modulus_gpa: figure(z.number().min(0).max(1500)).optional(),
    poisson_ratio: figure(z.number().min(0).max(0.5)).optional(),
    colour: figure(z.enum(colours)),
    other_g_cm3: z.array(figure(density)).default([]),
    notes: z.array(z.string()).default([]),
  })
  .refine(
    ({ states, limits, low_g_cm3: l, nominal_g_cm3: n, high_g_cm3: h }) =>
      states === undefined ? l && n && h : limits && !l && !n && !h,
    {
      path: ["nominal_g_cm3"],
      error: "right is low, nominal and high, or states and limits to compute them from",
    },
  )
  .refine(
    ({ low_g_cm3: l, nominal_g_cm3: n, high_g_cm3: h }) =>
      !(l && n && h) || (l.value <= n.value && n.value <= h.value && l.value < h.value),
    { path: ["nominal_g_cm3"], error: "right is low ≤ nominal ≤ high with a width between them" },
  )
  .refine(
    ({ composition, limits }) =>
      Object.entries(limits?.value ?? {}).every(([of, [low, high]]) => {
        const nominal = composition.value[of] ?? 0;
        return low <= nominal && nominal <= high;
      }),
    { path: ["limits"], error: "right is a low and a high around the share of each component named" },
  )
  .refine(
    ({ conductivity_low_iacs_percent: low, conductivity_high_iacs_percent: high }) =>
      low === undefined || high === undefined ? low === high : low.value <= high.value,
    { path: ["conductivity_low_iacs_percent"], error: "right is low ≤ high, or neither of the two" },
  );

const metalFile = z.strictObject({ family: z.string().min(1), metals: z.array(metalRow).min(1) });

type Row = z.infer<typeof metalRow>;

/** Computes the band of a recipe from its usual composition, its limits and its states. */
type BandOf = (
  usual: Readonly<Record<string, number>>,
  limits: Readonly<Record<string, readonly [number, number]>>,
  states: readonly AlloyState[],
) => DensityBand;

const noBand: BandOf = () => {
  throw new RangeError("Only a file of recipes has bands to compute.");
};

/**
 * The metals of one data file. Throws Error that names file, row and field of every fault: a figure without provenance or
 * with two, a source that is not listed, a band that does not hold its nominal value, a metal without a name.
 */
export function metalsOf(file: string, json: unknown, bandOf: BandOf = noBand): Metal[] {
  const parsed = metalFile.safeParse(json);
  if (!parsed.success)
    throw new Error(parsed.error.issues.map((issue) => faultAt(file, json, issue)).join("\n"));
  const { family, metals } = parsed.data;
  return metals.map((row) => {
    const missing = [nameCode(row.id), ...row.notes.map(noteCode)].find((code) => !hasText(code));
    if (missing !== undefined)
      throw new Error(
        `server/metals/data/${file}: ${row.id}: no text "${missing}" in views/messages. Add it in each language.`,
      );
    try {
      return metalOf(row, family, bandOf);
    } catch (error) {
      throw new Error(`server/metals/data/${file}: ${row.id}: limits: ${reasonOf(error)}`);
    }
  });
}

function faultAt(file: string, json: unknown, { path, message }: z.core.$ZodIssue): string {
  const [list, place, ...field] = path;
  if (list !== "metals" || typeof place !== "number")
    return `server/metals/data/${file}: ${path.join(".") || "file"}: ${message}`;
  const { id } = (json as { metals: { id?: unknown }[] }).metals[place] ?? {};
  return `server/metals/data/${file}: ${typeof id === "string" ? id : `row ${place + 1}`}: ${field.join(".") || "row"}: ${message}`;
}

const nameCode = (id: string) => `metal.${id}`;
const noteCode = (note: string) => `metal.note.${note}`;
const figureOf = {
  composition: "composition",
  limits: "limits",
  nominal_g_cm3: "nominal",
  low_g_cm3: "low",
  high_g_cm3: "high",
  expansion_per_million_k: "expansion",
  magnetism: "magnetism",
  conductivity_low_iacs_percent: "conductivityLow",
  conductivity_high_iacs_percent: "conductivityHigh",
  sound_m_s: "sound",
  elastic_modulus_gpa: "elasticModulus",
  poisson_ratio: "poissonRatio",
  colour: "colour",
  likelihood: "likelihood",
} as const satisfies Partial<Record<keyof Row, Figure>>;

/** A component that only the limits name is usually left out: its share is 0. */
function compositionOf({ composition, limits }: Row): Metal["composition"] {
  const names = new Set([...Object.keys(composition.value), ...Object.keys(limits?.value ?? {})]);
  return Object.fromEntries(
    [...names].map((of) => [
      of,
      [composition.value[of] ?? 0, ...(limits?.value[of] ?? ([null, null] as const))] as const,
    ]),
  );
}

function metalOf(row: Row, family: string, bandOf: BandOf): Metal {
  const { conductivity_low_iacs_percent: low, conductivity_high_iacs_percent: high } = row;
  const { low_g_cm3: least, nominal_g_cm3: usual, high_g_cm3: most } = row;
  const provenance: Partial<Record<Figure, Provenance>> = row.states
    ? {
        nominal: computedBy("mixture-law"),
        low: computedBy("recipe-band"),
        high: computedBy("recipe-band"),
      }
    : {};
  for (const [field, name] of entriesOf(figureOf)) {
    const given = row[field];
    if (given) provenance[name] = provenanceOf(given);
  }
  return {
    id: row.id,
    family,
    composition: compositionOf(row),
    densityGPerCm3:
      least && usual && most
        ? { nominal: usual.value, low: least.value, high: most.value }
        : bandOf(row.composition.value, row.limits?.value ?? {}, row.states ?? []),
    expansionPerMillionK: row.expansion_per_million_k?.value ?? null,
    magnetism: row.magnetism.value,
    conductivityIacsPercent: low && high ? [low.value, high.value] : null,
    soundMPerS: row.sound_m_s?.value ?? null,
    elasticModulusGPa: row.elastic_modulus_gpa?.value ?? null,
    poissonRatio: row.poisson_ratio?.value ?? null,
    colour: row.colour.value,
    likelihood: row.likelihood.value,
    provenance,
    otherDensities: row.other_g_cm3.map((one) => ({ gPerCm3: one.value, provenance: provenanceOf(one) })),
    notes: row.notes
      .map(noteCode)
      .filter(hasText)
      .map((code) => ({ code })),
    ...(row.states && { lighterBy: lighterBy(row.states) }),
    ...(row.fineness === undefined ? {} : { fineness: row.fineness }),
    ...(row.as_core === undefined ? {} : { asCore: row.as_core }),
    ...(row.as_skin === undefined ? {} : { asSkin: row.as_skin }),
  };
}
