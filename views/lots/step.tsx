import { HandsFreeButton } from "../bench/hands-free.tsx";
import { OtherItem } from "../bench/other-item.tsx";
import { SecondPersonNote } from "../bench/second-person.tsx";
import { Field, Select, UnitSelect } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { codeMark, Told } from "../told.tsx";
import { LotForm } from "./form.tsx";
import { type LotView, nothingClaimed, type StepRole } from "./view.ts";

/** The step at hand with its one entry or its one button. */
export function ScreeningStep(lot: LotView) {
  const { current, problem, closed } = lot;
  const t = useTell();
  const now =
    current.step === "reading" ? t(`step.${current.role}.title`) : t(`lots.step.now.${current.step}`);
  return (
    <section class="sheet" id="screening" aria-label={t("lots.step.label")} data-say={now}>
      <h2>{now}</h2>
      {problem && (
        <div class="problems" role="alert">
          <p {...codeMark(problem.says)}>
            <Told says={problem.says} />
          </p>
        </div>
      )}
      {current.step === "closed" ? (
        <p>{t("lots.step.closed", { when: closed?.when ?? "" })}</p>
      ) : current.step === "elsewhere" ? (
        <p>
          {t("lots.step.elsewhere", { ticket: current.ticket })}{" "}
          <a href="/">{t("lots.step.elsewhere-link")}</a>
        </p>
      ) : current.step === "water" ? (
        <WaterForm lot={lot} />
      ) : current.step === "ticket" ? (
        <TicketForm lot={lot} />
      ) : current.step === "other-piece" ? (
        lot.otherItem && (
          <OtherItem
            view={lot.otherItem}
            typed={problem?.typed ?? {}}
            form={(to, children) => (
              <LotForm lot={lot} to={to}>
                {children}
              </LotForm>
            )}
          />
        )
      ) : current.step === "second-person" ? (
        <>
          <p>
            {t("lots.step.ticket")} <strong>{current.ticket}</strong>
          </p>
          {lot.secondPerson && <SecondPersonNote view={lot.secondPerson} inLot />}
          <CallOffForm lot={lot} />
        </>
      ) : (
        current.step === "reading" && <WeighingForms lot={lot} step={current.role} />
      )}
      {lot.live !== undefined && (current.step === "ticket" || current.step === "reading") && (
        <LotForm lot={lot} to="hands-free">
          {lot.handsFree && <input type="hidden" name="end" value="yes" />}
          <HandsFreeButton on={lot.handsFree} />
        </LotForm>
      )}
      {lot.water !== "" && current.step === "ticket" && (
        <details>
          <summary>{t("lots.step.water-anew", { celsius: lot.water })}</summary>
          <WaterForm lot={lot} />
        </details>
      )}
    </section>
  );
}

function WaterForm({ lot }: { lot: LotView }) {
  const { problem, current } = lot;
  const t = useTell();
  return (
    <LotForm lot={lot}>
      <Field
        kind="decimal"
        name="celsius"
        label={t("lots.step.celsius")}
        after="°C"
        value={problem?.typed.celsius ?? ""}
        required
        autoFocus={current.step === "water"}
      />
      <button type="submit">{t("lots.step.keep")}</button>
    </LotForm>
  );
}

function TicketForm({ lot }: { lot: LotView }) {
  const { claim, claims, problem, nextTicket, full } = lot;
  const t = useTell();
  return (
    <LotForm lot={lot}>
      {full && (
        <p role="status">
          <strong>{t("lots.step.full", full)}</strong>
        </p>
      )}
      {nextTicket !== undefined && <input type="hidden" name="nextTicket" value={nextTicket} />}
      <Field
        name="ticket"
        scan
        label={t("lots.step.ticket")}
        hint={
          nextTicket === undefined
            ? t("lots.step.ticket-hint")
            : t("lots.step.ticket-next", { next: nextTicket })
        }
        value={problem?.typed.ticket ?? ""}
        required={nextTicket === undefined}
        autoFocus
      />
      <Select
        name="claim"
        label={t("lots.step.claim")}
        empty={t("lots.step.of-ticket")}
        value={problem?.typed.claim ?? claim}
        options={[
          { value: nothingClaimed, label: t("lots.step.nothing-claimed") },
          ...claims.map((one) => ({ value: one.id, label: one.name })),
        ]}
      />
      {full && (
        <label>
          <input type="checkbox" name="beyond" value="yes" /> {t("lots.step.beyond")}
        </label>
      )}
      <button type="submit" class="large">
        {t("lots.step.next")} <kbd>Enter</kbd>
      </button>
    </LotForm>
  );
}

function WeighingForms({ lot, step }: { lot: LotView; step: StepRole }) {
  const t = useTell();
  const role = t(`bench.roles.${step}`);
  const typed = (
    <LotForm lot={lot}>
      <input type="hidden" name="role" value={step} />
      <Field
        kind="decimal"
        name="typed"
        weight
        label={t("lots.step.reading", { role })}
        value={lot.problem?.typed.typed ?? ""}
        required
        autoFocus={lot.live === undefined}
        after={
          <UnitSelect
            name="unit"
            label={t("lots.step.unit")}
            units={lot.units}
            value={lot.problem?.typed.unit ?? lot.unit}
          />
        }
      />
      <button type="submit">
        {t("lots.step.keep-typed")} <kbd>Enter</kbd>
      </button>
    </LotForm>
  );
  return (
    <>
      <p>
        {t("lots.step.ticket")} <strong>{lot.current.ticket}</strong>
      </p>
      {lot.live === undefined ? (
        typed
      ) : (
        <LotForm lot={lot}>
          <button
            type="submit"
            class="large"
            name="take"
            value={step}
            data-key="F9"
            data-needs-live
            autofocus
          >
            {t("lots.step.take", { role })} <kbd>Enter</kbd>
          </button>
        </LotForm>
      )}
      {lot.live !== undefined && (
        <details>
          <summary>{t("lots.step.type-it")}</summary>
          {typed}
        </details>
      )}
      <CallOffForm lot={lot} />
    </>
  );
}

function CallOffForm({ lot }: { lot: LotView }) {
  const t = useTell();
  return (
    <LotForm lot={lot}>
      <button type="submit" class="plain" name="aside" value="yes">
        {t("lots.step.aside")}
      </button>
    </LotForm>
  );
}
