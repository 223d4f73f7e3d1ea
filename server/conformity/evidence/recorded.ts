import { z } from "zod";
import { colours } from "../../metals/metal.ts";
import type { Evidence } from "./evidence.ts";
import type { Echo } from "./sound-speed.ts";

/** Ranges outside which a typed value is a slip of the hand, not a piece of metal. One place for form and ledger. */
export const evidenceRanges = {
  massG: { from: 0.001, to: 100_000, unit: "g" },
  outlineCm3: { from: 0.0001, to: 50_000, unit: "cm³" },
  percentIacs: { from: 0.1, to: 115, unit: "% IACS" },
  celsius: { from: -10, to: 60, unit: "°C" },
  mPerS: { from: 200, to: 20_000, unit: "m/s" },
  /** a thickness gauge's wall, and the time sound needs for it */
  wallMm: { from: 0.1, to: 500, unit: "mm" },
  microseconds: { from: 0.01, to: 1000, unit: "µs" },
  permille: { from: 0, to: 1000, unit: "‰" },
} as const;

const within = ({ from, to }: { from: number; to: number }) => z.number().min(from).max(to);
const u = z.number().nonnegative();
const colour = z.enum(colours);

const echo = z.object({
  thicknessMm: within(evidenceRanges.wallMm),
  uThicknessMm: u,
  microseconds: within(evidenceRanges.microseconds),
  uMicroseconds: u,
  paths: z.int().positive(),
});

const shape = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("magnet"), shows: z.enum(["none", "weak", "strong"]) }),
  z.object({
    kind: z.literal("conductivity"),
    percentIacs: within(evidenceRanges.percentIacs),
    uPercentIacs: u,
    celsius: within(evidenceRanges.celsius),
  }),
  z.object({
    kind: z.literal("sound"),
    mPerS: within(evidenceRanges.mPerS),
    uMPerS: u,
    echo: echo.optional(),
  }),
  z.object({ kind: z.literal("ring"), heard: z.enum(["clear", "dull"]) }),
  z.object({ kind: z.literal("scratch"), colour }),
  z.object({
    kind: z.literal("touch"),
    metal: z.enum(["gold", "silver", "neither"]),
    permille: z
      .object({ low: within(evidenceRanges.permille), high: within(evidenceRanges.permille) })
      .optional(),
  }),
  z.object({
    kind: z.literal("outline"),
    massG: within(evidenceRanges.massG),
    outlineCm3: within(evidenceRanges.outlineCm3),
    uOutlineCm3: u,
  }),
]);

/** Evidence as an entry of the ledger holds it; null when the entry holds none that is known here. */
export function recordedEvidence(body: unknown): Evidence | null {
  const read = shape.safeParse(body);
  if (!read.success) return null;
  const { data } = read;
  if (data.kind === "sound") {
    const { echo, ...speed } = data;
    return echo === undefined ? speed : { ...speed, echo };
  }
  if (data.kind !== "touch") return data;
  const { permille, ...touch } = data;
  return permille === undefined ? touch : { ...touch, permille };
}

const magnetWords = { none: "nothing", weak: "drifts slowly", strong: "pulls" } as const;
const touchWords = { gold: "reads like gold", silver: "reads like silver", neither: "neither" } as const;
/** Two significant digits are enough for a limit. */
const about = (x: number) => `${Number(x.toPrecision(2))}`;

function echoWords({ thicknessMm, microseconds, paths }: Echo): string {
  return `, from ${thicknessMm} mm crossed ${paths === 1 ? "once" : `${paths} times`} in ${microseconds} µs`;
}

/** What a test found, in words with its values; limits at two standard uncertainties. */
export function foundWords(found: Evidence): string {
  switch (found.kind) {
    case "magnet":
      return magnetWords[found.shows];
    case "conductivity":
      return `${found.percentIacs} ± ${about(2 * found.uPercentIacs)} % IACS at ${found.celsius} °C`;
    case "sound":
      return `${found.mPerS.toFixed(0)} ± ${about(2 * found.uMPerS)} m/s${found.echo ? echoWords(found.echo) : ""}`;
    case "ring":
      return found.heard === "clear" ? "rings clear" : "sounds dull";
    case "scratch":
      return `${found.colour.replace("-", " ")} under the scratch`;
    case "touch":
      return found.permille
        ? `${touchWords[found.metal]}, ${found.permille.low} to ${found.permille.high} ‰`
        : touchWords[found.metal];
    case "outline":
      return `${found.massG} g in an outline of ${Number(found.outlineCm3.toPrecision(4))} ± ${about(2 * found.uOutlineCm3)} cm³`;
  }
}
