import { Check, Csrf, errorsOf, Field, type FieldProblem, Problems } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Rows, Sheet } from "../sheet.tsx";

const scopeNames = [
  "records:read",
  "lots:read",
  "checks:read",
  "live:read",
  "entries:read",
  "tickets:write",
  "metrics:read",
] as const;
export type ScopeName = (typeof scopeNames)[number];

export interface TokenView {
  tokenHash: string;
  name: string;
  scopes: readonly ScopeName[];
  /** days, ISO 8601 */
  made: string;
  until: string | null;
  standing: "good" | "revoked" | "over";
}

export interface TokensView {
  tokens: readonly TokenView[];
  /** the token that was made just now, shown this once */
  made?: string;
  revoked: boolean;
  problems: readonly FieldProblem[];
  typed: Readonly<Record<string, string>>;
  csrfToken: string;
  stepKey: string;
}

/** Tokens of the API: what each opens, the form that makes one, and the one that was made just now. */
export function TokensPage(view: TokensView) {
  const t = useTell();
  return (
    <>
      <Problems heading={t("tokens.refused")} problems={view.problems} />
      {view.revoked && (
        <p role="status">
          <strong>{t("tokens.revoked")}</strong>
        </p>
      )}
      {view.made !== undefined && <Made token={view.made} />}
      <p>
        {t("tokens.lead")} <a href="/api/openapi.json">{t("tokens.document")}</a>
      </p>
      <NewToken {...view} />
      <Standing {...view} />
    </>
  );
}

function Made({ token }: { token: string }) {
  const t = useTell();
  return (
    <section class="sheet" role="status">
      <p>
        <strong>{t("tokens.made")}</strong>
      </p>
      <p class="raw">{token}</p>
      <p>{t("tokens.header")}</p>
      <p class="raw">
        <code>Authorization: Bearer {token}</code>
      </p>
    </section>
  );
}

function NewToken({ typed, problems, csrfToken, stepKey }: TokensView) {
  const t = useTell();
  const errorOf = errorsOf(problems);
  return (
    <form method="post" action="/settings/tokens" class="sheet">
      <h2>{t("tokens.new-one")}</h2>
      <Csrf token={csrfToken} />
      <input type="hidden" name="step" value={stepKey} />
      <Field
        name="name"
        label={t("tokens.name")}
        hint={t("tokens.name-hint")}
        value={typed.name ?? ""}
        maxLength={100}
        required
        {...errorOf("name")}
      />
      <fieldset id="scopes">
        <legend>{t("tokens.may")}</legend>
        {scopeNames.map((scope) => (
          <Check
            key={scope}
            name={scope}
            label={t(`tokens.scopes.${scope}`)}
            checked={typed[scope] === "yes"}
          />
        ))}
      </fieldset>
      <div class="row">
        <Field
          kind="date"
          name="until"
          label={t("tokens.until")}
          hint={t("tokens.until-hint")}
          value={typed.until ?? ""}
          {...errorOf("until")}
        />
        <Field name="by" label={t("tokens.by")} value={typed.by ?? ""} maxLength={100} />
      </div>
      <button type="submit">{t("tokens.make")}</button>
    </form>
  );
}

function Standing({ tokens, csrfToken }: TokensView) {
  const t = useTell();
  return (
    <Sheet id="tokens" title={t("tokens.list")}>
      <Rows
        caption={t("tokens.list")}
        empty={t("tokens.none")}
        columns={[
          { head: t("tokens.columns.name") },
          { head: t("tokens.columns.opens") },
          { head: t("tokens.columns.made") },
          { head: t("tokens.columns.until") },
          { head: t("tokens.columns.standing") },
        ]}
        rows={tokens.map((token) => ({
          key: token.tokenHash,
          voided: token.standing !== "good",
          cells: [
            token.name,
            token.scopes.map((scope) => t(`tokens.scopes.${scope}`)).join("; "),
            token.made,
            token.until ?? t("tokens.no-end"),
            token.standing === "good" ? (
              <Revocation tokenHash={token.tokenHash} csrfToken={csrfToken} />
            ) : (
              t(`tokens.standing.${token.standing}`)
            ),
          ],
        }))}
      />
    </Sheet>
  );
}

function Revocation({ tokenHash, csrfToken }: { tokenHash: string; csrfToken: string }) {
  const t = useTell();
  const id = `reason-${tokenHash.slice(0, 12)}`;
  return (
    <details>
      <summary>
        {t("tokens.standing.good")} · {t("tokens.revoke")}
      </summary>
      <form method="post" action={`/settings/tokens/${tokenHash}/revocation`}>
        <Csrf token={csrfToken} />
        <Field name="reason" id={id} label={t("tokens.why")} placeholder={t("tokens.why-short")} required />
        <button type="submit">{t("tokens.revoke")}</button>
      </form>
    </details>
  );
}
