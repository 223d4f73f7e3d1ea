import { Csrf, Field, type FieldError, Problems } from "../forms.tsx";
import { ControlChart, type ControlChartPlot } from "../plots/control-chart.tsx";
import { Rows, Sheet } from "../sheet.tsx";
import { type CheckKind, guides } from "./guides.ts";

/** How a check stands today, in words first. */
export type CheckStanding = "in order" | "due" | "never made" | "warning" | "stopped";

export interface CheckRow {
  kind: CheckKind;
  standing: CheckStanding;
  /** "s = 0.12 mg on 3 March, 10 readings" */
  last?: string;
  /** "due in 4 days", "due since Monday" */
  due?: string;
}

export interface ChecksPage {
  /** set when the bench must not be used: why, since when, what to do */
  closed?: { says: string; since: string; todo: string };
  checks: readonly CheckRow[];
  charts: readonly CheckChart[];
  /** records since the last good check, to look at again */
  lookBack: readonly { id: string; ticket: string; when: string }[];
  problems: readonly { fieldId: string; error: FieldError }[];
  /** what was typed into the form of new limits, by entry name */
  typed: Readonly<Record<string, string>>;
  csrfToken: string;
}

/** A control chart with how it stands and the form that signs new limits. */
export interface CheckChart {
  /** kind and subject, sent with the form */
  id: string;
  plot: ControlChartPlot;
  standing: { says: string; todo: string };
}

/** All checks of the bench: what is due, how it runs over time, what to look back at. */
export function ChecksIndex({ closed, checks, charts, lookBack, problems, typed, csrfToken }: ChecksPage) {
  return (
    <>
      <Problems heading="The new limits were not kept" problems={problems} />
      {closed && (
        <section class="problems" aria-label="Bench closed">
          <p>
            <strong>The bench is closed since {closed.since}.</strong> {closed.says} {closed.todo}
          </p>
        </section>
      )}
      <Rows
        caption="Checks"
        empty="No checks are set up."
        columns={[{ head: "Check" }, { head: "Stands" }, { head: "Last" }, { head: "Next" }]}
        rows={checks.map(({ kind, standing, last, due }) => ({
          key: kind,
          cells: [
            <a key="a" href={`/checks/${kind}`}>
              {guides[kind].title}
            </a>,
            <strong key="s">
              <span aria-hidden="true">{signs[standing]} </span>
              {standing}
            </strong>,
            last ?? "–",
            due ?? "–",
          ],
        }))}
      />
      {lookBack.length > 0 && (
        <Sheet id="look-back" title="To look back at">
          <p>
            Weighed since the last good check. Nothing is deleted; each keeps this mark until someone answers
            it.
          </p>
          <ul>
            {lookBack.map(({ id, ticket, when }) => (
              <li key={id}>
                <a href={`/records/${id}`}>{ticket}</a>, {when}
              </li>
            ))}
          </ul>
        </Sheet>
      )}
      {charts.map(({ id, plot, standing }) => (
        <div class="sheet" key={id}>
          <ControlChart {...plot} />
          <p>
            {standing.says} {standing.todo}
          </p>
          <details open={typed.chart === id}>
            <summary>Sign new limits</summary>
            <p>
              They rest on the passed points since the last limits and hold from now on, never backwards. The
              old ones stay visible.
            </p>
            <form method="post" action="/checks/limits">
              <Csrf token={csrfToken} />
              <input type="hidden" name="chart" value={id} />
              <Field
                id={`by-${plot.id}`}
                name="by"
                label="Your name or initials"
                value={typed.chart === id ? (typed.by ?? "") : ""}
                required
              />
              <Field
                id={`why-${plot.id}`}
                name="why"
                label="Why"
                hint="first limits, new water, balance moved, new hanger"
                value={typed.chart === id ? (typed.why ?? "") : ""}
                required
              />
              <button type="submit">Sign these limits</button>
            </form>
          </details>
        </div>
      ))}
    </>
  );
}

const signs: Record<CheckStanding, string> = {
  "in order": "=",
  due: "…",
  "never made": "○",
  warning: "!",
  stopped: "×",
};
