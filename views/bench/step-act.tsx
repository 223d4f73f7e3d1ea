import { useTell } from "../messages/spoken.ts";
import type { Role } from "../methods/view.ts";
import { HandsFreeSwitch } from "./hands-free.tsx";
import { RecordForm } from "./item-end.tsx";
import { NextButton, NextWaits } from "./next-button.tsx";
import { BenchForm } from "./parts.tsx";
import { StatedForm } from "./stated-form.tsx";
import { TypedForm } from "./typed-form.tsx";
import type { BenchView, CheckView, ItemView, StepView } from "./view.ts";

/** The next thing as one filled button in its fixed place, and under it what else can be done at this step. */
export function StepAct({
  view,
  item,
  step,
  stop,
}: {
  view: BenchView;
  item: ItemView;
  step: StepView;
  /** a check that stands in the place of the instruction and has no button of its own */
  stop: CheckView | undefined;
}) {
  const waits = view.waitingFor !== undefined;
  if (waits && (stop || step.role === undefined)) return <Waiting view={view} />;
  if (stop) return <TakeInstead view={view} check={stop} />;
  if (step.name === "record")
    return (
      <>
        <RecordForm view={view} />
        <Repeat view={view} item={item} />
      </>
    );
  if (step.role === undefined) return <StatedForm view={view} item={item} due />;
  return (
    <>
      {waits ? <Waiting view={view} /> : <Take view={view} role={step.role} />}
      <div class="beside-next">
        {view.scaleName !== undefined && !waits && <HandsFreeSwitch view={view} />}
        {/* stands while a reading is awaited as well: what is half typed in it stays */}
        <TypedForm role={step.role} view={view} again={false} />
      </div>
    </>
  );
}

function Take({ view, role }: { view: BenchView; role: Role }) {
  const t = useTell();
  return (
    <BenchForm view={view} to="/bench/captures" hidden={{ role }}>
      <NextButton keys="Enter F9 t" live>
        {t("bench.next.take")} <span class="unseen">{t(`bench.roles.${role}`)}</span>
      </NextButton>
    </BenchForm>
  );
}

/** One more reading of the load that was taken last. */
export function Repeat({ view, item }: { view: BenchView; item: ItemView }) {
  const t = useTell();
  const roles = view.steps.flatMap(({ role }) => role ?? []);
  const role = item.captures.filter((one) => roles.some((known) => known === one.role)).at(-1)?.role;
  if (role === undefined) return null;
  if (view.scaleName === undefined) return <TypedForm role={role} view={view} again id={`repeat-${role}`} />;
  return (
    <div class="beside-next">
      <BenchForm view={view} to="/bench/captures" hidden={{ role }}>
        <button type="submit" class="plain" data-needs-live data-key="r">
          {t("bench.next.repeat")} <span class="unseen">{t(`bench.roles.${role}`)}</span> <kbd>R</kbd>
        </button>
      </BenchForm>
      <HandsFreeSwitch view={view} />
    </div>
  );
}

/** The last reading in the water cannot be right and no other remedy is known: it is excluded and taken again. */
function TakeInstead({ view, check }: { view: BenchView; check: CheckView }) {
  const t = useTell();
  return (
    <BenchForm view={view} to="/bench/remedy" hidden={{ check: check.code, place: "" }}>
      <NextButton>{t("bench.remedy.repeat")}</NextButton>
    </BenchForm>
  );
}

function Waiting({ view }: { view: BenchView }) {
  return (
    <>
      <NextWaits />
      <WaysOut view={view} />
    </>
  );
}

/** While a reading is awaited: take the moving one after all, or none. */
export function WaysOut({ view }: { view: BenchView }) {
  const t = useTell();
  return (
    <div class="beside-next" role="status">
      <BenchForm view={view} to="/bench/capture-by-hand">
        <button type="submit" class="plain">
          {t("bench.readings.take-by-hand")}
        </button>
      </BenchForm>
      <BenchForm view={view} to="/bench/capture-cancelled">
        <button type="submit" class="plain">
          {t("bench.readings.do-not-take")}
        </button>
      </BenchForm>
    </div>
  );
}
