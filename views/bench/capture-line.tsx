import type { Capture } from "../../server/bench/piece.ts";
import type { BenchView } from "../../server/bench/view.ts";
import { BenchForm } from "./parts.tsx";

const howTaken = {
  mark: "at rest by the balance's own mark",
  "own-criterion": "at rest by its spread",
  "by-hand": "taken by hand",
  typed: "typed",
} as const;

/** One reading, how it was taken, and the form that sets it aside with a reason. */
export function CaptureLine({ capture, view }: { capture: Capture; view: BenchView }) {
  return (
    <li>
      <span class={capture.setAside ? "voided number" : "number"}>
        {capture.text} {capture.unit}
      </span>{" "}
      <span class="hint">{howTaken[capture.takenBy]}</span>
      {capture.setAside ? (
        <span class="hint"> set aside: {capture.setAside.reason}</span>
      ) : (
        <details class="inline">
          <summary>set aside</summary>
          <BenchForm view={view} to={`/bench/captures/${capture.id}/voiding`}>
            <div class="entry">
              <label class="unseen" for={`why-${capture.id}`}>
                Why is it set aside
              </label>
              <input
                id={`why-${capture.id}`}
                name="reason"
                type="text"
                placeholder="bubble on the edge"
                maxLength={200}
              />
              <button type="submit" class="plain">
                Set aside, keep visible
              </button>
            </div>
          </BenchForm>
        </details>
      )}
    </li>
  );
}
