import { useTell } from "../messages/spoken.ts";
import { Instruction } from "./instruction.tsx";
import { NextButton } from "./next-button.tsx";
import { BenchForm } from "./parts.tsx";
import { Repeat, WaysOut } from "./step-act.tsx";
import { StepDrawing } from "./step-drawing.tsx";
import { ReadingEntry } from "./typed-form.tsx";
import type { BenchView, ItemView, StepView } from "./view.ts";
import { WaterEntry } from "./water-form.tsx";

/** True where the step is one field to fill: a reading typed from the display, or the temperature of the water. */
export function typesFirst({ scaleName }: BenchView, { name, role }: StepView): boolean {
  return name === "water" || (role !== undefined && scaleName === undefined);
}

/** A step with one large field. Without a balance on a cable the field stands where the live reading would. */
export function TypedStep({ view, item, step }: { view: BenchView; item: ItemView; step: StepView }) {
  const t = useTell();
  const { role } = step;
  const field =
    role === undefined ? (
      <WaterEntry view={view} item={item} due />
    ) : (
      <ReadingEntry role={role} view={view} big />
    );
  const live = view.scaleName !== undefined;
  return (
    <>
      <BenchForm
        view={view}
        to={role === undefined ? "/bench/water" : "/bench/typed-readings"}
        hidden={role === undefined ? {} : { role }}
      >
        {!live && <div class="live typed">{field}</div>}
        <div class="now" data-step={step.name}>
          <Instruction step={step}>{live ? field : undefined}</Instruction>
          <StepDrawing method={item.method} role={role ?? "water"} />
          <div class="act">
            <NextButton>{t("bench.next.take")}</NextButton>
          </div>
        </div>
      </BenchForm>
      {view.waitingFor !== undefined ? (
        <WaysOut view={view} />
      ) : (
        role === undefined && <Repeat view={view} item={item} />
      )}
    </>
  );
}
