import { z } from "zod";
import { dissolvedAirs, purities } from "../../calibration/liquid.ts";
import { candidateKinds } from "../conformity/candidate.ts";
import { ruleKinds } from "../conformity/decision-rule.ts";
import { magnetShows } from "../conformity/evidence/evidence.ts";
import { separatingTests } from "../conformity/separation.ts";
import { states } from "../conformity/state.ts";
import { preciousElements } from "../metals/fineness/precious-element.ts";
import { colours } from "../metals/metal.ts";
import { occurrences } from "../metals/worth-table.ts";
import { type Method, type MethodName, methods } from "../methods/index.ts";
import { balance } from "./balance.ts";
import { errorCode, type RequestCode } from "./request-error.ts";
import { series } from "./series.ts";

const positive = z.number().positive();
const notNegative = z.number().nonnegative();

const temperatureCorrection = z
  .number()
  .optional()
  .describe("contained in temperature_c: what was added to the thermometer's reading; the budget names it");

const water = z.strictObject({
  kind: z.literal("water"),
  temperature_c: z.number(),
  temperature_correction_c: temperatureCorrection,
  temperature_u_c: notNegative.default(0.3),
  temperature_dof: positive
    .optional()
    .describe("degrees of freedom behind temperature_u_c; infinite when left out"),
  gradient_c: notNegative.default(0),
  purity: z.enum(purities).default("distilled"),
  dissolved_solids_mg_l: notNegative.max(5000).optional(),
  dissolved_air: z.enum(dissolvedAirs).default("unknown"),
  wetting_agent: z.boolean().default(false),
  formula_u_kg_m3: notNegative.optional(),
});

const measuredLiquid = z
  .strictObject({
    kind: z.literal("measured"),
    name: z.string().min(1),
    body: z.strictObject({
      volume_cm3: positive,
      u_volume_cm3: notNegative,
      dry: series.optional(),
      immersed: series.optional(),
      rise: series.optional(),
    }),
    temperature_c: z.number().optional(),
    temperature_correction_c: temperatureCorrection,
    temperature_u_c: notNegative.default(0.3),
    temperature_dof: positive.optional(),
    expansion_per_c: z.number().optional(),
  })
  .refine(({ body }) => (body.rise ? !body.dry && !body.immersed : body.dry && body.immersed), {
    path: ["body"],
    error: errorCode("compute.request.body-weighings"),
  });

const statedLiquid = z.strictObject({
  kind: z.literal("stated"),
  name: z.string().min(1),
  density_g_cm3: positive,
  u_g_cm3: notNegative,
  temperature_c: z.number().optional(),
  temperature_correction_c: temperatureCorrection,
  temperature_u_c: notNegative.default(0.3),
  temperature_dof: positive.optional(),
  stated_at_c: z.number().optional(),
  expansion_per_c: z.number().optional(),
});

const air = z.union(
  [
    z.strictObject({ density_kg_m3: positive, u_kg_m3: notNegative }),
    z.strictObject({
      temperature_c: z.number(),
      pressure_hpa: positive,
      humidity_pct: notNegative,
      temperature_u_c: notNegative.optional(),
      pressure_u_hpa: notNegative.optional(),
      humidity_u_pct: notNegative.optional(),
    }),
    z.strictObject({ altitude_m: z.number() }),
  ],
  {
    error: errorCode("compute.request.air"),
  },
);

const hanger = z
  .strictObject({
    wire_mm: notNegative.max(5).default(0),
    zeroed: z.enum(["immersed", "weighed"], {
      error: errorCode("compute.request.hanger-zeroed"),
    }),
    in_liquid: series.optional(),
    in_air: series.optional(),
    meniscus_change: notNegative.max(1).optional(),
    depth_mm: notNegative.optional(),
  })
  .superRefine(({ zeroed, in_liquid, in_air }, ctx) => {
    const say = (path: string, code: RequestCode) =>
      ctx.addIssue({ code: "custom", path: [path], message: errorCode(code) });
    if (zeroed === "weighed" && !in_liquid) say("in_liquid", "compute.request.hanger-unread");
    if (zeroed === "immersed" && in_liquid) say("in_liquid", "compute.request.hanger-read");
    if (zeroed === "immersed" && in_air) say("in_air", "compute.request.hanger-in-dry");
  });

const addedBody = z.strictObject({
  name: z.string().min(1),
  mass_g: positive,
  u_mass_g: notNegative,
  density_g_cm3: positive,
  u_density_g_cm3: notNegative,
});

/** What a claimed alloy is set in, of unknown mass: quartz, a resin. */
const setIn = z
  .strictObject({
    name: z.string().min(1).optional(),
    density_g_cm3: positive,
    u_g_cm3: notNegative,
  })
  .describe(
    "what the claimed alloy is set in, such as quartz around gold: how much of each the whole holds, and the fine metal, if the alloy is the claim; needs a claim",
  );

/** Agreed before measuring; U is the expanded uncertainty at the request's confidence. */
const decisionRule = z
  .strictObject({
    kind: z
      .enum(ruleKinds)
      .describe(
        "simple: inside the limits; guard-band: inside them by multiple·U; pass-and-conditional: four answers with multiple·U on both sides of each limit",
      ),
    multiple: positive.max(3).default(1).describe("guard band in expanded uncertainties U; unused by simple"),
  })
  .describe("rule by which the density is compared with the claim's band (JCGM 106, ILAC-G8); needs a claim");

/** A test made beside the weighing. */
const givenEvidence = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("colour"), colour: z.enum(colours) }),
  z.strictObject({ kind: z.literal("worn"), colour: z.enum(colours) }),
  z.strictObject({ kind: z.literal("magnet"), shows: z.enum(magnetShows) }),
  z.strictObject({
    kind: z.literal("conductivity"),
    percent_iacs: positive,
    u_percent_iacs: notNegative,
    temperature_c: z.number().default(20),
  }),
  z.strictObject({ kind: z.literal("sound"), m_per_s: positive, u_m_per_s: notNegative }),
  z.strictObject({ kind: z.literal("ring"), heard: z.enum(["clear", "dull"]) }),
  z.strictObject({ kind: z.literal("scratch"), colour: z.enum(colours) }),
  z.strictObject({
    kind: z.literal("touch"),
    metal: z.enum(["gold", "silver", "neither"]),
    permille: z.tuple([z.number().min(0).max(1000), z.number().min(0).max(1000)]).optional(),
  }),
  z.strictObject({
    kind: z.literal("outline"),
    mass_g: positive,
    outline_cm3: positive,
    u_outline_cm3: notNegative,
  }),
]);

export type GivenEvidence = z.output<typeof givenEvidence>;

/** A piece of the same claim that was weighed and whose fineness a laboratory found. */
const laboratoryResult = z.strictObject({
  of: z.string().min(1).optional().describe("which piece, in words of the caller"),
  permille: z.number().gt(0).lt(1000),
  u_permille: notNegative,
  density_20_g_cm3: positive,
  u_density_g_cm3: notNegative,
});

const common = {
  id: z.string().min(1),
  dry: series,
  air,
  balance,
  pieces: z.int().positive().default(1),
  odd_density_g_cm3: positive.optional(),
  added: z.array(addedBody).optional(),
  paired: z.boolean().default(false),
  claim: z
    .string()
    .min(1)
    .optional()
    .describe(
      "id of a metal of the library; POST /api/compute also knows the bench's own metals, the command line only the built-in ones",
    ),
  set_in: setIn.optional(),
  confidence: z.number().min(0.5).max(0.9999).default(0.9545),
  decision_rule: decisionRule.optional(),
  evidence: z
    .array(givenEvidence)
    .optional()
    .describe("other tests of the same piece; each excludes candidates"),
  laboratory_results: z
    .array(laboratoryResult)
    .min(1)
    .max(500)
    .optional()
    .describe(
      "on other pieces of the same claim; five or more narrow the fineness to pieces alloyed like them; needs a claim",
    ),
};

/** Keys of every method that needs a liquid. */
const inLiquid = {
  liquid: z.discriminatedUnion("kind", [water, statedLiquid, measuredLiquid]),
  hanger: hanger.default({ wire_mm: 0, zeroed: "immersed" }),
  bubble_allowance_mg: notNegative.default(0),
};

const anyMethod = z.strictObject({ ...common, ...z.object(inLiquid).partial().shape });

/** What every request holds beside the keys of its method, which the method itself reads. */
export type ComputeRequest = z.output<typeof anyMethod> & { method: MethodName };

function requestBy({ name, keys, pieceTemperature }: Method) {
  const own: object = keys;
  const method = z.literal(name);
  return pieceTemperature
    ? z.strictObject({ ...common, ...own, method })
    : z.strictObject({ ...common, ...inLiquid, ...own, method });
}

const [first, ...others] = Object.values(methods).map(requestBy);

/** A request to `underhook compute` and POST /api/compute. Unknown keys are errors. */
export const computeRequest: z.ZodType<ComputeRequest> = z.discriminatedUnion("method", [first!, ...others]);

const range = z.tuple([z.number(), z.number()]);

/** The claim's band as limits under the rule that was asked for. */
const decision = z.strictObject({
  rule: z.strictObject({ kind: z.enum(ruleKinds), multiple: z.number() }),
  limits_g_cm3: range,
  acceptance_g_cm3: range.nullable().describe("null when the guard bands leave nothing between them"),
  verdict: z.enum(["pass", "conditional-pass", "conditional-fail", "fail"]),
  conformance_probability: z.number(),
  specific_risk: z.number().describe("probability that this verdict is wrong for this piece"),
  worst_acceptance_risk: z
    .number()
    .describe("highest probability of a wrong acceptance that the rule allows, at the worst accepted value"),
  global_risk: z
    .strictObject({
      consumers: z.number().describe("accepted though its density is outside the claim's band"),
      producers: z.number().describe("rejected though it is the claim"),
      beyond_density: z.number().describe("accepted, something else with a density inside the band"),
    })
    .optional()
    .describe(
      "shares of all pieces offered as the claim and measured so, under the rule (JCGM 106, clause 9)",
    ),
});

const params = z.record(z.string(), z.unknown()).describe("values of the code, full precision");

/** A check on the weighing or the measurement. */
const check = z.strictObject({
  code: z.string(),
  severity: z.enum(["stop", "warn"]).describe("stop: no verdict while it stands"),
  params,
  message: z.string(),
});

const budgetLine = z.strictObject({
  input: z.string(),
  unit: z.string(),
  value: z.number(),
  u: z.number(),
  sensitivity: z.number(),
  contribution_g_cm3: z.number(),
  share: z.number(),
});

const ranges = { permille: range, fine_g: range };

/** How laboratory results on other pieces of the claim bear on the fineness. */
const byResults = z.strictObject({
  results: z.int(),
  needed: z.int().describe("fewer say nothing"),
  narrows: z.boolean().describe("they narrow the fineness that is stated"),
  family: z.strictObject(ranges).describe("over everything the claim allows"),
  like_them: z
    .strictObject({
      ...ranges,
      rest_cm3_g: range.describe("volume of what is beside the precious metal"),
      holds_stamp: z.boolean().describe("false: not alloyed like them, or not what it is stamped"),
    })
    .optional()
    .describe("if the piece is alloyed like them"),
});

/** The answer to a request that could be read: the statement of the weighing. Full precision. */
export const computeResponse = z.strictObject({
  id: z.string(),
  density_g_cm3: z.number().nullable().describe("null, as all numbers below, where no density follows"),
  u_g_cm3: z.number().nullable(),
  dof: z.number().nullable().describe("null as well when every uncertainty is taken as known"),
  k: z.number().nullable(),
  expanded_g_cm3: z.number().nullable(),
  interval_g_cm3: range.nullable(),
  interval_from: z.enum(["gum", "monte-carlo"]).nullable(),
  density_20_g_cm3: z.number().nullable(),
  relative_density: z.strictObject({ d20_4: z.number(), apparent: z.number() }).nullable(),
  mass_g: z.number().nullable(),
  u_mass_g: z.number().nullable(),
  volume_cm3: z.number().nullable(),
  u_volume_cm3: z.number().nullable(),
  liquid_density_g_cm3: z.number().nullable(),
  air_density_kg_m3: z.number().nullable(),
  budget: z.array(budgetLine),
  checks: z.array(check).describe("of the procedure and the measurement, stops first"),
  conformity: z.strictObject({
    claim: z.string().nullable(),
    state: z.enum(states),
    message: z.string(),
    decision: decision.optional(),
    needed_half_width_g_cm3: z.number().optional().describe("what would decide, where it is inconclusive"),
  }),
  not_excluded: z
    .array(
      z.strictObject({
        id: z.string(),
        kind: z.enum(candidateKinds),
        occurrence: z.enum(occurrences),
        likelihood_ratio: z
          .number()
          .describe("fit over that of the claim; over the best fit where the claim is none or excluded"),
      }),
    )
    .describe("the claim first, then by occurrence and likelihood ratio"),
  excluded_by_tests: z.array(z.strictObject({ id: z.string(), by: z.string() })),
  fineness: z
    .strictObject({
      element: z.enum(preciousElements),
      permille: range,
      fine_g: range,
      recipes: z.array(z.string()),
      laboratory_results: byResults.optional(),
    })
    .nullable(),
  set_in: z
    .strictObject({ alloy_g: range, body_g: range })
    .optional()
    .describe("of what set_in was given for: masses of the alloy and of the rest, if the alloy is the claim"),
  cautions: z.array(z.string()).describe("hazards of what is not excluded"),
  next_tests: z
    .array(
      z.strictObject({
        test: z.enum(separatingTests),
        separates: z.array(z.string()),
        elsewhere: z.literal(true).optional().describe("the instrument is not owned at this bench"),
      }),
    )
    .describe("harmless tests that tell what is left from the claim, in the order to make them"),
  answer: z.string(),
  versions: z.strictObject({ library: z.string() }),
});

export type ComputeResponse = z.infer<typeof computeResponse>;

/** The answer to a request that could not. `at` is the path of the key, such as "immersed.readings[0]". */
export const computeError = z.strictObject({
  id: z.string().nullable(),
  error: z.strictObject({ at: z.string(), message: z.string() }),
});

export type ComputeError = z.infer<typeof computeError>;
