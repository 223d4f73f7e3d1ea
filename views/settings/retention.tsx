import { Csrf, Field, Problems } from "../forms.tsx";
import { Rows, Sheet } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";

export interface RetentionView {
  /** settings so far, oldest first; days as ISO 8601 */
  settings: readonly { since: string; years: number; by: string; reason: string }[];
  expiring: readonly { id: string; ticket: string; measured: string; until: string; over: boolean }[];
  /** true when more are concerned than are shown */
  more: boolean;
  kept: boolean;
  problems: readonly { fieldId: string; error: string }[];
  typed: Readonly<Record<string, string>>;
  csrfToken: string;
}

/** How long records are kept, whose time is ending, and the form that lengthens it. */
export function RetentionPage(view: RetentionView) {
  const say = useWords().retention;
  const now = view.settings.at(-1);
  const { ticket, measured, until, standing } = say.columns;
  return (
    <>
      <Problems heading={say.refused} problems={view.problems} />
      {view.kept && (
        <p role="status">
          <strong>{say.kept}</strong>
        </p>
      )}
      <p>
        <strong>{now === undefined ? say.standingNone : say.standing(now.years, now.since)}</strong>
      </p>
      <p>{say.rules}</p>
      <p>{say.persons}</p>
      <p>{say.law}</p>
      <Sheet id="expiring" title={say.list}>
        <Rows
          caption={say.list}
          empty={say.none}
          columns={[{ head: ticket }, { head: measured }, { head: until }, { head: standing }]}
          rows={view.expiring.map(({ id, ticket, measured, until, over }) => ({
            key: id,
            cells: [
              <a key="t" href={`/records/${encodeURIComponent(id)}`}>
                {ticket}
              </a>,
              measured,
              until,
              over ? say.over : say.ending,
            ],
          }))}
        />
        {view.more && <p>{say.more}</p>}
      </Sheet>
      <Change {...view} />
      {view.settings.length > 0 && <History {...view} />}
    </>
  );
}

function Change({ typed, problems, csrfToken }: RetentionView) {
  const say = useWords().retention;
  const error = problems.find(({ fieldId }) => fieldId === "years")?.error;
  return (
    <form method="post" action="/settings/retention" class="sheet">
      <h2>{say.change}</h2>
      <Csrf token={csrfToken} />
      <div class="row">
        <Field
          kind="decimal"
          name="years"
          label={say.years}
          after={say.yearsAfter}
          value={typed.years ?? ""}
          required
          {...(error === undefined ? {} : { error })}
        />
        <Field name="reason" label={say.reason} hint={say.reasonHint} value={typed.reason ?? ""} />
        <Field name="by" label={say.by} value={typed.by ?? ""} />
      </div>
      <button type="submit">{say.keep}</button>
    </form>
  );
}

function History({ settings }: RetentionView) {
  const say = useWords().retention;
  const { since, years, by, reason } = say.historyColumns;
  return (
    <Sheet id="history" title={say.history}>
      <Rows
        caption={say.history}
        empty=""
        columns={[{ head: since }, { head: years, number: true }, { head: by }, { head: reason }]}
        rows={settings.map((one, place) => ({
          key: `${place}`,
          cells: [one.since, `${one.years}`, one.by, one.reason],
        }))}
      />
    </Sheet>
  );
}
