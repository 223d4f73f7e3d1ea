import type { BenchView } from "../../server/bench/view.ts";
import { type Evaluated, type Evaluation, isRefused } from "../../server/compute/evaluation.ts";
import { FindingWords } from "../finding.tsx";
import { fromTo, plusMinus } from "../numbers.ts";
import { BudgetBars } from "../plots/budget.tsx";
import { DensityAxis } from "../plots/density.tsx";
import { Repeats } from "../plots/repeats.tsx";
import { bandsAround, budgetInput, domainAround, findingViewOf, measuredOf } from "../result-parts.ts";

/** What the readings say: the density in one line, the finding in words, the axis with the bands, budget and repeats. */
export function Result({ view, evaluation }: { view: BenchView; evaluation: Evaluation }) {
  if (isRefused(evaluation))
    return (
      <section class="sheet" aria-labelledby="result-heading">
        <h2 id="result-heading">Density</h2>
        <div class="problems" role="alert">
          <p>{evaluation.refused}</p>
        </div>
      </section>
    );
  const { finding, request, response, curve } = evaluation;
  return (
    <>
      <DensityLine evaluation={evaluation} />
      <FindingWords finding={findingViewOf(finding, view.bands)} />
      <div class="sheet">
        <DensityAxis
          id="density"
          measured={measuredOf(response, curve, request.confidence)}
          bands={bandsAround(view.bands, finding.claim, response)}
          domain={domainAround(response)}
          {...(finding.claim === undefined ? {} : { claimId: finding.claim })}
        />
      </div>
      <div class="sheet">
        <BudgetBars id="budget" inputs={response.budget.map(budgetInput)} />
        {view.repeats && <Repeats id="repeats" {...view.repeats} />}
      </div>
    </>
  );
}

/** Where the interval comes from, for a person who may not know either name. */
export const intervalWords = {
  gum: "by the law of propagation (GUM), which Monte Carlo confirms here",
  "monte-carlo": "by Monte Carlo (JCGM 101), since the law of propagation does not hold closely enough here",
} as const;

function DensityLine({ evaluation: { request, response, displacedGrams } }: { evaluation: Evaluated }) {
  const { density_g_cm3, expanded_g_cm3, interval_g_cm3, interval_from, u_g_cm3, dof, k } = response;
  return (
    <section class="sheet" aria-labelledby="result-heading">
      <h2 id="result-heading">Density</h2>
      <p class="result-value">{plusMinus(density_g_cm3, expanded_g_cm3)} g/cm³</p>
      <p>
        {request.confidence * 100} % interval {fromTo(interval_g_cm3[0], interval_g_cm3[1])} g/cm³,{" "}
        {intervalWords[interval_from]}.
      </p>
      <p class="hint">
        u = {u_g_cm3.toPrecision(2)} g/cm³, k = {k.toFixed(2)}
        {dof !== null && `, ${dof} degrees of freedom`}; mass{" "}
        {plusMinus(response.mass_g, 2 * response.u_mass_g)} g, displaced {displacedGrams.toPrecision(5)} g.
        Dry over displaced, uncorrected: {response.relative_density.apparent.toFixed(4)}.
      </p>
      {response.warnings.map((warning) => (
        <p key={warning} class="hint">
          {warning}
        </p>
      ))}
    </section>
  );
}
