import { z } from "zod";
import { type Message, message, messageOf } from "../../../calibration/message.ts";
import { reasonOf } from "../../../calibration/reason.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { called } from "../called.ts";
import { faultAt, faultsIn, saying } from "../file-faults.ts";
import { preciousElement } from "../fineness/precious-element.ts";
import { builtIn, type Library } from "../library.ts";
import { shareOf } from "../share-of.ts";
import { checkFineMass } from "./fine-mass-check.ts";
import type { Specification } from "./specification.ts";

/** Shape of the file of own specifications; goes up when a key changes its meaning. */
export const ownSpecificationsFormat = 1;

const positive = z.number().positive();
/** Decimal text, since 7.3224 and 7.32 promise different things. */
const decimal = z
  .string()
  .refine((text) => /^\d+(\.\d+)?$/.test(text), saying(message("specification.decimal")));

const ownSpecification = z.strictObject({
  id: z.string().refine((id) => /^own-[a-z0-9-]{1,40}$/.test(id), saying(message("metal.own.id"))),
  name: z.string().trim().min(1).max(80),
  metal: z.string().min(1),
  mass_g: decimal,
  mass_tolerance_g: positive.nullable().default(null),
  fineness_permille: decimal,
  fineness_tolerance_permille: positive.nullable().default(null),
  /** when the source states it: checked against mass × fineness */
  fine_mass_g: decimal.optional(),
  /** lightest mass, g, at which a worn piece still passes; without it 3 % of wear (common practice) */
  least_current_g: positive.optional(),
  diameter_mm: positive.max(1000).optional(),
  thickness_mm: positive.max(1000).optional(),
  source: z
    .string()
    .trim()
    .max(400)
    .refine((text) => text.length >= 3, saying(message("metal.own.source"))),
});

const file = z.strictObject({
  underhook_specifications: z.literal(ownSpecificationsFormat),
  version: z.int().min(1),
  specifications: z.array(ownSpecification).max(1000),
});

/** An owner's own specifications, as they travel in JSON. */
export type OwnSpecifications = z.infer<typeof file>;

/**
 * Reads a file of own specifications. Refuses with every fault at its place: schema, an unknown metal, a
 * fine mass that is not mass × fineness. Nothing is taken over from a file with a fault. With `held`, a file of the same
 * or a lower version that differs from it is refused.
 */
export function readOwnSpecifications(
  text: string,
  library: Library = builtIn,
  held?: OwnSpecifications,
): OwnSpecifications {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    throw new Refusal("metal.file.not-json", { reason: reasonOf(error) });
  }
  const parsed = file.safeParse(json);
  const faults = parsed.success
    ? parsed.data.specifications.flatMap((one, i) =>
        faultsOf(one, library).map((fault) => faultAt(`specifications.${i}`, fault)),
      )
    : faultsIn(parsed.error);
  if (!parsed.success || faults.length > 0) throw new Refusal("specification.refused", { faults });
  const { data } = parsed;
  const differs = held !== undefined && writeOwnSpecifications(data) !== writeOwnSpecifications(held);
  if (held && held.specifications.length > 0 && differs && data.version <= held.version)
    throw new Refusal("metal.file.version", { version: data.version, held: held.version });
  return data;
}

function faultsOf(one: OwnSpecifications["specifications"][number], library: Library): Message[] {
  const checks = [
    () => library.metal(one.metal),
    () => one.fine_mass_g && checkFineMass(one.mass_g, one.fineness_permille, one.fine_mass_g),
    () => refuseWearAbove(one),
  ];
  return checks.flatMap((check) => {
    try {
      check();
      return [];
    } catch (error) {
      if (error instanceof Refusal) return [messageOf(error)];
      throw error;
    }
  });
}

function refuseWearAbove({ mass_g, least_current_g: least }: OwnSpecifications["specifications"][number]) {
  if (least !== undefined && least > Number(mass_g))
    throw new Refusal(
      "specification.wear-above",
      { least_g: least, mass_g: { decimal: mass_g } },
      "leastCurrent",
    );
}

/** Stamps are rounded: 916 stands for 916.7. */
const leastSlackPermille = 5;

/**
 * Refuses a fineness that its metal does not have, such as one typed in per cent. Only what is new is asked: entries of
 * earlier versions may break it and still be read.
 */
export function refuseOtherFineness(
  specifications: OwnSpecifications["specifications"],
  library: Library,
): void {
  const faults = specifications.flatMap(({ name, metal: id, fineness_permille, ...of }) => {
    const metal = library.metal(id);
    const element = preciousElement(metal);
    if (!element) return [];
    const [least, most] = shareOf(metal, element);
    const [low_permille, high_permille] = [1000 * least, 1000 * most];
    const slack = Math.max(of.fineness_tolerance_permille ?? 0, leastSlackPermille);
    const typed = Number(fineness_permille);
    if (typed >= low_permille - slack && typed <= high_permille + slack) return [];
    return message("specification.other-fineness", {
      name,
      fineness_permille: { decimal: fineness_permille },
      metal: called(metal),
      low_permille,
      high_permille,
    });
  });
  if (faults.length > 0) throw new Refusal("own.not-taken-over", { faults }, "fineness");
}

/** Own specifications as JSON text that readOwnSpecifications takes back unchanged. */
export function writeOwnSpecifications(own: OwnSpecifications): string {
  return `${JSON.stringify(own, null, 2)}\n`;
}

/** The owner's specifications in the form the bench compares with. */
export function specificationsOf(own: OwnSpecifications): Specification[] {
  return own.specifications.map((one) => ({
    id: one.id,
    called: one.name,
    metal: one.metal,
    massG: Number(one.mass_g),
    massToleranceG: one.mass_tolerance_g,
    finenessPermille: Number(one.fineness_permille),
    finenessTolerancePermille: one.fineness_tolerance_permille,
    ...(one.least_current_g === undefined ? {} : { leastCurrentG: one.least_current_g }),
    ...(one.diameter_mm === undefined ? {} : { diameterMm: one.diameter_mm }),
    ...(one.thickness_mm === undefined ? {} : { thicknessMm: one.thickness_mm }),
    source: one.source,
    verified: false,
  }));
}
