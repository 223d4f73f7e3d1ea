import type { LiveView } from "../../server/station/view.ts";
import { asIs } from "../as-is.ts";
import { useLocale, useTell } from "../messages/spoken.ts";
import { inLocale } from "../numbers.ts";
import { Told } from "../told.tsx";
import { told } from "../words/told.ts";

/** The balance's own indication, in its own digits and unit; silence is shown as silence, never as a number that still counts. */
export function LiveReading({ live, waitingFor }: LiveView) {
  const locale = useLocale();
  const t = useTell();
  if (live === undefined) return <p class="hint">{t("bench.live.none")}</p>;
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
        <p class="state state-excluded" data-say={t("bench.live.silent")}>
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
        {t(`bench.live.${live.steady}`)}
        {waitingFor && `; ${t("bench.live.waiting-for", { role: t(`bench.roles.${waitingFor}`) })}`}
      </p>
    </>
  );
}
