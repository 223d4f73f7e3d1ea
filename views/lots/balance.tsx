import type { LiveView } from "../../server/bench/view.ts";
import { heartbeatSeconds } from "../bench/index.tsx";
import { LiveReading } from "../bench/live-reading.tsx";
import { Csrf } from "../forms.tsx";

const hands = [
  { deed: "dry", says: "Lay it on the pan" },
  { deed: "wet", says: "Hang it in the water" },
  { deed: "off", says: "Take it off" },
] as const;

/** The balance's own indication beside a lot; in the demonstration, hands at the simulated balance. */
export function LotBalance({ live, demoToken }: { live: LiveView; demoToken?: string }) {
  return (
    <>
      <div hx-sse:connect="/lots/live" data-heartbeat-seconds={heartbeatSeconds}>
        <div id="heartbeat" hidden />
        <div id="live-reading">
          <LiveReading {...live} />
        </div>
      </div>
      {demoToken !== undefined && (
        <form method="post" action="/demo/hands" hx-post="/demo/hands" hx-swap="none" class="row">
          <Csrf token={demoToken} />
          {hands.map(({ deed, says }) => (
            <button key={deed} type="submit" class="plain" name="deed" value={deed}>
              {says}
            </button>
          ))}
        </form>
      )}
    </>
  );
}
