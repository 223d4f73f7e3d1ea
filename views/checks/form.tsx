import { Csrf, Field, type FieldError, Problems, TextArea, UnitSelect } from "../forms.tsx";
import { ControlChart, type ControlChartPlot } from "../plots/control-chart.tsx";
import { Facts, Sheet } from "../sheet.tsx";
import { type CheckKind, entryName, type GuideEntry, guides } from "./guides.ts";

export interface CheckFormView {
  kind: CheckKind;
  units: readonly string[];
  unit: string;
  /** what was typed, by entry name */
  values: Readonly<Record<string, string>>;
  problems: readonly { fieldId: string; error: FieldError }[];
  /** which attempt of this occasion this is; every one is kept */
  attempt: number;
  /** outcome of the last submit */
  outcome?: {
    says: string;
    passed: boolean;
    facts: readonly (readonly [name: string, value: string])[];
    todo?: string;
  };
  chart?: ControlChartPlot;
  csrfToken: string;
  stepKey: string;
}

/** One guided check: why, how, the entries, the outcome and its chart. Sent to POST /checks/KIND. */
export function CheckForm(view: CheckFormView) {
  const guide = guides[view.kind];
  return (
    <>
      <p>{guide.why}</p>
      {view.outcome && <Outcome outcome={view.outcome} />}
      <Problems heading="These entries need another look" problems={view.problems} />
      <div class="columns">
        <Sheet id="how" title="How">
          <ol>
            {guide.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        </Sheet>
        <form method="post" action={`/checks/${view.kind}`} class="sheet">
          <Csrf token={view.csrfToken} />
          <input type="hidden" name="step" value={view.stepKey} />
          {view.attempt > 1 && (
            <p>
              <strong>Attempt {view.attempt} of this occasion.</strong> The earlier ones stay and are drawn.
            </p>
          )}
          {guide.once.map((entry) => (
            <Entry key={entry.name} entry={entry} view={view} label={entry.label} />
          ))}
          {[...guide.perRow, ...guide.once].some(({ unit }) => unit === "mass") && (
            <div class="field">
              <label for="unit">Unit of the readings</label>
              <span class="entry">
                <UnitSelect name="unit" label="Unit of the readings" units={view.units} value={view.unit} />
              </span>
            </div>
          )}
          {guide.rows.map((row, index) => (
            <fieldset key={row}>
              <legend>{row}</legend>
              <div class="row">
                {guide.perRow.map((entry) => (
                  <Entry key={entry.name} entry={entry} view={view} row={index + 1} label={entry.label} />
                ))}
              </div>
            </fieldset>
          ))}
          <Field name="by" label="Your name or initials" value={view.values.by ?? ""} required />
          <TextArea name="note" label="Note" value={view.values.note ?? ""} rows={2} />
          <button type="submit">Keep this check</button>
        </form>
      </div>
      {view.chart && (
        <div class="sheet">
          <ControlChart {...view.chart} />
        </div>
      )}
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
  return (
    <section class="sheet" aria-labelledby="outcome-heading">
      <h2 id="outcome-heading">
        <span aria-hidden="true">{outcome.passed ? "= " : "≠ "}</span>
        {outcome.passed ? "Inside its limits" : "Outside its limits"}
      </h2>
      <p role="status">{outcome.says}</p>
      <Facts facts={outcome.facts} />
      {outcome.todo !== undefined && (
        <p>
          <strong>Now:</strong> {outcome.todo}
        </p>
      )}
    </section>
  );
}
