import { Csrf, errorsOf, Field, type FieldProblem, Problems } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";

export interface SignInView {
  /** who is signed in on this device */
  person?: { name: string; initials: string; role: string };
  /** nobody can sign in yet: the first person comes with the code that the machine shows */
  first: boolean;
  initials: string;
  problems: readonly FieldProblem[];
  csrfToken: string;
}

/** Who is signed in, with the way out; or initials and passphrase. */
export function SignInPage(view: SignInView) {
  const t = useTell();
  const { person, problems, csrfToken } = view;
  if (person)
    return (
      <form method="post" action="/sign-out" class="sheet">
        <Csrf token={csrfToken} />
        <p>{t("sign-in.signed-in-as", person)}</p>
        <p>
          <a href="/">{t("frame.back-to-bench")}</a>
        </p>
        <button type="submit">{t("sign-in.sign-out")}</button>
      </form>
    );
  const errorOf = errorsOf(problems);
  return (
    <>
      <Problems heading={t("sign-in.refused")} problems={problems} />
      <form method="post" action="/sign-in" class="sheet">
        <Csrf token={csrfToken} />
        <Field
          name="initials"
          label={t("sign-in.initials")}
          value={view.initials}
          autoComplete="username"
          maxLength={8}
          required
          {...errorOf("initials")}
        />
        <Field
          kind="passphrase"
          name="passphrase"
          label={t("sign-in.passphrase")}
          autoComplete="current-password"
          maxLength={200}
          required
          {...errorOf("passphrase")}
        />
        <button type="submit" class="large">
          {t("sign-in.do")}
        </button>
      </form>
      <p>
        <a href="/sign-in/code">{t("sign-in.with-code")}</a>
      </p>
    </>
  );
}

export interface SignUpView {
  /** the first person says its name as well */
  first: boolean;
  typed: Readonly<Record<string, string>>;
  least: number;
  problems: readonly FieldProblem[];
  csrfToken: string;
}

/** A passphrase is chosen with a code: by the first person, by somebody added, and in place of one that is forgotten. */
export function SignUpPage({ first, typed, least, problems, csrfToken }: SignUpView) {
  const t = useTell();
  const errorOf = errorsOf(problems);
  return (
    <>
      <Problems heading={t("sign-in.refused")} problems={problems} />
      <p>{t(first ? "sign-up.first-lead" : "sign-up.lead")}</p>
      <form method="post" action="/sign-in/code" class="sheet">
        <Csrf token={csrfToken} />
        <Field
          name="code"
          label={t("sign-up.code")}
          value={typed.code ?? ""}
          autoComplete="one-time-code"
          maxLength={20}
          required
          {...errorOf("code")}
        />
        {first && (
          <Field
            name="name"
            label={t("sign-up.name")}
            value={typed.name ?? ""}
            autoComplete="name"
            maxLength={100}
            required
            {...errorOf("name")}
          />
        )}
        <Field
          name="initials"
          label={t("sign-in.initials")}
          hint={t("sign-up.initials-hint")}
          value={typed.initials ?? ""}
          autoComplete="username"
          maxLength={8}
          required
          {...errorOf("initials")}
        />
        <Field
          kind="passphrase"
          name="passphrase"
          label={t("sign-up.passphrase")}
          hint={t("sign-up.passphrase-hint", { least })}
          autoComplete="new-password"
          maxLength={200}
          required
          {...errorOf("passphrase")}
        />
        <button type="submit" class="large">
          {t("sign-up.do")}
        </button>
      </form>
      <p>
        <a href="/sign-in">{t("sign-in.title")}</a>
      </p>
    </>
  );
}
