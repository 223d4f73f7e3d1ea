import { Check, Csrf, errorsOf, Field, Problems } from "../forms.tsx";
import { Rows, Sheet } from "../sheet.tsx";
import type { Words } from "../words/index.ts";
import { useWords } from "../words/spoken.ts";

export type ScopeName = keyof Words["tokens"]["scopes"];

export interface TokenView {
  tokenHash: string;
  name: string;
  scopes: readonly ScopeName[];
  /** days, ISO 8601 */
  made: string;
  until: string | null;
  standing: keyof Words["tokens"]["standing"];
}

export interface TokensView {
  tokens: readonly TokenView[];
  /** the token that was made just now, shown this once */
  made?: string;
  revoked: boolean;
  problems: readonly { fieldId: string; error: string }[];
  typed: Readonly<Record<string, string>>;
  csrfToken: string;
  stepKey: string;
}

/** Tokens of the API: what each opens, the form that makes one, and the one that was made just now. */
export function TokensPage(view: TokensView) {
  const say = useWords().tokens;
  return (
    <>
      <Problems heading={say.refused} problems={view.problems} />
      {view.revoked && (
        <p role="status">
          <strong>{say.revoked}</strong>
        </p>
      )}
      {view.made !== undefined && <Made token={view.made} />}
      <p>
        {say.lead} <a href="/api/openapi.json">{say.document}</a>
      </p>
      <NewToken {...view} />
      <Standing {...view} />
    </>
  );
}

function Made({ token }: { token: string }) {
  const say = useWords().tokens;
  return (
    <section class="sheet" role="status">
      <p>
        <strong>{say.made}</strong>
      </p>
      <p class="raw">{token}</p>
      <p>{say.header}</p>
      <p class="raw">Authorization: Bearer {token}</p>
    </section>
  );
}

function NewToken({ typed, problems, csrfToken, stepKey }: TokensView) {
  const say = useWords().tokens;
  const errorOf = errorsOf(problems);
  return (
    <form method="post" action="/settings/tokens" class="sheet">
      <h2>{say.newOne}</h2>
      <Csrf token={csrfToken} />
      <input type="hidden" name="step" value={stepKey} />
      <Field
        name="name"
        label={say.name}
        hint={say.nameHint}
        value={typed.name ?? ""}
        maxLength={100}
        required
        {...errorOf("name")}
      />
      <fieldset id="scopes">
        <legend>{say.may}</legend>
        {(Object.keys(say.scopes) as ScopeName[]).map((scope) => (
          <Check key={scope} name={scope} label={say.scopes[scope]} checked={typed[scope] === "yes"} />
        ))}
      </fieldset>
      <div class="row">
        <Field
          kind="date"
          name="until"
          label={say.until}
          hint={say.untilHint}
          value={typed.until ?? ""}
          {...errorOf("until")}
        />
        <Field name="by" label={say.by} value={typed.by ?? ""} maxLength={100} />
      </div>
      <button type="submit">{say.make}</button>
    </form>
  );
}

function Standing({ tokens, csrfToken }: TokensView) {
  const say = useWords().tokens;
  const { name, opens, made, until, standing } = say.columns;
  return (
    <Sheet id="tokens" title={say.list}>
      <Rows
        caption={say.list}
        empty={say.none}
        columns={[{ head: name }, { head: opens }, { head: made }, { head: until }, { head: standing }]}
        rows={tokens.map((token) => ({
          key: token.tokenHash,
          voided: token.standing !== "good",
          cells: [
            token.name,
            token.scopes.map((scope) => say.scopes[scope]).join("; "),
            token.made,
            token.until ?? say.noEnd,
            token.standing === "good" ? (
              <Revocation tokenHash={token.tokenHash} csrfToken={csrfToken} />
            ) : (
              say.standing[token.standing]
            ),
          ],
        }))}
      />
    </Sheet>
  );
}

function Revocation({ tokenHash, csrfToken }: { tokenHash: string; csrfToken: string }) {
  const say = useWords().tokens;
  const id = `reason-${tokenHash.slice(0, 12)}`;
  return (
    <details>
      <summary>
        {say.standing.good} · {say.revoke}
      </summary>
      <form method="post" action={`/settings/tokens/${tokenHash}/revocation`}>
        <Csrf token={csrfToken} />
        <Field name="reason" id={id} label={say.why} placeholder={say.whyShort} required />
        <button type="submit">{say.revoke}</button>
      </form>
    </details>
  );
}
