import { isRefused } from "../../server/compute/evaluation.ts";
import type { BenchView } from "../../server/station/view.ts";
import { StateWord } from "../finding.tsx";
import { Field } from "../forms.tsx";
import { plusMinus } from "../numbers.ts";
import { useLocale, useWords } from "../words/spoken.ts";
import { BenchForm } from "./parts.tsx";
import { SecondPersonNote } from "./second-person.tsx";

/** The two ends of a weighing: its record, with the result in one line, or setting the piece aside. */
export function RecordForm({ view }: { view: BenchView }) {
  const locale = useLocale();
  const say = useWords().bench.end;
  const { evaluation } = view;
  const climbing = view.doubts.some(({ kind }) => kind === "still-climbing");
  const told = evaluation && !isRefused(evaluation) && !climbing ? evaluation : undefined;
  return (
    <>
      {told && (
        <p>
          <a href="#result">
            {plusMinus(told.response.density_g_cm3, told.response.expanded_g_cm3, locale)} g/cm³
          </a>{" "}
          <StateWord state={told.finding.state} />
        </p>
      )}
      {view.secondPerson && <SecondPersonNote view={view.secondPerson} />}
      {view.secondPerson?.due === undefined && (
        <BenchForm view={view} to="/bench/record" hidden={{ key: `${view.key}-found` }}>
          {view.doubts.some(({ blocking }) => blocking) && <WhatWasFound view={view} />}
          <button type="submit" class="large" data-key="w">
            {say.write} <kbd>W</kbd>
          </button>
        </BenchForm>
      )}
    </>
  );
}

/** A question of the watch is open: what somebody found goes into the record with it. */
function WhatWasFound({ view: { problem } }: { view: BenchView }) {
  const say = useWords().bench.end;
  return (
    <Field
      name="found"
      label={say.found}
      hint={say.foundHint}
      value={problem?.typed?.found ?? ""}
      maxLength={400}
      required
      {...(problem?.field === "found" ? { error: problem.says } : {})}
    />
  );
}

/** Sets the whole piece aside with a reason; its readings stay in the ledger. */
export function SetPieceAside({ view }: { view: BenchView }) {
  const say = useWords().bench.end;
  return (
    <details class="inline">
      <summary>{say.leave}</summary>
      <BenchForm view={view} to="/bench/piece-set-aside">
        <div class="entry">
          <label class="unseen" for="piece-why">
            {say.why}
          </label>
          <input id="piece-why" name="reason" type="text" placeholder={say.whyExample} maxLength={200} />
          <button type="submit" class="plain">
            {say.leaveNow}
          </button>
        </div>
      </BenchForm>
    </details>
  );
}
