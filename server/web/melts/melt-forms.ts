import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { toGrams } from "../../../calibration/units.ts";
import { omitUndefined } from "../../compute/omit-undefined.ts";
import { sides } from "../../melts/side.ts";
import { preciousMetals } from "../../metals/precious-metal.ts";
import { type Entries, type Form, refuseEntry } from "../forms/form.ts";
import { foundFields, reportFields } from "../laboratory/report-fields.ts";

const signed = ({ maybeText }: Entries) => ({
  by: maybeText({ most: 100 }),
  reason: maybeText({ most: 400 }),
});

/** A weight with its grams, in the unit of the field beside it. */
const weight = ({ reading }: Entries, unit: string) =>
  reading(unit).transform((read) => ({ ...read, grams: toGrams(read.text, read.unit) }));

/** Lots are ticked by their id. */
export const makingForm: Form<{
  step: string;
  melt: {
    name: string;
    lots: string[];
    before: z.output<ReturnType<typeof weight>>;
    by: string;
    reason?: string;
  };
}> = (entries, { beforeUnit = "g" }) =>
  z
    .object({
      name: entries.text({ missing: message("melt.name-missing") }),
      before: weight(entries, beforeUnit),
      step: entries.typed(),
      ...signed(entries),
    })
    .and(entries.named("lot-").transform((ticked) => ({ lots: Object.keys(ticked) })))
    .superRefine(({ lots }, context) => {
      if (lots.length === 0) refuseEntry(context, "lots", message("melt.lots-missing"));
    })
    .transform(({ step, by = "", reason, ...melt }) => ({
      step,
      melt: { ...melt, by, ...omitUndefined({ reason }) },
    }));

export const pouringForm: Form<{ after: z.output<ReturnType<typeof weight>>; bar?: string; by: string }> = (
  entries,
  { afterUnit = "g" },
) =>
  z
    .object({ after: weight(entries, afterUnit), bar: entries.maybeText(), by: entries.typed() })
    .transform(({ bar, ...rest }) => ({ ...rest, ...omitUndefined({ bar }) }));

export const drillingForm: Form<{
  drilling: string;
  mass?: z.output<ReturnType<typeof weight>>;
  by: string;
}> = (entries, { massUnit = "g" }) =>
  z
    .object({
      drilling: entries.text({ missing: message("melt.drilling-missing") }),
      mass: entries
        .maybeReading(massUnit)
        .transform((read) => read && { ...read, grams: toGrams(read.text, read.unit) }),
      by: entries.typed(),
    })
    .transform(({ mass, ...rest }) => ({ ...rest, ...omitUndefined({ mass }) }));

const permille = { from: 0.01, to: 100, unit: "‰" } as const;

export const toleranceForm = (entries: Entries) => {
  const { choice, decimal } = entries;
  return z
    .object({
      metal: choice(preciousMetals, { first: "gold" }),
      duplicates_permille: decimal({ ...permille, what: message("melts.duplicates") }),
      sides_permille: decimal({ ...permille, what: message("melts.between-sides") }),
      ...signed(entries),
    })
    .transform(({ by = "", reason, ...rest }) => ({ ...rest, by, ...omitUndefined({ reason }) }));
};

/** The day is not after `today` (2026-03-02). */
export const meltAssayForm = (today: string) => (entries: Entries) =>
  z
    .object({
      drilling: entries.text({ missing: message("melt.drilling-missing") }),
      side: entries.choice(sides, { first: "house" }),
      ...foundFields(entries),
      ...reportFields(entries, today),
      by: entries.typed(),
    })
    .transform(({ expanded, ...rest }) => ({
      ...rest,
      ...omitUndefined({ expanded_permille: expanded }),
    }));

export const excludingForm = ({ typed }: Entries) =>
  z.object({ entry: typed(), by: typed(), reason: typed() });

export const settlingForm = ({ typed }: Entries) => z.object({ by: typed() });

export const meltReopeningForm = ({ typed }: Entries) =>
  z.object({ by: typed(), reason: typed(), second: typed() });
