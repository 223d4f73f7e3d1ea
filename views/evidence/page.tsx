import { TestingCaution } from "../cautions.tsx";
import { FindingState, type FindingStateName } from "../finding.tsx";
import { Rows, Sheet } from "../sheet.tsx";
import type { Locale } from "../words/index.ts";
import { FinenessSheet, type FinenessSheetView } from "./fineness.tsx";
import { EvidenceSheet, type EvidenceView } from "./index.tsx";
import { SizeSheet, type SizeView } from "./size.tsx";

/** Density and all other evidence of one recorded piece, side by side. */
export interface EvidencePageView {
  record: { href: string; ticket: string; density: string; mass: string };
  claimName?: string;
  state: FindingStateName;
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
  locale: Locale;
}

export function EvidencePage(view: EvidencePageView) {
  const { record, contradictions, doubts, locale } = view;
  return (
    <>
      <p>
        <a href={record.href}>Record of {record.ticket}</a>: {record.density}, {record.mass}.
      </p>
      {contradictions.length > 0 && (
        <section class="problems" aria-label="Contradicting tests">
          {contradictions.map((one) => (
            <p key={one}>{one}</p>
          ))}
        </section>
      )}
      <div class="columns">
        <Standing {...view} />
        <Sheet id="candidates" title="Candidates">
          <Candidates {...view} />
        </Sheet>
      </div>
      {doubts.map((one) => (
        <p key={one}>
          <strong>Note:</strong> {one}
        </p>
      ))}
      <EvidenceSheet {...view.evidence} />
      <TestingCaution />
      <SizeSheet {...view.size} />
      {view.fineness && <FinenessSheet {...view.fineness} locale={locale} />}
      <Sheet id="two-bodies" title="Stone and metal, gold in quartz">
        <p>
          If the piece is made of two bodies, its density belongs to neither.{" "}
          <a href={view.twoBodiesHref}>Work out one of them from this weighing</a>.
        </p>
      </Sheet>
    </>
  );
}

function Standing({ claimName, state, because, evidence, locale }: EvidencePageView) {
  return (
    <Sheet id="standing" title="Where it stands">
      <p>
        {claimName === undefined ? "Nothing was claimed: " : `Said to be ${claimName}: `}
        <FindingState state={state} locale={locale} />
      </p>
      <p>{because}</p>
      {evidence.next !== undefined && (
        <p>
          <strong>Next:</strong> {evidence.next}
        </p>
      )}
      <p class="hint">
        The finding of the density stays in the record as it was; other tests only strike candidates out.
      </p>
    </Sheet>
  );
}

function Candidates({ candidates }: EvidencePageView) {
  const alive = candidates.filter(({ struckBy }) => struckBy.length === 0);
  const struck = candidates.filter(({ struckBy }) => struckBy.length > 0);
  return (
    <>
      <Rows
        caption="Still alive after the density and the other tests"
        empty="Nothing known is left alive: look at the weighing and the tests again."
        columns={[{ head: "Candidate" }, { head: "g/cm³", number: true }]}
        rows={alive.map(({ id, name, band, claimed }) => ({
          key: id,
          cells: [claimed ? <strong key="n">{name} (said to be)</strong> : name, band],
        }))}
      />
      {struck.length > 0 && (
        <>
          <h3>Struck out</h3>
          <ul>
            {struck.map(({ id, name, struckBy }) => (
              <li key={id}>
                <s>{name}</s>: {struckBy.join("; ")}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
