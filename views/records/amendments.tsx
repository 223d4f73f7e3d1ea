import { Csrf, Field, TextArea } from "../forms.tsx";
import { Sheet } from "../sheet.tsx";

/** A later entry about this one. The first entry is never changed. */
export interface Amendment {
  id: string;
  when: string;
  by: string;
  reason: string;
  changes: readonly { what: string; from: string; to: string }[];
}

export function Amendments({ amendments }: { amendments: readonly Amendment[] }) {
  if (amendments.length === 0) return null;
  return (
    <Sheet id="amendments" title="Amendments">
      <ol>
        {amendments.map(({ id, when, by, reason, changes }) => (
          <li key={id}>
            <p>
              {when}, {by}: {reason}
            </p>
            <ul>
              {changes.map(({ what, from, to }) => (
                <li key={what}>
                  {what}: <span class="voided">{from}</span> → {to}
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ol>
    </Sheet>
  );
}

/** Amending and voiding: both are further entries with a name and a reason. */
export function AmendmentForms({
  id,
  csrfToken,
  stepKey,
}: {
  id: string;
  csrfToken: string;
  stepKey: string;
}) {
  return (
    <Sheet id="amend" title="Amend or void">
      <p>Nothing is overwritten. An amendment is a new entry that names this one; both stay readable.</p>
      <details>
        <summary>Amend what was written</summary>
        <form method="post" action={`/records/${id}/amendments`}>
          <Csrf token={csrfToken} />
          <input type="hidden" name="step" value={`${stepKey}-amend`} />
          <Field name="ticket" id="amend-ticket" label="Ticket" hint="leave empty what stays as it is" />
          <Field name="piece" id="amend-piece" label="Piece" />
          <TextArea name="note" id="amend-note" label="Note" />
          <Field name="by" id="amend-by" label="Your name or initials" required />
          <TextArea name="reason" id="amend-reason" label="Reason for the amendment" required />
          <button type="submit">Add the amendment</button>
        </form>
      </details>
      <details>
        <summary>Void the record</summary>
        <form method="post" action={`/records/${id}/voiding`}>
          <Csrf token={csrfToken} />
          <input type="hidden" name="step" value={`${stepKey}-void`} />
          <Field name="by" id="void-by" label="Your name or initials" required />
          <TextArea name="reason" id="void-reason" label="Reason for voiding" required />
          <button type="submit" class="plain">
            Void this record
          </button>
        </form>
      </details>
    </Sheet>
  );
}
