import { Facts } from "../sheet.tsx";

/** What the person on the other side of the counter sees: the instrument's own indication, unaltered. */
export interface CustomerView {
  /** digits and unit exactly as the balance sent them; left out while none is fresh */
  indication?: string;
  /** at rest, moving, silent for …: in words */
  state: string;
  ticket?: string;
  piece?: string;
  scale?: { number: string; validUntil: string };
  /** price per unit as displayed at the counter, if any */
  price?: string;
}

/** The window facing the customer. Nothing computed stands on it. */
export function CustomerWindow({ ticket, piece, scale, price, ...live }: CustomerView) {
  return (
    <>
      <div
        data-live
        data-heartbeat-seconds="2"
        hx-sse:connect="/customer/live"
        hx-target="#indication"
        hx-swap="outerHTML"
      >
        <Indication {...live} />
      </div>
      <Facts
        facts={[
          ["Ticket", ticket],
          ["Piece", piece],
          ["Price", price],
          ["Scale", scale && `${scale.number}, seal valid until ${scale.validUntil}`],
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
    <section id="indication" class="live-box" aria-label="Indication of the instrument">
      <p class="live-reading">{indication ?? "–"}</p>
      <p>
        <strong>{state}</strong>
      </p>
    </section>
  );
}
