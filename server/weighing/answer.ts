import { type Message, message, type Param } from "../../calibration/message.ts";
import type { Conformity, NotExcluded } from "../conformity/conformity.ts";
import { inPlainWords } from "../conformity/group.ts";
import type { NextTest } from "../conformity/next-test.ts";
import { plainlyNot } from "../conformity/plain-metals.ts";
import { called } from "../metals/called.ts";
import type { Library } from "../metals/library.ts";
import type { StatedCheck, StatedConformity } from "./statement-shape.ts";

/** The one-line answer of a statement: its state, what else fits, and what to do next. */
export function answerOf(
  { conformity, checks }: { conformity: StatedConformity; checks: readonly StatedCheck[] },
  found: Conformity | undefined,
  library: Library,
): Message {
  const { claim: id, state } = conformity;
  const stop = checks.find(({ severity }) => severity === "stop");
  if (stop && state === "no-valid-reading")
    return message("answer.no-valid-reading", { seen: message(stop.code, stop.params) });
  if (!found) return message("answer.nothing-fits");
  const claim = id === null || !library.has(id) ? (id ?? "") : called(library.metal(id));
  const others = found.notExcluded.filter(({ metal }) => metal.id !== id);
  const words = inPlainWords(others);
  const next = nextOf(found.nextTests);
  const [contradiction] = found.evidence.contradictions;
  if (contradiction && (state === "inconclusive" || state === "no-claim"))
    return message("answer.contradiction", { seen: contradiction });
  const coarse = checks.find(({ code }) => code === "conformity.too-coarse");
  if (coarse && state !== "excluded") return message(coarse.code, coarse.params);
  switch (state) {
    case "consistent":
      return message("answer.consistent", { claim });
    case "consistent-not-unique":
      return message("answer.consistent-not-unique", { claim, others: words, count: words.length, next });
    case "excluded":
      return words.length === 0
        ? message("answer.excluded", { claim })
        : message("answer.excluded-fits", { claim, others: { anyOf: inPlainWords(met(others)) } });
    default:
      return found.notExcluded.length === 0 ? message("answer.nothing-fits") : couldBe(found, next, library);
  }
}

/** Without the bodies somebody makes for a density, where anything else is left. */
function met<C extends Pick<NotExcluded, "occurrence">>(candidates: readonly C[]): readonly C[] {
  const found = candidates.filter(({ occurrence }) => occurrence !== "purpose-made");
  return found.length > 0 ? found : candidates;
}

/** What a piece could be, what it plainly is not, and what to do next where anything is left to tell apart. */
function couldBe(
  { claimed, notExcluded, nextTests, state }: Conformity,
  next: Param,
  library: Library,
): Message {
  const could = { anyOf: inPlainWords(notExcluded) };
  if (state === "no-claim" && notExcluded.every(({ occurrence }) => occurrence === "purpose-made"))
    return message("answer.only-made", { could });
  if (state === "no-claim" && nextTests.length === 0) return message("answer.could-only-be", { could });
  const near = claimed ?? notExcluded[0]!.metal;
  const not = plainlyNot(near.densityGPerCm3.nominal, notExcluded, library);
  return not.length === 0
    ? message("answer.could-be", { could, next })
    : message("answer.could-be-not", { could, not: { anyOf: not }, next });
}

/** The first test, then an instrument that is owned where it tells more than the next test at hand. */
function nextOf([easiest, ...rest]: readonly NextTest[]): Message {
  const telling = rest
    .filter(({ elsewhere }) => !elsewhere)
    .sort((a, b) => b.separates.length - a.separates.length);
  const [first, second] = [easiest, telling[0] ?? rest[0]].flatMap((one) => one ?? []).map(nextMessage);
  if (!first) return message("answer.next.nothing");
  return second ? message("answer.next.then", { first, second }) : first;
}

/** What to do for a test. */
export function nextMessage({ test, elsewhere }: NextTest): Message {
  return elsewhere && (test === "conductivity" || test === "sound")
    ? message(`answer.next.${test}-elsewhere`)
    : message(`answer.next.${test}`);
}
