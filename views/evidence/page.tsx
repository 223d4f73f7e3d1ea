import { TestingCaution } from "../cautions.tsx";
import { type StateName, StateWord } from "../finding.tsx";
import { Rows, Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useLocale, useWords } from "../words/spoken.ts";
import { told, toldValue } from "../words/told.ts";
import { FinenessSheet, type FinenessSheetView } from "./fineness.tsx";
import { EvidenceSheet, type EvidenceView } from "./index.tsx";
import { SizeSheet, type SizeView } from "./size.tsx";

/** Density and all other evidence of one recorded piece, side by side. */
export interface EvidencePageView {
  record: { href: string; ticket: string; density: string; mass: string };
  claimName?: string;
  state: StateName;
  because: string;
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
  reachingHref: string;
}

export function EvidencePage(view: EvidencePageView) {
  const { evidence: say, records } = useWords();
  const { record, contradictions, doubts } = view;
  return (
    <>
      <p>
        <a href={record.href}>{records.recordOf(record.ticket)}</a>: {record.density}, {record.mass}.
      </p>
      {contradictions.length > 0 && (
        <section class="problems" aria-label={say.contradictingTests}>
          {contradictions.map((one) => (
            <p key={one}>
              <Told says={one} />
            </p>
          ))}
        </section>
      )}
      <div class="columns">
        <Standing {...view} />
        <Sheet id="candidates" title={say.candidates}>
          <Candidates {...view} />
        </Sheet>
      </div>
      {doubts.map((one) => (
        <p key={one}>
          <strong>{say.note}</strong> <Told says={one} />
        </p>
      ))}
      <EvidenceSheet {...view.evidence} />
      <TestingCaution />
      <SizeSheet {...view.size} />
      {view.fineness && <FinenessSheet {...view.fineness} />}
      <Sheet id="two-bodies" title={say.stoneAndMetal}>
        <p>
          {say.ifTwoBodies} <a href={view.twoBodiesHref}>{say.workOutOne}</a>.
        </p>
        <p>
          <a href={view.reachingHref}>{useWords().reaching.fromRecord}</a>.
        </p>
      </Sheet>
    </>
  );
}

function Standing({ claimName, state, because, evidence }: EvidencePageView) {
  const locale = useLocale();
  const { evidence: say, finding } = useWords();
  return (
    <Sheet id="standing" title={say.standing}>
      <p>
        {claimName === undefined ? finding.noClaim : `${finding.saidToBe} ${toldValue(claimName, locale)}: `}
        <StateWord state={state} />
      </p>
      <p>
        <Told says={because} />
      </p>
      {evidence.next !== undefined && (
        <p>
          <strong>{say.next}</strong> <Told says={evidence.next} />
        </p>
      )}
      <p class="hint">{say.findingStays}</p>
    </Sheet>
  );
}

function Candidates({ candidates }: EvidencePageView) {
  const locale = useLocale();
  const { evidence: say, finding } = useWords();
  const alive = candidates.filter(({ struckBy }) => struckBy.length === 0);
  const struck = candidates.filter(({ struckBy }) => struckBy.length > 0);
  return (
    <>
      <Rows
        caption={say.stillAlive}
        empty={say.noneAlive}
        columns={[{ head: say.candidate }, { head: "g/cm³", number: true }]}
        rows={alive.map(({ id, name, band, claimed }) => ({
          key: id,
          cells: [
            claimed ? (
              <strong key="n">{`${toldValue(name, locale)} (${finding.saidToBe})`}</strong>
            ) : (
              toldValue(name, locale)
            ),
            toldValue(band, locale),
          ],
        }))}
      />
      {struck.length > 0 && (
        <>
          <h3>{say.struckOut}</h3>
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
