import type { Message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { plainAnswer } from "../conformity/plan/plain-answer.ts";
import { expectedMessage } from "../conformity/plan/plan-messages.ts";
import type { Plan } from "../conformity/plan/planned-result.ts";
import type { PlannedWeighing } from "../conformity/plan/planned-weighing.ts";
import type { Library } from "../metals/library.ts";
import { methods, rolesOf } from "../methods/index.ts";
import type { Conditions } from "./conditions.ts";
import { type Item, meanGrams, standing } from "./item.ts";
import { plannedOn } from "./planned-on.ts";
import { balanceFor, type ProfileOf } from "./request.ts";

/** What a piece that lies weighed dry will show once it is wet, and what it will not; with the weighing this is about. */
export interface BeforeWetting {
  message: readonly Message[];
  weighing: PlannedWeighing;
  /** where the density is expected and how wide its interval will be, g/cm³; left out where nothing can be seen */
  expected?: { value: number; halfWidth: number };
  /** what it will not exclude, the likeliest first */
  leaves: readonly string[];
}

interface Planning {
  plan?: (weighing: PlannedWeighing) => Promise<Plan>;
  conditions: () => Conditions;
  profileOf?: ProfileOf;
  library: () => Library;
}

/**
 * The weighing that lies ahead of a claimed piece: its dry mass is known, its balance too, and nothing is wet yet.
 * Undefined at any other moment, for another liquid or added bodies, which no plan covers, and while a lot is screened,
 * where nobody reads a plan between two pieces.
 */
function weighingAhead(
  item: Item,
  { conditions, profileOf }: Pick<Planning, "conditions" | "profileOf">,
): PlannedWeighing | undefined {
  const { claim, method, details, lot, agreed } = item;
  const dry = standing(item, "dry");
  if (!methods[method].plan) return undefined;
  const wet = rolesOf(method).some((role) => role !== "dry" && standing(item, role).length > 0);
  if (claim === undefined || lot !== undefined || dry.length === 0 || wet) return undefined;
  if (details.liquid !== undefined || details.added !== undefined || details.hanger?.in_air !== undefined)
    return undefined;
  const now = conditions();
  const balance = balanceFor({ dry, wet: [], steps: details.steps }, now, profileOf);
  const pieces = details.pieces ?? 1;
  return {
    claim,
    method,
    pieces,
    massG: meanGrams(dry) / pieces,
    ...plannedOn(balance, now),
    confidence: Number(agreed?.confidence_percent ?? now.confidencePercent) / 100,
  };
}

/** The same in sentences; undefined where nothing can be planned. */
export async function beforeWetting(item: Item, parts: Planning): Promise<BeforeWetting | undefined> {
  const weighing = weighingAhead(item, parts);
  if (weighing === undefined || parts.plan === undefined) return undefined;
  try {
    const plan = await parts.plan(weighing);
    const message = plainAnswer(plan, parts.library());
    const leaves = plan.cannotExclude.map(({ metal }) => metal.id);
    if (!plan.possible) return { message, weighing, leaves };
    const expected = { value: plan.expected.gPerCm3, halfWidth: plan.expandedGPerCm3 };
    return { message: [expectedMessage(plan, weighing), ...message], weighing, expected, leaves };
  } catch (error) {
    // a dry mass of nothing or a claim that left the library: the weighing itself will say so
    if (error instanceof Refusal) return undefined;
    throw error;
  }
}
