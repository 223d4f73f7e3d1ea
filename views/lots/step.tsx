import { OtherPiece } from "../bench/other-piece.tsx";
import { SecondPersonNote } from "../bench/second-person.tsx";
import { Field, Select, UnitSelect } from "../forms.tsx";
import { Told } from "../told.tsx";
import { useWords } from "../words/spoken.ts";
import { LotForm } from "./form.tsx";
import type { LotView } from "./view.ts";

/** The step at hand with its one entry or its one button. */
export function ScreeningStep(lot: LotView) {
  const { current, problem, closed } = lot;
  const say = useWords().lots.step;
  const now = say.now[current.step];
  return (
    <section class="sheet" id="screening" aria-label={say.label} data-say={now}>
      <h2>{now}</h2>
      {problem && (
        <div class="problems" role="alert">
          <p>
            <Told says={problem.says} />
          </p>
        </div>
      )}
      {current.step === "closed" ? (
        <p>{say.closed(closed?.when ?? "")}</p>
      ) : current.step === "elsewhere" ? (
        <p>
          {say.elsewhere(current.ticket)} <a href="/">{say.elsewhereLink}</a>
        </p>
      ) : current.step === "water" ? (
        <WaterForm lot={lot} />
      ) : current.step === "ticket" ? (
        <TicketForm lot={lot} />
      ) : current.step === "other-piece" ? (
        lot.otherPiece && (
          <OtherPiece
            view={lot.otherPiece}
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
            {say.ticket} <strong>{current.ticket}</strong>
          </p>
          {lot.secondPerson && <SecondPersonNote view={lot.secondPerson} inLot />}
          <AsideForm lot={lot} />
        </>
      ) : (
        <WeighingForms lot={lot} step={current.step} />
      )}
      {lot.water !== "" && current.step === "ticket" && (
        <details>
          <summary>{say.waterAnew(lot.water)}</summary>
          <WaterForm lot={lot} />
        </details>
      )}
    </section>
  );
}

function WaterForm({ lot }: { lot: LotView }) {
  const { problem, current } = lot;
  const say = useWords().lots.step;
  return (
    <LotForm lot={lot}>
      <Field
        kind="decimal"
        name="celsius"
        label={say.celsius}
        after="°C"
        value={problem?.typed.celsius ?? ""}
        required
        autoFocus={current.step === "water"}
      />
      <button type="submit">{say.keep}</button>
    </LotForm>
  );
}

function TicketForm({ lot }: { lot: LotView }) {
  const { claim, claims, problem, nextTicket } = lot;
  const say = useWords().lots.step;
  return (
    <LotForm lot={lot}>
      {nextTicket !== undefined && <input type="hidden" name="nextTicket" value={nextTicket} />}
      <Field
        name="ticket"
        scan
        label={say.ticket}
        hint={nextTicket === undefined ? say.ticketHint : say.ticketNext(nextTicket)}
        value={problem?.typed.ticket ?? ""}
        required={nextTicket === undefined}
        autoFocus
      />
      <Select
        name="claim"
        label={say.claim}
        empty={say.notSaid}
        value={problem?.typed.claim ?? claim}
        options={claims.map((one) => ({ value: one.id, label: one.name }))}
      />
      <button type="submit" class="large">
        {say.next} <kbd>Enter</kbd>
      </button>
    </LotForm>
  );
}

function WeighingForms({ lot, step }: { lot: LotView; step: "dry" | "immersed" | "rise" }) {
  const say = useWords().lots.step;
  const role = say.roles[step];
  const typed = (
    <LotForm lot={lot}>
      <input type="hidden" name="role" value={step} />
      <Field
        kind="decimal"
        name="typed"
        weight
        label={say.reading(role)}
        value={lot.problem?.typed.typed ?? ""}
        required
        autoFocus={lot.live === undefined}
        after={
          <UnitSelect
            name="unit"
            label={say.unit}
            units={lot.units}
            value={lot.problem?.typed.unit ?? lot.unit}
          />
        }
      />
      <button type="submit">
        {say.keepTyped} <kbd>Enter</kbd>
      </button>
    </LotForm>
  );
  return (
    <>
      <p>
        {say.ticket} <strong>{lot.current.ticket}</strong>
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
            {say.take(role)} <kbd>Enter</kbd>
          </button>
        </LotForm>
      )}
      {lot.live !== undefined && (
        <details>
          <summary>{say.typeIt}</summary>
          {typed}
        </details>
      )}
      <AsideForm lot={lot} />
    </>
  );
}

function AsideForm({ lot }: { lot: LotView }) {
  const say = useWords().lots.step;
  return (
    <LotForm lot={lot}>
      <button type="submit" class="plain" name="aside" value="yes">
        {say.aside}
      </button>
    </LotForm>
  );
}
