import { z } from "zod";
import type { Entry } from "../ledger/entry.ts";
import { standingBy } from "./stated.ts";

/** A column of what is taken out. */
export interface Column {
  name: string;
  holds: "text" | "number" | "moment";
}

/** What a record states, cell by cell; text where several things stand in one. */
export const statementColumns: readonly Column[] = [
  { name: "method", holds: "text" },
  { name: "readings", holds: "text" },
  { name: "liquid", holds: "text" },
  { name: "temperature of the liquid (°C)", holds: "number" },
  { name: "lower end of the interval (g/cm3)", holds: "number" },
  { name: "upper end of the interval (g/cm3)", holds: "number" },
  { name: "coverage factor k", holds: "number" },
  { name: "interval by", holds: "text" },
  { name: "density at 20 °C (g/cm3)", holds: "number" },
  { name: "not excluded", holds: "text" },
  { name: "fineness of", holds: "text" },
  { name: "fineness from (permille)", holds: "number" },
  { name: "fineness to (permille)", holds: "number" },
  { name: "fine mass from (g)", holds: "number" },
  { name: "fine mass to (g)", holds: "number" },
  { name: "checks", holds: "text" },
  { name: "metals library", holds: "text" },
];

export type Cell = string | number | null | undefined;

/** What of a kept request is shown; requests of every version have these. */
const asked = z.looseObject({
  method: z.string().optional(),
  liquid: z
    .looseObject({
      kind: z.string().optional(),
      name: z.string().optional(),
      temperature_c: z.number().optional(),
    })
    .optional(),
});

const load = z.looseObject({ readings: z.array(z.string()), unit: z.string().default("g") });

/** The cells of a piece whose entries these are; empty where an imported weighing states nothing of it. */
export function statementCells(entries: readonly Entry[]): Cell[] {
  if (!entries.some(({ kind }) => kind === "result")) return statementColumns.map(() => null);
  const { result, statement } = standingBy(entries);
  const { method, liquid } = asked.parse(result.request);
  const { fineness } = statement;
  const [from, to] = statement.interval_g_cm3 ?? [];
  return [
    method,
    readingsIn(result.request),
    liquid?.name ?? liquid?.kind,
    liquid?.temperature_c,
    ...[from, to],
    statement.k,
    statement.interval_from,
    statement.density_20_g_cm3,
    statement.not_excluded.map(({ id }) => id).join(" "),
    fineness?.element,
    ...(fineness?.permille ?? [null, null]),
    ...(fineness?.fine_g ?? [null, null]),
    statement.checks.map((check) => (typeof check === "string" ? check : check.code)).join(" "),
    statement.versions?.library,
  ];
}

/** Every load with its readings as they were shown: "dry 31.10 g; immersed 28.14, 28.15 g". */
function readingsIn(request: object): string {
  const loads = Object.entries(request).flatMap(([name, value]) => {
    const parts: [string, unknown][] =
      name === "flask" && typeof value === "object" && value !== null
        ? Object.entries(value).map(([part, one]) => [`${name} ${part}`, one])
        : [[name, value]];
    return parts.flatMap(([of, one]) => {
      const read = load.safeParse(one);
      return read.success ? [`${of} ${read.data.readings.join(", ")} ${read.data.unit}`] : [];
    });
  });
  return loads.join("; ");
}
