import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Fold } from "../sheet.tsx";
import { CheckFirst, CheckNotes, RemedyButton, remedyOf, Why } from "./checks.tsx";
import { DoneRows } from "./done-rows.tsx";
import { HandsFreeSwitch } from "./hands-free.tsx";
import { Instruction } from "./instruction.tsx";
import { RecordForm } from "./item-end.tsx";
import { OtherItem } from "./other-item.tsx";
import { BenchForm, ProblemNote, typedInto } from "./parts.tsx";
import { StepAct } from "./step-act.tsx";
import { StepDrawing } from "./step-drawing.tsx";
import { TypedStep, typesFirst } from "./typed-step.tsx";
import type { BenchView, CheckView, ItemView, StepView } from "./view.ts";
import { WeighingDetails } from "./weighing-details.tsx";

/** The piece on the bench: what to do now, large; what is wrong in its place; under it every reading taken so far. */
export function ItemSteps({ view, item }: { view: BenchView; item: ItemView }) {
  const due = dueStep(view);
  const stops = view.checks.filter(({ severity }) => severity === "stop");
  const stop = due && stops.find((check) => takesPlace(check, due));
  const answered = due?.name === "record" && view.evaluation !== undefined && stops.length === 0;
  return (
    <section id={answered ? undefined : "now"} aria-labelledby={stop ? "check-heading" : "step-heading"}>
      <Problems view={view} />
      {due && !view.otherItem && typesFirst(view, due) && !stop ? (
        <TypedStep view={view} item={item} step={due} />
      ) : (
        <Now view={view} item={item} step={due} stop={stop} />
      )}
      <CheckNotes view={view} checks={view.checks.filter((check) => check !== stop)} />
      <DoneRows view={view} item={item} due={due} />
      <WeighingDetails view={view} item={item} />
    </section>
  );
}

/** The step that is due; while it is asked whether this is the right piece, nothing gets wet. */
function dueStep({ steps, otherItem }: BenchView): StepView | undefined {
  const due = steps.find(({ state }) => state === "due");
  return otherItem ? (steps.find(({ name }) => name === "dry") ?? due) : due;
}

/** A check that stops takes the place of the instruction where a button can do its remedy, and of the record always. */
function takesPlace(stop: CheckView, { name }: StepView): boolean {
  return name === "record" || stop.impossible === true || remedyOf(stop) !== undefined;
}

function Now({
  view,
  item,
  step,
  stop,
}: {
  view: BenchView;
  item: ItemView;
  step: StepView | undefined;
  stop: CheckView | undefined;
}) {
  if (view.otherItem)
    return (
      <div class="now">
        <div class="across">
          <OtherItem
            view={view.otherItem}
            typed={typedInto(view.problem, "/bench/right-piece")}
            form={(to, children) => (
              <BenchForm view={view} to={`/bench/${to}`}>
                {children}
              </BenchForm>
            )}
          />
        </div>
      </div>
    );
  if (!step) return null;
  const checkStands = stop !== undefined;
  return (
    <div class="now" data-step={step.name}>
      {checkStands ? (
        <CheckFirst check={stop} />
      ) : (
        <>
          <Instruction step={step} />
          {step.name !== "record" && <StepDrawing method={item.method} role={step.role} />}
        </>
      )}
      <div class="act">
        {checkStands && remedyOf(stop) ? (
          <>
            <RemedyButton view={view} check={stop} next />
            {view.handsFree && <HandsFreeSwitch view={view} />}
          </>
        ) : (
          <StepAct view={view} item={item} step={step} stop={checkStands ? stop : undefined} />
        )}
      </div>
      {checkStands && (
        <div class="across">
          <Why check={stop} />
          {step.name === "record" && !stop.impossible && <AnswerInstead view={view} />}
        </div>
      )}
    </div>
  );
}

/** The other way on from a check that stands before the record: what was found goes into it. */
function AnswerInstead({ view }: { view: BenchView }) {
  const t = useTell();
  return (
    <Fold title={t("bench.end.found")} open={view.problem?.from === "/bench/record"}>
      <div>
        <RecordForm view={view} next={false} />
      </div>
    </Fold>
  );
}

function Problems({ view }: { view: BenchView }) {
  const t = useTell();
  return (
    <>
      <ProblemNote problem={view.problem} />
      {view.error && (
        <div class="problems" role="alert">
          <p>
            <Sentence message={view.error} />
          </p>
        </div>
      )}
      {view.claimGone !== undefined && (
        <p class="check-note" data-code="weighing.claim-gone">
          {t("weighing.claim-gone", { claim: view.claimGone })}
        </p>
      )}
    </>
  );
}
