import { z } from "zod";
import { type Message, message } from "../../../calibration/message.ts";
import { omitUndefined } from "../../compute/omit-undefined.ts";
import { nextOwn, type OwnMetals } from "../../metals/own-metals.ts";
import { type Entries, refuseEntry } from "../forms/form.ts";

/** The owner's metals with the one of the form added, under the next version. Throws Refusal for what their format refuses. */
export function withMetal(held: OwnMetals | undefined, metal: object): OwnMetals {
  return checked([...(held?.metals ?? []), metal], held);
}

/** A metal of the owner's, as the format of own metals has it. */
export function ownMetalForm(entry: Entries) {
  const { number, maybeNumber, typed, maybeText } = entry;
  const density = { unit: "g/cm³" };
  const conductivity = { unit: "%" };
  return z
    .object({
      name: typed(),
      composition: typed(),
      nominal: number(density),
      low: maybeNumber(density),
      high: maybeNumber(density),
      expansion: maybeNumber(),
      magnetism: maybeText(),
      conductivityLow: maybeNumber(conductivity),
      conductivityHigh: maybeNumber(conductivity),
      sound: maybeNumber({ unit: "m/s" }),
      colour: maybeText(),
      likelihood: maybeText(),
      source: typed(),
      notes: maybeText(),
    })
    .transform((of, context) => {
      const { nominal, low = nominal, high = nominal, conductivityLow: from, conductivityHigh: to } = of;
      const id = idFrom(of.name);
      if (id === undefined) refuseEntry(context, "name", message("metal.own.no-name", { name: of.name }));
      const { composition = {}, message: sentence } = compositionFrom(of.composition, entry);
      if (sentence) refuseEntry(context, "composition", sentence);
      return omitUndefined({
        id,
        name: of.name,
        composition,
        density_g_cm3: { nominal, low, high },
        expansion_per_million_k: of.expansion ?? null,
        magnetism: of.magnetism,
        conductivity_iacs_percent: from === undefined && to === undefined ? null : [from ?? to, to ?? from],
        sound_m_s: of.sound ?? null,
        colour: of.colour,
        likelihood: of.likelihood,
        source: of.source,
        notes: of.notes,
      });
    });
}

/** The owner's metals without one of them, under the next version. */
export function withoutMetal(held: OwnMetals, id: string): OwnMetals {
  return checked(
    held.metals.filter((one) => one.id !== id),
    held,
  );
}

function checked(metals: readonly unknown[], held: OwnMetals | undefined): OwnMetals {
  return nextOwn(held, { metals });
}

/** "Dental gold, white" is own-dental-gold-white; letters outside a to z are left out. Undefined where none is left. */
function idFrom(name: string): string | undefined {
  const plain = name
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "")
    .slice(0, 40);
  return plain === "" ? undefined : `own-${plain}`;
}

const line = /^([A-Za-z]+)\s+([\d.,]+)(?:\s+([\d.,]+)\s*[-–]\s*([\d.,]+))?\s*%?$/;

/** One component a line: "Ag 92.5", or with its limits "Ag 92.5 92.4-93.0"; percent of the mass. Or what is wrong. */
function compositionFrom(
  text: string,
  { number }: Entries,
): { composition?: Record<string, Shares>; message?: Message } {
  const composition: Record<string, Shares> = {};
  for (const row of text.split(/[\n;]/).filter((one) => one.trim() !== "")) {
    const [, symbol, ...parts] = line.exec(row.trim()) ?? [];
    const percents = z.array(number()).safeParse(parts.filter((part) => part !== undefined));
    if (symbol === undefined || !percents.success)
      return { message: message("metal.own.composition-line", { line: row.trim() }) };
    const [nominal = 0, low = nominal, high = nominal] = percents.data.map(share100);
    if (!(low <= nominal && nominal <= high && high <= 1))
      return { message: message("metal.own.limits-percent", { line: row.trim() }) };
    composition[symbol] = [nominal, low, high];
  }
  const percent = 100 * Object.values(composition).reduce((sum, [nominal]) => sum + nominal, 0);
  if (Math.abs(percent - 100) > 0.51) return { message: message("metal.own.sum-percent", { percent }) };
  return { composition };
}

type Shares = [nominal: number, low: number, high: number];

/** Percent as a share, without the tail that dividing by 100 leaves. */
const share100 = (percent: number) => +(percent / 100).toPrecision(12);
