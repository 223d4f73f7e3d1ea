import { z } from "zod";
import { type Message, message } from "../../calibration/message.ts";
import { reasonOf } from "../../calibration/reason.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { bandByMixture } from "./band-by-mixture.ts";
import { componentSymbols } from "./component-density.ts";
import { faultsIn, saying } from "./file-faults.ts";
import { builtIn, type Library, libraryOf } from "./library.ts";
import { colours, type Figure, type Likelihood, likelihoods, type Metal } from "./metal.ts";
import { refuseSilentChanges } from "./own-changes.ts";
import type { Provenance } from "./provenance.ts";
import { ownInThousand, ownWorth } from "./worth-table.ts";

/** Shape of the file of own metals; goes up when a key changes its meaning. */
export const ownMetalsFormat = 1;

const share = z.number().min(0).max(1);
const fraction = z
  .tuple([share, share, share])
  .refine(([nominal, low, high]) => low <= nominal && nominal <= high, {
    ...saying(message("metal.own.limits")),
  });

const ownMetal = z
  .strictObject({
    id: z.string().refine((id) => /^own-[a-z0-9-]{1,40}$/.test(id), saying(message("metal.own.id"))),
    name: z.string().trim().min(1).max(80),
    composition: z.partialRecord(z.enum(componentSymbols as [string, ...string[]]), fraction),
    density_g_cm3: z.strictObject({
      nominal: z.number().min(0.5).max(23),
      low: z.number().min(0.5).max(23),
      high: z.number().min(0.5).max(23),
    }),
    expansion_per_million_k: z.number().min(0).max(100).nullable().default(null),
    magnetism: z.enum(["none", "weak", "strong"]),
    conductivity_iacs_percent: z
      .tuple([z.number().min(0).max(110), z.number().min(0).max(110)])
      .nullable()
      .default(null),
    sound_m_s: z.number().min(300).max(20000).nullable().default(null),
    colour: z.enum(colours),
    likelihood: z.enum(likelihoods).default("common"),
    source: z
      .string()
      .trim()
      .max(400)
      .refine((text) => text.length >= 3, saying(message("metal.own.source"))),
    notes: z.string().max(400).optional(),
  })
  .refine(({ density_g_cm3: d }) => d.low <= d.nominal && d.nominal <= d.high, {
    path: ["density_g_cm3"],
    ...saying(message("metal.own.band")),
  })
  .refine(({ composition }) => Math.abs(sum(Object.values(composition).map((f) => f![0])) - 1) <= 0.0051, {
    path: ["composition"],
    ...saying(message("metal.own.sum")),
  });

const ownMetalsFile = z.strictObject({
  underhook_metals: z.literal(ownMetalsFormat),
  /** goes up with every change the owner makes */
  version: z.int().min(1),
  metals: z.array(ownMetal).max(500),
  /** the owner's worth of a gram by element; the built-in table where it is left out */
  worth: ownWorth.optional(),
  /** of a thousand pieces offered as one metal, so many are something else; as built where it is left out */
  other_in_thousand: ownInThousand.optional(),
  /** how often this bench meets a metal of the library, by its id; as built where it is left out */
  likelihood: z.record(z.string(), z.enum(likelihoods)).optional(),
});

/** An owner's own metals, as they travel in JSON. */
export type OwnMetals = z.infer<typeof ownMetalsFile>;

const sum = (values: number[]) => values.reduce((a, b) => a + b, 0);

/**
 * Reads a file of own metals. Refuses with every fault at its place; nothing is taken over from a file
 * with a fault. With `held`, a file of the same or a lower version that differs from it is refused.
 */
export function readOwnMetals(text: string, held?: OwnMetals): OwnMetals {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    throw new Refusal("metal.file.not-json", { reason: reasonOf(error) });
  }
  const parsed = ownMetalsFile.safeParse(json);
  if (!parsed.success) throw new Refusal("metal.own.refused", { faults: faultsIn(parsed.error) });
  if (held && parsed.data.version <= held.version && writeOwnMetals(parsed.data) !== writeOwnMetals(held))
    throw new Refusal("metal.file.version", { version: parsed.data.version, held: held.version });
  return parsed.data;
}

/** What is held with some of it changed, under the next version. Throws Refusal for what the format refuses. */
export function nextOwn(held: OwnMetals | undefined, changed: object): OwnMetals {
  const version = (held?.version ?? 0) + 1;
  const next = { underhook_metals: ownMetalsFormat, metals: [], ...held, ...changed, version };
  return readOwnMetals(JSON.stringify(next), held);
}

/** Own metals as JSON text that readOwnMetals takes back unchanged. */
export function writeOwnMetals(own: OwnMetals): string {
  return `${JSON.stringify(own, null, 2)}\n`;
}

/** The library with an owner's metals; its version names both. Refuses an id given twice. */
export function withOwn(library: Library, own: OwnMetals): Library {
  const { worth } = library;
  return libraryOf(
    `${library.version}+own.${own.version}`,
    [...library.metals.map((one) => asMet(one, own.likelihood?.[one.id])), ...own.metals.map(asMetal)],
    {
      of: { ...worth.of, ...own.worth },
      otherInThousand: { ...worth.otherInThousand, ...own.other_in_thousand },
    },
  );
}

/** The metal as often met as the owner says. */
function asMet(one: Metal, likelihood: Likelihood | undefined): Metal {
  return likelihood === undefined || likelihood === one.likelihood
    ? one
    : { ...one, likelihood, provenance: { ...one.provenance, likelihood: { kind: "stated" } } };
}

/** The built-in library, with an owner's metals where there are any. */
export function libraryWith(own: OwnMetals | undefined): Library {
  return own ? withOwn(builtIn, own) : builtIn;
}

/**
 * What may follow what is held: every band has a width, no id and no name stands twice, and a held id keeps its name.
 * Refuses with every fault. Entries of earlier versions may break it and still be read.
 */
export function refuseOwnMetals(held: OwnMetals | undefined, next: OwnMetals): void {
  refuseSilentChanges(held?.metals ?? [], next.metals);
  const flat = next.metals.filter(({ density_g_cm3: { low, high } }) => low === high);
  if (flat.length > 0)
    throw new Refusal(
      "own.not-taken-over",
      { faults: flat.map(({ name }) => message("metal.own.no-width", { name })) },
      "low",
    );
}

/** What looks odd in own metals without being wrong: a band far from what the mixture law says. */
export function warningsAbout(own: OwnMetals): Message[] {
  return own.metals.flatMap((one) => {
    const law = bandByMixture(asMetal(one)).corrected.nominal;
    const off = one.density_g_cm3.nominal / law - 1;
    return Math.abs(off) <= 0.05
      ? []
      : message("metal.own.far-from-mixture", {
          metal: one.name,
          given_g_cm3: one.density_g_cm3.nominal,
          off_percent: off * 100,
          law_g_cm3: law,
        });
  });
}

function asMetal(own: OwnMetals["metals"][number]): Metal {
  return {
    id: own.id,
    ownName: own.name,
    family: "own",
    composition: Object.fromEntries(Object.entries(own.composition).map(([of, f]) => [of, f!])),
    densityGPerCm3: own.density_g_cm3,
    expansionPerMillionK: own.expansion_per_million_k,
    magnetism: own.magnetism,
    conductivityIacsPercent: own.conductivity_iacs_percent,
    soundMPerS: own.sound_m_s,
    elasticModulusGPa: null,
    poissonRatio: null,
    colour: own.colour,
    likelihood: own.likelihood,
    provenance: statedIn(own),
    otherDensities: [],
    notes: own.notes === undefined ? [] : [own.notes],
  };
}

/** Every figure of an owner's metal comes from the source that the owner typed. */
function statedIn(own: OwnMetals["metals"][number]): Metal["provenance"] {
  const stated: Provenance = { kind: "stated", source: own.source };
  const known = <T>(value: T | null, ...figures: Figure[]) =>
    value === null ? [] : figures.map((figure) => [figure, stated] as const);
  return Object.fromEntries([
    ...known(
      own.composition,
      "composition",
      "limits",
      "nominal",
      "low",
      "high",
      "magnetism",
      "colour",
      "likelihood",
    ),
    ...known(own.expansion_per_million_k, "expansion"),
    ...known(own.conductivity_iacs_percent, "conductivityLow", "conductivityHigh"),
    ...known(own.sound_m_s, "sound"),
  ]);
}
