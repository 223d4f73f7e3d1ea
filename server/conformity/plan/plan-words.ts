import type { Metal } from "../../metals/metal.ts";
import { fewNames } from "../distinct-names.ts";
import { needsFiner } from "../look-alike.ts";
import type { Plan } from "./plan.ts";
import type { PlannedWeighing } from "./planned-weighing.ts";

/** What the weighing is expected to show: the displaced mass, to the scale's decimals, and the density's interval. */
export function expectedWords(
  plan: Pick<Plan, "expected" | "expandedGPerCm3" | "expandedPercent">,
  { pieces, readabilityG }: PlannedWeighing,
): string {
  const decimals = Math.max(0, Math.ceil(-Math.log10(readabilityG)));
  const together = pieces > 1 ? `${pieces} pieces together displace` : "The piece displaces";
  return `${together} about ${plan.expected.displacedG.toFixed(decimals)} g; the density comes out within ±${plan.expandedGPerCm3.toPrecision(2)} g/cm³ (${plan.expandedPercent.toPrecision(2)} %).`;
}

/** The plan in a few sentences, before the piece is wetted. */
export function sentenceOf(plan: Omit<Plan, "says">, claimed: Metal, weighing: PlannedWeighing): string {
  const sentences = [expectedWords(plan, weighing)];
  if (plan.excludes.length > 0) sentences.push(`That excludes ${fewNames(plan.excludes, 4)}.`);
  const finer = plan.cannotExclude.filter(needsFiner);
  if (finer.length > 0)
    sentences.push(
      `It does not tell ${claimed.name} from ${fewNames(finer, 4)}${plan.remedies.length > 0 ? `; ${plan.remedies.map((r) => r.says).join(", or ")} would` : ""}.`,
    );
  const never = plan.cannotExclude.filter((l) => l.why !== "uncertainty" && l.worthMaking);
  if (never.length > 0) sentences.push(`No density ever excludes ${fewNames(never, 5)}.`);
  if (weighing.pieces > 1)
    sentences.push(
      `Only the mean of the ${weighing.pieces} is seen${plan.pooled.map((o) => `, and ${o.hidden} of ${o.name} among them would hide in it`).join("")}: each piece must first pass mass, size and magnet on its own.`,
    );
  return sentences.join(" ");
}
