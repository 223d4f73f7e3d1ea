import type { ComponentChildren } from "preact";
import { WettingCaution } from "../cautions.tsx";
import { decimalEntries, type FieldError, Problems, RadioCards } from "../forms.tsx";
import { fromTo } from "../numbers.ts";
import { Sheet, ToldFacts } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useLocale, useWords } from "../words/spoken.ts";
import { toldValue } from "../words/told.ts";

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
      | "first"
      | "uFirst"
      | "second"
      | "uSecond",
      string
    >
  >;
  problems: readonly { fieldId: string; error: FieldError }[];
  /** densities of stones and matrix, g/cm³, to read off */
  stones?: readonly { name: string; low: number; high: number; wet: boolean }[];
  answer?: { says: string; facts: readonly (readonly [name: string, value: ComponentChildren])[] };
}

/** A piece of two bodies: a stone in its setting, gold in quartz, a core under a skin. */
export function TwoBodies({ question, values, problems, answer, stones = [] }: TwoBodiesView) {
  const locale = useLocale();
  const say = useWords().planPages;
  const entry = decimalEntries(values, problems);
  return (
    <>
      <p>{say.twoBodiesLead}</p>
      <WettingCaution />
      <Problems heading={say.problems} problems={problems} />
      <form method="get" action="/plan/two-bodies" class="sheet">
        <RadioCards
          name="question"
          legend={say.question}
          value={question}
          cards={[
            {
              value: "rest",
              label: say.askOtherBody,
              hint: say.askOtherBodyHint,
            },
            {
              value: "masses",
              label: say.askShares,
              hint: say.askSharesHint,
            },
          ]}
        />
        <fieldset>
          <legend>{say.wholePiece}</legend>
          <div class="row">
            {entry("massG", say.mass, "g")}
            {entry("density", say.density, "g/cm³")}
            {entry("uDensity", say.standardUncertainty, "g/cm³")}
          </div>
        </fieldset>
        <fieldset>
          <legend>{say.knownBody}</legend>
          <div class="row">
            {entry("knownMassG", say.mass, "g")}
            {entry("knownDensity", say.density, "g/cm³")}
            {entry("uKnownDensity", say.standardUncertainty, "g/cm³")}
          </div>
        </fieldset>
        <fieldset>
          <legend>{say.bothBodies}</legend>
          <div class="row">
            {entry("first", say.firstDensity, "g/cm³")}
            {entry("uFirst", say.standardUncertainty, "g/cm³")}
            {entry("second", say.secondDensity, "g/cm³")}
            {entry("uSecond", say.standardUncertainty, "g/cm³")}
          </div>
        </fieldset>
        <button type="submit">{say.workOut}</button>
      </form>
      {stones.length > 0 && (
        <details>
          <summary>{say.stonesTitle}</summary>
          <ul>
            {stones.map(({ name, low, high, wet }) => (
              <li key={name}>
                {toldValue(name, locale)}: {fromTo(low, high, locale)} g/cm³{!wet && ` (${say.doNotWet})`}
              </li>
            ))}
          </ul>
          <p class="hint">{say.stonesHint}</p>
        </details>
      )}
      {answer && (
        <Sheet id="answer" title={say.answer}>
          <p role="status">
            <strong>
              <Told says={answer.says} />
            </strong>
          </p>
          <ToldFacts facts={answer.facts} />
        </Sheet>
      )}
    </>
  );
}
