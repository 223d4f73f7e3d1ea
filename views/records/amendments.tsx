import { AboutFields, Csrf, Field, TextArea } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { inLocale } from "../numbers.ts";
import type { Sentence } from "../sentence.tsx";
import { Sheet } from "../sheet.tsx";

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
  const t = useTell();
  if (amendments.length === 0) return null;
  return (
    <Sheet id="amendments" title={t("amendments.heading")}>
      <ol>
        {amendments.map(({ id, when, by, reason, changes, replaces }) => (
          <li key={id}>
            <p>
              {when}, {by}: {reason}
            </p>
            {replaces !== undefined && <p>{t("amendments.replaces", { entry: replaces })}</p>}
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
  role: "dry" | "immersed" | "rise" | "flask-full" | "flask-with-piece" | "zero" | "dry-after";
  text: string;
  unit: string;
}

/** A form of the record that was sent back: why, its address, and what was typed. */
export interface RefusedRecordForm {
  message: Sentence;
  from: string;
  typed: Readonly<Record<string, string>>;
}

/** Amending and voiding: both are further entries with a name and a reason. */
export function AmendmentForms({
  id,
  csrfToken,
  version,
  amendable,
  refused,
}: {
  id: string;
  refused?: RefusedRecordForm | undefined;
  amendable: readonly AmendableReading[];
  csrfToken: string;
  /** how many entries about the record the page shows */
  version: number;
}) {
  const locale = useLocale();
  const t = useTell();
  const broughtBy = t("for-the-report.customer-hint");
  const typedInto = (path: string) => (refused?.from === path ? refused.typed : undefined);
  const amend = typedInto(`/records/${id}/amendments`);
  const voiding = typedInto(`/records/${id}/voiding`);
  return (
    <Sheet id="amend" title={t("amendments.amend-or-void")}>
      <p>{t("amendments.lead")}</p>
      <details open={amend !== undefined || undefined}>
        <summary>{t("amendments.amend")}</summary>
        <form method="post" action={`/records/${id}/amendments`}>
          <Csrf token={csrfToken} />
          <AboutFields about={{ subject: id, seen: version }} />
          <Field
            name="ticket"
            id="amend-ticket"
            value={amend?.ticket ?? ""}
            label={t("amendments.ticket")}
            hint={t("amendments.ticket-hint")}
          />
          <Field name="piece" id="amend-piece" value={amend?.piece ?? ""} label={t("amendments.piece")} />
          <Field
            name="customer"
            id="amend-customer"
            value={amend?.customer ?? ""}
            label={t("amendments.brought-by")}
            hint={broughtBy}
            maxLength={200}
          />
          <Field
            kind="decimal"
            name="celsius"
            id="amend-celsius"
            value={amend?.celsius ?? ""}
            label={t("amendments.water-temperature")}
            hint={t("amendments.water-hint")}
            after="°C"
          />
          {amendable.map((one) => (
            <Field
              key={one.id}
              kind="decimal"
              name={`reading:${one.id}`}
              id={`amend-${one.id}`}
              value={amend?.[`reading:${one.id}`] ?? ""}
              label={t("amendments.reading", {
                role: t(`bench.roles.${one.role}`),
                text: inLocale(one.text, locale),
                unit: one.unit,
              })}
              hint={t("amendments.reading-hint")}
              after={one.unit}
            />
          ))}
          <TextArea name="note" id="amend-note" value={amend?.note ?? ""} label={t("amendments.note")} />
          <Field name="by" id="amend-by" value={amend?.by ?? ""} label={t("amendments.by")} required />
          <Field
            name="second"
            id="amend-second"
            value={amend?.second ?? ""}
            label={t("settlement.second")}
            hint={t("amendments.second-hint")}
          />
          <TextArea
            name="reason"
            id="amend-reason"
            value={amend?.reason ?? ""}
            label={t("amendments.amend-reason")}
            required
          />
          <button type="submit">{t("amendments.add-amendment")}</button>
        </form>
      </details>
      <details open={voiding !== undefined || undefined}>
        <summary>{t("amendments.void")}</summary>
        <form method="post" action={`/records/${id}/voiding`}>
          <Csrf token={csrfToken} />
          <AboutFields about={{ subject: id, seen: version }} />
          <Field name="by" id="void-by" value={voiding?.by ?? ""} label={t("amendments.by")} required />
          <TextArea
            name="reason"
            id="void-reason"
            value={voiding?.reason ?? ""}
            label={t("amendments.void-reason")}
            required
          />
          <button type="submit" class="plain">
            {t("amendments.void-now")}
          </button>
        </form>
      </details>
    </Sheet>
  );
}
