import { z } from "zod";
import { type Message, message } from "../../../calibration/message.ts";
import { colours } from "../../metals/metal.ts";
import { type Evidence, magnetShows } from "./evidence.ts";

/** Ranges outside which a typed value is a slip of the hand, not a piece of metal. One place for form and ledger. */
export const evidenceRanges = {
  massG: { from: 0.001, to: 100_000, unit: "g" },
  outlineCm3: { from: 0.0001, to: 50_000, unit: "cm³" },
  percentIacs: { from: 0.1, to: 115, unit: "% IACS" },
  msPerM: { from: 0.06, to: 66.7, unit: "MS/m" },
  celsius: { from: -10, to: 60, unit: "°C" },
  mPerS: { from: 200, to: 20_000, unit: "m/s" },
  /** a thickness gauge's wall, and the time sound needs for it */
  wallMm: { from: 0.1, to: 500, unit: "mm" },
  microseconds: { from: 0.01, to: 1000, unit: "µs" },
  permille: { from: 0, to: 1000, unit: "‰" },
} as const;

/** Conductivity of annealed copper, 100 % IACS, in MS/m (IEC 60028). */
export const msPerMOfCopper = 58;

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
  z.object({ kind: z.literal("colour"), colour }),
  z.object({ kind: z.literal("worn"), colour }),
  z.object({ kind: z.literal("magnet"), shows: z.enum(magnetShows) }),
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

/** What a test found, with its values; limits at two standard uncertainties. */
export function foundBy(found: Evidence): Message {
  switch (found.kind) {
    case "magnet":
      return message(`test.found.magnet-${found.shows}`);
    case "conductivity":
      return message("test.found.conductivity", {
        percent_iacs: found.percentIacs,
        ms_per_m: (found.percentIacs * msPerMOfCopper) / 100,
        expanded_iacs: 2 * found.uPercentIacs,
        celsius: found.celsius,
      });
    case "sound":
      return found.echo
        ? message("test.found.sound-echo", {
            speed_m_s: found.mPerS,
            expanded_m_s: 2 * found.uMPerS,
            thickness_mm: found.echo.thicknessMm,
            paths: found.echo.paths,
            time_us: found.echo.microseconds,
          })
        : message("test.found.sound", { speed_m_s: found.mPerS, expanded_m_s: 2 * found.uMPerS });
    case "ring":
      return message(`test.found.ring-${found.heard}`);
    case "colour":
    case "worn":
    case "scratch":
      return message(`test.found.${found.kind}`, { colour: message(`metal-page.colours.${found.colour}`) });
    case "touch":
      return found.permille
        ? message("test.found.touch-range", {
            reads: message(`test.found.touch-${found.metal}`),
            low_permille: found.permille.low,
            high_permille: found.permille.high,
          })
        : message(`test.found.touch-${found.metal}`);
    case "outline":
      return message("test.found.outline", {
        mass_g: found.massG,
        outline_cm3: found.outlineCm3,
        expanded_cm3: 2 * found.uOutlineCm3,
      });
  }
}
