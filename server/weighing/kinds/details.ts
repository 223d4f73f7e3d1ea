import { z } from "zod";
import { massUnits } from "../../../calibration/units.ts";
import { decimalText, json, words } from "../../ledger/shapes.ts";

/** A reading as it stood on the display. */
const shown = z.strictObject({ text: decimalText, unit: z.enum(massUnits) });

const liquidNamed = {
  name: words,
  /** of the bottle, so that a report can be traced to it */
  lot: words.optional(),
  /** cubic expansion, 1/°C */
  expansion_per_c: decimalText.optional(),
};

const liquid = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("stated"),
    ...liquidNamed,
    density_g_cm3: decimalText,
    u_g_cm3: decimalText,
    stated_at_c: decimalText.optional(),
  }),
  z.strictObject({
    kind: z.literal("measured"),
    ...liquidNamed,
    volume_cm3: decimalText,
    u_volume_cm3: decimalText,
    weighed: z.union([z.strictObject({ dry: shown, immersed: shown }), z.strictObject({ rise: shown })]),
  }),
]);

/** What is particular to one weighing beside its readings; decimal text in the unit of the name. Left out: as the settings say. */
const weighingDetails = z.strictObject({
  /** several identical pieces weighed together, and the density an odd one among them would have */
  pieces: z.number().int().min(2).max(10_000).optional(),
  odd_g_cm3: decimalText.optional(),
  added: z
    .array(
      z.strictObject({
        name: words,
        mass_g: decimalText,
        u_mass_g: decimalText,
        density_g_cm3: decimalText,
        u_density_g_cm3: decimalText,
      }),
    )
    .optional(),
  hanger: z
    .strictObject({
      wire_mm: decimalText.optional(),
      /** the hanger weighed in at its depth instead of zeroed there, and in air where the dry readings hold it */
      in_liquid: shown.optional(),
      in_air: shown.optional(),
    })
    .optional(),
  liquid: liquid.optional(),
  wetting_agent: z.literal(true).optional(),
  /** half-width of the difference between thermometer and piece */
  gradient_c: decimalText.optional(),
  air: z
    .strictObject({ temperature_c: decimalText, pressure_hpa: decimalText, humidity_pct: decimalText })
    .optional(),
  /** one step of the display, where its decimals do not tell: steps of five, or two ranges */
  steps: z.strictObject({ dry_g: decimalText.optional(), wet_g: decimalText.optional() }).optional(),
  /** the drift of the zero is fitted through zeros and readings in the time they were entered at */
  drift_fit: z.enum(["kept", "wet", "dried"]).optional(),
  /** dry and immersed repeats were taken in pairs */
  paired: z.literal(true).optional(),
  /** what the form of its method states, as that method defines it */
  method: z.record(z.string(), json).optional(),
  /** mass of the liquid in the full flask, and how much warmer it was than the filling with the piece */
  flask: z.strictObject({ liquid_g: decimalText, warmer_c: decimalText, warmer_u_c: decimalText }).optional(),
});

export const weighingKinds = {
  /** what is particular to a weighing; the newest of a piece counts, earlier ones stay */
  "weighing-details": weighingDetails,
};
