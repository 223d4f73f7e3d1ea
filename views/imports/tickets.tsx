import { Csrf } from "../forms.tsx";
import { Rows } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";

export interface TicketsView {
  tickets: readonly { id: string; ticket: string; piece: string; claim: string; lot: string; from: string }[];
  csrfToken: string;
}

/** Tickets that wait to be weighed, each with the way onto the bench. */
export function TicketsPage({ tickets, csrfToken }: TicketsView) {
  const { tickets: say, imports } = useWords();
  const { ticket, piece, claim, lot, from, weigh } = say.columns;
  return (
    <>
      <p>{say.lead}</p>
      <Rows
        caption={say.title}
        empty={say.none}
        columns={[
          { head: ticket },
          { head: piece },
          { head: claim },
          { head: lot },
          { head: from },
          { head: weigh },
        ]}
        rows={tickets.map((one) => ({
          key: one.id,
          cells: [
            one.ticket,
            one.piece,
            one.claim || say.noClaim,
            one.lot,
            one.from,
            <form key="w" method="post" action="/tickets">
              <Csrf token={csrfToken} />
              <input type="hidden" name="id" value={one.id} />
              <button type="submit">{say.weigh}</button>
            </form>,
          ],
        }))}
      />
      <p>
        <a href="/imports">{imports.title}</a>
      </p>
    </>
  );
}
