import type { Message, Param } from "../../calibration/message.ts";
import { TestingCaution } from "../cautions.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { tellValue } from "../messages/tell.ts";
import { ResultDetails, type ResultView, StateWord } from "../result.tsx";
import { Sentence } from "../sentence.tsx";
import { Fold } from "../sheet.tsx";
import { FinenessSheet, type FinenessSheetView } from "./fineness.tsx";
import { EvidenceSheet, type EvidenceView } from "./index.tsx";
import { SizeSheet, type SizeView } from "./size.tsx";

/** What other tests excluded, with every reason. */
export interface ExcludedView {
  id: string;
  called: Param;
  message: readonly Message[];
}

/** Density and all other evidence of one recorded piece, side by side. */
export interface EvidencePageView {
  record: { href: string; ticket: string; density: string; mass: string };
  /** the statement of the record */
  result: ResultView;
  /** tests that cannot all be right, and what is odd about them */
  checks: readonly Message[];
  excluded: readonly ExcludedView[];
  evidence: EvidenceView;
  size: SizeView;
  fineness?: FinenessSheetView;
  /** address of the two-body question with this piece filled in */
  twoBodiesHref: string;
  /** address of what else has this density, with the piece and its measured disc filled in */
  densityMatchesHref: string;
}

export function EvidencePage(view: EvidencePageView) {
  const locale = useLocale();
  const t = useTell();
  const { record, result, checks, excluded } = view;
  return (
    <>
      <p>
        <a href={record.href}>{t("records.record-of", { ticket: record.ticket })}</a>: {record.density},{" "}
        {record.mass}.
      </p>
      {checks.length > 0 && (
        <section class="problems" aria-label={t("evidence.contradicting-tests")}>
          {checks.map((one) => (
            <p key={JSON.stringify(one)} data-code={one.code}>
              <Sentence message={one} />
            </p>
          ))}
        </section>
      )}
      <div class="two">
        <div>
          <p>
            {result.claim !== undefined && (
              <>
                {t("result.said-to-be")} {tellValue(result.claim, locale)}:{" "}
              </>
            )}
            <StateWord state={result.state} />
          </p>
          <p class="say">
            <Sentence message={result.answer} />
          </p>
          <Fold id="not-excluded" title={t("bench.fold.alternatives")} note={result.alternatives.length}>
            <ResultDetails result={result} level={3} />
          </Fold>
          {excluded.length > 0 && <Excluded list={excluded} />}
          <SizeSheet {...view.size} />
          {view.fineness && <FinenessSheet {...view.fineness} />}
          <Fold id="two-bodies" title={t("evidence.stone-and-metal")}>
            <p>
              {t("evidence.if-two-bodies")} <a href={view.twoBodiesHref}>{t("evidence.work-out-one")}</a>.
            </p>
            <p>
              <a href={view.densityMatchesHref}>{t("density-matches.from-record")}</a>.
            </p>
          </Fold>
        </div>
        <div>
          <EvidenceSheet {...view.evidence} />
          <TestingCaution />
        </div>
      </div>
    </>
  );
}

function Excluded({ list }: { list: readonly ExcludedView[] }) {
  const locale = useLocale();
  const t = useTell();
  return (
    <Fold id="excluded" title={t("evidence.excluded-by-tests")} note={list.length}>
      <ul>
        {list.map(({ id, called, message }) => (
          <li key={id}>
            <s>{tellValue(called, locale)}</s>: {tellValue(message, locale)}
          </li>
        ))}
      </ul>
    </Fold>
  );
}
