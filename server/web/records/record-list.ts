import { dayRange } from "../../../calibration/local-time.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { densityText, fixed, inLocale } from "../../../views/numbers.ts";
import type { RecordFilters, RecordRow, RecordsPage } from "../../../views/records/index.tsx";
import { states } from "../../conformity/state.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { MeasurementRecord, RecordQuery } from "../../ledger/records.ts";
import type { Library } from "../../metals/library.ts";
import { type MassRange, massAsked } from "../lots/mass-asked.ts";
import { claimOptions } from "../metals/claim-options.ts";
import { nameShown } from "../names.ts";
import { type Manner, whenOf } from "../when.ts";
import { nameIn } from "./record-view.ts";

/** One page of the list as it was asked for in the address. */
export async function listOf(
  ledger: Ledger,
  asked: Record<string, string | undefined>,
  library: Library,
  manner: Manner,
): Promise<RecordsPage> {
  const { locale } = manner;
  const filters: RecordFilters = {
    q: asked.q ?? "",
    state: asked.state ?? "",
    claim: asked.claim ?? "",
    from: asked.from ?? "",
    to: asked.to ?? "",
    mass: asked.mass ?? "",
    photo: asked.photo ?? "",
  };
  const mass = massAsked(filters.mass, locale);
  const found = await ledger.records(queryOf(filters, { mass, before: asked.before, zone: manner.zone }));
  const all = await ledger.records({ page: { size: 1 } });
  return {
    filters,
    claims: claimOptions(library, locale),
    rows: found.records.map((record) => rowOf(record, library, manner)),
    found: found.count,
    all: all.count,
    narrowed: Object.values(filters).some((value) => value.trim() !== ""),
    ...(filters.mass.trim() !== "" && mass === undefined ? { massUnread: filters.mass.trim() } : {}),
    countedTo: { found: found.countIsFloor, all: all.countIsFloor },
    ...(found.next === null ? {} : { next: addressOf(filters, found.next) }),
  };
}

function queryOf(
  filters: RecordFilters,
  { mass, before, zone }: { mass: MassRange | undefined; before: string | undefined; zone: string },
): RecordQuery {
  const state = states.find((one) => one === filters.state);
  const first = dayRange(filters.from, zone);
  const last = dayRange(filters.to, zone);
  return {
    search: filters.q,
    filters: {
      ...(state ? { state } : {}),
      ...(filters.claim ? { claim: filters.claim } : {}),
      ...(first ? { from: first.from } : {}),
      ...(last ? { until: last.until } : {}),
      ...(mass ? { dryFromG: mass.fromG, dryToG: mass.toG } : {}),
      ...(filters.photo === "with" || filters.photo === "without" ? { photo: filters.photo === "with" } : {}),
    },
    page: before !== undefined && /^\d+$/.test(before) ? { before: Number(before) } : {},
  };
}

function addressOf(filters: RecordFilters, before: number): string {
  const query = new URLSearchParams(Object.entries(filters).filter(([, value]) => value !== ""));
  query.set("before", String(before));
  return `/records?${query}`;
}

function rowOf(record: MeasurementRecord, library: Library, { locale, zone }: Manner): RecordRow {
  return {
    id: record.subject,
    when: whenOf(record.at, zone),
    ticket: record.ticket,
    piece: record.description,
    mass: record.dry === "" ? `${fixed(record.mass_g, 4, locale)} g` : inLocale(record.dry, locale),
    ...(record.customer === null ? {} : { broughtBy: nameShown(record.customer, locale) }),
    photos: record.photos,
    density: densityOf(record, locale),
    claimName: record.claim === null ? "" : nameIn(library, record.claim, locale),
    ...(record.state === null ? {} : { state: record.state }),
    ...(record.voided ? { since: "voided" as const } : {}),
  };
}

function densityOf(
  { density_g_cm3: value, expanded_g_cm3: expanded }: MeasurementRecord,
  locale: Locale,
): string {
  if (value === null) return "–";
  return expanded === null ? fixed(value, 2, locale) : densityText(value, expanded, locale);
}
