import type { BenchView } from "../../server/station/view.ts";
import type { Capture } from "../../server/weighing/piece.ts";
import { asIs } from "../as-is.ts";
import { inLocale } from "../numbers.ts";
import { useLocale, useWords } from "../words/spoken.ts";
import { BenchForm } from "./parts.tsx";

/** One reading, how it was taken, and the form that sets it aside with a reason. */
export function CaptureLine({ capture, view }: { capture: Capture; view: BenchView }) {
  const locale = useLocale();
  const say = useWords().bench.readings;
  return (
    <li>
      <span {...asIs} class={capture.setAside ? "voided number" : "number"}>
        {inLocale(capture.text, locale)} {capture.unit}
      </span>{" "}
      <span class="hint">{say.howTaken[capture.takenBy]}</span>
      {capture.setAside ? (
        <span class="hint"> {say.setAsideWith(capture.setAside.reason)}</span>
      ) : (
        <details class="inline">
          <summary>{say.setAside}</summary>
          <BenchForm view={view} to={`/bench/captures/${capture.id}/voiding`}>
            <div class="entry">
              <label class="unseen" for={`why-${capture.id}`}>
                {say.why}
              </label>
              <input
                id={`why-${capture.id}`}
                name="reason"
                type="text"
                placeholder={say.whyExample}
                maxLength={200}
              />
              <button type="submit" class="plain">
                {say.setAsideNow}
              </button>
            </div>
          </BenchForm>
        </details>
      )}
    </li>
  );
}
