import { Csrf, errorsOf, Field, type FieldProblem, Problems, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { QrCode } from "../reports/qr.tsx";
import { Caution, Rows, Sheet } from "../sheet.tsx";

const roleNames = ["operator", "supervisor", "auditor", "customer-display"] as const;
export type RoleName = (typeof roleNames)[number];

export interface PersonView {
  id: string;
  name: string;
  initials: string;
  role: RoleName;
  /** a passphrase was chosen */
  ready: boolean;
}

export interface PhoneView {
  /** undefined when this start has no address for the room */
  room?: {
    urls: readonly string[];
    /** SHA-256 in groups; undefined behind a proxy, which has a certificate of its own */
    fingerprint?: string;
    /** browsers warn of a certificate that the bench made itself */
    own: boolean;
  };
  /** the page is open on the machine itself */
  here: boolean;
  people: readonly PersonView[];
  /** the first person is still to come; its code, while one is good */
  first?: { code?: string; minutes: number };
  /** a code that was made just now, for the person it is for */
  made?: { code: string; initials: string; minutes: number };
  kept: boolean;
  typed: Readonly<Record<string, string>>;
  problems: readonly FieldProblem[];
  mayChange: boolean;
  csrfToken: string;
}

/** How another device in the room opens the bench, and who may sign in there. */
export function PhonePage(view: PhoneView) {
  const t = useTell();
  const { room, made, problems, kept } = view;
  return (
    <>
      <Problems heading={t("phone.refused")} problems={problems} />
      {kept && (
        <p role="status">
          <strong>{t("phone.kept")}</strong>
        </p>
      )}
      {made && <MadeCode {...made} />}
      {room ? <Room {...room} /> : <NoRoom />}
      {room && view.first && <First {...view.first} here={view.here} csrfToken={view.csrfToken} />}
      <People {...view} />
      {view.mayChange && <NewPerson {...view} />}
      <Caution title={t("phone.caution")}>
        <p>{t("phone.caution-network")}</p>
        <p>{t("phone.caution-lost")}</p>
      </Caution>
    </>
  );
}

function NoRoom() {
  const t = useTell();
  return (
    <Sheet id="room" title={t("phone.address")}>
      <p>{t("phone.none")}</p>
      <p class="raw">
        <code>underhook serve --listen 0.0.0.0</code>
      </p>
    </Sheet>
  );
}

function Room({ urls, fingerprint, own }: NonNullable<PhoneView["room"]>) {
  const t = useTell();
  const [first = "", ...others] = urls;
  return (
    <Sheet id="room" title={t("phone.address")}>
      <QrCode command={first} label={t("phone.qr", { url: first })} />
      <p class="raw">{first}</p>
      {others.length > 0 && <p>{t("phone.others", { urls: others })}</p>}
      {fingerprint !== undefined && (
        <>
          <p>{t(own ? "phone.fingerprint-own" : "phone.fingerprint")}</p>
          <p class="raw" id="fingerprint">
            {fingerprint}
          </p>
        </>
      )}
    </Sheet>
  );
}

function First({
  code,
  minutes,
  here,
  csrfToken,
}: NonNullable<PhoneView["first"]> & { here: boolean; csrfToken: string }) {
  const t = useTell();
  return (
    <Sheet id="first" title={t("phone.first")}>
      {code === undefined ? (
        <p>{t(here ? "phone.first-over" : "phone.first-elsewhere")}</p>
      ) : (
        <>
          <p>{t("phone.first-lead", { minutes })}</p>
          <p>
            <code class="raw" id="first-code">
              <strong>{code}</strong>
            </code>
          </p>
        </>
      )}
      {here && (
        <form method="post" action="/settings/phone/first-code">
          <Csrf token={csrfToken} />
          <button type="submit" class="plain">
            {t("phone.first-new")}
          </button>
        </form>
      )}
    </Sheet>
  );
}

function MadeCode({ code, initials, minutes }: NonNullable<PhoneView["made"]>) {
  const t = useTell();
  return (
    <section class="sheet" role="status">
      <p>
        <strong>{t("phone.code-made", { initials, minutes })}</strong>
      </p>
      <p>
        <code class="raw" id="made-code">
          <strong>{code}</strong>
        </code>
      </p>
    </section>
  );
}

function People({ people, mayChange, csrfToken }: PhoneView) {
  const t = useTell();
  return (
    <Sheet id="people" title={t("phone.people-heading")}>
      <Rows
        caption={t("phone.people")}
        empty={t("phone.nobody")}
        columns={[
          { head: t("sign-in.initials") },
          { head: t("sign-up.name") },
          { head: t("phone.role") },
          { head: t("phone.change") },
        ]}
        rows={people.map((person) => ({
          key: person.id,
          cells: [
            person.initials,
            person.name,
            `${t(`access.role.${person.role}`)}${person.ready ? "" : ` · ${t("phone.not-ready")}`}`,
            mayChange ? <Change {...person} csrfToken={csrfToken} /> : "",
          ],
        }))}
      />
    </Sheet>
  );
}

function Change({ id, initials, role, csrfToken }: PersonView & { csrfToken: string }) {
  const t = useTell();
  return (
    <details>
      <summary>
        {t("phone.change")} <span class="unseen">{initials}</span>
      </summary>
      <form method="post" action={`/settings/phone/people/${id}/role`}>
        <Csrf token={csrfToken} />
        <RoleSelect id={`role-${id}`} value={role} />
        <p>
          <button type="submit" class="plain">
            {t("phone.change-role")}
          </button>
        </p>
      </form>
      <form method="post" action={`/settings/phone/people/${id}/code`}>
        <Csrf token={csrfToken} />
        <p>
          <button type="submit" class="plain">
            {t("phone.new-code")}
          </button>
        </p>
      </form>
      <form method="post" action={`/settings/phone/people/${id}/removal`}>
        <Csrf token={csrfToken} />
        <p>
          <button type="submit" class="plain">
            {t("phone.remove")}
          </button>
        </p>
      </form>
    </details>
  );
}

function RoleSelect({ id, value }: { id: string; value: string }) {
  const t = useTell();
  return (
    <Select
      name="role"
      id={id}
      label={t("phone.role")}
      value={value}
      options={roleNames.map((one) => ({ value: one, label: t(`access.role-with-rights.${one}`) }))}
    />
  );
}

function NewPerson({ typed, problems, csrfToken }: PhoneView) {
  const t = useTell();
  const errorOf = errorsOf(problems);
  return (
    <form method="post" action="/settings/phone/people" class="sheet">
      <h2>{t("phone.add")}</h2>
      <Csrf token={csrfToken} />
      <Field
        name="name"
        label={t("sign-up.name")}
        value={typed.name ?? ""}
        maxLength={100}
        required
        {...errorOf("name")}
      />
      <Field
        name="initials"
        label={t("sign-in.initials")}
        hint={t("sign-up.initials-hint")}
        value={typed.initials ?? ""}
        maxLength={8}
        required
        {...errorOf("initials")}
      />
      <RoleSelect id="role" value={typed.role ?? "operator"} />
      <button type="submit">{t("phone.add-do")}</button>
      <p class="hint">{t("phone.add-hint")}</p>
    </form>
  );
}
