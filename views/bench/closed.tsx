import type { BenchView } from "../../server/station/view.ts";
import { Told } from "../told.tsx";
import { useWords } from "../words/spoken.ts";

/** A failed check stands: what failed, when, what to do. Weighing goes on, and its records carry the mark. */
export function ClosedByChecks({ closed }: Pick<BenchView, "closed">) {
  const say = useWords().checks;
  if (closed === undefined) return null;
  return (
    <section class="problems" aria-label={say.closed}>
      <p>
        <strong>{say.closedSince(`${closed.since.slice(0, 16).replace("T", " ")} UTC`)}</strong>{" "}
        <Told says={closed.says} /> <Told says={closed.todo} /> {say.weighingMarked}{" "}
        <a href="/checks">{say.toChecks}</a>
      </p>
    </section>
  );
}
