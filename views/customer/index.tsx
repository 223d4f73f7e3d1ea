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
  scale?: { number: string; validUntil: string };
  heartbeatSeconds: number;
  /** true while nothing real is weighed */
  demo: boolean;
}

/** The window facing the customer. Nothing computed stands on it. */
export function CustomerWindow({ piece, scale, heartbeatSeconds, demo, ...live }: CustomerView) {
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
        <p id="piece-shown">
          <PieceShown {...(piece === undefined ? {} : { piece })} />
        </p>
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

/** Fragment: which piece is on the bench. */
export function PieceShown({ piece }: Pick<CustomerView, "piece">) {
  const say = useWords().customer;
  return <>{say.piece(piece ?? say.noPiece)}</>;
}
