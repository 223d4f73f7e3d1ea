import { z } from "zod";
import {
  type Cell,
  decimal,
  isoMoment,
  oneOf,
  optionalDecimal,
  optionalPositiveNumber,
  optionalText,
  positiveDecimal,
  positiveNumber,
  text,
} from "./cells.ts";

/** A kind of list that can be taken over: its headings, how each cell is read, and what must hold of a whole row. */
export interface List {
  says: string;
  columns: Record<string, { cell: Cell; needed: boolean }>;
  /** what is wrong with a row whose cells are all right: the heading and a sentence */
  wrong?: (row: Record<string, unknown>) => { column: string; says: string } | null;
}

const needed = (cell: Cell) => ({ cell, needed: true });
const may = (cell: Cell) => ({ cell, needed: false });
const ownId = z
  .string()
  .trim()
  .regex(/^own-[a-z0-9-]{1,40}$/, { error: "right is own- and then small letters, digits and dashes" });

/** "Au 75; Ag 12.5; Cu 12.5" in per cent of mass, as shares of 1. */
const composition = z.string().transform((given, context) => {
  const shares: Record<string, number> = {};
  for (const part of given.split(";")) {
    const [, symbol, percent] = /^\s*([A-Z][a-z]?)\s+(\d+(?:\.\d+)?)\s*%?\s*$/.exec(part) ?? [];
    if (symbol === undefined || percent === undefined) {
      context.addIssue({
        code: "custom",
        message: `does not read at "${part.trim()}"; write Au 75; Ag 12.5; Cu 12.5`,
      });
      return z.NEVER;
    }
    shares[symbol] = (shares[symbol] ?? 0) + Number(percent) / 100;
  }
  const sum = Object.values(shares).reduce((a, b) => a + b, 0);
  if (Math.abs(sum - 1) <= 0.005) return shares;
  context.addIssue({
    code: "custom",
    message: `adds up to ${+(sum * 100).toFixed(3)} %; name the rest of the alloy, so that it is 100 %`,
  });
  return z.NEVER;
});

const specifications: List = {
  says: "what coins, bars and other pieces should weigh and measure",
  columns: {
    id: needed(ownId),
    name: needed(text),
    metal: needed(text),
    mass_g: needed(positiveDecimal),
    mass_tolerance_g: may(optionalPositiveNumber),
    fineness_permille: needed(positiveDecimal),
    fine_mass_g: may(optionalDecimal),
    diameter_mm: may(optionalPositiveNumber),
    thickness_mm: may(optionalPositiveNumber),
    source: needed(text),
  },
  wrong: ({ fineness_permille: fineness }) =>
    Number(fineness) > 1000 ? { column: "fineness_permille", says: "is above 1000 per mille" } : null,
};

const metals: List = {
  says: "metals and alloys of one's own",
  columns: {
    id: needed(ownId),
    name: needed(text),
    composition_percent: needed(composition),
    density_low_g_cm3: needed(positiveNumber),
    density_g_cm3: needed(positiveNumber),
    density_high_g_cm3: needed(positiveNumber),
    magnetism: needed(oneOf(["none", "weak", "strong"])),
    colour: needed(text),
    source: needed(text),
  },
  wrong(row) {
    const [low, nominal, high] = [
      row.density_low_g_cm3,
      row.density_g_cm3,
      row.density_high_g_cm3,
    ] as number[];
    if (nominal! >= low! && nominal! <= high!) return null;
    return {
      column: "density_g_cm3",
      says: `must lie between ${low} and ${high}, the low and the high density`,
    };
  },
};

const tickets: List = {
  says: "pieces that are waiting to be weighed",
  columns: {
    ticket: needed(text),
    description: needed(text),
    claim: may(optionalText),
    lot: may(optionalText),
    customer: may(optionalText),
    mass_g: may(optionalDecimal),
  },
};

const weighings: List = {
  says: "weighings from before this ledger",
  columns: {
    ticket: needed(text),
    description: needed(z.string().trim().max(2000)),
    measured_at: needed(isoMoment),
    mass_g: needed(positiveDecimal),
    density_g_cm3: needed(positiveDecimal),
    u_g_cm3: may(optionalDecimal),
    claim: may(optionalText),
    temperature_c: may(optionalDecimal.pipe(z.union([z.undefined(), decimal]))),
  },
  wrong: ({ density_g_cm3: density }) =>
    Number(density) > 25
      ? { column: "density_g_cm3", says: "is above 25 g/cm³, more than any metal; is it kg/m³?" }
      : null,
};

/** Every list that can be taken over. */
export const lists = { specifications, metals, tickets, weighings };
export type ListName = keyof typeof lists;
