import { z } from "zod";
import type { CheckKind } from "../../../views/checks/guides.ts";
import type { StoredCheck } from "../../station/stored-check.ts";

const weight = z.object({
  nominalGrams: z.number(),
  class: z.string().optional(),
  calibrated: z.object({ expandedGrams: z.number() }).optional(),
});

/** What the checks of a bench were asked, as far as it is the same the next time. */
const asked = z.object({
  weight: weight.optional(),
  loads: z.array(z.object({ weights: z.array(weight) })).optional(),
  piece: z.string().optional(),
  stated: z.object({ gPerCm3: z.number(), expandedGPerCm3: z.number() }).optional(),
  referenceUCelsius: z.number().optional(),
  /** the details as they were typed, masses in g; checks of an earlier version have none */
  typed: z.record(z.string(), z.string()).optional(),
});

/** The details of the check of this kind that was made last, by the names of their fields; its readings are made anew. */
export function lastTime(kind: CheckKind, last: StoredCheck | undefined): Record<string, string> {
  if (!last) return {};
  const read = asked.safeParse(last.asked);
  const { weight: one, loads, piece, stated, referenceUCelsius, typed } = read.success ? read.data : {};
  if (typed) return { by: last.by, ...typed };
  const used = one ?? loads?.[0]?.weights[0];
  const calibrated = used?.calibrated;
  const found: Record<string, string | number | undefined> = {
    by: last.by,
    class: used?.class,
    expanded: calibrated ? calibrated.expandedGrams : stated?.expandedGPerCm3,
    stated: kind === "check-weight" ? one?.nominalGrams : stated?.gPerCm3,
    piece,
    referenceU: referenceUCelsius,
  };
  return Object.fromEntries(
    Object.entries(found).flatMap(([name, value]) => (value === undefined ? [] : [[name, `${value}`]])),
  );
}
