import { Csrf, Field, type FieldError, Problems } from "../forms.tsx";
import { ControlChart, type ControlChartPlot } from "../plots/control-chart.tsx";
import { Facts, Rows, Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useLocale, useWords } from "../words/spoken.ts";
import { type CheckKind, guideOf } from "./guides.ts";

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
  /** what budgets take from the checks, line by line */
  profile: readonly (readonly [name: string, value: string])[];
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
  /** every limit that was signed, with who and why; `entry`: its number in the signed ledger */
  limits: readonly { from: string; says: string; entry?: number }[];
  /** weighings longer ago than the charts reach back are not drawn */
  olderAreLeftOut: boolean;
}

/** A check by its name; one that was never made also says what it is for. */
function Check({ kind, standing }: Pick<CheckRow, "kind" | "standing">) {
  const { title, why } = guideOf(kind, useLocale());
  return (
    <>
      <a href={`/checks/${kind}`}>{title}</a>
      {standing === "never made" && <p class="hint">{why}</p>}
    </>
  );
}

/** All checks of the bench: what is due, how it runs over time, what to look back at. */
export function ChecksIndex(page: ChecksPage) {
  const { closed, checks, profile, charts, lookBack, problems, typed, csrfToken } = page;
  const say = useWords().checks;
  return (
    <>
      <Problems heading={say.limitsRefused} problems={problems} />
      {closed && (
        <section class="problems" aria-label={say.closed}>
          <p>
            <strong>{say.closedSince(closed.since)}</strong> <Told says={closed.says} />{" "}
            <Told says={closed.todo} />
          </p>
        </section>
      )}
      {checks.every(({ standing }) => standing === "never made") && <p>{say.noneYet}</p>}
      <Rows
        caption={say.caption}
        empty={say.empty}
        columns={[{ head: say.check }, { head: say.stands }, { head: say.last }, { head: say.next }]}
        rows={checks.map(({ kind, standing, last, due }) => ({
          key: kind,
          cells: [
            <Check key="a" kind={kind} standing={standing} />,
            <strong key="s">
              <span aria-hidden="true">{signs[standing]} </span>
              {say.standings[standing]}
            </strong>,
            last === undefined ? "–" : <Told key="l" says={last} />,
            due ?? "–",
          ],
        }))}
      />
      {lookBack.length > 0 && (
        <Sheet id="look-back" title={say.lookBack}>
          <p>{say.lookBackLead}</p>
          <ul>
            {lookBack.map(({ id, ticket, when }) => (
              <li key={id}>
                <a href={`/records/${id}`}>{ticket}</a>, {when}
              </li>
            ))}
          </ul>
        </Sheet>
      )}
      {profile.length > 0 && (
        <Sheet id="profile" title={say.profile.title}>
          <Facts facts={profile} />
          <p class="hint">{say.profile.lead}</p>
        </Sheet>
      )}
      {charts.map(({ id, plot, standing, limits, olderAreLeftOut }) => (
        <div class="sheet" key={id}>
          <ControlChart {...plot} />
          <p>
            <Told says={standing.says} /> <Told says={standing.todo} />
          </p>
          {olderAreLeftOut && <p class="hint">{say.olderLeftOut}</p>}
          {limits.length > 0 && (
            <ul>
              {limits.map(({ from, says, entry }) => (
                <li key={from}>
                  {say.limitsFrom(from)} <Told says={says} />
                  {entry !== undefined && ` ${say.limitsEntry(entry)}`}
                </li>
              ))}
            </ul>
          )}
          <details open={typed.chart === id}>
            <summary>{say.sign}</summary>
            <p>{say.signLead}</p>
            <form method="post" action="/checks/limits">
              <Csrf token={csrfToken} />
              <input type="hidden" name="chart" value={id} />
              <Field
                id={`by-${plot.id}`}
                name="by"
                label={say.by}
                value={typed.chart === id ? (typed.by ?? "") : ""}
                required
              />
              <Field
                id={`why-${plot.id}`}
                name="why"
                label={say.why}
                hint={say.whyHint}
                value={typed.chart === id ? (typed.why ?? "") : ""}
                required
              />
              <button type="submit">{say.signNow}</button>
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
