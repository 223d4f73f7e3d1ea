import { Check, Field } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { NextButton } from "./next-button.tsx";
import { BenchForm, typedInto } from "./parts.tsx";
import { SecondPersonNote } from "./second-person.tsx";
import type { BenchView } from "./view.ts";

/** The record as the next thing, unless a second person must read first; with what was found where a check stands. */
export function RecordForm({ view, next = true }: { view: BenchView; next?: boolean }) {
  const t = useTell();
  const asks = view.checks.some(({ severity }) => severity === "stop");
  return (
    <>
      {view.secondPerson && <SecondPersonNote view={view.secondPerson} />}
      {view.secondPerson?.due === undefined && (
        <BenchForm view={view} to="/bench/record">
          {asks && <WhatWasFound view={view} />}
          {next ? (
            <NextButton keys="Enter w">{t("bench.end.write")}</NextButton>
          ) : (
            <button type="submit" class="plain">
              {t("bench.end.write")}
            </button>
          )}
        </BenchForm>
      )}
    </>
  );
}

/** A question of the watch is open: what somebody found goes into the record with it. */
function WhatWasFound({ view: { problem } }: { view: BenchView }) {
  const t = useTell();
  const { found = "", stands } = typedInto(problem, "/bench/record");
  return (
    <>
      <Field
        name="found"
        label={t("bench.end.found")}
        hint={t("bench.end.found-hint")}
        value={found}
        maxLength={400}
        required
        {...(problem?.field === "found" ? { error: problem.message } : {})}
      />
      <Check name="stands" label={t("stopped.stands")} checked={stands !== undefined} required />
    </>
  );
}

/** Sets the whole piece aside with a reason; its readings stay in the ledger. */
export function CallOff({ view }: { view: BenchView }) {
  const t = useTell();
  const { reason } = typedInto(view.problem, "/bench/call-off");
  return (
    <details class="inline call-off" open={reason !== undefined || undefined}>
      <summary data-key="Escape">
        {t("bench.end.leave")} <kbd>Esc</kbd>
      </summary>
      <BenchForm view={view} to="/bench/call-off">
        <div class="entry">
          <label class="unseen" for="piece-why">
            {t("bench.end.why")}
          </label>
          <input
            id="piece-why"
            name="reason"
            type="text"
            value={reason ?? ""}
            placeholder={t("bench.end.why-example")}
            maxLength={200}
          />
          <button type="submit" class="plain">
            {t("bench.end.leave-now")}
          </button>
        </div>
      </BenchForm>
    </details>
  );
}
