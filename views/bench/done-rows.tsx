import { asIs } from "../as-is.ts";
import { useLocale, useTell } from "../messages/spoken.ts";
import { inLocale } from "../numbers.ts";
import { typedInto } from "./parts.tsx";
import { RoleReadings } from "./role-readings.tsx";
import { StatedForm } from "./stated-form.tsx";
import type { BenchView, CaptureView, ItemView, StepView } from "./view.ts";
import { WaterAnew } from "./water-form.tsx";

/** So many readings of a load stand in its line; the others are in the row when it is opened. */
const valuesShown = 2;

/** Every step in one line with what it gave; a done one opens to its readings, where each can be excluded or repeated. */
export function DoneRows({
  view,
  item,
  due,
}: {
  view: BenchView;
  item: ItemView;
  due: StepView | undefined;
}) {
  const locale = useLocale();
  const t = useTell();
  const steps = view.steps.filter(({ name }) => name !== "record");
  const taken = item.captures.at(-1);
  const step = steps.find(({ role }) => role !== undefined && role === taken?.role);
  const message =
    taken && step && taken.excluded === undefined
      ? { "data-say": `${t(`step.${step.name}.title`)}: ${inLocale(taken.text, locale)} ${taken.unit}` }
      : {};
  return (
    <ol class="done" {...message}>
      {steps.map((step) => (
        <li key={step.name} class={step.state} {...(step === due ? { "aria-current": "step" as const } : {})}>
          <Row view={view} item={item} step={step} due={step === due} />
        </li>
      ))}
    </ol>
  );
}

function Row({ view, item, step, due }: { view: BenchView; item: ItemView; step: StepView; due: boolean }) {
  const t = useTell();
  const { name, role, state } = step;
  const captures = role === undefined ? [] : item.captures.filter((one) => one.role === role);
  // what was typed for a step and sent back stays in its field, also where another browser is at another step by now
  const typed = name === "water" && typedInto(view.problem, "/bench/water").celsius !== undefined;
  const opens = captures.length > 0 || (state === "done" && role === undefined) || (typed && !due);
  const line = (
    <>
      <b aria-hidden="true">{state === "done" ? "✓" : due ? "→" : ""}</b>
      <span>
        {t(`step.${name}.title`)} {state === "done" && <span class="unseen">{t("bench.steps.done")}</span>}
      </span>
      <span class="number">
        <Value view={view} item={item} step={step} captures={captures} />
      </span>
    </>
  );
  if (!opens) return <p class="row-line">{line}</p>;
  const refused = typed || (role !== undefined && view.problem?.from?.startsWith("/bench/captures/"));
  return (
    <details open={(refused && !due) || undefined}>
      <summary class="row-line">{line}</summary>
      {role ? (
        <RoleReadings role={role} view={view} item={item} />
      ) : name === "water" ? (
        <WaterAnew view={view} item={item} />
      ) : (
        <StatedForm view={view} item={item} due={false} />
      )}
    </details>
  );
}

function Value({
  view,
  item,
  step: { name },
  captures,
}: {
  view: BenchView;
  item: ItemView;
  step: StepView;
  captures: readonly CaptureView[];
}) {
  const locale = useLocale();
  if (name === "water")
    return item.waterCelsius === undefined ? null : <>{inLocale(item.waterCelsius, locale)} °C</>;
  const kept = captures.filter(({ excluded }) => excluded === undefined);
  const last = kept.slice(-valuesShown);
  if (last.length === 0) return <>{view.steps.length > 0 && captures.length > 0 ? "×" : ""}</>;
  const more = kept.length - last.length;
  return (
    <span {...asIs}>
      {more > 0 && <span class="note">{more} + </span>}
      {last.map(({ text }) => inLocale(text, locale)).join("; ")} {last.at(-1)?.unit}
    </span>
  );
}
