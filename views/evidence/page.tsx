import { TestingCaution } from "../cautions.tsx";
import { type StateName, StateWord } from "../finding.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { Rows, Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { told, toldValue } from "../words/told.ts";
import { FinenessSheet, type FinenessSheetView } from "./fineness.tsx";
import { EvidenceSheet, type EvidenceView } from "./index.tsx";
import { SizeSheet, type SizeView } from "./size.tsx";

/** Density and all other evidence of one recorded piece, side by side. */
export interface EvidencePageView {
  record: { href: string; ticket: string; density: string; mass: string };
  claimName?: string;
  state: StateName;
  because: Told;
  /** tests that cannot all be right */
  contradictions: readonly string[];
  /** what is odd but strikes nothing out */
  doubts: readonly string[];
  /** what the density leaves, alive first; struck ones with every reason */
  candidates: readonly {
    id: string;
    name: string;
    band: string;
    claimed: boolean;
    struckBy: readonly string[];
  }[];
  evidence: EvidenceView;
  size: SizeView;
  fineness?: FinenessSheetView;
  /** address of the two-body question with this piece filled in */
  twoBodiesHref: string;
  /** address of what else has this density, with the piece and its measured disc filled in */
  densityMatchesHref: string;
}

export function EvidencePage(view: EvidencePageView) {
  const t = useTell();
  const { record, contradictions, doubts } = view;
  return (
    <>
      <p>
        <a href={record.href}>{t("records.record-of", { ticket: record.ticket })}</a>: {record.density},{" "}
        {record.mass}.
      </p>
      {contradictions.length > 0 && (
        <section class="problems" aria-label={t("evidence.contradicting-tests")}>
          {contradictions.map((one) => (
            <p key={one}>
              <Told says={one} />
            </p>
          ))}
        </section>
      )}
      <div class="columns">
        <Standing {...view} />
        <Sheet id="candidates" title={t("evidence.candidates")}>
          <Candidates {...view} />
        </Sheet>
      </div>
      {doubts.map((one) => (
        <p key={one}>
          <strong>{t("evidence.note")}</strong> <Told says={one} />
        </p>
      ))}
      <EvidenceSheet {...view.evidence} />
      <TestingCaution />
      <SizeSheet {...view.size} />
      {view.fineness && <FinenessSheet {...view.fineness} />}
      <Sheet id="two-bodies" title={t("evidence.stone-and-metal")}>
        <p>
          {t("evidence.if-two-bodies")} <a href={view.twoBodiesHref}>{t("evidence.work-out-one")}</a>.
        </p>
        <p>
          <a href={view.densityMatchesHref}>{t("density-matches.from-record")}</a>.
        </p>
      </Sheet>
    </>
  );
}

function Standing({ claimName, state, because, evidence }: EvidencePageView) {
  const locale = useLocale();
  const t = useTell();
  return (
    <Sheet id="standing" title={t("evidence.standing")}>
      <p>
        {claimName === undefined
          ? t("finding.no-claim")
          : `${t("finding.said-to-be")} ${toldValue(claimName, locale)}: `}
        <StateWord state={state} />
      </p>
      <p>
        <Told says={because} />
      </p>
      {evidence.next !== undefined && (
        <p>
          <strong>{t("evidence.next")}</strong> <Told says={evidence.next} />
        </p>
      )}
      <p class="hint">{t("evidence.finding-stays")}</p>
    </Sheet>
  );
}

function Candidates({ candidates }: EvidencePageView) {
  const locale = useLocale();
  const t = useTell();
  const alive = candidates.filter(({ struckBy }) => struckBy.length === 0);
  const struck = candidates.filter(({ struckBy }) => struckBy.length > 0);
  return (
    <>
      <Rows
        caption={t("evidence.still-alive")}
        empty={t("evidence.none-alive")}
        columns={[{ head: t("evidence.candidate") }, { head: "g/cm³", number: true }]}
        rows={alive.map(({ id, name, band, claimed }) => ({
          key: id,
          cells: [
            claimed ? (
              <strong key="n">{`${toldValue(name, locale)} (${t("finding.said-to-be")})`}</strong>
            ) : (
              toldValue(name, locale)
            ),
            toldValue(band, locale),
          ],
        }))}
      />
      {struck.length > 0 && (
        <>
          <h3>{t("evidence.struck-out")}</h3>
          <ul>
            {struck.map(({ id, name, struckBy }) => (
              <li key={id}>
                <s>{toldValue(name, locale)}</s>: {struckBy.map((one) => told(one, locale)).join("; ")}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
