import type { Message, Param } from "../../calibration/message.ts";
import type { TestKind } from "../evidence/choices.ts";
import { EvidenceSheet, type EvidenceView, NextTests } from "../evidence/index.tsx";
import { SizeSheet, type SizeView } from "../evidence/size.tsx";
import { useTell } from "../messages/spoken.ts";
import { type StateName, StateWord } from "../result.tsx";
import { Sentence } from "../sentence.tsx";
import { Sheet } from "../sheet.tsx";

/** Other tests of the piece on the bench, before it is weighed and after. */
export interface OtherTestsView {
  /** what density and tests together say; left out while there is no test, for then the result says it */
  standing?: { state: StateName; answer: Message };
  /** tests that cannot all be right, and what is odd about them */
  checks: readonly Message[];
  /** tests nobody made */
  notMade: readonly TestKind[];
  /** what the tests excluded */
  excluded: readonly Param[];
  next: readonly Message[];
  evidence: EvidenceView;
  size: SizeView;
}

const namesTold = 5;

/** What other tests found on the piece on the bench, those nobody made, and the forms to enter one. */
export function OtherTests({ tests }: { tests: OtherTestsView | undefined }) {
  const t = useTell();
  if (!tests) return null;
  const { standing, checks, notMade, excluded, next, evidence, size } = tests;
  return (
    <>
      <Sheet id="other-tests" title={t("other-tests.heading")}>
        {checks.length > 0 && (
          <div class="problems" role="alert">
            {checks.map((one) => (
              <p key={JSON.stringify(one)} data-code={one.code}>
                <Sentence message={one} />
              </p>
            ))}
          </div>
        )}
        {standing && (
          <p>
            <StateWord state={standing.state} /> <Sentence message={standing.answer} />
          </p>
        )}
        {excluded.length > 0 && (
          <p>
            {t("other-tests.excluded", {
              names: excluded.slice(0, namesTold),
              more: Math.max(0, excluded.length - namesTold),
            })}
          </p>
        )}
        <p>
          {notMade.length === 0
            ? t("other-tests.all-made")
            : t("other-tests.not-made", { names: notMade.map((kind) => ({ code: `test.name.${kind}` })) })}
        </p>
        <NextTests next={next} />
      </Sheet>
      <details open={evidence.refused !== undefined || size.problems.length > 0 || undefined}>
        <summary>{t("other-tests.enter")}</summary>
        <EvidenceSheet {...evidence} />
        <SizeSheet {...size} />
      </details>
    </>
  );
}
