import { Csrf } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Rows } from "../sheet.tsx";

export interface TicketsView {
  tickets: readonly { id: string; ticket: string; piece: string; claim: string; lot: string; from: string }[];
  csrfToken: string;
}

/** Tickets that wait to be weighed, each with the way onto the bench. */
export function TicketsPage({ tickets, csrfToken }: TicketsView) {
  const t = useTell();
  return (
    <>
      <p>{t("tickets.lead")}</p>
      <Rows
        caption={t("tickets.title")}
        empty={t("tickets.none")}
        columns={[
          { head: t("tickets.columns.ticket") },
          { head: t("tickets.columns.piece") },
          { head: t("tickets.columns.claim") },
          { head: t("tickets.columns.lot") },
          { head: t("tickets.columns.from") },
          { head: t("tickets.columns.weigh") },
        ]}
        rows={tickets.map((one) => ({
          key: one.id,
          cells: [
            one.ticket,
            one.piece,
            one.claim || t("tickets.no-claim"),
            one.lot,
            one.from,
            <form key="w" method="post" action="/tickets">
              <Csrf token={csrfToken} />
              <input type="hidden" name="id" value={one.id} />
              <button type="submit">{t("tickets.weigh")}</button>
            </form>,
          ],
        }))}
      />
      <p>
        <a href="/imports">{t("imports.title")}</a>
      </p>
    </>
  );
}
