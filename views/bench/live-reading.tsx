import { asIs } from "../as-is.ts";
import { useLocale, useTell } from "../messages/spoken.ts";
import type { Role } from "../methods/view.ts";
import { inLocale } from "../numbers.ts";
import { Told, toldText } from "../told.tsx";
import { Trace, type TraceShown } from "./trace.tsx";

/** What the balance shows at this moment, in its own unit and digits. */
export type LiveShown =
  | {
      state: "reading";
      text: string;
      unit: string;
      stability: "stable" | "moving" | "unknown";
      trace?: TraceShown;
    }
  | { state: "event"; message: Told }
  | { state: "silent"; message: Told; last?: { text: string; unit: string } };

export interface LiveReadingView {
  live: LiveShown | undefined;
  /** the reading that a capture waits for */
  waitingFor: Role | undefined;
}

/** The balance's own indication, in its own digits and unit; silence is shown as silence, never as a number that still counts. */
export function LiveReading({ live, waitingFor }: LiveReadingView) {
  const locale = useLocale();
  const t = useTell();
  if (live === undefined) return <p class="hint">{t("bench.live.none")}</p>;
  if (live.state === "event")
    return (
      <p class="state state-inconclusive" data-say={toldText(live.message, locale)}>
        <span class="sign" aria-hidden="true">
          ○
        </span>
        <Told says={live.message} />
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
          <Told says={live.message} />
        </p>
      </>
    );
  return (
    <>
      <p {...asIs} class="live-reading">
        {inLocale(live.text, locale)} <span class="unit">{live.unit}</span>
      </p>
      <Trace points={live.trace ?? []} />
      <p class={live.stability === "moving" ? "hint" : "label"}>
        <span aria-hidden="true">
          {live.stability === "stable" ? "= " : live.stability === "moving" ? "~ " : "? "}
        </span>
        {t(`balance.stability.${live.stability}`)}
        {waitingFor && `; ${t("bench.live.waiting-for", { role: t(`bench.roles.${waitingFor}`) })}`}
      </p>
    </>
  );
}
