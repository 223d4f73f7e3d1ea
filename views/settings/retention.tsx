import { Csrf, Field, type FieldProblem, Problems } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Rows, Sheet } from "../sheet.tsx";

export interface RetentionView {
  /** settings so far, oldest first; days as ISO 8601 */
  settings: readonly { since: string; years: number; by: string; reason: string }[];
  expiring: readonly { id: string; ticket: string; measured: string; until: string; over: boolean }[];
  /** true when more are concerned than are shown */
  more: boolean;
  kept: boolean;
  problems: readonly FieldProblem[];
  typed: Readonly<Record<string, string>>;
  csrfToken: string;
}

/** How long records are kept, whose time is ending, and the form that lengthens it. */
export function RetentionPage(view: RetentionView) {
  const t = useTell();
  const now = view.settings.at(-1);
  return (
    <>
      <Problems heading={t("retention.refused")} problems={view.problems} />
      {view.kept && (
        <p role="status">
          <strong>{t("retention.kept")}</strong>
        </p>
      )}
      <p>
        <strong>
          {now === undefined
            ? t("retention.standing-none")
            : t("retention.standing", { years: now.years, since: now.since })}
        </strong>
      </p>
      <p>{t("retention.rules")}</p>
      <p>{t("retention.persons")}</p>
      <p>{t("retention.law")}</p>
      <Sheet id="expiring" title={t("retention.list")}>
        <Rows
          caption={t("retention.list")}
          empty={t("retention.none")}
          columns={[
            { head: t("retention.columns.ticket") },
            { head: t("retention.columns.measured") },
            { head: t("retention.columns.until") },
            { head: t("retention.columns.standing") },
          ]}
          rows={view.expiring.map(({ id, ticket, measured, until, over }) => ({
            key: id,
            cells: [
              <a key="t" href={`/records/${encodeURIComponent(id)}`}>
                {ticket}
              </a>,
              measured,
              until,
              over ? t("retention.over") : t("retention.ending"),
            ],
          }))}
        />
        {view.more && <p>{t("retention.more")}</p>}
      </Sheet>
      <Change {...view} />
      {view.settings.length > 0 && <History {...view} />}
    </>
  );
}

function Change({ typed, problems, csrfToken }: RetentionView) {
  const t = useTell();
  const error = problems.find(({ fieldId }) => fieldId === "years")?.error;
  return (
    <form method="post" action="/settings/retention" class="sheet">
      <h2>{t("retention.change")}</h2>
      <Csrf token={csrfToken} />
      <div class="row">
        <Field
          kind="decimal"
          name="years"
          label={t("retention.years")}
          after={t("retention.years-after")}
          value={typed.years ?? ""}
          required
          {...(error === undefined ? {} : { error })}
        />
        <Field
          name="reason"
          label={t("retention.reason")}
          hint={t("retention.reason-hint")}
          value={typed.reason ?? ""}
        />
        <Field name="by" label={t("retention.by")} value={typed.by ?? ""} />
      </div>
      <button type="submit">{t("retention.keep")}</button>
    </form>
  );
}

function History({ settings }: RetentionView) {
  const t = useTell();
  return (
    <Sheet id="history" title={t("retention.history")}>
      <Rows
        caption={t("retention.history")}
        empty=""
        columns={[
          { head: t("retention.history-columns.since") },
          { head: t("retention.history-columns.years"), number: true },
          { head: t("retention.history-columns.by") },
          { head: t("retention.history-columns.reason") },
        ]}
        rows={settings.map((one, place) => ({
          key: `${place}`,
          cells: [one.since, `${one.years}`, one.by, one.reason],
        }))}
      />
    </Sheet>
  );
}
