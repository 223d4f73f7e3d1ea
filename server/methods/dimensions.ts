import { z } from "zod";
import { isDecimal } from "../../calibration/decimal.ts";
import {
  type LengthName,
  type MeasuredBody,
  solids,
  dimensions as weighing,
} from "../../calibration/dimensions.ts";
import { keysOf } from "../../calibration/keyed.ts";
import { message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { omitUndefined } from "../compute/omit-undefined.ts";
import { solidMetal } from "../metals/possible-densities.ts";
import { type Fields, type MethodCheck, method, type OwnForm, type StatedLine } from "./method.ts";

const length = z.strictObject({
  readings: z
    .array(z.string().refine(isDecimal))
    .min(1)
    .describe('mm as the instrument shows it, such as ["38.61"]'),
  readability_mm: z
    .number()
    .positive()
    .optional()
    .describe("one step; the readings' last place when left out"),
  u_mm: z.number().nonnegative().describe("standard uncertainty of the instrument's calibration"),
  repeatability_mm: z.number().nonnegative().optional().describe("of one reading; one step when left out"),
});

/** The piece is seldom at the room's temperature exactly; within so much it seldom differs (common practice). */
const uCelsius = 2;

const stated = z.strictObject({
  shape: z.enum(keysOf(solids)),
  length_mm: length.optional(),
  width_mm: length.optional(),
  height_mm: length.optional(),
  diameter_mm: length.optional(),
  thickness_mm: length.optional(),
  wall_mm: length.optional(),
  form_percent: z
    .number()
    .min(-50)
    .max(50)
    .default(0)
    .describe("true volume less the plain one, per cent of it"),
  form_half_width_percent: z.number().positive().max(50).describe("roundness, chamfer, relief: give or take"),
  temperature_c: z.number().min(-40).max(60).default(20).describe("of the piece while it is measured"),
  temperature_u_c: z.number().nonnegative().default(uCelsius),
});

type Dimensions = z.output<typeof stated>;

const lengthNames = [
  ...new Set(Object.values(solids).flatMap(({ lengths }) => lengths as readonly LengthName[])),
];

/** What a request states, for the model. Throws Refusal for a length that the shape does not have. */
function bodyOf(given: Dimensions): MeasuredBody {
  const own: readonly LengthName[] = solids[given.shape].lengths;
  const lengths: Partial<Record<LengthName, MeasuredBody["lengths"][LengthName] & object>> = {};
  for (const name of lengthNames) {
    const one = given[`${name}_mm`];
    if (one && !own.includes(name))
      throw new Refusal(
        "dimensions.not-of-shape",
        { length: message(`dimensions.length.${name}`), shape: message(`dimensions.shape.${given.shape}`) },
        `dimensions.${name}_mm`,
      );
    if (one)
      lengths[name] = omitUndefined({
        readings: one.readings,
        readabilityMm: one.readability_mm,
        uMm: one.u_mm,
        repeatabilityMm: one.repeatability_mm,
      });
  }
  return {
    solid: given.shape,
    lengths,
    formPercent: given.form_percent,
    formHalfWidthPercent: given.form_half_width_percent,
  };
}

/** How many times too dense a piece comes out whose lengths were typed in another unit than mm: of one, two or three. */
const slips = [
  { unit: "cm", factor: 10 },
  { unit: "in", factor: 25.4 },
].flatMap(({ unit, factor }) => [3, 2, 1].map((count) => ({ unit, count, factor: factor ** count })));

/** A length in another unit, or a piece that is not solid: no metal is so light or so dense. */
const lengthsUnlikely: MethodCheck = {
  code: "check.lengths-unlikely",
  detect({ density, claim }) {
    const value = density?.valueGPerCm3;
    if (value === undefined || (value >= solidMetal.low && value <= solidMetal.high)) return undefined;
    const [low, high] = claim
      ? [0.75 * claim.lowGPerCm3, 1.25 * claim.highGPerCm3]
      : [solidMetal.low, solidMetal.high];
    const slip = slips.find(({ factor }) => value / factor >= low && value / factor <= high);
    const light = value < solidMetal.low;
    return {
      severity: "stop",
      params: {
        density_g_cm3: value,
        cause: light ? "light" : slip ? "unit" : "dense",
        unit: slip?.unit ?? "mm",
        count: slip?.count ?? 0,
        otherwise_g_cm3: value / (slip?.factor ?? 1),
      },
      remedies: [
        { code: light ? "check.remedy.hollow-no-density" : "check.remedy.lengths-in-mm" },
        { code: "check.remedy.measure-again" },
      ],
    };
  },
};

const form: OwnForm = {
  step: "dimensions",
  key: "dimensions",
  read(typed, decimal) {
    const filled = keysOf(solids).filter((shape) =>
      solids[shape].lengths.some((name) => (typed[`${shape}-${name}`] ?? "").trim() !== ""),
    );
    const [shape, other] = filled;
    if (!shape) throw new Refusal("dimensions.none", {}, "box-length");
    if (other)
      throw new Refusal(
        "dimensions.two-shapes",
        { shapes: filled.map((one) => message(`dimensions.shape.${one}`)) },
        `${other}-${solids[other].lengths[0]}`,
      );
    const number = (field: string, unit: string, text?: string) => Number(decimal(field, { unit }, text));
    const optional = (field: string, unit: string) =>
      (typed[field] ?? "").trim() === "" ? undefined : number(field, unit);
    const step = optional("step", "mm");
    const lengths = solids[shape].lengths.map((name) => {
      const field = `${shape}-${name}`;
      const readings = (typed[field] ?? "")
        .split(/\s*;\s*/)
        .map((text) => decimal(field, { unit: "mm" }, text));
      // in another unit the last decimal no longer says how fine the instrument reads
      if (step === undefined && /[a-zµ]/i.test((typed[field] ?? "").replaceAll("mm", "")))
        throw new Refusal("dimensions.step-needed", {}, "step");
      return [
        `${name}_mm`,
        omitUndefined({ readings, readability_mm: step, u_mm: number("u", "mm") }),
      ] as const;
    });
    const read = omitUndefined({
      shape,
      ...Object.fromEntries(lengths),
      form_percent: optional("deviation", "%"),
      form_half_width_percent: number("form-half-width", "%"),
      temperature_c: optional("temperature", "°C"),
    });
    const checked = stated.safeParse(read);
    if (!checked.success) {
      const key = String(checked.error.issues[0]?.path[0]);
      throw new Refusal("dimensions.out-of-range", {}, fieldNames[key] ?? key);
    }
    try {
      weighing(bodyOf(checked.data));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      const name = /^dimensions\.(.*)_mm/.exec(error.at ?? "")?.[1] ?? "";
      throw new Refusal(error.code, error.params, `${shape}-${name}`);
    }
    return checked.data;
  },
  fieldsOf(kept) {
    const known = stated.safeParse(kept);
    if (!known.success) return {};
    const { shape, form_percent, form_half_width_percent, temperature_c } = known.data;
    const fields: Record<string, string> = {
      deviation: String(form_percent),
      "form-half-width": String(form_half_width_percent),
      temperature: String(temperature_c),
    };
    for (const name of solids[shape].lengths) {
      const one = known.data[`${name}_mm`];
      fields[`${shape}-${name}`] = one?.readings.join("; ") ?? "";
      if (one) fields.u = String(one.u_mm);
      if (one?.readability_mm !== undefined) fields.step = String(one.readability_mm);
    }
    return fields satisfies Fields;
  },
  lines(kept) {
    const known = stated.safeParse(kept);
    if (!known.success) return [];
    const { shape, form_percent, form_half_width_percent, temperature_c, temperature_u_c } = known.data;
    const lengths = solids[shape].lengths.flatMap((name): StatedLine[] => {
      const one = known.data[`${name}_mm`];
      if (!one) return [];
      const readings = one.readings.map((text) => ({ decimal: text }));
      return [
        {
          label: message(`dimensions.length.${name}`),
          value: message("dimensions.length-is", { readings, u_mm: one.u_mm }),
        },
      ];
    });
    return [
      { label: message("dimensions.shape"), value: message(`dimensions.shape.${shape}`) },
      ...lengths,
      {
        label: message("dimensions.form"),
        value: message("dimensions.form-is", { form_percent, half_width_percent: form_half_width_percent }),
      },
      {
        label: message("dimensions.temperature"),
        value: message("dimensions.temperature-is", { temperature_c, temperature_u_c }),
      },
    ];
  },
};

/** Fields of the form by the key they are kept under. */
const fieldNames: Readonly<Record<string, string>> = {
  form_percent: "deviation",
  form_half_width_percent: "form-half-width",
  temperature_c: "temperature",
};

/**
 * Density from dimensions, for pieces that must not get wet: weighed dry, measured with calliper or micrometer. Method F
 * of OIML R 111-1:2004 [from memory].
 */
export const dimensions = method({
  name: "dimensions",
  called: "from its dimensions",
  loads: [{ role: "dry", key: ["dry"] }],
  zeros: "of-hanger",
  without: ["check.denser-than-osmium"],
  checks: [lengthsUnlikely],
  details: ["pool", "room"],
  screensLots: false,
  keys: { dimensions: stated },
  weighing: ({ dimensions: given }) => weighing(bodyOf(given)),
  pieceTemperature: ({ dimensions: { temperature_c: celsius, temperature_u_c } }) => ({
    celsius,
    uCelsius: temperature_u_c,
  }),
  asked: ({ details }) => ({ dimensions: stated.parse(details.method) }),
  form,
  corrections: ["dimensions.correction"],
});
