import type { Message } from "../../calibration/message.ts";
import { WettingCaution } from "../cautions.tsx";
import { decimalEntries, type FieldProblem, Problems, RadioCards, Select } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { fromTo } from "../numbers.ts";
import { Sentence } from "../sentence.tsx";
import { Facts, Sheet } from "../sheet.tsx";

/** "rest": one body is known, what is the density of the other; "masses": both densities are known, how much of each. */
export type TwoBodiesQuestion = "rest" | "masses";

export interface TwoBodiesView {
  question: TwoBodiesQuestion;
  /** entries as typed */
  values: Readonly<
    Record<
      | "massG"
      | "density"
      | "uDensity"
      | "knownMassG"
      | "knownDensity"
      | "uKnownDensity"
      | "alloy"
      | "first"
      | "uFirst"
      | "second"
      | "uSecond",
      string
    >
  >;
  /** what the first body can be said to be */
  claims: readonly { id: string; name: string }[];
  problems: readonly FieldProblem[];
  /** densities of stones and matrix, g/cm³, to read off */
  stones?: readonly { called: Message; low: number; high: number; wet: boolean }[];
  answer?: { message: Sentence; facts: readonly (readonly [name: string, value: string])[] };
}

/** A piece of two bodies: a stone in its setting, gold in quartz, a core under a skin. */
export function TwoBodies({ question, values, problems, answer, claims, stones = [] }: TwoBodiesView) {
  const locale = useLocale();
  const t = useTell();
  const entry = decimalEntries(values, problems);
  return (
    <>
      <p>{t("plan-pages.two-bodies-lead")}</p>
      <WettingCaution />
      <Problems heading={t("plan-pages.problems")} problems={problems} />
      <form method="get" action="/plan/two-bodies" class="sheet">
        <RadioCards
          name="question"
          legend={t("plan-pages.question")}
          value={question}
          cards={[
            {
              value: "rest",
              label: t("plan-pages.ask-other-body"),
              hint: t("plan-pages.ask-other-body-hint"),
            },
            {
              value: "masses",
              label: t("plan-pages.ask-shares"),
              hint: t("plan-pages.ask-shares-hint"),
            },
          ]}
        />
        <fieldset>
          <legend>{t("plan-pages.whole-piece")}</legend>
          <div class="row">
            {entry("massG", t("plan-pages.mass"), "g")}
            {entry("density", t("plan-pages.density"), "g/cm³")}
            {entry("uDensity", t("plan-pages.standard-uncertainty"), "g/cm³")}
          </div>
        </fieldset>
        <fieldset>
          <legend>{t("plan-pages.known-body")}</legend>
          <div class="row">
            {entry("knownMassG", t("plan-pages.mass"), "g")}
            {entry("knownDensity", t("plan-pages.density"), "g/cm³")}
            {entry("uKnownDensity", t("plan-pages.standard-uncertainty"), "g/cm³")}
          </div>
        </fieldset>
        <fieldset>
          <legend>{t("plan-pages.both-bodies")}</legend>
          <Select
            name="alloy"
            label={t("plan-pages.first-is")}
            value={values.alloy}
            options={[
              { value: "", label: t("plan-pages.first-by-density") },
              ...claims.map(({ id, name }) => ({ value: id, label: name })),
            ]}
          />
          <div class="row">
            {entry("first", t("plan-pages.first-density"), "g/cm³")}
            {entry("uFirst", t("plan-pages.standard-uncertainty"), "g/cm³")}
            {entry("second", t("plan-pages.second-density"), "g/cm³")}
            {entry("uSecond", t("plan-pages.standard-uncertainty"), "g/cm³")}
          </div>
        </fieldset>
        <button type="submit">{t("plan-pages.work-out")}</button>
      </form>
      {stones.length > 0 && (
        <details>
          <summary>{t("plan-pages.stones-title")}</summary>
          <ul>
            {stones.map(({ called, low, high, wet }) => (
              <li key={called.code}>
                <Sentence message={called} />: {fromTo(low, high, locale)} g/cm³
                {!wet && ` (${t("plan-pages.do-not-wet")})`}
              </li>
            ))}
          </ul>
          <p class="hint">{t("plan-pages.stones-hint")}</p>
        </details>
      )}
      {answer && (
        <Sheet id="answer" title={t("plan-pages.answer")}>
          <p role="status">
            <strong>
              <Sentence message={answer.message} />
            </strong>
          </p>
          <Facts facts={answer.facts} />
        </Sheet>
      )}
    </>
  );
}
