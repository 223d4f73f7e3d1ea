import { AboutFields, Csrf, Field, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sheet } from "../sheet.tsx";
import { sentBack } from "./sent.ts";
import { SettlementLines } from "./sheet.tsx";
import type { SettlementView } from "./view.ts";

/** What the lot was closed with, the newest first: once it was opened again, old stands beside new. */
export function ClosedSettlements(view: SettlementView) {
  const { closed, isClosed } = view;
  const t = useTell();
  return (
    <>
      {closed.map((one, place) => (
        <Sheet
          key={String(one.version)}
          id={`closed-${one.version}`}
          title={t("settlement.closed.heading", { version: one.version })}
        >
          <p>{t("settlement.closed.when", { when: one.when, by: one.by })}</p>
          {one.reopened !== "" && <p>{one.reopened}</p>}
          {one.sheet ? <SettlementLines sheet={one.sheet} /> : <p>{t("settlement.closed.nothing")}</p>}
          <ul>
            {one.prints.map(({ language, href, sha256 }) => (
              <li key={`${language} ${sha256}`}>
                <a href={href}>{t("settlement.print.link", { language })}</a>{" "}
                <small>{t("settlement.print.sha256", { sha256 })}</small>
              </li>
            ))}
          </ul>
          {place === 0 && isClosed && one.sheet && <PrintForm {...view} />}
        </Sheet>
      ))}
      {isClosed && <ReopenForm {...view} />}
    </>
  );
}

function PrintForm({ lotId, languages, csrfToken, about }: SettlementView) {
  const t = useTell();
  return (
    <form method="post" action={`/lots/${lotId}/prints`}>
      <Csrf token={csrfToken} />
      <AboutFields about={about} />
      <Select
        name="language"
        label={t("settlement.print.language")}
        value={languages[0]?.id ?? ""}
        options={languages.map(({ id, name }) => ({ value: id, label: name }))}
      />
      <button type="submit">{t("settlement.print.go")}</button>
    </form>
  );
}

/** A closed lot is opened again with a reason and a second person. */
function ReopenForm(view: SettlementView) {
  const { lotId, csrfToken, about } = view;
  const t = useTell();
  const { entry } = sentBack(view, "reopening");
  return (
    <form method="post" action={`/lots/${lotId}/reopening`} class="sheet">
      <h2>{t("settlement.reopen.heading")}</h2>
      <p class="hint">{t("settlement.reopen.lead")}</p>
      <Csrf token={csrfToken} />
      <AboutFields about={about} />
      <Field {...entry("reason")} label={t("settlement.reason")} required maxLength={400} />
      <div class="row">
        <Field {...entry("by")} label={t("payout.terms.by")} required maxLength={100} />
        <Field
          {...entry("second")}
          label={t("settlement.second")}
          hint={t("settlement.second-hint")}
          required
          maxLength={100}
        />
      </div>
      <button type="submit">{t("settlement.reopen.go")}</button>
    </form>
  );
}
