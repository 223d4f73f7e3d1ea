import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Facts } from "../sheet.tsx";
import type { LotTotals, LotView } from "./view.ts";

/** Sums, fine mass with its interval, doubts. */
export function RunningTotals({ totals, checks }: LotView) {
  const t = useTell();
  return (
    <section class="sheet" id="totals" aria-labelledby="totals-heading">
      <h2 id="totals-heading">{t("lots.totals.heading")}</h2>
      <Facts
        facts={[
          [t("lots.totals.pieces"), totals.pieces],
          [t("lots.totals.sum"), totals.sum],
          [t("lots.totals.gross"), totals.gross],
          [t("lots.totals.against"), totals.against],
          [t("lots.totals.fine"), <FineMasses key="f" fine={totals.fine} />],
        ]}
      />
      <p class="hint">{t("lots.totals.fine-words")}</p>
      {checks.length > 0 && (
        <>
          <h3>{t("lots.totals.doubts")}</h3>
          <ul>
            {checks.map(({ message, remedy, tickets }) => (
              <li key={`${message.code} ${tickets.join()}`}>
                <Sentence message={message} /> <Sentence message={remedy} />{" "}
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
