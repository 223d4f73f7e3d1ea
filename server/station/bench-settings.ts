import { z } from "zod";
import { isTimeZone } from "../../calibration/local-time.ts";
import { massUnits } from "../../calibration/units.ts";
import { ruleKinds } from "../conformity/decision-rule.ts";
import { type Instrument, instruments } from "../conformity/next-test.ts";
import { firstMethod, methodNames } from "../methods/index.ts";
import { conditionsShape, firstConditions } from "../weighing/conditions.ts";

/** What a bench mostly sees; the list of claims begins with it. */
export const metalGroups = ["silver", "gold", "platinum", "any"] as const;
export type MetalGroup = (typeof metalGroups)[number];

/** How readings reach the bench, as its owner said at first start. */
export const sources = ["typed", "cable", "simulated"] as const;

/** No rule leaves the finding alone; the others add a verdict on the claim's limits. */
export const ruleChoices = ["none", ...ruleKinds] as const;

/** Width of the guard band in expanded uncertainties U, as decimal text. */
export const guardBandRange = { from: 0.1, to: 3 } as const;
const guardBandMultiple = z
  .string()
  .refine((text) => Number(text) >= guardBandRange.from && Number(text) <= guardBandRange.to);

/** Units that masses of a lot can be told in beside grams. */
export const secondUnits = ["none", "ozt", "dwt"] as const;
export type SecondUnit = (typeof secondUnits)[number];

/** Which instruments for other tests are owned; until it is said, what is usual beside such a balance. */
export const instrumentChoices = ["unstated", "none", "conductivity", "sound", "both"] as const;

/** The instruments of a choice; undefined until it is said. */
export function ownedInstruments(
  choice: (typeof instrumentChoices)[number],
): readonly Instrument[] | undefined {
  if (choice === "unstated") return undefined;
  return instruments.filter((one) => choice === "both" || choice === one);
}

const limit = z.string().refine((text) => text === "" || Number(text) >= 0);

const line = z.string().trim().max(200);

/** Everything the Settings page keeps of a bench. Keys left out of an older entry take the value of a new bench. */
export const benchSettingsShape = z.object({
  method: z.enum(methodNames).default(firstMethod),
  metal: z.enum(metalGroups).default("any"),
  source: z.enum(sources).default("typed"),
  /** smallest step of the owner's scale, for the plan; on the bench the readings themselves show it */
  scaleStep: z.object({ text: z.string(), unit: z.enum(massUnits) }).default({ text: "0.01", unit: "g" }),
  /** what masses of a lot are told in beside grams; readings keep the unit they came in */
  secondUnit: z.enum(secondUnits).default("none"),
  instruments: z.enum(instrumentChoices).default("unstated"),
  /** how a density is compared with the band of the claim; fixed in a piece when it is opened */
  decisionRule: z
    .object({ kind: z.enum(ruleChoices), multiple: guardBandMultiple })
    .default({ kind: "none", multiple: "1" }),
  /** above which a second person confirms what was typed and agrees to what changes a settlement; decimal text, empty for never */
  secondPerson: z
    .object({ massG: limit.default(""), worth: limit.default(""), change: limit.default("") })
    .default({ massG: "", worth: "", change: "" }),
  conditions: conditionsShape.default(firstConditions),
  /** where it stands: the clock that its pages show, and the currency of its prices; the ledger keeps UTC */
  place: z
    .object({
      /** of the IANA list; empty for that of the computer */
      timeZone: z
        .string()
        .refine((zone) => zone === "" || isTimeZone(zone))
        .default(""),
      currency: z
        .string()
        .regex(/^([A-Z]{3})?$/)
        .default(""),
    })
    .default({ timeZone: "", currency: "" }),
  /** the house as its reports name it; empty for somebody who weighs for themselves */
  house: z
    .object({
      name: line,
      address: line,
      contact: line.default(""),
      verifiedScale: line,
      verifiedUntil: line,
      /** who accredited it for this work, and under which number; both or neither count */
      accreditedBy: line.default(""),
      accreditation: line.default(""),
    })
    .default({
      name: "",
      address: "",
      contact: "",
      verifiedScale: "",
      verifiedUntil: "",
      accreditedBy: "",
      accreditation: "",
    }),
});

export type BenchSettings = z.infer<typeof benchSettingsShape>;
/** Settings as they are told; what is left out of a part takes the value of a new bench. */
export type ToldSettings = z.input<typeof benchSettingsShape>;

/** Finding it out takes a third of a millisecond, and every page asks. */
const timeZoneOfComputer = new Intl.DateTimeFormat().resolvedOptions().timeZone;

/** The time zone of the place; that of the computer until one is stated. */
export function timeZoneOf({ place }: Pick<BenchSettings, "place">): string {
  return place.timeZone === "" ? timeZoneOfComputer : place.timeZone;
}

/** A bench nobody has described yet. */
export const firstSettings: BenchSettings = benchSettingsShape.parse({});
