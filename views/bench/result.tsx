import { useLocale, useTell } from "../messages/spoken.ts";
import { metalTold } from "../messages/tell.ts";
import { densityParts } from "../numbers.ts";
import { DensityAxis } from "../plots/density.tsx";
import { CautionLine, StateWord } from "../result.tsx";
import { bandsAround, measuredOf } from "../result-parts.ts";
import { Sentence } from "../sentence.tsx";
import type { OtherTestsView } from "./other-tests.tsx";
import { ConditionsFold, EvidenceFold, RepeatsFold, ResultFolds } from "./result-folds.tsx";
import type { BenchView, CheckView, ResultShown } from "./view.ts";

/** So many bands stand under the axis, so that the whole answer is seen at once on a desk. */
const mostBands = 5;

/** What the readings say, the answer first: its state, one sentence, the density, one plot; the rest is folded. */
export function Result({
  view,
  stop,
  tests,
}: {
  view: BenchView;
  /** a check that stands: then there is no result */
  stop: CheckView | undefined;
  tests: OtherTestsView | undefined;
}) {
  const t = useTell();
  const { evaluation } = view;
  if (stop || evaluation === undefined) return <NoResult view={view} tests={tests} />;
  if ("refused" in evaluation)
    return (
      <section class="problems" role="alert" id="now" aria-label={t("bench.density")}>
        <p>
          <Sentence message={evaluation.refused} />
        </p>
      </section>
    );
  if (evaluation.statement.conformity.state === "no-valid-reading")
    return <NoResult view={view} tests={tests} />;
  return <Answer view={view} evaluation={evaluation} tests={tests} />;
}

/** A check stands: no verdict and no large number, only where the claim lies; what was read is folded. */
function NoResult({ view, tests }: { view: BenchView; tests: OtherTestsView | undefined }) {
  const locale = useLocale();
  const t = useTell();
  const { claim, evaluation, checks } = view;
  // readings that still climb have no mean; of all others it can be looked up, though nothing follows from it
  const climbing = checks.some(({ code }) => code === "check.still-climbing");
  const numbers = evaluation && !("refused" in evaluation) && !climbing ? evaluation : undefined;
  return (
    <>
      <h2>
        <StateWord state="no-valid-reading" />
      </h2>
      <p class="say">{t("bench.no-result")}</p>
      {claim !== undefined && (
        <DensityAxis
          id="density"
          captionUnseen
          bands={view.bands
            .filter(({ id }) => id === claim)
            .map(({ id, name, low, high }) => ({ id, name: metalTold({ id, name }, locale), low, high }))}
          claimId={claim}
          locale={locale}
        />
      )}
      <div class="folds">
        <RepeatsFold view={view} />
        <EvidenceFold tests={tests} />
        {numbers && <ConditionsFold evaluation={numbers} />}
      </div>
    </>
  );
}

function Answer({
  view,
  evaluation,
  tests,
}: {
  view: BenchView;
  evaluation: ResultShown;
  tests: OtherTestsView | undefined;
}) {
  const locale = useLocale();
  const { request, statement, curve } = evaluation;
  const { claim, state } = statement.conformity;
  const { value, u } = densityParts(statement.density_g_cm3, statement.expanded_g_cm3, locale);
  const { cautions = [], answer } = view.result ?? {};
  return (
    <>
      <section id="now" class="state-line" tabIndex={-1} aria-labelledby="now-state now-answer now-value">
        <StateWord state={state} id="now-state" />
        <CautionLine cautions={cautions} />
      </section>
      {answer !== undefined && (
        <h2 class={`say state-${state}`} id="now-answer">
          <Sentence message={answer} />
        </h2>
      )}
      <p class={state === "inconclusive" ? "value small" : "value"} id="now-value">
        <span>{value}</span> {u !== undefined && <span class="u">± {u}</span>} <small>g/cm³</small>
      </p>
      <DensityAxis
        id="density"
        captionUnseen
        mostRows={mostBands}
        measured={measuredOf(statement, curve, request.confidence)}
        bands={bandsAround(view.bands, claim ?? undefined, statement, locale)}
        locale={locale}
        {...(claim === null ? {} : { claimId: claim })}
      />
      <ResultFolds view={view} evaluation={evaluation} tests={tests} />
    </>
  );
}
