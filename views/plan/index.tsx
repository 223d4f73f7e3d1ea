import type { ComponentChildren } from "preact";
import { MethodDrawing, type MethodName } from "../drawings.tsx";
import { Field, type FieldError, Problems, RadioCards, Select, UnitSelect } from "../forms.tsx";
import { Facts, Rows, Sheet } from "../sheet.tsx";
import type { Locale } from "../words/index.ts";

/** What is asked before anything gets wet; every entry as it was typed. */
export interface PlanForm {
  method: MethodName;
  claim: string;
  mass: string;
  massUnit: string;
  readability: string;
  readabilityUnit: string;
  repeatability: string;
  pieces: string;
}

export interface PlanAnswer {
  /** the answer in one plain sentence */
  says: string;
  facts: readonly (readonly [name: string, value: ComponentChildren])[];
  /** each other metal, and whether this scale can tell it apart from the claim here */
  apart: readonly { id: string; name: string; expected: string; told: boolean; says: string }[];
  /** what would help: a finer scale, more pieces, the other method */
  advice: readonly string[];
}

export interface PlanPage {
  form: PlanForm;
  claims: readonly { id: string; name: string }[];
  units: readonly string[];
  problems: readonly { fieldId: keyof PlanForm; error: FieldError }[];
  answer?: PlanAnswer;
  /** for this scale: the smallest mass that answers each question */
  table?: { caption: string; heads: readonly string[]; rows: readonly (readonly string[])[] };
  /** other questions worth planning: two bodies, fineness */
  more?: readonly { href: string; label: string }[];
  locale?: Locale;
}

/** Can this scale answer this question for this piece? Asked and answered dry. */
export function Plan({ form, claims, units, problems, answer, table, more = [], locale = "en" }: PlanPage) {
  const errorOf = (fieldId: keyof PlanForm) => {
    const error = problems.find((one) => one.fieldId === fieldId)?.error;
    return error === undefined ? {} : { error };
  };
  return (
    <>
      <p>Before anything gets wet: what can this scale tell about this piece?</p>
      <Problems heading="These entries need another look" problems={problems} />
      <form method="get" action="/plan" class="sheet">
        <RadioCards
          name="method"
          legend="How is it weighed in water?"
          value={form.method}
          cards={(["displaced", "hung", "flask"] as const).map((method) => ({
            value: method,
            label: methodNames[method],
            drawing: <MethodDrawing method={method} locale={locale} />,
          }))}
        />
        <Select
          name="claim"
          label="Said to be"
          value={form.claim}
          options={claims.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <Field
          kind="decimal"
          name="mass"
          label="Mass, about"
          hint="comma or point"
          value={form.mass}
          required
          {...errorOf("mass")}
          after={<UnitSelect name="massUnit" label="Unit of the mass" units={units} value={form.massUnit} />}
        />
        <Field
          kind="decimal"
          name="readability"
          label="Smallest step of the scale"
          hint="what the last digit counts: 0.01, 0.1, 1"
          value={form.readability}
          required
          {...errorOf("readability")}
          after={
            <UnitSelect
              name="readabilityUnit"
              label="Unit of the smallest step"
              units={units}
              value={form.readabilityUnit}
            />
          }
        />
        <details>
          <summary>More, if you know it</summary>
          <Field
            kind="decimal"
            name="repeatability"
            label="Repeatability, as standard deviation"
            hint="in the unit of the smallest step; left empty, half a step is taken"
            value={form.repeatability}
            {...errorOf("repeatability")}
          />
          <Field
            kind="whole"
            name="pieces"
            label="Equal pieces weighed together"
            hint="more pieces sharpen the mean, and hide a single false one among them"
            value={form.pieces}
            {...errorOf("pieces")}
          />
        </details>
        <button type="submit">Plan</button>
      </form>
      {answer && <Answer answer={answer} />}
      {more.length > 0 && (
        <p class="row not-printed">
          {more.map(({ href, label }) => (
            <a key={href} href={href}>
              {label}
            </a>
          ))}
        </p>
      )}
      {table && (
        <Sheet id="table" title="What this scale can answer">
          <Rows
            caption={table.caption}
            empty=""
            columns={table.heads.map((head, index) => ({ head, number: index > 0 }))}
            rows={table.rows.map((cells) => ({ key: cells[0] ?? "", cells }))}
          />
          <p class="hint">Print this page and keep the table beside the scale.</p>
        </Sheet>
      )}
    </>
  );
}

const methodNames: Record<MethodName, string> = {
  hung: "Water beside the balance, piece hung from it",
  displaced: "Water on the scale, piece hung from a stand",
  flask: "Small pieces in a filled flask",
};

function Answer({ answer }: { answer: PlanAnswer }) {
  return (
    <Sheet id="answer" title="Answer">
      <p role="status">
        <strong>{answer.says}</strong>
      </p>
      <Facts facts={answer.facts} />
      <Rows
        caption="Against what else it could be"
        empty="No other metal of the library comes near."
        columns={[
          { head: "Metal" },
          { head: "it would show", number: true },
          { head: "Told apart?" },
          { head: "Why" },
        ]}
        rows={answer.apart.map(({ id, name, expected, told, says }) => ({
          key: id,
          cells: [name, expected, <strong key="t">{told ? "yes" : "no"}</strong>, says],
        }))}
      />
      {answer.advice.length > 0 && (
        <>
          <h3>What would help</h3>
          <ul>
            {answer.advice.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </>
      )}
    </Sheet>
  );
}
