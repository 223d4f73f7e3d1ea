import { StateWord } from "../finding.tsx";
import { Rows, Sheet } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";
import type { FlagView, LotView } from "./view.ts";

/** The newest pieces of the lot with their flags. */
export function Pieces({ id, pieces, more = 0, waiting }: LotView) {
  const say = useWords().lots.list;
  return (
    <Sheet id="pieces" title={say.heading}>
      <Rows
        caption={say.caption}
        empty={say.empty}
        columns={[
          { head: say.ticket },
          { head: say.claim },
          { head: say.dry, number: true },
          { head: say.density, number: true },
          { head: say.finding },
          { head: say.fine, number: true },
          { head: say.flags },
        ]}
        rows={pieces.map((one, index) => ({
          key: `${one.ticket} ${index}`,
          voided: one.voided ?? false,
          cells: [
            one.recordId === undefined ? (
              one.ticket
            ) : (
              <a key="a" href={`/records/${one.recordId}`}>
                {one.ticket}
              </a>
            ),
            one.claimName,
            one.dry,
            one.density ?? "–",
            one.state ? <StateWord key="s" state={one.state} /> : "–",
            one.fine ?? "–",
            <Flags key="f" flags={one.flags} />,
          ],
        }))}
      />
      {waiting && <p>{say.waiting(waiting.count, waiting.tickets)}</p>}
      <p>
        <a href={`/lots/${id}/payout`}>{say.payout}</a>; <a href="/customer">{say.seller}</a>{" "}
        {more > 0 && <span class="hint">{say.more(more)}</span>}
      </p>
    </Sheet>
  );
}

function Flags({ flags }: { flags: readonly FlagView[] }) {
  const say = useWords().lots.list;
  return (
    <span>
      {flags.map(({ name, reason, cleared }, place) => (
        <span key={name}>
          {place > 0 && "; "}
          {cleared === undefined ? (
            name
          ) : (
            <>
              <s>{name}</s> ({say.cleared(cleared)})
            </>
          )}
          {reason !== undefined && <small> ({reason})</small>}
        </span>
      ))}
    </span>
  );
}
