import { Field } from "../forms.tsx";
import { useLocale, useTell } from "../messages/spoken.ts";
import { densityText } from "../numbers.ts";
import { StateWord } from "../result.tsx";
import { BenchForm, typedInto } from "./parts.tsx";
import { SecondPersonNote } from "./second-person.tsx";
import type { BenchView } from "./view.ts";

/** The two ends of a weighing: its record, with the result in one line, or setting the piece aside. */
export function RecordForm({ view }: { view: BenchView }) {
  const locale = useLocale();
  const t = useTell();
  const { evaluation } = view;
  const climbing = view.checks.some(({ code }) => code === "check.still-climbing");
  const told = evaluation && !("refused" in evaluation) && !climbing ? evaluation : undefined;
  return (
    <>
      {told && (
        <p>
          <a href="#result">
            {densityText(told.statement.density_g_cm3, told.statement.expanded_g_cm3, locale)} g/cm³
          </a>{" "}
          <StateWord state={told.statement.conformity.state} />
        </p>
      )}
      {view.secondPerson && <SecondPersonNote view={view.secondPerson} />}
      {view.secondPerson?.due === undefined && (
        <BenchForm view={view} to="/bench/record">
          {view.checks.some(({ severity }) => severity === "stop") && <WhatWasFound view={view} />}
          <button type="submit" class="large" data-key="w">
            {t("bench.end.write")} <kbd>W</kbd>
          </button>
        </BenchForm>
      )}
    </>
  );
}

/** A question of the watch is open: what somebody found goes into the record with it. */
function WhatWasFound({ view: { problem } }: { view: BenchView }) {
  const t = useTell();
  return (
    <Field
      name="found"
      label={t("bench.end.found")}
      hint={t("bench.end.found-hint")}
      value={typedInto(problem, "/bench/record").found ?? ""}
      maxLength={400}
      required
      {...(problem?.field === "found" ? { error: problem.says } : {})}
    />
  );
}

/** Sets the whole piece aside with a reason; its readings stay in the ledger. */
export function CallOff({ view }: { view: BenchView }) {
  const t = useTell();
  const { reason } = typedInto(view.problem, "/bench/call-off");
  return (
    <details class="inline" open={reason !== undefined || undefined}>
      <summary>{t("bench.end.leave")}</summary>
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
