import { roundedPair } from "../../calibration/rounding.ts";
import { useLocale, useTell } from "../messages/spoken.ts";
import { densityText, fixed, fromTo, inLocale, plusMinus } from "../numbers.ts";
import { BudgetBars } from "../plots/budget.tsx";
import { DensityAxis } from "../plots/density.tsx";
import { Repeats } from "../plots/repeats.tsx";
import { ResultWords } from "../result.tsx";
import { bandsAround, budgetInput, domainAround, measuredOf, twoBodiesHref } from "../result-parts.ts";
import { Told } from "../told.tsx";
import type { BenchView, ResultShown } from "./view.ts";

/** What the readings say: the density in one line, the finding in words, the axis with the bands, budget and repeats. */
export function Result({
  view,
  evaluation,
}: {
  view: BenchView;
  evaluation: NonNullable<BenchView["evaluation"]>;
}) {
  const locale = useLocale();
  const t = useTell();
  if ("refused" in evaluation)
    return (
      <section class="sheet" aria-labelledby="result-heading">
        <h2 id="result-heading">{t("bench.density")}</h2>
        <div class="problems" role="alert">
          <p>
            <Told says={evaluation.refused} />
          </p>
        </div>
      </section>
    );
  const { request, statement, curve } = evaluation;
  const { claim } = statement.conformity;
  const climbing = view.checks.find(({ code }) => code === "check.still-climbing");
  if (climbing)
    return (
      <>
        <section class="sheet" aria-labelledby="result-heading">
          <h2 id="result-heading">{t("bench.density")}</h2>
          <p>
            <Told says={climbing} />
          </p>
        </section>
        <div class="sheet">{view.repeats && <Repeats id="repeats" {...view.repeats} locale={locale} />}</div>
      </>
    );
  return (
    <>
      <DensityLine evaluation={evaluation} />
      {view.result && <ResultWords result={view.result} />}
      <div class="sheet">
        <DensityAxis
          id="density"
          measured={measuredOf(statement, curve, request.confidence)}
          bands={bandsAround(view.bands, claim ?? undefined, statement, locale)}
          domain={domainAround(statement)}
          locale={locale}
          {...(claim === null ? {} : { claimId: claim })}
        />
      </div>
      <div class="sheet">
        <BudgetBars
          id="budget"
          inputs={statement.budget.map((row) => budgetInput(row, locale))}
          locale={locale}
        />
        {view.repeats && <Repeats id="repeats" {...view.repeats} locale={locale} />}
      </div>
    </>
  );
}

function DensityLine({ evaluation: { request, statement, displacedGrams } }: { evaluation: ResultShown }) {
  const locale = useLocale();
  const t = useTell();
  const { density_g_cm3, expanded_g_cm3, interval_g_cm3, interval_from, u_g_cm3, dof, k } = statement;
  return (
    <section class="sheet" aria-labelledby="result-heading">
      <h2 id="result-heading">{t("bench.density")}</h2>
      <p class="result-value">{densityText(density_g_cm3, expanded_g_cm3, locale)} g/cm³</p>
      <p>
        {t("bench.result.interval", {
          confidence: inLocale(String(+(request.confidence * 100).toFixed(4)), locale),
          interval: fromTo(interval_g_cm3[0], interval_g_cm3[1], locale),
        })}
        , {t(`bench.result.${interval_from}`)}.
      </p>
      <p class="hint">
        u = {inLocale(u_g_cm3.toPrecision(2), locale)} g/cm³, k = {fixed(k, 2, locale)}
        {dof !== null && `, ${t("bench.result.degrees", { count: dof })}`};{" "}
        {statement.liquid_density_g_cm3 === null ? (
          <>
            {t("bench.result.mass-and-volume", {
              mass: plusMinus(statement.mass_g, 2 * statement.u_mass_g, locale),
              volume: plusMinus(statement.volume_cm3, 2 * statement.u_volume_cm3, locale),
            })}
            .
          </>
        ) : (
          <>
            {t("bench.result.masses", {
              mass: plusMinus(statement.mass_g, 2 * statement.u_mass_g, locale),
              displaced: fixed(
                displacedGrams,
                Math.max(0, roundedPair(statement.mass_g, 2 * statement.u_mass_g).decimals),
                locale,
              ),
            })}
            . {t("bench.result.apparent", { ratio: fixed(statement.relative_density.apparent, 4, locale) })}
          </>
        )}
      </p>
      <p class="hint">
        {t("bench.result.stone")} <a href={twoBodiesHref(statement)}>{t("bench.result.metal-alone")}</a>
      </p>
      {statement.checks
        .filter(({ code }) => code.startsWith("measurement."))
        .map((warning) => (
          <p key={warning.code} class="hint">
            <Told says={warning} />
          </p>
        ))}
    </section>
  );
}
