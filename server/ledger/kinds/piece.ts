import { z } from "zod";
import { states, statesBefore } from "../../conformity/state.ts";
import { preciousMetals } from "../../metals/precious-metal.ts";
import { methodNames, roles } from "../../methods/index.ts";
import { decimalText, json, message, moment, receivedLine, told, weightReading, words } from "./shapes.ts";

const sha256Text = z.string().regex(/^[0-9a-f]{64}$/, { error: "a SHA-256, 64 hexadecimal digits" });

/** What the customer says about the piece; reported as theirs, never as measured. */
const customerSupplied = z.strictObject({
  claim: words.optional(),
  mass_g: decimalText.optional(),
  stones: words.optional(),
  marks: words.optional(),
  note: words.optional(),
});

const pieceOpened = z.strictObject({
  ticket: z.string().max(200),
  description: z.string().max(2000),
  /** id of the metal the piece is said to be */
  claim: z.string().max(100).nullable(),
  method: z.enum(methodNames).optional(),
  pieces: z.number().int().min(1).optional(),
  condition: words.optional(),
  lot: words.optional(),
  operator: words.optional(),
  customer: words.optional(),
  customerSupplied: customerSupplied.optional(),
  receivedAt: moment.optional(),
  /** what the operator was warned of and accepted before wetting */
  cautions: z.array(words).optional(),
  /** the setting of the bench at this piece, as the bench defines it: balance, liquid, air, thermometer */
  settings: json.optional(),
  /** a rule of the customer's, in words */
  decisionRule: words.optional(),
  /** what was agreed before the first reading: the rule for the claim's limits and the confidence it is applied at */
  rule: z
    .strictObject({
      kind: z.enum(["none", "simple", "guard-band", "pass-and-conditional"]),
      /** width of the guard band in expanded uncertainties */
      multiple: decimalText,
      confidence_percent: decimalText,
    })
    .optional(),
  sampling: words.optional(),
});

const settled = z.looseObject({
  /** why the reading was taken as settled, in words */
  /** the sentence of earlier versions */
  because: words.optional(),
  scatter_g: z.number().nonnegative().optional(),
  seconds: z.number().nonnegative().optional(),
});

/** What a sensor beside the balance showed with a reading. */
const sensed = z.strictObject({
  sensor: words,
  place: z.enum(["liquid", "air"]),
  quantity: z.enum(["temperature", "pressure", "humidity"]),
  text: decimalText,
  unit: words,
  /** in °C, hPa or % */
  value: z.number(),
  half_width: z.number().positive().optional(),
  at: moment,
  monotonicMs: z.number(),
  raw: z.string(),
});

/** Where the display was going when the reading was taken, in g. */
const atRest = z.strictObject({
  grams: z.number(),
  u_g: z.number().nonnegative(),
  drift_u_g: z.number().nonnegative(),
  flags: z.array(words),
});

const weightCapture = z.strictObject({
  what: z.enum(roles),
  reading: weightReading,
  source: z.enum(["balance", "typed", "simulated"]),
  balance: words.optional(),
  profile: words.optional(),
  readability_g: z.number().positive().optional(),
  lines: z.array(receivedLine),
  /** every line since the capture before was the same, to the last sign */
  unmoved: z.literal(true).optional(),
  at_rest: atRest.optional(),
  sensed: z.array(sensed).optional(),
  /** sensors that were silent when it was taken */
  silent: z.array(words).optional(),
  settled: settled.optional(),
  operator: words.optional(),
});

const temperatureCapture = z.strictObject({
  what: z.enum(["temperature", "air-temperature"]),
  celsius: decimalText,
  source: z.enum(["thermometer", "typed", "simulated"]),
  thermometer: words.optional(),
  u_celsius: z.number().nonnegative().optional(),
  lines: z.array(receivedLine),
  operator: words.optional(),
});

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
const benchClosed = z.strictObject({ since: moment, says: told, todo: told });

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

const result = z
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
    operator: words.optional(),
  })
  .refine(({ statement, response }) => statement !== undefined || response !== undefined, {
    error: "a result holds its statement, or the answer of an earlier version",
  });

export const pieceKinds = {
  "piece-opened": pieceOpened,
  capture: z.discriminatedUnion("what", [weightCapture, temperatureCapture]),
  /** an entry is declared void: it stays and stays visible */
  voiding: z.strictObject({ entry: words, reason: told, by: words.optional() }),
  result,
  /** replaces what an earlier entry says; the earlier one stays */
  amendment: z.strictObject({
    replaces: words,
    reason: words,
    by: words,
    /** the rule stays what it was before measuring */
    piece: pieceOpened.omit({ rule: true }).partial().optional(),
    result: result.optional(),
  }),
  /** the statement made anew after another test: the record's own request with every test that counts */
  statement: z.strictObject({
    /** the entry whose measurement it states */
    of: words,
    request: z.looseObject({}),
    statement,
    versions: z.record(z.string(), z.string()),
  }),
  /** other evidence of the same piece, such as magnet or size */
  evidence: z.looseObject({ test: words, outcome: z.union([words, message]) }),
  /** a picture of the piece, kept beside the ledger under its hash; the chain covers it by that */
  photo: z.strictObject({
    hash: z.string().regex(/^[0-9a-f]{64}$/, { error: "the SHA-256 of the file, 64 hexadecimal digits" }),
    bytes: z.number().int().min(1),
    type: z.enum(["image/jpeg", "image/png", "image/webp"]),
    width: z.number().int().min(1),
    height: z.number().int().min(1),
    /** what it shows, in the operator's words */
    shows: words.optional(),
    by: words.optional(),
  }),
  /** what a laboratory found in the piece, or in a sample of it; the newest counts, the earlier ones stay */
  "laboratory-assay": z.strictObject({
    metal: z.enum(preciousMetals),
    permille: decimalText,
    /** expanded uncertainty as the laboratory states it, ‰, and the coverage factor it states with it */
    expanded_permille: decimalText.optional(),
    coverage_factor: decimalText.optional(),
    laboratory: words,
    report: words,
    method: words,
    /** day of the report, 2026-03-02 */
    date: z.iso.date(),
    /** id of the assay that this one corrects or follows */
    replaces: words.optional(),
    reason: words.optional(),
    by: words.optional(),
  }),
  /** the dry mass is not the announced one, and somebody says that it is the right piece all the same */
  "right-piece": z.strictObject({
    /** the readings it rests on */
    of: z.array(words).min(1),
    /** as stated and as read: "31.1 g" */
    announced: words,
    weighed: words,
    reason: words,
    by: words.optional(),
  }),
  note: z.union([
    z.strictObject({ text: words, by: words.optional() }),
    z.strictObject({ message, by: words.optional() }),
  ]),
  "piece-left": z.strictObject({ reason: told, by: words.optional() }),
  "report-issued": z.strictObject({
    number: words,
    copy: z.number().int().min(1),
    /** id and hash of the entry the report states */
    record: words,
    recordHash: z.string(),
    replaces: words.optional(),
    /** who authorised it */
    by: words.optional(),
    /** two letters; reports from before there was a choice are in English */
    language: z
      .string()
      .regex(/^[a-z]{2}$/, { error: "two small letters, such as de" })
      .optional(),
    /** what the report printed that later versions of library and key would change */
    keyId: z.string().optional(),
    bands: z.array(z.strictObject({ id: words, name: words, low: z.number(), high: z.number() })).optional(),
    /** the click that asked for it, so that a click sent twice issues once */
    click: words.optional(),
    /** SHA-256 of the PDF and of the main part of the page as they were printed; kept beside the ledger */
    print: z.strictObject({ pdf: sha256Text, page: sha256Text }).optional(),
    /** version of the program whose wording it has */
    program: words.optional(),
  }),
  /** a weighing from before this ledger, taken over from a list; says where it came from */
  "imported-weighing": z.looseObject({
    ticket: z.string(),
    description: z.string(),
    measuredAt: z.string(),
    from: words,
    mass_g: decimalText,
    density_g_cm3: decimalText,
    u_g_cm3: decimalText.optional(),
    claim: z.string().nullable().optional(),
  }),
};
