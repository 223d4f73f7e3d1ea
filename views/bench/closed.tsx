import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import type { BenchView } from "./view.ts";

/** A failed check stands: what failed, when, what to do. Weighing goes on, and its records carry the mark. */
export function ClosedByChecks({ closed }: Pick<BenchView, "closed">) {
  const t = useTell();
  if (closed === undefined) return null;
  return (
    <section class="problems" aria-label={t("checks-page.closed")}>
      <p>
        <strong>{t("checks-page.closed-since", { since: closed.since })}</strong>{" "}
        <Sentence message={closed.message} /> <Sentence message={closed.todo} />{" "}
        {t("checks-page.weighing-marked")} <a href="/checks">{t("checks-page.to-checks")}</a>
      </p>
    </section>
  );
}
