import { type About, AboutFields, Check, Csrf, Field } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { codeMark, Sentence } from "../sentence.tsx";

/** A record that checks stop: it counts for nothing until somebody says what was found. */
export interface StoppedRecord {
  ticket: string;
  about: About;
  /** what each check saw, and what it asks */
  checks: readonly { message: Sentence; ask: Sentence }[];
  /** false where no answer settles it, since no weighing of any body gives such readings */
  answerable: boolean;
}

/** What stops a record, with the form that answers it. */
export function AnswerChecks({
  stopped: { ticket, about, checks, answerable },
  action,
  csrfToken,
  typed = {},
}: {
  stopped: StoppedRecord;
  action: string;
  csrfToken: string;
  /** what was typed into a form that was sent back; counts where it is about this record */
  typed?: Readonly<Record<string, string>> | undefined;
}) {
  const t = useTell();
  const id = about.subject.slice(-12);
  const { found = "", by = "", stands } = typed.subject === about.subject ? typed : {};
  return (
    <section class="caution" aria-label={t("stopped.heading", { ticket })}>
      <p>
        <strong>{t("stopped.heading", { ticket })}</strong>
      </p>
      {checks.map(({ message, ask }) => (
        <p key={typeof message === "string" ? message : message.code} {...codeMark(message)}>
          <Sentence message={message} />{" "}
          {answerable && (
            <strong>
              <Sentence message={ask} />
            </strong>
          )}
        </p>
      ))}
      {answerable ? (
        <form method="post" action={action}>
          <Csrf token={csrfToken} />
          <AboutFields about={about} />
          <Field
            name="found"
            id={`found-${id}`}
            value={found}
            label={t("stopped.found")}
            maxLength={400}
            required
          />
          <Check
            name="stands"
            id={`stands-${id}`}
            label={t("stopped.stands")}
            checked={stands !== undefined}
            required
          />
          <Field
            name="by"
            id={`found-by-${id}`}
            value={by}
            label={t("stopped.by")}
            maxLength={100}
            required
          />
          <button type="submit">{t("stopped.keep")}</button>
        </form>
      ) : (
        <p>
          <a href={`/records/${about.subject}`}>{t("stopped.amend-or-void")}</a>
        </p>
      )}
    </section>
  );
}
