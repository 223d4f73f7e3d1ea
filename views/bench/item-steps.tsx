import { asIs } from "../as-is.ts";
import { useLocale, useTell } from "../messages/spoken.ts";
import { inLocale } from "../numbers.ts";
import { Told } from "../told.tsx";
import { Checks } from "./checks.tsx";
import { CallOff, RecordForm } from "./item-end.tsx";
import { OtherItem } from "./other-item.tsx";
import { BenchForm, ProblemNote, typedInto } from "./parts.tsx";
import { RoleReadings } from "./role-readings.tsx";
import { StatedForm } from "./stated-form.tsx";
import type { BenchView, ItemView, StepView } from "./view.ts";
import { WaterForm } from "./water-form.tsx";
import { BesideReadings, WeighingDetails } from "./weighing-details.tsx";

/** The piece on the bench: what to do now, what to mind, and every reading taken so far. */
export function ItemSteps({ view, item }: { view: BenchView; item: ItemView }) {
  const t = useTell();
  return (
    <section class="sheet" aria-labelledby="piece-heading">
      <h2 id="piece-heading">
        <span {...asIs}>{item.ticket}</span>
        {/* what somebody typed stays as it is; only the invented pieces are told in the page's language */}
        {item.description && <small> {item.description}</small>}
      </h2>
      <ProblemNote problem={view.problem} />
      {view.error && (
        <div class="problems" role="alert">
          <p>
            <Told says={view.error} />
          </p>
        </div>
      )}
      {view.claimGone !== undefined && (
        <p class="caution" data-code="weighing.claim-gone">
          {t("weighing.claim-gone", { claim: view.claimGone })}
        </p>
      )}
      {view.otherItem && (
        <OtherItem
          view={view.otherItem}
          typed={typedInto(view.problem, "/bench/right-piece")}
          form={(to, children) => (
            <BenchForm view={view} to={`/bench/${to}`}>
              {children}
            </BenchForm>
          )}
        />
      )}
      <Checks view={view} checks={view.checks} />
      <ol class="steps">
        {view.steps.map((step) => (
          <StepLine key={step.name} step={step} view={view} item={item} />
        ))}
      </ol>
      <BesideReadings view={view} item={item} />
      <WeighingDetails view={view} item={item} />
      <CallOff view={view} />
    </section>
  );
}

/** What the weighing will and will not tell, while the piece is still dry. */
function BeforeWetting({ ahead: { says, weighing } }: { ahead: NonNullable<BenchView["beforeWetting"]> }) {
  const locale = useLocale();
  const t = useTell();
  const { claim, method, massG, readabilityG, pieces } = weighing;
  const number = (value: number) => inLocale(String(Number(value.toPrecision(8))), locale);
  const asked = new URLSearchParams({
    claim,
    method,
    mass: number(massG),
    massUnit: "g",
    readability: number(readabilityG),
    readabilityUnit: "g",
    pieces: String(pieces),
  });
  return (
    <p>
      <strong>{t("bench.steps.before-wetting")}</strong>{" "}
      {says.map((one) => (
        <span key={one.code}>
          <Told says={one} />{" "}
        </span>
      ))}
      <a href={`/plan?${asked}`}>{t("bench.steps.whole-plan")}</a>
    </p>
  );
}

function StepLine({ step, view, item }: { step: StepView; view: BenchView; item: ItemView }) {
  const { name } = step;
  const due = step.state === "due" && (view.otherItem === undefined || name === "dry");
  const t = useTell();
  return (
    <li
      class={step.state === "done" ? "done" : undefined}
      {...(due ? { "aria-current": "step" as const } : {})}
    >
      <p class="step-title">
        <strong>{t(`step.${name}.title`)}</strong>{" "}
        {step.state === "done" && <span class="tag">{t("bench.steps.done")}</span>}
      </p>
      {due && (
        <>
          {name !== "dry" && view.beforeWetting && <BeforeWetting ahead={view.beforeWetting} />}
          <p>{t(`step.${name}.does`)}</p>
          <p class="hint">{t("bench.steps.mind", { what: t(`step.${name}.minds`) })}</p>
        </>
      )}
      {name === "water" ? (
        <WaterForm view={view} item={item} due={due} />
      ) : name === "record" ? (
        due && <RecordForm view={view} />
      ) : step.role ? (
        <RoleReadings role={step.role} view={view} item={item} due={due} />
      ) : (
        <StatedForm view={view} item={item} due={due} />
      )}
    </li>
  );
}
