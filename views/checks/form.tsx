import type { ComponentChildren } from "preact";
import { Csrf, Field, type FieldProblem, Problems, UnitSelect } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { ControlChart, type ControlChartPlot } from "../plots/control-chart.tsx";
import { Sentence } from "../sentence.tsx";
import { Facts, Fold } from "../sheet.tsx";
import { type CheckKind, entryName, type Guide, type GuideEntry, guideOf } from "./guides.ts";

export interface CheckFormView {
  kind: CheckKind;
  units: readonly string[];
  unit: string;
  /** what was typed, by entry name */
  values: Readonly<Record<string, string>>;
  problems: readonly FieldProblem[];
  /** which attempt of this occasion this is; every one is kept */
  attempt: number;
  /** outcome of the last submit */
  outcome?: {
    message: Sentence;
    passed: boolean;
    facts: readonly (readonly [name: string, value: string])[];
    todo?: Sentence;
  };
  /** entries of the guide that the method in use does not weigh */
  hidden?: readonly string[];
  /** sensors that show a temperature, where a thermometer is checked */
  sensors?: readonly { address: string; shows: string }[];
  /** the reading that is taken next from the balance; left out where none is, or all are there */
  take?: { number: number; of: number; live: ComponentChildren };
  chart?: ControlChartPlot;
  csrfToken: string;
  stepKey: string;
}

/** Which thermometer is checked: the one that is read by eye, or a sensor of the bench. */
function WhichThermometer(props: { sensors: CheckFormView["sensors"]; chosen: string }) {
  const t = useTell();
  if (!props.sensors) return null;
  return (
    <div class="field">
      <label for="sensor">{t("check-form.which-thermometer")}</label>
      <select id="sensor" name="sensor">
        <option value="">{t("check-form.by-eye")}</option>
        {props.sensors.map(({ address, shows }) => (
          <option key={address} value={address} selected={address === props.chosen}>
            {address} ({shows})
          </option>
        ))}
      </select>
    </div>
  );
}

/**
 * One guided check: left the reading that is taken next and how it is made, right its entries, the outcome and its chart.
 * Sent to POST /checks/KIND.
 */
export function CheckForm(view: CheckFormView) {
  const whole = guideOf(view.kind, useLocale());
  const guide = { ...whole, perRow: whole.perRow.filter(({ name }) => !view.hidden?.includes(name)) };
  const t = useTell();
  return (
    <div class="bench">
      <div class="hand">
        {view.take?.live}
        <Next kind={view.kind} take={view.take} />
        <Fold title={t("check-form.how")} open={view.take === undefined || view.take.number === 1}>
          <p>{guide.why}</p>
          <ol>
            {guide.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        </Fold>
      </div>
      <form id={formId} method="post" action={`/checks/${view.kind}`} class="answer">
        <Csrf token={view.csrfToken} />
        <input type="hidden" name="step" value={view.stepKey} />
        {["taken", "takenAt"].map((name) => (
          <input key={name} type="hidden" name={name} value={view.values[name] ?? ""} />
        ))}
        {view.outcome && <Outcome outcome={view.outcome} />}
        <Problems heading={t("check-form.problems")} problems={view.problems} />
        {view.attempt > 1 && (
          <p>
            <strong>{t("check-form.attempt", { count: view.attempt })}</strong> {t("check-form.attempt-rest")}
          </p>
        )}
        <Entries view={view} guide={guide} />
        {view.take && (
          <div>
            <button type="submit" class="plain">
              {t("check-form.keep")}
            </button>
          </div>
        )}
        {view.chart && <ControlChart {...view.chart} />}
      </form>
    </div>
  );
}

/** The entries are a form of their own; its buttons stand beside the live reading. */
const formId = "check";

/** The one filled button: takes the reading that is due, or keeps the check once all are there. */
function Next({ kind, take }: { kind: CheckKind; take: CheckFormView["take"] }) {
  const t = useTell();
  if (!take)
    return (
      <div class="thumb">
        <button type="submit" form={formId} class="next">
          {t("check-form.keep")}
        </button>
      </div>
    );
  return (
    <>
      <h2>{t("check-form.reading-of", { number: take.number, of: take.of })}</h2>
      <div class="thumb">
        <button
          type="submit"
          form={formId}
          class="next"
          formaction={`/checks/${kind}/readings`}
          formnovalidate
          data-needs-live
          data-key="Enter F9"
          autofocus
        >
          {t("check-form.take")} <kbd>Enter</kbd>
        </button>
      </div>
    </>
  );
}

/** What is asked once, then every reading, then who made the check. */
function Entries({ view, guide }: { view: CheckFormView; guide: Guide }) {
  const t = useTell();
  const { once, rows, perRow } = guide;
  const [only, ...more] = perRow;
  return (
    <>
      <div class="check-entries">
        <WhichThermometer sensors={view.sensors} chosen={view.values.sensor ?? ""} />
        {once.map((entry) => (
          <Entry key={entry.name} entry={entry} view={view} label={entry.label} />
        ))}
        {[...perRow, ...once].some(({ unit }) => unit === "mass") && (
          <div class="field">
            <label for="unit">{t("check-form.unit")}</label>
            <span class="entry">
              <UnitSelect name="unit" label={t("check-form.unit")} units={view.units} value={view.unit} />
            </span>
          </div>
        )}
      </div>
      {only && more.length === 0 ? (
        <div class="check-entries">
          {rows.map((row, index) => (
            <Entry key={row} entry={only} view={view} row={index + 1} label={row} />
          ))}
        </div>
      ) : (
        rows.map((row, index) => (
          <fieldset key={row}>
            <legend>{row}</legend>
            <div class="check-entries">
              {perRow.map((entry) => (
                <Entry key={entry.name} entry={entry} view={view} row={index + 1} label={entry.label} />
              ))}
            </div>
          </fieldset>
        ))
      )}
      <div class="check-entries">
        <Field name="by" label={t("checks-page.by")} value={view.values.by ?? ""} required />
        <Field name="note" label={t("check-form.note")} value={view.values.note ?? ""} />
      </div>
    </>
  );
}

function Entry({
  entry,
  view,
  row,
  label,
}: {
  entry: GuideEntry;
  view: CheckFormView;
  row?: number;
  label: string;
}) {
  const name = entryName(entry, row);
  const error = view.problems.find(({ fieldId }) => fieldId === name)?.error;
  return (
    <Field
      kind={entry.unit === "none" ? "text" : "decimal"}
      name={name}
      label={label}
      value={view.values[name] ?? ""}
      {...(entry.unit === "celsius" ? { after: "°C" } : {})}
      {...(entry.hint === undefined ? {} : { hint: entry.hint })}
      {...(error === undefined ? {} : { error })}
    />
  );
}

function Outcome({ outcome }: { outcome: NonNullable<CheckFormView["outcome"]> }) {
  const t = useTell();
  return (
    <section class="sheet" aria-labelledby="outcome-heading">
      <h2 id="outcome-heading">
        <span aria-hidden="true">{outcome.passed ? "= " : "≠ "}</span>
        {outcome.passed ? t("check-form.inside") : t("check-form.outside")}
      </h2>
      <p role="status">
        <Sentence message={outcome.message} />
      </p>
      <Facts facts={outcome.facts} />
      {outcome.todo !== undefined && (
        <p>
          <strong>{t("check-form.now")}</strong> <Sentence message={outcome.todo} />
        </p>
      )}
    </section>
  );
}
