import type { LiveView } from "../../server/station/view.ts";
import { asIs } from "../as-is.ts";
import { inLocale } from "../numbers.ts";
import { Told } from "../told.tsx";
import { useLocale, useWords } from "../words/spoken.ts";
import { told } from "../words/told.ts";

/** The balance's own indication, in its own digits and unit; silence is shown as silence, never as a number that still counts. */
export function LiveReading({ live, waitingFor }: LiveView) {
  const locale = useLocale();
  const { live: say, roles } = useWords().bench;
  if (live === undefined) return <p class="hint">{say.none}</p>;
  if (live.state === "says")
    return (
      <p class="state state-inconclusive" data-say={told(live.says, locale)}>
        <span class="sign" aria-hidden="true">
          ○
        </span>
        <Told says={live.says} />
      </p>
    );
  if (live.state === "silent")
    return (
      <>
        {live.last && (
          <p class="live-reading voided" aria-hidden="true">
            {inLocale(live.last.text, locale)} <span class="unit">{live.last.unit}</span>
          </p>
        )}
        <p class="state state-excluded" data-say={say.silent}>
          <span class="sign" aria-hidden="true">
            –
          </span>
          <Told says={live.says} />
        </p>
      </>
    );
  return (
    <>
      <p {...asIs} class="live-reading">
        {inLocale(live.text, locale)} <span class="unit">{live.unit}</span>
      </p>
      <p class={live.steady === "moving" ? "hint" : "label"}>
        <span aria-hidden="true">
          {live.steady === "steady" ? "= " : live.steady === "moving" ? "~ " : "? "}
        </span>
        {say[live.steady]}
        {waitingFor && `; ${say.waitingFor(roles[waitingFor])}`}
      </p>
    </>
  );
}
