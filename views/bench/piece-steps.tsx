import type { BenchView } from "../../server/station/view.ts";
import type { Piece } from "../../server/weighing/piece.ts";
import type { Step } from "../../server/weighing/steps.ts";
import { asIs } from "../as-is.ts";
import { useLocale, useTell } from "../messages/spoken.ts";
import { inLocale } from "../numbers.ts";
import { Told } from "../told.tsx";
import { toldValue } from "../words/told.ts";
import { Checks } from "./checks.tsx";
import { OtherPiece } from "./other-piece.tsx";
import { BenchForm, ProblemNote, typedInto } from "./parts.tsx";
import { RecordForm, SetPieceAside } from "./piece-end.tsx";
import { RoleReadings } from "./role-readings.tsx";
import { StatedForm } from "./stated-form.tsx";
import { WaterForm } from "./water-form.tsx";
import { BesideReadings, WeighingDetails } from "./weighing-details.tsx";

/** The piece on the bench: what to do now, what to mind, and every reading taken so far. */
export function PieceSteps({ view, piece }: { view: BenchView; piece: Piece }) {
  const locale = useLocale();
  const t = useTell();
  return (
    <section class="sheet" aria-labelledby="piece-heading">
      <h2 id="piece-heading">
        <span {...asIs}>{piece.ticket}</span>
        {/* what somebody typed stays as it is; only the invented pieces are told in the page's language */}
        {piece.description && (
          <small> {view.demo ? toldValue(piece.description, locale) : piece.description}</small>
        )}
      </h2>
      <ProblemNote problem={view.problem} />
      {view.trouble && (
        <div class="problems" role="alert">
          <p>
            <Told says={view.trouble} />
          </p>
        </div>
      )}
      {view.claimGone !== undefined && (
        <p class="caution" data-code="weighing.claim-gone">
          {t("weighing.claim-gone", { claim: view.claimGone })}
        </p>
      )}
      {view.otherPiece && (
        <OtherPiece
          view={view.otherPiece}
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
          <StepLine key={step.name} step={step} view={view} piece={piece} />
        ))}
      </ol>
      <BesideReadings view={view} piece={piece} />
      <WeighingDetails view={view} piece={piece} />
      <SetPieceAside view={view} />
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

function StepLine({ step, view, piece }: { step: Step; view: BenchView; piece: Piece }) {
  const { name } = step;
  const due = step.state === "due" && (view.otherPiece === undefined || name === "dry");
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
        <WaterForm view={view} piece={piece} due={due} />
      ) : name === "record" ? (
        due && <RecordForm view={view} />
      ) : step.role ? (
        <RoleReadings role={step.role} view={view} piece={piece} due={due} />
      ) : (
        <StatedForm view={view} piece={piece} due={due} />
      )}
    </li>
  );
}
