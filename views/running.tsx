import { Csrf } from "./forms.tsx";
import { useTell } from "./messages/spoken.ts";
import { Sentence } from "./sentence.tsx";

export interface RunningView {
  /** how much there is to do, and how much of it was done so far; the same in words */
  of: number;
  seen: number;
  soFar: Sentence;
  /** where a stop is sent, and which work it means */
  stopAt: string;
  run: string;
  csrfToken: string;
}

/** How far long work is, with a way to stop it. */
export function RunningPage({ of, seen, soFar, stopAt, run, csrfToken }: RunningView) {
  const t = useTell();
  return (
    <form method="post" action={stopAt} class="sheet">
      <Csrf token={csrfToken} />
      <input type="hidden" name="run" value={run} />
      <p role="status">
        <progress value={seen} max={of} /> <Sentence message={soFar} />
      </p>
      <p class="hint">{t("running.goes-on")}</p>
      <button type="submit" class="plain">
        {t("running.stop")}
      </button>
    </form>
  );
}
