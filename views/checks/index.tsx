import { Csrf, Field, type FieldProblem, Problems } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { ControlChart, type ControlChartPlot } from "../plots/control-chart.tsx";
import { Sentence } from "../sentence.tsx";
import { Facts, Fold, Sheet } from "../sheet.tsx";
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
  closed?: { message: Sentence; since: string; todo: Sentence };
  /** balances that said that they adjusted themselves, and the reference piece was not weighed on them since */
  adjusted: readonly Adjusted[];
  checks: readonly CheckRow[];
  /** what budgets take from the checks, line by line */
  profile: readonly (readonly [name: string, value: string])[];
  charts: readonly CheckChart[];
  /** records since the last good check, to look at again */
  lookBack: readonly { id: string; ticket: string; when: string }[];
  problems: readonly FieldProblem[];
  /** what was typed into the form of new limits, by entry name */
  typed: Readonly<Record<string, string>>;
  csrfToken: string;
}

/** A control chart with how it stands and the form that signs new limits. */
export interface CheckChart {
  /** kind and subject, sent with the form */
  id: string;
  plot: ControlChartPlot;
  standing: { message: Sentence; todo: Sentence };
  /** every limit that was signed, with who and why; `entry`: its number in the signed ledger */
  limits: readonly { from: string; message: Sentence; entry?: number }[];
  /** what the limits would be if they were signed now */
  proposed?: Sentence;
  /** weighings longer ago than the charts reach back are not drawn */
  olderAreLeftOut: boolean;
}

interface Adjusted {
  /** name of the balance as entries keep it, and as it is shown */
  of: string;
  name: Sentence;
  /** the bench takes from it, so that the reference piece can be weighed on it now */
  inUse: boolean;
  since: string;
  message: Sentence;
}

/** Id of the field in which a person says that an adjustment of this balance is looked at. */
export const adjustedBy = (of = "") => `adjusted-by-${inId(of)}`;

const inId = (name: string) => name.replace(/\W+/g, "-");

/** After an adjustment of a balance by itself: the reference piece is due, or a person says that it is looked at. */
function ReferenceDue({
  of,
  name,
  inUse,
  since,
  message,
  ...props
}: Adjusted & { by: string; csrfToken: string }) {
  const t = useTell();
  return (
    <Sheet
      id={inUse ? "adjusted" : `adjusted-${inId(of)}`}
      title={t(inUse ? "checks-page.adjusted" : "checks-page.adjusted-other", { balance: name })}
    >
      <p>
        <Sentence message={message} /> {t("checks-page.adjusted-since", { since })}
      </p>
      <p>
        <a class="button" href={inUse ? "/checks/reference" : "/balances"}>
          {t(inUse ? "checks-page.adjusted-weigh" : "checks-page.adjusted-change-over")}
        </a>
      </p>
      <form method="post" action="/checks/adjusted">
        <Csrf token={props.csrfToken} />
        <input type="hidden" name="of" value={of} />
        <Field id={adjustedBy(of)} name="adjusted" label={t("checks-page.by")} value={props.by} required />
        <button type="submit" class="plain">
          {t("checks-page.adjusted-looked")}
        </button>
      </form>
    </Sheet>
  );
}

/** All checks of the bench: left each with how it stands, right how they run over time and what to look back at. */
export function ChecksIndex(page: ChecksPage) {
  const { closed, adjusted, checks, profile, charts, lookBack, problems } = page;
  const t = useTell();
  return (
    <>
      <Problems heading={t("checks-page.limits-refused")} problems={problems} />
      {closed && (
        <section class="problems" aria-label={t("checks-page.closed")}>
          <p>
            <strong>{t("checks-page.closed-since", { since: closed.since })}</strong>{" "}
            <Sentence message={closed.message} /> <Sentence message={closed.todo} />
          </p>
        </section>
      )}
      {adjusted.map((one) => (
        <ReferenceDue
          key={one.of}
          {...one}
          by={page.typed.of === one.of ? (page.typed.adjusted ?? "") : ""}
          csrfToken={page.csrfToken}
        />
      ))}
      {checks.every(({ standing }) => standing === "never made") && <p>{t("checks-page.none-yet")}</p>}
      <div class="bench">
        <section class="hand" aria-label={t("checks-page.caption")}>
          <ol class="done">
            {checks.map((check) => (
              <Check key={check.kind} {...check} />
            ))}
          </ol>
        </section>
        <div class="answer">
          {lookBack.length > 0 && (
            <Sheet id="look-back" title={t("checks-page.look-back")}>
              <p>{t("checks-page.look-back-lead")}</p>
              <ul>
                {lookBack.map(({ id, ticket, when }) => (
                  <li key={id}>
                    <a href={`/records/${id}`}>{ticket}</a>, {when}
                  </li>
                ))}
              </ul>
            </Sheet>
          )}
          {charts.map((chart) => (
            <Chart key={chart.id} chart={chart} typed={page.typed} csrfToken={page.csrfToken} />
          ))}
          {profile.length > 0 && (
            <Fold id="profile" title={t("checks-page.profile.title")} note={profile.length}>
              <Facts facts={profile} />
              <p class="hint">{t("checks-page.profile.lead")}</p>
            </Fold>
          )}
        </div>
      </div>
    </>
  );
}

/** A check by its name with how it stands; one that was never made says what it is for, any other what it found. */
function Check({ kind, standing, last, due }: CheckRow) {
  const t = useTell();
  const { title, why } = guideOf(kind, useLocale());
  return (
    <li data-check={kind}>
      <p class="row-line">
        <b aria-hidden="true">{signs[standing]}</b>
        <a href={`/checks/${kind}`}>{title}</a>
        <strong>{t(`checks-page.standings.${standing}`)}</strong>
      </p>
      <p class="hint">
        {last === undefined ? why : <Sentence message={last} />}
        {due !== undefined && ` ${t("checks-page.next")}: ${due}.`}
      </p>
    </li>
  );
}

/** A control chart, how it stands, its limits, and the form that signs new ones. */
function Chart({
  chart: { id, plot, standing, limits, olderAreLeftOut, proposed },
  typed,
  csrfToken,
}: { chart: CheckChart } & Pick<ChecksPage, "typed" | "csrfToken">) {
  const t = useTell();
  const own = typed.chart === id ? typed : {};
  return (
    <div class="sheet">
      <ControlChart {...plot} />
      <p>
        <Sentence message={standing.message} /> <Sentence message={standing.todo} />
      </p>
      {olderAreLeftOut && <p class="hint">{t("checks-page.older-left-out")}</p>}
      {limits.length > 0 && (
        <ul>
          {limits.map(({ from, message, entry }) => (
            <li key={from}>
              {t("checks-page.limits-from", { when: from })} <Sentence message={message} />
              {entry !== undefined && ` ${t("checks-page.limits-entry", { number: entry })}`}
            </li>
          ))}
        </ul>
      )}
      <details open={typed.chart === id}>
        <summary>{t("checks-page.sign")}</summary>
        <p>{t("checks-page.sign-lead")}</p>
        {proposed !== undefined && (
          <p>
            <strong>{t("checks-page.sign-would")}</strong> <Sentence message={proposed} />
          </p>
        )}
        <form method="post" action="/checks/limits">
          <Csrf token={csrfToken} />
          <input type="hidden" name="chart" value={id} />
          <Field id={`by-${plot.id}`} name="by" label={t("checks-page.by")} value={own.by ?? ""} required />
          <Field
            id={`why-${plot.id}`}
            name="why"
            label={t("checks-page.why")}
            hint={t("checks-page.why-hint")}
            value={own.why ?? ""}
            required
          />
          <button type="submit">{t("checks-page.sign-now")}</button>
        </form>
      </details>
    </div>
  );
}

const signs: Record<CheckStanding, string> = {
  "in order": "=",
  due: "…",
  "never made": "○",
  warning: "!",
  stopped: "×",
};
