import { Facts } from "../sheet.tsx";

/** What the person on the other side of the counter sees: the instrument's own indication, unaltered. */
export interface CustomerView {
  /** digits and unit exactly as the balance sent them; left out while none is fresh */
  indication?: string;
  /** at rest, moving, silent for …: in words */
  state: string;
  /** ticket and looks of the piece on the bench */
  piece: string;
  scale?: { number: string; validUntil: string };
  heartbeatSeconds: number;
  /** true while nothing real is weighed */
  demo: boolean;
}

/** The window facing the customer. Nothing computed stands on it. */
export function CustomerWindow({ piece, scale, heartbeatSeconds, demo, ...live }: CustomerView) {
  return (
    <>
      {demo && (
        <p class="caution">
          <strong>Demonstration: an invented balance, nothing real is weighed.</strong>
        </p>
      )}
      <div data-live hx-sse:connect="/customer/live" data-heartbeat-seconds={heartbeatSeconds}>
        <div id="heartbeat" hidden />
        <section class="live-box" aria-label="Indication of the instrument">
          <div id="indication">
            <Indication {...live} />
          </div>
        </section>
        <p id="piece-shown">
          <PieceShown piece={piece} />
        </p>
      </div>
      <Facts
        facts={[
          [
            "Verified scale",
            scale &&
              (scale.validUntil === ""
                ? scale.number
                : `${scale.number}, seal valid until ${scale.validUntil}`),
          ],
        ]}
      />
      <p class="hint">
        The mass is what the instrument shows. Density and fineness are no part of a sale by weight.
      </p>
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

/** Fragment: which piece is on the bench. */
export function PieceShown({ piece }: Pick<CustomerView, "piece">) {
  return <>Piece: {piece}</>;
}
