import { HandsFreeNow } from "../bench/hands-free.tsx";
import { heartbeatSeconds } from "../bench/index.tsx";
import { LiveReading } from "../bench/live-reading.tsx";
import type { LiveView } from "../bench/view.ts";
import { Csrf } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";

const simulated = ["dry", "wet", "off"] as const;

/** The balance's own indication beside a lot; in the demonstration, hands at the simulated balance. */
export function LotBalance({
  live,
  changes,
  demoToken,
}: {
  live: LiveView;
  /** what a page of a lot has seen of the bench, so that it is drawn anew */
  changes?: string;
  demoToken?: string;
}) {
  const t = useTell();
  return (
    <section class="live-part" aria-label={t("lots.balance")} data-live>
      <div hx-sse:connect="/lots/live" data-heartbeat-seconds={heartbeatSeconds}>
        <div id="heartbeat" hidden />
        <div id="lot-changes" hidden>
          {changes !== undefined && <LotChanges seen={changes} />}
        </div>
        <div id="live-reading" class="live">
          <LotLive {...live} />
        </div>
      </div>
      {demoToken !== undefined && (
        <form
          method="post"
          action="/demo/simulator"
          hx-post="/demo/simulator"
          hx-swap="none"
          class="row simulator"
        >
          <Csrf token={demoToken} />
          {simulated.map((action) => (
            <button key={action} type="submit" class="quiet" name="action" value={action} data-passes-focus>
              {t(`bench.simulator.${action}`)}
            </button>
          ))}
        </form>
      )}
    </section>
  );
}

/** The live reading, and what hands-free tells. */
export function LotLive({ live, waitingFor, handsFree }: LiveView) {
  return (
    <>
      <LiveReading live={live} waitingFor={waitingFor} />
      <HandsFreeNow handsFree={handsFree} />
    </>
  );
}

/** What a page of the lot has seen of the bench; the script draws it anew when that changes. */
export function LotChanges({ seen }: { seen: string }) {
  return <i data-redraw={seen} />;
}
