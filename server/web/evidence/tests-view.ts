import { type Message, message, type Param } from "../../../calibration/message.ts";
import type { ExcludedView } from "../../../views/evidence/page.tsx";
import type { EvidenceKind } from "../../conformity/evidence/evidence.ts";
import { calledById } from "../../metals/composites/composite-by-id.ts";
import type { Library } from "../../metals/library.ts";
import { nextMessage } from "../../weighing/answer.ts";
import type { RecordedStatement } from "../../weighing/recorded-statement.ts";

type Stated = Pick<RecordedStatement, "checks" | "excluded_by_tests" | "next_tests">;

/** What the tests of a statement contradict, and what is odd about them. */
export function checksOfTests({ checks }: Pick<Stated, "checks">): Message[] {
  return checks.flatMap((one) =>
    typeof one !== "string" && one.code.startsWith("test.check.") ? [one] : [],
  );
}

/** What tests excluded, each with every reason. */
export function excludedByTests(
  excluded: NonNullable<Stated["excluded_by_tests"]>,
  library: Library,
): ExcludedView[] {
  const found = new Map<string, { id: string; called: Param; message: Message[] }>();
  for (const { id, by, says: sentence = message(`test.name.${by}`) } of excluded) {
    const one = found.get(id) ?? { id, called: calledById(id, library), message: [] };
    one.message.push(sentence);
    found.set(id, one);
  }
  return [...found.values()];
}

/** What one kind of test excluded, by name. */
export function excludedBy(
  kind: EvidenceKind,
  excluded: NonNullable<Stated["excluded_by_tests"]>,
  library: Library,
): Param[] {
  return excluded.filter(({ by }) => by === kind).map(({ id }) => calledById(id, library));
}

/** The tests to make next, in order. */
export function nextOf({ next_tests = [] }: Pick<Stated, "next_tests">): Message[] {
  return next_tests.map(nextMessage);
}
