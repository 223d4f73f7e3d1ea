import type { ComponentChildren } from "preact";
import { roundedPair } from "../../calibration/rounding.ts";
import { useLocale, useTell } from "../messages/spoken.ts";
import { densityText, fixed, fromTo, inLocale, plusMinus } from "../numbers.ts";
import { BudgetBars } from "../plots/budget.tsx";
import { Repeats } from "../plots/repeats.tsx";
import { ResultDetails } from "../result.tsx";
import { budgetInput, twoBodiesHref } from "../result-parts.ts";
import { Sentence } from "../sentence.tsx";
import { Fold } from "../sheet.tsx";
import { OtherTests, type OtherTestsView } from "./other-tests.tsx";
import type { BenchView, ResultShown } from "./view.ts";

/** One title in the row of folds, with the figure that matters; which one stands open is remembered. */
export function ResultFold({
  name,
  title,
  note,
  open,
  children,
}: {
  name: string;
  title: string;
  note?: ComponentChildren;
  open?: boolean;
  children: ComponentChildren;
}) {
  return (
    <Fold title={title} note={note} open={open} oneOf="result-folds" remember={`bench-${name}`}>
      <div>{children}</div>
    </Fold>
  );
}

/** What stands behind the answer, five titles: opened on demand. */
export function ResultFolds({
  view,
  evaluation,
  tests,
}: {
  view: BenchView;
  evaluation: ResultShown;
  tests: OtherTestsView | undefined;
}) {
  const locale = useLocale();
  const t = useTell();
  const { statement } = evaluation;
  return (
    <div class="folds">
      {view.result && (
        <ResultFold
          name="alternatives"
          title={t("bench.fold.alternatives")}
          note={view.result.alternatives.length}
        >
          <ResultDetails result={view.result} level={3} />
        </ResultFold>
      )}
      <ResultFold name="budget" title={t("bench.fold.budget")}>
        <BudgetBars
          id="budget"
          captionUnseen
          inputs={statement.budget.map((row) => budgetInput(row, locale))}
          locale={locale}
        />
      </ResultFold>
      <RepeatsFold view={view} />
      <EvidenceFold tests={tests} />
      <ConditionsFold evaluation={evaluation} />
    </div>
  );
}

/** The readings in the water in their order, also while no mean of them may be told. */
export function RepeatsFold({ view: { repeats } }: { view: BenchView }) {
  const locale = useLocale();
  const t = useTell();
  if (!repeats) return null;
  return (
    <ResultFold name="repeats" title={t("bench.fold.repeats")} note={repeats.repeats.length}>
      <Repeats id="repeats" captionUnseen {...repeats} locale={locale} />
    </ResultFold>
  );
}

/** Other tests of the piece, before it is weighed and after. */
export function EvidenceFold({ tests }: { tests: OtherTestsView | undefined }) {
  const t = useTell();
  if (!tests) return null;
  const { evidence, size } = tests;
  const made = evidence.made.filter(({ excluded }) => excluded === undefined).length;
  return (
    <ResultFold
      name="evidence"
      title={t("bench.fold.evidence")}
      note={made === 0 ? t("bench.fold.none") : made}
      open={evidence.refused !== undefined || size.problems.length > 0}
    >
      <div id="other-tests">
        <OtherTests tests={tests} />
      </div>
    </ResultFold>
  );
}

/** The numbers of the measurement and how they were found. */
export function ConditionsFold({ evaluation }: { evaluation: ResultShown }) {
  const t = useTell();
  return (
    <ResultFold name="conditions" title={t("bench.fold.conditions")}>
      <Numbers evaluation={evaluation} />
    </ResultFold>
  );
}

function Numbers({ evaluation: { request, statement, displacedGrams } }: { evaluation: ResultShown }) {
  const locale = useLocale();
  const t = useTell();
  const { interval_g_cm3, interval_from, u_g_cm3, dof, k } = statement;
  return (
    <>
      <p>
        {t("bench.density")} {densityText(statement.density_g_cm3, statement.expanded_g_cm3, locale)} g/cm³;{" "}
        {t("bench.result.interval", {
          confidence: inLocale(String(+(request.confidence * 100).toFixed(4)), locale),
          interval: fromTo(interval_g_cm3[0], interval_g_cm3[1], locale),
        })}
        , {t(`bench.result.${interval_from}`)}.
      </p>
      <p>
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
      {statement.checks
        .filter(({ code }) => code.startsWith("measurement."))
        .map((warning) => (
          <p key={warning.code}>
            <Sentence message={warning} />
          </p>
        ))}
      <p>
        {t("bench.result.stone")} <a href={twoBodiesHref(statement)}>{t("bench.result.metal-alone")}</a>
      </p>
    </>
  );
}
