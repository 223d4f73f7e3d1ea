import type { ComponentChildren } from "preact";
import { Field, type FieldError, Problems, RadioCards } from "../forms.tsx";
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
  const entry = (name: keyof TwoBodiesView["values"], label: string, after: string) => {
    const error = problems.find(({ fieldId }) => fieldId === name)?.error;
    return (
      <Field
        kind="decimal"
        name={name}
        label={label}
        after={after}
        value={values[name]}
        {...(error === undefined ? {} : { error })}
      />
    );
  };
  return (
    <>
      <p>
        A stone in its setting, gold in quartz, a core under a skin: volumes add, so one weighing of the whole
        answers one question about its parts.
      </p>
      <Problems heading="These entries need another look" problems={problems} />
      <form method="get" action="/plan/two-bodies" class="sheet">
        <RadioCards
          name="question"
          legend="What is asked?"
          value={question}
          cards={[
            {
              value: "rest",
              label: "What is the other body?",
              hint: "mass and density of one body are known: the stone of a ring, say",
            },
            {
              value: "masses",
              label: "How much of each?",
              hint: "both densities are known: gold 19.3 and quartz 2.65, say",
            },
          ]}
        />
        <fieldset>
          <legend>The whole piece</legend>
          <div class="row">
            {entry("massG", "Mass", "g")}
            {entry("density", "Density", "g/cm³")}
            {entry("uDensity", "Standard uncertainty", "g/cm³")}
          </div>
        </fieldset>
        <fieldset>
          <legend>For the first question: the known body</legend>
          <div class="row">
            {entry("knownMassG", "Mass", "g")}
            {entry("knownDensity", "Density", "g/cm³")}
            {entry("uKnownDensity", "Standard uncertainty", "g/cm³")}
          </div>
        </fieldset>
        <fieldset>
          <legend>For the second question: both bodies</legend>
          <div class="row">
            {entry("first", "Density of the first", "g/cm³")}
            {entry("uFirst", "Standard uncertainty", "g/cm³")}
            {entry("second", "Density of the second", "g/cm³")}
            {entry("uSecond", "Standard uncertainty", "g/cm³")}
          </div>
        </fieldset>
        <button type="submit">Work it out</button>
      </form>
      {stones.length > 0 && (
        <details>
          <summary>Densities of stones</summary>
          <ul>
            {stones.map(({ name, low, high, wet }) => (
              <li key={name}>
                {name}: {low} to {high} g/cm³{!wet && " (do not wet)"}
              </li>
            ))}
          </ul>
          <p class="hint">
            Common practice. Type the middle; a quarter of the range is a fair standard uncertainty.
          </p>
        </details>
      )}
      {answer && (
        <Sheet id="answer" title="Answer">
          <p role="status">
            <strong>{answer.says}</strong>
          </p>
          <Facts facts={answer.facts} />
        </Sheet>
      )}
    </>
  );
}
