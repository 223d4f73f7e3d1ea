import { asIs } from "../as-is.ts";
import { useLocale, useTell } from "../messages/spoken.ts";
import { inLocale } from "../numbers.ts";
import { BenchForm, typedInto } from "./parts.tsx";
import type { BenchView, CaptureView } from "./view.ts";

/** One reading, how it was taken, and the form that sets it aside with a reason. */
export function CaptureLine({ capture, view }: { capture: CaptureView; view: BenchView }) {
  const locale = useLocale();
  const t = useTell();
  const to = `/bench/captures/${capture.id}/voiding`;
  return (
    <li>
      <span {...asIs} class={capture.excluded ? "voided number" : "number"}>
        {inLocale(capture.text, locale)} {capture.unit}
      </span>{" "}
      <span class="hint">{t(`bench.readings.how-taken.${capture.takenBy}`)}</span>
      {capture.excluded ? (
        <span class="hint"> {t("bench.readings.excluded-with", { reason: capture.excluded.reason })}</span>
      ) : (
        <details class="inline">
          <summary>{t("bench.readings.excluded")}</summary>
          <BenchForm view={view} to={to}>
            <div class="entry">
              <label class="unseen" for={`why-${capture.id}`}>
                {t("bench.readings.why")}
              </label>
              <input
                id={`why-${capture.id}`}
                name="reason"
                type="text"
                value={typedInto(view.problem, to).reason ?? ""}
                placeholder={t("bench.readings.why-example")}
                maxLength={200}
              />
              <button type="submit" class="plain">
                {t("bench.readings.excluded-now")}
              </button>
            </div>
          </BenchForm>
        </details>
      )}
    </li>
  );
}
