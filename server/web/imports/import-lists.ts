import { z } from "zod";
import { type Message, message, messageOf } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { locales } from "../../../views/messages/language.ts";
import type { ListName, WrongCell } from "../../ledger/imports/lists.ts";
import type { ImportPreview, RowCheck } from "../../ledger/imports/preview.ts";
import { takeOverTickets, takeOverWeighings } from "../../ledger/imports/take-over.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Steps } from "../../ledger/turns.ts";
import type { Library } from "../../metals/library.ts";
import { nextOwn, type OwnMetals } from "../../metals/own-metals.ts";
import {
  type OwnSpecifications,
  ownSpecificationsFormat,
  readOwnSpecifications,
} from "../../metals/specifications/own-specifications.ts";
import { typedClaim } from "../../metals/typed-claim.ts";
import type { CurrentLibrary } from "../../station/current-library.ts";
import { currentSpecifications, keepSpecifications } from "../../station/current-specifications.ts";
import { nameIn } from "../records/record-view.ts";

type Values = Record<string, unknown>;
type OwnSpecification = OwnSpecifications["specifications"][number];
type OwnMetal = OwnMetals["metals"][number];

/** What only the bench knows about a row: which metal it names, whether the parts of it go together. */
export function rowCheck(list: ListName, library: Library): RowCheck {
  switch (list) {
    case "tickets":
    case "weighings":
      return (row) => withMetal("claim", row, library);
    case "specifications":
      return (row) => {
        const read = withMetal("metal", row, library);
        return "row" in read ? (wrongSpecification(read.row, library) ?? read) : read;
      };
    case "metals":
      return (row) =>
        refusedBy("composition_percent", () => nextOwn(undefined, { metals: [metalOf(row)] })) ?? { row };
  }
}

/** The row with the id of the metal that was written; refused where none is meant, or several can be. */
function withMetal(column: string, row: Values, library: Library): ReturnType<RowCheck> {
  const typed = row[column];
  if (typeof typed !== "string") return { row };
  const called = (id: string) => locales.map((locale) => nameIn(library, id, locale));
  const read = typedClaim(typed, library, called);
  if ("metal" in read) return { row: { ...row, [column]: read.metal } };
  const sentence =
    read.meanings.length === 0
      ? message("import.cell.no-metal", { typed })
      : message("import.cell.metals", { typed, meanings: { anyOf: read.meanings } });
  return { column, message: sentence };
}

function wrongSpecification(row: Values, library: Library) {
  return refusedBy("fine_mass_g", () =>
    readOwnSpecifications(
      JSON.stringify({
        underhook_specifications: ownSpecificationsFormat,
        version: 1,
        specifications: [specificationOf(row)],
      }),
      library,
    ),
  );
}

/**
 * Takes the rows of a preview over, all of them unless it is stopped; gives how many were written. Throws LedgerError,
 * Refusal; then none or the first ones.
 */
export async function takeOver(
  preview: ImportPreview,
  from: string,
  { ledger, library, ...options }: { ledger: Ledger; library: CurrentLibrary } & Steps,
): Promise<number> {
  const rows = preview.rows.map(({ values }) => values);
  switch (preview.list) {
    case "weighings":
      return takeOverWeighings(ledger, preview.rows, from, options);
    case "tickets":
      return takeOverTickets(ledger, preview.rows, from, options);
    case "specifications": {
      const { own } = await currentSpecifications(ledger, library.now);
      const taken = rows.map(specificationOf);
      const specifications = [...taken, ...without(own.specifications, taken)];
      await keepSpecifications(ledger, library.now, { ...own, version: own.version + 1, specifications });
      return taken.length;
    }
    case "metals": {
      const { own } = library;
      const taken = rows.map(metalOf);
      const metals = [...taken, ...without(own?.metals ?? [], taken)];
      await library.keep(nextOwn(own, { metals }));
      return taken.length;
    }
  }
}

function without<One extends { id: string }>(held: readonly One[], taken: readonly { id: string }[]): One[] {
  const ids = new Set(taken.map(({ id }) => id));
  return held.filter(({ id }) => !ids.has(id));
}

function specificationOf(row: Values): OwnSpecification {
  return { mass_tolerance_g: null, fineness_tolerance_permille: null, ...row } as OwnSpecification;
}

function metalOf(row: Values): OwnMetal {
  const { composition_percent, density_low_g_cm3, density_g_cm3, density_high_g_cm3, ...rest } = row;
  const shares = Object.entries(composition_percent as Record<string, number>);
  return {
    ...rest,
    composition: Object.fromEntries(shares.map(([symbol, share]) => [symbol, [share, share, share]])),
    density_g_cm3: { nominal: density_g_cm3, low: density_low_g_cm3, high: density_high_g_cm3 },
  } as unknown as OwnMetal;
}

/** The refusal of a reader as one of a cell: the first fault at the heading its place names, else at the one given. */
function refusedBy(otherwise: string, read: () => unknown): WrongCell | null {
  try {
    read();
    return null;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const faults = z.array(fault).safeParse(error.params.faults);
    const [first] = faults.success ? faults.data : [];
    if (!first) return { column: otherwise, message: messageOf(error) };
    const [, , key] = first.params.place.split(".");
    const columns: Record<string, string> = { composition: "composition_percent" };
    return { column: key === undefined ? otherwise : (columns[key] ?? key), message: first.params.message };
  }
}

/** A fault as the readers of own metals and specifications list them. */
const fault = z.object({ params: z.object({ place: z.string(), message: z.custom<Message>() }) });
