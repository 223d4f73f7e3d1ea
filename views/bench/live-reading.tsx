import { asIs } from "../as-is.ts";
import { useLocale, useTell } from "../messages/spoken.ts";
import type { Role } from "../methods/view.ts";
import { inLocale } from "../numbers.ts";
import { Sentence, sentenceText } from "../sentence.tsx";
import { Trace, type TraceShown } from "./trace.tsx";

/** What the balance shows at this moment, in its own unit and digits. */
export type LiveShown =
  | {
      state: "reading";
      text: string;
      unit: string;
      stability: "stable" | "moving" | "unknown";
      /** the reading was taken, and a creep will be excluded after so many s */
      watchesForSeconds?: number;
      trace?: TraceShown;
    }
  | { state: "event"; message: Sentence }
  | { state: "silent"; message: Sentence; last?: { text: string; unit: string } };

/** Stable, moving, not known: drawn as well as said. */
const signs = {
  stable: "M1 6H19",
  moving: "M1 6c2-6 4-6 6 0s4 6 6 0 4-6 6 0",
  unknown: "M3 6h.1M10 6h.1M17 6h.1",
} as const;

/** The balance's own indication, in its own digits and unit; silence is shown as silence, never as a number that still counts. */
export function LiveReading({
  live,
  waitingFor,
}: {
  live: LiveShown | undefined;
  /** the reading that is awaited, where no button says so */
  waitingFor?: Role | undefined;
}) {
  const locale = useLocale();
  const t = useTell();
  if (live === undefined) return null;
  if (live.state === "event")
    return (
      <p class="state state-inconclusive wide-part" data-say={sentenceText(live.message, locale)}>
        <span class="sign" aria-hidden="true">
          ○
        </span>
        <Sentence message={live.message} />
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
        <p class="state state-excluded wide-part" data-say={t("bench.live.silent")}>
          <span class="sign" aria-hidden="true">
            –
          </span>
          <Sentence message={live.message} />
        </p>
      </>
    );
  const { text, unit, stability, watchesForSeconds, trace = [] } = live;
  const shown = inLocale(text, locale);
  return (
    <>
      <p {...asIs} class="live-reading">
        {stability === "moving" ? (
          <>
            {shown.slice(0, -1)}
            <i>{shown.slice(-1)}</i>
          </>
        ) : (
          shown
        )}
        <span class="unit">{unit}</span>
      </p>
      <p class={watchesForSeconds === undefined ? "stability" : "stability watching"}>
        <svg viewBox="0 0 20 12" aria-hidden="true">
          <path d={signs[stability]} />
        </svg>
        {watchesForSeconds === undefined
          ? t(`balance.stability.${stability}`)
          : t("bench.live.watching", { seconds: Math.ceil(watchesForSeconds) })}
      </p>
      <Trace points={trace} />
      {waitingFor && (
        <p class="hint wide-part">{t("bench.live.waiting-for", { role: t(`bench.roles.${waitingFor}`) })}</p>
      )}
    </>
  );
}
