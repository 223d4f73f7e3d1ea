import { useTell } from "../messages/spoken.ts";
import { Facts } from "../sheet.tsx";

/** What the person on the other side of the counter sees: the instrument's own indication, unaltered. */
export interface CustomerView {
  /** digits and unit exactly as the balance sent them; left out while none is fresh */
  indication?: string;
  /** at rest, moving, silent for …: in words */
  state: string;
  /** ticket and looks of the piece on the bench; left out while there is none */
  piece?: string;
  /** its dry reading as the instrument showed it; left out while there is none */
  kept?: string;
  /** the price locked for each metal of the lot being weighed; empty outside a lot and while none is locked */
  prices: readonly { metal: string; price: string; rate: string; from: string }[];
  scale?: { number: string; validUntil: string };
  heartbeatSeconds: number;
  /** true while nothing real is weighed */
  demo: boolean;
}

/** The window facing the customer. Nothing computed stands on it. */
export function CustomerWindow({ scale, heartbeatSeconds, demo, ...live }: CustomerView) {
  const t = useTell();
  return (
    <>
      {demo && (
        <p class="caution">
          <strong>{t("customer.demo")}</strong>
        </p>
      )}
      <div data-live hx-sse:connect="/customer/live" data-heartbeat-seconds={heartbeatSeconds}>
        <div id="heartbeat" hidden />
        <section class="live-box" aria-label={t("customer.indication")}>
          <div id="indication">
            <Indication {...live} />
          </div>
        </section>
        <div id="piece-shown">
          <ItemShown {...live} />
        </div>
        <div id="price-shown">
          <PriceShown {...live} />
        </div>
      </div>
      <Facts
        facts={[
          [
            t("customer.scale"),
            scale &&
              (scale.validUntil === ""
                ? scale.number
                : t("customer.seal-until", { number: scale.number, until: scale.validUntil })),
          ],
        ]}
      />
      <p class="hint">{t("customer.hint")}</p>
    </>
  );
}

/** Fragment: the indication alone. */
export function Indication({ indication, state }: Pick<CustomerView, "indication" | "state">) {
  return (
    <>
      <p class="live-reading">{indication ?? "–"}</p>
      <p>
        <strong>{state}</strong>
      </p>
    </>
  );
}

/** Fragment: which piece is on the bench, and its mass as the instrument showed it. */
export function ItemShown({ piece, kept }: Pick<CustomerView, "piece" | "kept">) {
  const t = useTell();
  return (
    <>
      <p>{t("customer.piece", { piece: piece ?? t("customer.no-piece") })}</p>
      {kept !== undefined && (
        <p>
          <strong>{t("customer.kept", { reading: kept })}</strong> {t("customer.after-dry")}
        </p>
      )}
    </>
  );
}

/** Fragment: what is paid for the metal of this lot, as it was locked. */
export function PriceShown({ prices }: Pick<CustomerView, "prices">) {
  const t = useTell();
  return (
    <>
      {prices.map(({ metal, price, rate, from }) => (
        <section key={metal} aria-label={t("customer.price", { metal })}>
          <p>{t("customer.price", { metal })}</p>
          <p class="result-value">{price}</p>
          <p>
            {rate} <span class="hint">({from})</span>
          </p>
        </section>
      ))}
    </>
  );
}
