import { type Message, message, type Param } from "../../../calibration/message.ts";
import { called } from "../../metals/called.ts";
import { builtIn, type Library } from "../../metals/library.ts";
import type { Metal } from "../../metals/metal.ts";
import { causeOf, needsFiner } from "../alternative.ts";
import type { NotExcluded } from "../conformity.ts";
import { repeatedAmong } from "../repeated.ts";
import { worthPassingOff } from "../worth.ts";
import type { Plan } from "./planned-result.ts";
import type { PlannedWeighing } from "./planned-weighing.ts";

/** What the weighing is expected to show: the displaced mass, to the scale's decimals, and the density's interval. */
export function expectedMessage(
  plan: Pick<Plan, "expected" | "expandedGPerCm3" | "expandedPercent">,
  { pieces, readabilityG }: PlannedWeighing,
): Message {
  const decimals = Math.max(0, Math.ceil(-Math.log10(readabilityG)));
  return message("plan.expected", {
    pieces,
    displaced_g: { decimal: plan.expected.displacedG.toFixed(decimals) },
    expanded_g_cm3: { decimal: plan.expandedGPerCm3.toPrecision(2) },
    expanded_percent: { decimal: plan.expandedPercent.toPrecision(2) },
  });
}

/** The first few of them, and the count of the rest; a second entry of one thing is left out. */
function few(entries: readonly { id: string; called: Param }[], most: number): Param[] {
  const isRepeated = repeatedAmong(
    entries.map(({ id }) => id),
    builtIn,
  );
  const all = entries.filter(({ id }) => !isRepeated(id));
  const named = all.slice(0, most).map((one) => one.called);
  return all.length > most ? [...named, message("plan.and-more", { n: all.length - most })] : named;
}

const named = ({ metal }: NotExcluded) => ({ id: metal.id, called: called(metal) });

/** The plan in a few sentences, before the piece is wetted. */
export function sentencesOf(
  plan: Omit<Plan, "message">,
  claimed: Metal,
  weighing: PlannedWeighing,
  { worth }: Library,
): readonly Message[] {
  const sentences = [expectedMessage(plan, weighing)];
  if (plan.excludes.length > 0) sentences.push(message("plan.excludes", { names: few(plan.excludes, 4) }));
  const finer = plan.cannotExclude.filter((one) => needsFiner(one, claimed, worth));
  if (finer.length > 0) {
    const untold = { claim: called(claimed), names: few(finer.map(named), 4) };
    sentences.push(
      plan.remedies.length > 0
        ? message("plan.does-not-tell-yet", { ...untold, ways: waysOf(plan.remedies) })
        : message("plan.does-not-tell", untold),
    );
  }
  const never = plan.cannotExclude.filter(
    (one) =>
      causeOf(one, claimed) !== "uncertainty" && (one.tuned || worthPassingOff(one.metal, claimed, worth)),
  );
  if (never.length > 0) sentences.push(message("plan.never-excludes", { names: few(never.map(named), 5) }));
  if (weighing.pieces > 1) sentences.push(...aboutTheMean(plan, weighing.pieces));
  return sentences;
}

function aboutTheMean({ pooled }: Omit<Plan, "message">, pieces: number): Message[] {
  const kinds = pooled.map((kind) => message("plan.hidden-kind", { n: kind.hidden, metal: kind.called }));
  return [
    message("plan.mean-only", { pieces }),
    ...(kinds.length > 0 ? [message("plan.hidden-in-mean", { kinds })] : []),
    message("plan.each-piece-first"),
  ];
}

/** Ways out of a weighing that cannot answer, as "a or b". */
function waysOf(remedies: Plan["remedies"]): Param {
  return { anyOf: remedies.map(({ message: sentence }) => sentence) };
}

/** A weighing whose displaced mass this scale cannot see, and what would. */
export function notPossible(
  displacedG: number,
  readabilityG: number,
  remedies: Plan["remedies"],
): readonly Message[] {
  return [
    message("plan.not-possible", {
      displaced_g: { decimal: displacedG.toPrecision(2) },
      step_g: readabilityG,
    }),
    ...(remedies.length > 0 ? [message("plan.it-takes", { ways: waysOf(remedies) })] : []),
  ];
}
