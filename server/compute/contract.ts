import { z } from "zod";
import { dissolvedAirs, purities } from "../../calibration/liquid.ts";
import { ruleKinds } from "../conformity/decision-rule.ts";
import { states } from "../conformity/state.ts";
import { type Method, type MethodName, methods } from "../methods/index.ts";
import { series } from "./series.ts";

const positive = z.number().positive();
const notNegative = z.number().nonnegative();

const water = z.strictObject({
  kind: z.literal("water"),
  temperature_c: z.number(),
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
    temperature_u_c: notNegative.default(0.3),
    temperature_dof: positive.optional(),
    expansion_per_c: z.number().optional(),
  })
  .refine(({ body }) => (body.rise ? !body.dry && !body.immersed : body.dry && body.immersed), {
    path: ["body"],
    error: "Weigh the known body dry and immersed, or give the rise it makes: one of the two.",
  });

const statedLiquid = z.strictObject({
  kind: z.literal("stated"),
  name: z.string().min(1),
  density_g_cm3: positive,
  u_g_cm3: notNegative,
  temperature_c: z.number().optional(),
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
    error:
      'Air is one of {"density_kg_m3","u_kg_m3"}, {"temperature_c","pressure_hpa","humidity_pct"} or {"altitude_m"}, all numbers and nothing else beside them.',
  },
);

const balance = z.strictObject({
  readability_g: positive,
  repeatability_g: notNegative,
  repeatability_dof: positive.optional(),
  immersed_readability_g: positive.optional(),
  immersed_repeatability_g: notNegative.optional(),
  immersed_repeatability_dof: positive.optional(),
  linearity_g: notNegative.default(0),
  span_u_relative: notNegative.optional(),
});

const hanger = z
  .strictObject({
    wire_mm: notNegative.max(5).default(0),
    zeroed: z.enum(["immersed", "weighed"], {
      error:
        'The hanger is zeroed "immersed": at its working depth in the liquid, so that its own displacement cancels. One that was not zeroed is "weighed", with its reading alone as "in_liquid".',
    }),
    in_liquid: series.optional(),
    in_air: series.optional(),
    meniscus_change: notNegative.max(1).optional(),
    depth_mm: notNegative.optional(),
  })
  .superRefine(({ zeroed, in_liquid, in_air }, ctx) => {
    const say = (path: string, message: string) => ctx.addIssue({ code: "custom", path: [path], message });
    if (zeroed === "weighed" && !in_liquid)
      say("in_liquid", "A hanger weighed in needs its own reading at its working depth, without the piece.");
    if (zeroed === "immersed" && in_liquid)
      say(
        "in_liquid",
        'A hanger zeroed "immersed" has no reading of its own; leave it out, or write zeroed "weighed".',
      );
    if (zeroed === "immersed" && in_air)
      say(
        "in_air",
        'A hanger zeroed "immersed" is not in the dry readings; leave it out, or write zeroed "weighed".',
      );
  });

const addedBody = z.strictObject({
  name: z.string().min(1),
  mass_g: positive,
  u_mass_g: notNegative,
  density_g_cm3: positive,
  u_density_g_cm3: notNegative,
});

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
  confidence: z.number().min(0.5).max(0.9999).default(0.9545),
  decision_rule: decisionRule.optional(),
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

/** The claim's band as limits under the rule that was asked for; only there when one was. */
export const conformity = z.strictObject({
  rule: z.strictObject({ kind: z.enum(ruleKinds), multiple: z.number() }),
  limits_g_cm3: z.tuple([z.number(), z.number()]),
  acceptance_g_cm3: z
    .tuple([z.number(), z.number()])
    .nullable()
    .describe("null when the guard bands leave nothing between them"),
  verdict: z.enum(["pass", "conditional-pass", "conditional-fail", "fail"]),
  conformance_probability: z.number(),
  specific_risk: z.number().describe("probability that this verdict is wrong for this piece"),
  worst_acceptance_risk: z
    .number()
    .describe("highest probability of a wrong acceptance that the rule allows, at the worst accepted value"),
  says: z.string(),
});

export type Conformity = z.infer<typeof conformity>;

/** The answer to a request that could be computed. Full precision; dof is null when it is infinite. */
export const computeResponse = z.strictObject({
  id: z.string(),
  density_g_cm3: z.number(),
  u_g_cm3: z.number(),
  dof: z.number().nullable(),
  k: z.number(),
  expanded_g_cm3: z.number(),
  interval_g_cm3: z.tuple([z.number(), z.number()]),
  interval_from: z.enum(["gum", "monte-carlo"]),
  density_20_g_cm3: z.number(),
  relative_density: z.strictObject({ d20_4: z.number(), apparent: z.number() }),
  mass_g: z.number(),
  u_mass_g: z.number(),
  volume_cm3: z.number(),
  u_volume_cm3: z.number(),
  liquid_density_g_cm3: z.number().nullable().describe("null where no liquid was needed"),
  air_density_kg_m3: z.number(),
  budget: z.array(
    z.strictObject({
      input: z.string(),
      unit: z.string(),
      value: z.number(),
      u: z.number(),
      sensitivity: z.number(),
      contribution_g_cm3: z.number(),
      share: z.number(),
    }),
  ),
  finding: z.strictObject({
    claim: z.string().nullable(),
    state: z.enum(states),
    because: z.string(),
    conformity: conformity.optional(),
  }),
  alive: z.array(z.string()),
  warnings: z.array(z.string()),
});

export type ComputeResponse = z.infer<typeof computeResponse>;

/** The answer to a request that could not. `at` is the path of the key, such as "immersed.readings[0]". */
export const computeError = z.strictObject({
  id: z.string().nullable(),
  error: z.strictObject({ at: z.string(), message: z.string() }),
});

export type ComputeError = z.infer<typeof computeError>;
