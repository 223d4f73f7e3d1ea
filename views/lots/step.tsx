import type { ComponentChildren } from "preact";
import { HandsFreeButton } from "../bench/hands-free.tsx";
import { NextButton, NextLink } from "../bench/next-button.tsx";
import { OtherItem } from "../bench/other-item.tsx";
import { SecondPersonNote } from "../bench/second-person.tsx";
import { Field, Select, UnitSelect } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { codeMark, Sentence } from "../sentence.tsx";
import { LotForm } from "./form.tsx";
import { type LotView, nothingClaimed, type StepRole } from "./view.ts";

/** The step at hand with its one entry or its one button. */
export function ScreeningStep(lot: LotView) {
  const { current, problem, closed } = lot;
  const t = useTell();
  const now = useNow(lot);
  return (
    <section id="screening" aria-label={t("lots.step.label")} data-say={now}>
      {problem && (
        <div class="problems" role="alert">
          <p {...codeMark(problem.message)}>
            <Sentence message={problem.message} />
          </p>
        </div>
      )}
      {current.step === "closed" ? (
        <Plain now={now}>{t("lots.step.closed", { when: closed?.when ?? "" })}</Plain>
      ) : current.step === "elsewhere" ? (
        <Plain now={now}>
          {t("lots.step.elsewhere", { ticket: current.ticket })}{" "}
          <a href="/">{t("lots.step.elsewhere-link")}</a>
        </Plain>
      ) : current.step === "water" ? (
        <LotForm lot={lot}>
          <Now now={now} button={t("lots.step.keep")}>
            <Celsius lot={lot} />
          </Now>
        </LotForm>
      ) : current.step === "ticket" ? (
        <TicketStep lot={lot} now={now} />
      ) : current.step === "reading" ? (
        <WeighingForms lot={lot} role={current.role} now={now} />
      ) : (
        <Asked lot={lot} now={now} />
      )}
    </section>
  );
}

/** What there is to do now, in one line. */
function useNow({ current, full }: LotView): string {
  const t = useTell();
  if (current.step === "reading") return t(`step.${current.role}.title`);
  return current.step === "ticket" && full ? t("lots.step.full", full) : t(`lots.step.now.${current.step}`);
}

function Plain({ now, children }: { now: string; children: ComponentChildren }) {
  return (
    <div class="now">
      <div class="across">
        <h2>{now}</h2>
        <p>{children}</p>
      </div>
    </div>
  );
}

/** A step of a lot: what to do, and the next thing in its fixed place. */
function Now({
  now,
  button,
  live = false,
  children,
}: {
  now: string;
  button: string;
  /** the next thing takes a reading of the balance */
  live?: boolean;
  children: ComponentChildren;
}) {
  return (
    <div class="now">
      <div class="across">
        <h2 id="step-heading" tabIndex={-1}>
          {now}
        </h2>
        {children}
      </div>
      <div class="act">
        <NextButton live={live}>{button}</NextButton>
      </div>
    </div>
  );
}

/** Whether this is the piece of the ticket, or a second person. */
function Asked({ lot, now }: { lot: LotView; now: string }) {
  const { current, otherItem, secondPerson, problem } = lot;
  const t = useTell();
  return (
    <div class="now">
      <div class="across">
        <h2>{now}</h2>
        {current.step === "other-piece" && otherItem && (
          <OtherItem
            view={otherItem}
            typed={problem?.typed ?? {}}
            form={(to, children) => (
              <LotForm lot={lot} to={to}>
                {children}
              </LotForm>
            )}
          />
        )}
        {current.step === "second-person" && (
          <>
            <p>
              {t("lots.step.ticket")} <strong>{current.ticket}</strong>
            </p>
            {secondPerson && <SecondPersonNote view={secondPerson} inLot />}
            <CallOffForm lot={lot} />
          </>
        )}
      </div>
    </div>
  );
}

function Celsius({ lot: { problem, current } }: { lot: LotView }) {
  const t = useTell();
  return (
    <Field
      kind="decimal"
      name="celsius"
      label={t("lots.step.celsius")}
      after="°C"
      value={problem?.typed.celsius ?? ""}
      required
      autoFocus={current.step === "water"}
    />
  );
}

/** The ticket of the next piece; a lot whose counted pieces are all weighed is closed next, and takes one more only on a word. */
function TicketStep({ lot, now }: { lot: LotView; now: string }) {
  const { full, problem, water } = lot;
  const t = useTell();
  return (
    <>
      {full ? (
        <div class="now">
          <div class="across">
            <h2 id="step-heading" tabIndex={-1}>
              {now}
            </h2>
          </div>
          <div class="act">
            <NextLink href="#closing-by">{t("lots.closing.go")}</NextLink>
          </div>
        </div>
      ) : (
        <LotForm lot={lot}>
          <Now now={now} button={t("lots.step.next")}>
            <TicketFields lot={lot} />
          </Now>
        </LotForm>
      )}
      <div class="beside-next">
        {full ? (
          <details class="inline" open={problem !== undefined || undefined}>
            <summary>{t("lots.step.beyond")}</summary>
            <LotForm lot={lot}>
              <TicketFields lot={lot} />
              <label>
                <input type="checkbox" name="beyond" value="yes" /> {t("lots.step.beyond")}
              </label>
              <button type="submit" class="plain">
                {t("lots.step.next")}
              </button>
            </LotForm>
          </details>
        ) : null}
        {(!full || lot.handsFree) && <HandsFree lot={lot} />}
        <details class="inline">
          <summary>{t("lots.step.water-anew", { celsius: water })}</summary>
          <LotForm lot={lot}>
            <Celsius lot={lot} />
            <button type="submit" class="plain">
              {t("lots.step.keep")}
            </button>
          </LotForm>
        </details>
      </div>
    </>
  );
}

function TicketFields({ lot }: { lot: LotView }) {
  const { claim, claims, problem, nextTicket, full } = lot;
  const t = useTell();
  return (
    <>
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
        autoFocus={full === undefined}
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
    </>
  );
}

function WeighingForms({ lot, role, now }: { lot: LotView; role: StepRole; now: string }) {
  const { current, live } = lot;
  const t = useTell();
  const does = (
    <p class="do">
      <strong>{current.ticket}</strong>: {t(`step.${role}.does`)}
    </p>
  );
  if (live === undefined)
    return (
      <>
        <LotForm lot={lot}>
          <Now now={now} button={t("lots.step.keep-typed")}>
            {does}
            <TypedEntry lot={lot} role={role} />
          </Now>
        </LotForm>
        <CallOffForm lot={lot} />
      </>
    );
  return (
    <>
      <LotForm lot={lot}>
        <Now now={now} button={t("bench.next.take")} live>
          {does}
          <input type="hidden" name="take" value={role} />
        </Now>
      </LotForm>
      <div class="beside-next">
        <HandsFree lot={lot} />
        <details class="inline" data-digits>
          <summary>{t("lots.step.type-it")}</summary>
          <LotForm lot={lot}>
            <TypedEntry lot={lot} role={role} />
            <button type="submit" class="plain">
              {t("lots.step.keep-typed")}
            </button>
          </LotForm>
        </details>
        <CallOffForm lot={lot} />
      </div>
    </>
  );
}

function TypedEntry({ lot, role }: { lot: LotView; role: StepRole }) {
  const t = useTell();
  return (
    <>
      <input type="hidden" name="role" value={role} />
      <Field
        kind="decimal"
        name="typed"
        weight
        label={t("lots.step.reading", { role: t(`bench.roles.${role}`) })}
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
    </>
  );
}

/** The switch for hands in water, where a balance is on a cable. */
function HandsFree({ lot }: { lot: LotView }) {
  if (lot.live === undefined) return null;
  return (
    <LotForm lot={lot} to="hands-free">
      {lot.handsFree && <input type="hidden" name="end" value="yes" />}
      <HandsFreeButton on={lot.handsFree} />
    </LotForm>
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
