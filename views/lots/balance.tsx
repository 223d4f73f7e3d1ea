import { heartbeatSeconds } from "../bench/index.tsx";
import { LiveReading } from "../bench/live-reading.tsx";
import type { LiveView } from "../bench/view.ts";
import { Csrf } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";

const simulated = ["dry", "wet", "off"] as const;

/** The balance's own indication beside a lot; in the demonstration, hands at the simulated balance. */
export function LotBalance({ live, demoToken }: { live: LiveView; demoToken?: string }) {
  const t = useTell();
  return (
    <>
      <div hx-sse:connect="/lots/live" data-heartbeat-seconds={heartbeatSeconds}>
        <div id="heartbeat" hidden />
        <div id="live-reading">
          <LiveReading {...live} />
        </div>
      </div>
      {demoToken !== undefined && (
        <form method="post" action="/demo/simulator" hx-post="/demo/simulator" hx-swap="none" class="row">
          <Csrf token={demoToken} />
          {simulated.map((action) => (
            <button key={action} type="submit" class="plain" name="action" value={action}>
              {t(`lots.simulator.${action}`)}
            </button>
          ))}
        </form>
      )}
    </>
  );
}
