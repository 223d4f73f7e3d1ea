import { Csrf, Field, TextArea } from "../forms.tsx";
import { inLocale } from "../numbers.ts";
import { Sheet } from "../sheet.tsx";
import type { Words } from "../words/index.ts";
import { useLocale, useWords } from "../words/spoken.ts";

/** A later entry about this one. The first entry is never changed. */
export interface Amendment {
  id: string;
  when: string;
  by: string;
  reason: string;
  changes: readonly { what: string; from: string; to: string }[];
  /** number of the entry whose result this one replaces; left out where the result stays */
  replaces?: number;
}

export function Amendments({ amendments }: { amendments: readonly Amendment[] }) {
  const say = useWords().amendments;
  if (amendments.length === 0) return null;
  return (
    <Sheet id="amendments" title={say.heading}>
      <ol>
        {amendments.map(({ id, when, by, reason, changes, replaces }) => (
          <li key={id}>
            <p>
              {when}, {by}: {reason}
            </p>
            {replaces !== undefined && <p>{say.replaces(replaces)}</p>}
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

/** A typed reading that an amendment can put right; decimal text in its unit. */
export interface AmendableReading {
  id: string;
  role: keyof Words["bench"]["roles"];
  text: string;
  unit: string;
}

/** Amending and voiding: both are further entries with a name and a reason. */
export function AmendmentForms({
  id,
  csrfToken,
  stepKey,
  amendable,
}: {
  id: string;
  amendable: readonly AmendableReading[];
  csrfToken: string;
  stepKey: string;
}) {
  const locale = useLocale();
  const { amendments: say, forTheReport, bench } = useWords();
  const broughtBy = forTheReport.customerHint;
  return (
    <Sheet id="amend" title={say.amendOrVoid}>
      <p>{say.lead}</p>
      <details>
        <summary>{say.amend}</summary>
        <form method="post" action={`/records/${id}/amendments`}>
          <Csrf token={csrfToken} />
          <input type="hidden" name="step" value={`${stepKey}-amend`} />
          <Field name="ticket" id="amend-ticket" label={say.ticket} hint={say.ticketHint} />
          <Field name="piece" id="amend-piece" label={say.piece} />
          <Field name="customer" id="amend-customer" label={say.broughtBy} hint={broughtBy} maxLength={200} />
          <Field
            kind="decimal"
            name="celsius"
            id="amend-celsius"
            label={say.waterTemperature}
            hint={say.waterHint}
            after="°C"
          />
          {amendable.map((one) => (
            <Field
              key={one.id}
              kind="decimal"
              name={`reading:${one.id}`}
              id={`amend-${one.id}`}
              label={say.reading(bench.roles[one.role], inLocale(one.text, locale), one.unit)}
              hint={say.readingHint}
              after={one.unit}
            />
          ))}
          <TextArea name="note" id="amend-note" label={say.note} />
          <Field name="by" id="amend-by" label={say.by} required />
          <TextArea name="reason" id="amend-reason" label={say.amendReason} required />
          <button type="submit">{say.addAmendment}</button>
        </form>
      </details>
      <details>
        <summary>{say.void}</summary>
        <form method="post" action={`/records/${id}/voiding`}>
          <Csrf token={csrfToken} />
          <input type="hidden" name="step" value={`${stepKey}-void`} />
          <Field name="by" id="void-by" label={say.by} required />
          <TextArea name="reason" id="void-reason" label={say.voidReason} required />
          <button type="submit" class="plain">
            {say.voidNow}
          </button>
        </form>
      </details>
    </Sheet>
  );
}
