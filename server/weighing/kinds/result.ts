import { z } from "zod";
import { states, statesBefore } from "../../conformity/state.ts";
import { message, moment, sentence, words } from "../../ledger/shapes.ts";

/** The part of an answer of `underhook compute` that lists and reports rest on; the rest is kept as it came. */
const computeAnswer = z.looseObject({
  density_g_cm3: z.number().positive(),
  u_g_cm3: z.number().nonnegative(),
  dof: z.number().nullable().optional(),
  k: z.number().positive(),
  expanded_g_cm3: z.number().nonnegative(),
  interval_g_cm3: z.tuple([z.number(), z.number()]),
  interval_from: z.enum(["gum", "monte-carlo"]),
  density_20_g_cm3: z.number().nullable().optional(),
  mass_g: z.number(),
  u_mass_g: z.number().optional(),
  volume_cm3: z.number().optional(),
  u_volume_cm3: z.number().optional(),
  liquid_density_g_cm3: z.number().nullable().optional(),
  air_density_kg_m3: z.number().optional(),
  budget: z
    .array(
      z.looseObject({
        input: z.string(),
        unit: z.string(),
        value: z.number(),
        u: z.number(),
        sensitivity: z.number(),
        contribution_g_cm3: z.number(),
        share: z.number(),
      }),
    )
    .optional(),
  finding: z
    .looseObject({
      claim: z.string().nullable().optional(),
      state: z.enum([...states, ...statesBefore]),
      because: z.string(),
    })
    .nullable()
    .optional(),
  alive: z.array(z.string()).optional(),
  warnings: z.array(z.string()).optional(),
});

/** the bench was closed by a check that had failed: since when, what failed, what to do */
const benchClosed = z.strictObject({ since: moment, says: sentence, todo: sentence });

/** a version of what the checks say of a balance or of the thermometer, by its entry */
const profileUsed = z.strictObject({
  of: words,
  version: z.number().int().min(1),
  entry: words,
  validUntil: moment,
});

/** The part of a statement that lists and reports rest on; the rest is kept as it was made. */
export const statement = z.looseObject({
  density_g_cm3: z.number().positive(),
  u_g_cm3: z.number().nonnegative(),
  k: z.number().positive(),
  expanded_g_cm3: z.number().nonnegative(),
  interval_g_cm3: z.tuple([z.number(), z.number()]),
  interval_from: z.enum(["gum", "monte-carlo"]),
  mass_g: z.number(),
  checks: z.array(z.looseObject({ code: z.string(), severity: z.enum(["stop", "warn"]) })),
  conformity: z.looseObject({ claim: z.string().nullable(), state: z.enum(states) }),
  not_excluded: z.array(z.looseObject({ id: z.string() })),
  answer: z.looseObject({ code: z.string() }),
});

/** The statement of readings that are those of no density: why, and no number. */
const noReading = statement.extend({
  density_g_cm3: z.null(),
  u_g_cm3: z.null(),
  k: z.null(),
  expanded_g_cm3: z.null(),
  interval_g_cm3: z.null(),
  interval_from: z.null(),
  mass_g: z.null(),
  conformity: z.looseObject({ claim: z.string().nullable(), state: z.literal("no-valid-reading") }),
});

/** What a record states: a measurement, or why there is none. */
export const recordedStatement = z.union([statement, noReading]);

export const result = z
  .strictObject({
    request: z.looseObject({}),
    /** the answer as versions before statements kept it */
    response: computeAnswer.optional(),
    /** the statement of the weighing, frozen as it was made */
    statement: recordedStatement.optional(),
    /** of the program, the constants and the library of metals, by name */
    versions: z.record(z.string(), z.string()),
    /** how the bench stood in its checks while the piece was weighed; left out when nothing is to be said */
    checked: z
      .strictObject({ closed: benchClosed.optional(), profiles: z.array(profileUsed).optional() })
      .optional(),
    /** checks on the procedure that stop the record and were not answered: it says nothing until they are */
    stops: z.array(message).optional(),
    /** entries of readings whose load was watched after the take until a creep was excluded */
    watched: z.array(words).optional(),
    operator: words.optional(),
  })
  .refine(({ statement, response }) => statement !== undefined || response !== undefined, {
    error: "a result holds its statement, or the answer of an earlier version",
  });
