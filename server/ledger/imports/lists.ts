import { type Message, message } from "../../../calibration/message.ts";
import type { DecimalMark } from "../../../calibration/typed-number.ts";
import { anyText, type Cell, isoMoment, numberCells, oneOf, optionalText, shaped, text } from "./cells.ts";

/** What is wrong with a row: the heading it stands under, and why. */
export interface WrongCell {
  column: string;
  message: Message;
}

/** A kind of list that can be taken over: its headings, how each cell is read, and what must hold of a whole row. */
interface List {
  columns: Record<string, { cell: Cell; needed: boolean }>;
  /** what is wrong with a row whose cells are all right */
  wrong?: (row: Record<string, unknown>) => WrongCell | null;
}

type Numbers = ReturnType<typeof numberCells>;

const needed = (cell: Cell) => ({ cell, needed: true });
const may = (cell: Cell) => ({ cell, needed: false });
const ownId = shaped(/^own-[a-z0-9-]{1,40}$/, message("import.cell.own-id"));

const specifications = ({
  positiveDecimal,
  optionalPositiveDecimal,
  optionalPositiveNumber,
}: Numbers): List => ({
  columns: {
    id: needed(ownId),
    name: needed(text),
    metal: needed(text),
    mass_g: needed(positiveDecimal("g")),
    mass_tolerance_g: may(optionalPositiveNumber("g")),
    fineness_permille: needed(positiveDecimal("")),
    fine_mass_g: may(optionalPositiveDecimal("g")),
    diameter_mm: may(optionalPositiveNumber("mm")),
    thickness_mm: may(optionalPositiveNumber("mm")),
    source: needed(text),
  },
  wrong: ({ fineness_permille: fineness }) =>
    Number(fineness) > 1000
      ? {
          column: "fineness_permille",
          message: message("form.number.above", { value: Number(fineness), unit: "\u00a0‰", to: 1000 }),
        }
      : null,
});

const metals = ({ composition, positiveNumber }: Numbers): List => ({
  columns: {
    id: needed(ownId),
    name: needed(text),
    composition_percent: needed(composition),
    density_low_g_cm3: needed(positiveNumber("g/cm³")),
    density_g_cm3: needed(positiveNumber("g/cm³")),
    density_high_g_cm3: needed(positiveNumber("g/cm³")),
    magnetism: needed(oneOf(["none", "weak", "strong"])),
    colour: needed(text),
    source: needed(text),
  },
  wrong({ density_low_g_cm3: low, density_g_cm3: nominal, density_high_g_cm3: high }) {
    if (Number(nominal) >= Number(low) && Number(nominal) <= Number(high)) return null;
    return {
      column: "density_g_cm3",
      message: message("form.number.out-of-range", {
        value: Number(nominal),
        unit: "\u00a0g/cm³",
        from: Number(low),
        to: Number(high),
      }),
    };
  },
});

const tickets = ({ optionalPositiveDecimal }: Numbers): List => ({
  columns: {
    ticket: needed(text),
    description: needed(text),
    claim: may(optionalText),
    lot: may(optionalText),
    customer: may(optionalText),
    mass_g: may(optionalPositiveDecimal("g")),
  },
});

/** Above any metal, g/cm³: a value in kg/m³, most likely. */
const densest = 25;

const weighings = ({ positiveDecimal, optionalPositiveDecimal, optionalDecimal }: Numbers): List => ({
  columns: {
    ticket: needed(text),
    description: needed(anyText),
    measured_at: needed(isoMoment),
    mass_g: needed(positiveDecimal("g")),
    density_g_cm3: needed(positiveDecimal("g/cm³")),
    u_g_cm3: may(optionalPositiveDecimal("g/cm³")),
    claim: may(optionalText),
    temperature_c: may(optionalDecimal("°C")),
  },
  wrong: ({ density_g_cm3: density }) =>
    Number(density) > densest
      ? {
          column: "density_g_cm3",
          message: message("import.cell.too-dense", {
            g_cm3: { decimal: String(density) },
            densest_g_cm3: densest,
          }),
        }
      : null,
});

/** Every list that can be taken over, its numbers written with this decimal mark. */
export function listsWith(mark: DecimalMark) {
  const numbers = numberCells(mark);
  return {
    specifications: specifications(numbers),
    metals: metals(numbers),
    tickets: tickets(numbers),
    weighings: weighings(numbers),
  };
}

export const lists = listsWith(".");
export type ListName = keyof typeof lists;
