import { type Message, message, type Param } from "../../calibration/message.ts";
import type { Conformity } from "../conformity/conformity.ts";
import { called } from "../metals/called.ts";
import type { Library } from "../metals/library.ts";
import type { StatedCheck, StatedConformity } from "./statement-shape.ts";

/** Alternatives named in the answer; the rest is counted. */
const named = 2;

/** The one-line answer of a statement: its state, what else fits, and what to do next. */
export function answerOf(
  { conformity, checks }: { conformity: StatedConformity; checks: readonly StatedCheck[] },
  found: Conformity | undefined,
  library: Library,
): Message {
  const { claim: id, state, needed_half_width_g_cm3 } = conformity;
  const claim = id === null || !library.has(id) ? (id ?? "") : called(library.metal(id));
  const stop = checks.find(({ severity }) => severity === "stop");
  if (stop && state === "no-valid-reading")
    return message("answer.no-valid-reading", { seen: message(stop.code, stop.params) });
  const others = (found?.notExcluded ?? [])
    .filter(({ metal }) => metal.id !== id)
    .map(({ metal }) => called(metal));
  const next = nextOf(found);
  switch (state) {
    case "consistent":
      return message("answer.consistent", { claim });
    case "consistent-not-unique":
      return message("answer.consistent-not-unique", { claim, others: someOf(others), next });
    case "excluded":
      return others.length === 0
        ? message("answer.excluded", { claim })
        : message("answer.excluded-fits", { claim, others: someOf(others) });
    case "inconclusive":
      return needed_half_width_g_cm3 === undefined
        ? message("answer.contradiction", { claim })
        : message("answer.inconclusive", {
            claim,
            others: someOf(others),
            needed_g_cm3: needed_half_width_g_cm3,
          });
    default:
      return others.length === 0
        ? message("answer.nothing-fits")
        : message("answer.no-claim", { others: someOf(others) });
  }
}

function someOf(others: readonly Param[]): Param {
  const rest = others.length - named;
  return rest > 0 ? [...others.slice(0, named), message("answer.more", { count: rest })] : others;
}

function nextOf(found: Conformity | undefined): Message {
  return message(`answer.next.${found?.nextTest?.test ?? "laboratory"}`);
}
