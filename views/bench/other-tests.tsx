import type { Message } from "../../calibration/message.ts";
import { EvidenceSheet, type EvidenceView } from "../evidence/index.tsx";
import { SizeSheet, type SizeView } from "../evidence/size.tsx";
import { type StateName, StateWord } from "../finding.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { toldValue } from "../words/told.ts";

/** Other tests of the piece on the bench, before it is weighed and after. */
export interface OtherTestsView {
  /** what density and tests together say; left out while there is no test, for then the finding says it */
  standing?: { state: StateName; because: Message | string };
  contradictions: readonly string[];
  doubts: readonly string[];
  /** tests nobody made */
  holes: readonly string[];
  /** names of what the tests struck out */
  struckOut: readonly string[];
  next?: string;
  evidence: EvidenceView;
  size: SizeView;
}

const namesTold = 5;

/** What other tests found on the piece on the bench, the holes they leave, and the forms to enter one. */
export function OtherTests({ tests }: { tests: OtherTestsView | undefined }) {
  const t = useTell();
  const locale = useLocale();
  if (!tests) return null;
  const { standing, contradictions, doubts, holes, struckOut, next, evidence, size } = tests;
  const named = (names: readonly string[]) => names.map((name) => toldValue(name, locale)).join(", ");
  return (
    <>
      <Sheet id="other-tests" title={t("other-tests.heading")}>
        {contradictions.length > 0 && (
          <div class="problems" role="alert">
            {contradictions.map((one) => (
              <p key={one}>
                <Told says={one} />
              </p>
            ))}
          </div>
        )}
        {standing && (
          <p>
            <StateWord state={standing.state} locale={locale} /> <Told says={standing.because} />
          </p>
        )}
        {struckOut.length > 0 && (
          <p>
            {t("other-tests.struck-out", {
              names: named(struckOut.slice(0, namesTold)),
              more: Math.max(0, struckOut.length - namesTold),
            })}
          </p>
        )}
        {doubts.map((one) => (
          <p key={one}>
            <Told says={one} />
          </p>
        ))}
        <p>
          {holes.length === 0 ? t("other-tests.no-holes") : t("other-tests.holes", { names: named(holes) })}
        </p>
        {next !== undefined && (
          <p>
            <strong>{t("other-tests.next")}</strong> <Told says={next} />
          </p>
        )}
      </Sheet>
      <details open={evidence.refused !== undefined || size.problems.length > 0 || undefined}>
        <summary>{t("other-tests.enter")}</summary>
        <EvidenceSheet {...evidence} />
        <SizeSheet {...size} />
      </details>
    </>
  );
}
