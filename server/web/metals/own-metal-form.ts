import { Refusal } from "../../../calibration/refusal.ts";
import { readNumber } from "../../../calibration/typed-number.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { decimalMark } from "../../../views/numbers.ts";
import { type OwnMetals, ownMetalsFormat, readOwnMetals } from "../../metals/own-metals.ts";

/**
 * The owner's metals with the one of the form added, under the next version. Refuses an entry
 * that is no number, at its field, and what the format of own metals refuses.
 */
export function withMetalOfForm(
  held: OwnMetals | undefined,
  fields: Record<string, string>,
  locale: Locale,
): OwnMetals {
  const number = (field: string) => {
    const read = readNumber(fields[field] ?? "", { mark: decimalMark(locale) });
    if (read.kind !== "number") throw new Refusal(read.says.code, read.says.params, field);
    return Number(read.text);
  };
  const maybe = (field: string) => ((fields[field] ?? "").trim() === "" ? null : number(field));
  const nominal = number("nominal");
  const [from, to] = [maybe("conductivityLow"), maybe("conductivityHigh")];
  const metal = {
    id: idFrom(fields.name ?? ""),
    name: fields.name ?? "",
    composition: compositionFrom(fields.composition ?? "", locale),
    density_g_cm3: { nominal, low: maybe("low") ?? nominal, high: maybe("high") ?? nominal },
    expansion_per_million_k: maybe("expansion"),
    magnetism: fields.magnetism,
    conductivity_iacs_percent: from === null && to === null ? null : [from ?? to, to ?? from],
    sound_m_s: maybe("sound"),
    colour: fields.colour,
    likelihood: fields.likelihood,
    source: fields.source ?? "",
    ...((fields.notes ?? "").trim() === "" ? {} : { notes: fields.notes }),
  };
  return checked([...(held?.metals ?? []), metal], held);
}

/** The owner's metals without one of them, under the next version. */
export function withoutMetal(held: OwnMetals, id: string): OwnMetals {
  return checked(
    held.metals.filter((one) => one.id !== id),
    held,
  );
}

function checked(metals: readonly unknown[], held: OwnMetals | undefined): OwnMetals {
  const file = { underhook_metals: ownMetalsFormat, version: (held?.version ?? 0) + 1, metals };
  return readOwnMetals(JSON.stringify(file), held);
}

/** "Dental gold, white" is own-dental-gold-white; letters outside a to z are left out. */
function idFrom(name: string): string {
  const plain = name
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "")
    .slice(0, 40);
  if (plain === "") throw new Refusal("metal.own.no-name", { name }, "name");
  return `own-${plain}`;
}

const line = /^([A-Za-z]+)\s+([\d.,]+)(?:\s+([\d.,]+)\s*[-–]\s*([\d.,]+))?\s*%?$/;

/** One component a line: "Ag 92.5", or with its limits "Ag 92.5 92.4-93.0"; percent of the mass. */
function compositionFrom(text: string, locale: Locale): Record<string, [number, number, number]> {
  const composition: Record<string, [number, number, number]> = {};
  for (const row of text.split(/[\n;]/).filter((one) => one.trim() !== "")) {
    const [, symbol, ...parts] = line.exec(row.trim()) ?? [];
    const shares = parts
      .filter((part) => part !== undefined)
      .map((part) => readNumber(part, { mark: decimalMark(locale) }));
    if (symbol === undefined || shares.some((share) => share.kind !== "number"))
      throw new Refusal("metal.own.composition-line", { line: row.trim() }, "composition");
    const [nominal = 0, low = nominal, high = nominal] = shares.map((share) =>
      share.kind === "number" ? share100(share.text) : 0,
    );
    if (!(low <= nominal && nominal <= high && high <= 1))
      throw new Refusal("metal.own.limits-percent", { line: row.trim() }, "composition");
    composition[symbol] = [nominal, low, high];
  }
  const percent = 100 * Object.values(composition).reduce((sum, [nominal]) => sum + nominal, 0);
  if (Math.abs(percent - 100) > 0.51) throw new Refusal("metal.own.sum-percent", { percent }, "composition");
  return composition;
}

/** Percent as a share, without the tail that dividing by 100 leaves. */
const share100 = (percent: string) => +(Number(percent) / 100).toPrecision(12);
