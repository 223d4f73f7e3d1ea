import { Fragment } from "preact";
import { errorsOf, Field, type FieldProblem, Problems, RadioCards, Select, UnitSelect } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import type { Tell } from "../messages/tell.ts";
import { MethodDrawing } from "../methods/drawing.tsx";
import type { MethodName } from "../methods/view.ts";
import { Sentence } from "../sentence.tsx";
import { Facts, Fold, Rows, Sheet } from "../sheet.tsx";

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
  /** the plain answer, one sentence each */
  message: readonly Sentence[];
  /** the same at more length */
  more?: readonly Sentence[];
  facts: readonly (readonly [name: string, value: string])[];
  /** each other metal, and whether this scale can tell it apart from the claim here */
  apart: readonly {
    id: string;
    name: string;
    expected: string;
    isSeparated: boolean;
    message: readonly Sentence[];
  }[];
  /** what would help: a finer scale, more pieces, the other method */
  advice: readonly Sentence[];
}

export interface PlanPage {
  /** those that can be planned */
  methods: readonly MethodName[];
  form: PlanForm;
  claims: readonly { id: string; name: string }[];
  units: readonly string[];
  problems: readonly FieldProblem[];
  answer?: PlanAnswer;
  /** for this scale: the smallest mass that answers each question */
  table?: { caption: string; heads: readonly string[]; rows: readonly (readonly string[])[] };
  /** other questions worth planning: two bodies, fineness */
  more?: readonly { href: string; label: Sentence }[];
}

/** Can this scale answer this question for this piece? Left it is asked, right it is answered, dry. */
export function Plan(page: PlanPage) {
  const { problems, answer, table, more = [] } = page;
  const t = useTell();
  return (
    <>
      <Problems heading={t("plan.problems")} problems={problems} />
      <div class="bench">
        <div class="hand">
          <p>{t("plan.lead")}</p>
          <Question {...page} />
        </div>
        <div class="answer">
          {answer && <Answer answer={answer} t={t} />}
          {table && (
            <Fold id="table" title={t("plan.table")} note={table.rows.length}>
              <Rows
                caption={table.caption}
                empty=""
                columns={table.heads.map((head, index) => ({ head, number: index > 0 }))}
                rows={table.rows.map((cells) => ({ key: cells[0] ?? "", cells }))}
              />
              <p class="hint">{t("plan.print")}</p>
            </Fold>
          )}
          {more.length > 0 && (
            <p class="row not-printed">
              {more.map(({ href, label }) => (
                <a key={href} href={href}>
                  <Sentence message={label} />
                </a>
              ))}
            </p>
          )}
        </div>
      </div>
    </>
  );
}

/** What is asked: the way to weigh, the claim, the mass and the scale. */
function Question({ methods, form, claims, units, problems }: PlanPage) {
  const t = useTell();
  const errorOf = errorsOf(problems);
  return (
    <form method="get" action="/plan#answer-heading" class="sheet">
      <div class="three">
        <RadioCards
          name="method"
          legend={t("plan.method")}
          value={form.method}
          cards={methods.map((method) => ({
            value: method,
            label: t(`method.${method}.card`),
            drawing: <MethodDrawing method={method} />,
          }))}
        />
      </div>
      <Select
        name="claim"
        label={t("bench.opening.claim")}
        value={form.claim}
        options={claims.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <Field
        kind="decimal"
        name="mass"
        label={t("plan.mass")}
        hint={t("plan.mass-hint")}
        value={form.mass}
        required
        {...errorOf("mass")}
        after={<UnitSelect name="massUnit" label={t("plan.mass-unit")} units={units} value={form.massUnit} />}
      />
      <Field
        kind="decimal"
        name="readability"
        label={t("plan.step")}
        hint={t("plan.step-hint")}
        value={form.readability}
        required
        {...errorOf("readability")}
        after={
          <UnitSelect
            name="readabilityUnit"
            label={t("plan.step-unit")}
            units={units}
            value={form.readabilityUnit}
          />
        }
      />
      <details>
        <summary>{t("plan.more")}</summary>
        <Field
          kind="decimal"
          name="repeatability"
          label={t("plan.repeatability")}
          hint={t("plan.repeatability-hint")}
          value={form.repeatability}
          {...errorOf("repeatability")}
        />
        <Field
          kind="whole"
          name="pieces"
          label={t("plan.pieces")}
          hint={t("plan.pieces-hint")}
          value={form.pieces}
          {...errorOf("pieces")}
        />
      </details>
      <button type="submit" class="next">
        {t("plan.go")}
      </button>
    </form>
  );
}

function Answer({ answer, t }: { answer: PlanAnswer; t: Tell }) {
  return (
    <Sheet id="answer" title={t("plan.answer")}>
      <p role="status">
        <strong>
          <Sentences message={answer.message} />
        </strong>
      </p>
      {answer.more !== undefined && (
        <p>
          <Sentences message={answer.more} />
        </p>
      )}
      <Facts facts={answer.facts} />
      <Fold title={t("plan.against")} note={answer.apart.length}>
        <Rows
          caption={t("plan.against")}
          empty={t("plan.nothing-near")}
          columns={[
            { head: t("plan.metal") },
            { head: t("plan.would-show"), number: true },
            { head: t("plan.apart") },
            { head: t("plan.why") },
          ]}
          rows={answer.apart.map(({ id, name, expected, isSeparated: apart, message }) => ({
            key: id,
            cells: [
              name,
              expected,
              <strong key="t">{apart ? t("plan.yes") : t("plan.no")}</strong>,
              <Sentences key="s" message={message} />,
            ],
          }))}
        />
      </Fold>
      {answer.advice.length > 0 && (
        <>
          <h3>{t("plan.help")}</h3>
          <ul>
            {answer.advice.map((one) => (
              <li key={JSON.stringify(one)}>
                <Sentence message={one} />
              </li>
            ))}
          </ul>
        </>
      )}
    </Sheet>
  );
}

/** Sentences one after another. */
function Sentences({ message }: { message: readonly Sentence[] }) {
  return (
    <>
      {message.map((one) => (
        <Fragment key={JSON.stringify(one)}>
          <Sentence message={one} />{" "}
        </Fragment>
      ))}
    </>
  );
}
