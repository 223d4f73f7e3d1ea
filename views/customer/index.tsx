import { Facts } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";

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
  const say = useWords().customer;
  return (
    <>
      {demo && (
        <p class="caution">
          <strong>{say.demo}</strong>
        </p>
      )}
      <div data-live hx-sse:connect="/customer/live" data-heartbeat-seconds={heartbeatSeconds}>
        <div id="heartbeat" hidden />
        <section class="live-box" aria-label={say.indication}>
          <div id="indication">
            <Indication {...live} />
          </div>
        </section>
        <div id="piece-shown">
          <PieceShown {...live} />
        </div>
        <div id="price-shown">
          <PriceShown {...live} />
        </div>
      </div>
      <Facts
        facts={[
          [
            say.scale,
            scale && (scale.validUntil === "" ? scale.number : say.sealUntil(scale.number, scale.validUntil)),
          ],
        ]}
      />
      <p class="hint">{say.hint}</p>
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
export function PieceShown({ piece, kept }: Pick<CustomerView, "piece" | "kept">) {
  const say = useWords().customer;
  return (
    <>
      <p>{say.piece(piece ?? say.noPiece)}</p>
      {kept !== undefined && (
        <p>
          <strong>{say.kept(kept)}</strong> {say.afterDry}
        </p>
      )}
    </>
  );
}

/** Fragment: what is paid for the metal of this lot, as it was locked. */
export function PriceShown({ prices }: Pick<CustomerView, "prices">) {
  const say = useWords().customer;
  return (
    <>
      {prices.map(({ metal, price, rate, from }) => (
        <section key={metal} aria-label={say.price(metal)}>
          <p>{say.price(metal)}</p>
          <p class="result-value">{price}</p>
          <p>
            {rate} <span class="hint">({from})</span>
          </p>
        </section>
      ))}
    </>
  );
}
