import { useLocale, useTell } from "../messages/spoken.ts";
import { sentenceText } from "../sentence.tsx";
import { BenchForm } from "./parts.tsx";
import type { BenchView, LiveView } from "./view.ts";

/** The switch for hands in water: each load at rest is taken by itself. */
export function HandsFreeSwitch({ view }: { view: BenchView }) {
  return (
    <BenchForm view={view} to={view.handsFree ? "/bench/hands-free/end" : "/bench/hands-free"}>
      <HandsFreeButton on={view.handsFree} />
    </BenchForm>
  );
}

/** Its button, for a form of the bench or of a lot. */
export function HandsFreeButton({ on }: { on: boolean }) {
  const t = useTell();
  return (
    <button
      type="submit"
      class="plain"
      data-wakes-sound
      data-key="Space"
      aria-pressed={on ? "true" : "false"}
    >
      {t(on ? "bench.next.end-hands-free" : "bench.next.hands-free")} <kbd>{t("frame.key.space-name")}</kbd>
    </button>
  );
}

/** What was heard last and what to do now while each load is taken by itself; renewed with the live reading. */
export function HandsFreeNow({ handsFree }: Pick<LiveView, "handsFree">) {
  const locale = useLocale();
  const t = useTell();
  if (!handsFree) return null;
  const { heard, taken } = handsFree;
  const now = sentenceText(handsFree.message, locale);
  const message = heard ? sentenceText(heard.message, locale) : now;
  return (
    <div
      class="hands-free wide-part"
      data-heard={heard?.kind ?? "none"}
      data-count={heard?.count ?? 0}
      data-says={message}
      data-say={message}
    >
      <p>
        <strong>{message}</strong> {message !== now && <span class="hint">{now}</span>}
      </p>
      <p class="hint row">
        {t("bench.hands-free.taken", { count: taken })}
        <label hidden data-voice>
          <input type="checkbox" defaultChecked /> {t("bench.hands-free.voice")}
        </label>
      </p>
    </div>
  );
}
