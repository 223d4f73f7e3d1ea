import { roleNames } from "../../server/bench/method.ts";
import type { LiveView } from "../../server/bench/view.ts";

const steadyWords = {
  steady: "steady",
  moving: "moving",
  "not-told": "the balance does not say whether it rests",
};

/** The balance's own indication, in its own digits and unit; silence is shown as silence, never as a number that still counts. */
export function LiveReading({ live, waitingFor }: LiveView) {
  if (live === undefined)
    return <p class="hint">No balance on a cable: read the scale and type what it shows.</p>;
  if (live.state === "says")
    return (
      <p class="state state-undecided" data-say={live.says}>
        <span class="sign" aria-hidden="true">
          ○
        </span>
        {live.says}
      </p>
    );
  if (live.state === "silent")
    return (
      <>
        {live.last && (
          <p class="live-reading voided" aria-hidden="true">
            {live.last.text} <span class="unit">{live.last.unit}</span>
          </p>
        )}
        <p class="state state-disagrees" data-say="The balance is silent">
          <span class="sign" aria-hidden="true">
            –
          </span>
          {live.says}
        </p>
      </>
    );
  return (
    <>
      <p class="live-reading">
        {live.text.replace("-", "\u2212")} <span class="unit">{live.unit}</span>
      </p>
      <p class={live.steady === "moving" ? "hint" : "label"}>
        <span aria-hidden="true">
          {live.steady === "steady" ? "= " : live.steady === "moving" ? "~ " : "? "}
        </span>
        {steadyWords[live.steady]}
        {waitingFor && `; the ${roleNames[waitingFor]} reading is taken when it rests`}
      </p>
    </>
  );
}
