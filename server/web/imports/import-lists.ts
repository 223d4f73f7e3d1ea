import { z } from "zod";
import { type Message, message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import type { ListName } from "../../ledger/imports/lists.ts";
import type { ImportPreview, RowCheck } from "../../ledger/imports/preview.ts";
import { takeOverTickets, takeOverWeighings } from "../../ledger/imports/take-over.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Library } from "../../metals/library.ts";
import { type OwnMetals, ownMetalsFormat, readOwnMetals } from "../../metals/own-metals.ts";
import {
  type OwnSpecifications,
  ownSpecificationsFormat,
  readOwnSpecifications,
} from "../../metals/specifications/own-specifications.ts";
import type { CurrentLibrary } from "../../station/current-library.ts";
import { currentSpecifications, keepSpecifications } from "../../station/current-specifications.ts";

type Values = Record<string, unknown>;
type OwnSpecification = OwnSpecifications["specifications"][number];
type OwnMetal = OwnMetals["metals"][number];

/** What only the bench knows about a row: whether its metal is known here, whether the parts of it go together. */
export function rowCheck(list: ListName, library: Library): RowCheck {
  const unknown = (column: string, id: unknown) =>
    typeof id === "string" && !library.has(id)
      ? { column, says: message("import.cell.no-metal", { typed: id }) }
      : null;
  switch (list) {
    case "tickets":
    case "weighings":
      return ({ claim }) => unknown("claim", claim);
    case "specifications":
      return (row) =>
        unknown("metal", row.metal) ??
        refusedBy("fine_mass_g", () =>
          readOwnSpecifications(
            JSON.stringify({
              underhook_specifications: ownSpecificationsFormat,
              version: 1,
              specifications: [specificationOf(row)],
            }),
            library,
          ),
        );
    case "metals":
      return (row) =>
        refusedBy("composition_percent", () =>
          readOwnMetals(
            JSON.stringify({ underhook_metals: ownMetalsFormat, version: 1, metals: [metalOf(row)] }),
          ),
        );
  }
}

/** Takes the rows of a preview over, all of them; gives how many. Throws LedgerError, Refusal; then none or the first ones. */
export async function takeOver(
  preview: ImportPreview,
  from: string,
  { ledger, library }: { ledger: Ledger; library: CurrentLibrary },
): Promise<number> {
  const rows = preview.rows.map(({ values }) => values);
  switch (preview.list) {
    case "weighings":
      return takeOverWeighings(ledger, preview.rows, from);
    case "tickets":
      return takeOverTickets(ledger, preview.rows, from);
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
      const version = (own?.version ?? 0) + 1;
      await library.keep(
        readOwnMetals(JSON.stringify({ underhook_metals: ownMetalsFormat, version, metals })),
      );
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
function refusedBy(otherwise: string, read: () => unknown): ReturnType<RowCheck> {
  try {
    read();
    return null;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const faults = z.array(fault).safeParse(error.params.faults);
    const [first] = faults.success ? faults.data : [];
    if (!first) return { column: otherwise, says: { code: error.code, params: error.params } };
    const [, , key] = first.params.place.split(".");
    const columns: Record<string, string> = { composition: "composition_percent" };
    return { column: key === undefined ? otherwise : (columns[key] ?? key), says: first.params.says };
  }
}

/** A fault as the readers of own metals and specifications list them. */
const fault = z.object({ params: z.object({ place: z.string(), says: z.custom<Message>() }) });
