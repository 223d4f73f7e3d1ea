import { Facts } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useWords } from "../words/spoken.ts";
import type { LotTotals, LotView } from "./view.ts";

/** Sums, fine mass with its interval, doubts. */
export function RunningTotals({ totals, checks }: LotView) {
  const say = useWords().lots.totals;
  return (
    <section class="sheet" id="totals" aria-labelledby="totals-heading">
      <h2 id="totals-heading">{say.heading}</h2>
      <Facts
        facts={[
          [say.pieces, totals.pieces],
          [say.sum, totals.sum],
          [say.gross, totals.gross],
          [say.against, totals.against],
          [say.fine, <FineMasses key="f" fine={totals.fine} />],
        ]}
      />
      <p class="hint">{say.fineWords}</p>
      {checks.length > 0 && (
        <>
          <h3>{say.doubts}</h3>
          <ul>
            {checks.map(({ message, remedy, tickets }) => (
              <li key={`${message.code} ${tickets.join()}`}>
                <Told says={message} /> <Told says={remedy} />{" "}
                {tickets.length > 0 && <small>({tickets.join(", ")})</small>}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** One line a metal. */
function FineMasses({ fine }: Pick<LotTotals, "fine">) {
  return (
    <>
      {fine.map((one) => (
        <div key={one}>
          <strong>{one}</strong>
        </div>
      ))}
    </>
  );
}
