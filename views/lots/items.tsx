import { useTell } from "../messages/spoken.ts";
import { StateWord } from "../result.tsx";
import { Rows, Sheet } from "../sheet.tsx";
import type { FlagView, LotView } from "./view.ts";

/** The newest pieces of the lot with their flags. */
export function Items({ id, items, more = 0, waiting }: LotView) {
  const t = useTell();
  if (items.length === 0 && !waiting) return <p class="hint">{t("lots.list.empty")}</p>;
  // where all are claimed alike, the page says so once
  const claimsDiffer = new Set(items.map(({ claimName }) => claimName)).size > 1;
  return (
    <Sheet id="pieces" title={t("lots.list.heading")}>
      <Rows
        caption={t("lots.list.caption")}
        empty={t("lots.list.empty")}
        columns={[
          { head: t("lots.list.ticket") },
          ...(claimsDiffer ? [{ head: t("lots.list.claim") }] : []),
          { head: t("lots.list.dry"), number: true },
          { head: t("lots.list.density"), number: true },
          { head: t("lots.list.finding") },
          { head: t("lots.list.fine"), number: true },
          { head: t("lots.list.flags") },
        ]}
        rows={items.map((one, index) => ({
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
            ...(claimsDiffer ? [one.claimName] : []),
            one.dry,
            one.density ?? "–",
            one.state ? <StateWord key="s" state={one.state} /> : "–",
            one.fine ?? "–",
            <Flags key="f" flags={one.flags} />,
          ],
        }))}
      />
      {waiting && <p>{t("lots.list.waiting", { count: waiting.count, tickets: waiting.tickets })}</p>}
      <p>
        <a href={`/lots/${id}/payout`}>{t("lots.list.payout")}</a>;{" "}
        <a href="/customer">{t("lots.list.seller")}</a>;{" "}
        <a href={`/lots/${id}/records.csv`}>{t("lots.list.export")}</a>{" "}
        {more > 0 && <span class="hint">{t("lots.list.more", { count: more })}</span>}
      </p>
    </Sheet>
  );
}

function Flags({ flags }: { flags: readonly FlagView[] }) {
  const t = useTell();
  return (
    <span>
      {flags.map(({ name, reason, cleared }, place) => (
        <span key={name}>
          {place > 0 && "; "}
          {cleared === undefined ? (
            name
          ) : (
            <>
              <s>{name}</s> ({t("lots.list.cleared", { reason: cleared })})
            </>
          )}
          {reason !== undefined && <small> ({reason})</small>}
        </span>
      ))}
    </span>
  );
}
