import { Field, Select, UnitSelect } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Fold } from "../sheet.tsx";
import { LotForm } from "./form.tsx";
import type { LotView } from "./view.ts";

/** A piece that comes back to the pan after it was wet. */
export function WeighAgain(lot: LotView) {
  const t = useTell();
  return (
    <Fold title={t("lots.again.open")}>
      <p class="hint">{t("lots.again.lead")}</p>
      <LotForm lot={lot} to="again">
        <Field name="again" scan label={t("lots.again.ticket")} required />
        <Field
          kind="decimal"
          name="againTyped"
          weight
          label={t("lots.again.reading")}
          after={
            <UnitSelect
              name="unit"
              id="again-unit"
              label={t("lots.again.unit")}
              units={lot.units}
              value={lot.unit}
            />
          }
        />
        <button type="submit">{t("lots.again.keep")}</button>{" "}
        {lot.live !== undefined && (
          <button type="submit" name="take" value="yes" data-needs-live>
            {t("lots.again.take")}
          </button>
        )}
      </LotForm>
    </Fold>
  );
}

/** Flags are set and cleared with a reason; every one stays in the ledger. */
export function FlagItem(lot: LotView) {
  const t = useTell();
  return (
    <Fold title={t("lots.flagging.open")}>
      <LotForm lot={lot} to="flags">
        <Field name="flagTicket" scan label={t("lots.flagging.ticket")} required />
        <Select
          name="flag"
          label={t("lots.flagging.flag")}
          empty="–"
          options={lot.flagNames.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <Field name="own" label={t("lots.flagging.own")} hint={t("lots.flagging.own-hint")} maxLength={100} />
        <Select
          name="action"
          label={t("lots.flagging.what")}
          value="set"
          options={[
            { value: "set", label: t("lots.flagging.set") },
            { value: "clear", label: t("lots.flagging.clear") },
          ]}
        />
        <Field
          name="reason"
          label={t("lots.flagging.reason")}
          hint={t("lots.flagging.stays")}
          required
          maxLength={400}
        />
        <Field name="by" label={t("lots.flagging.by")} maxLength={100} />
        <button type="submit">{t("lots.flagging.go")}</button>
      </LotForm>
    </Fold>
  );
}

/** One fineness for several pieces: a sack of the same stamp is not typed forty times. */
export function StateFineness(lot: LotView) {
  const t = useTell();
  return (
    <Fold title={t("lots.fineness.open")}>
      <LotForm lot={lot} to="fineness">
        <Field
          name="finenessTickets"
          label={t("lots.fineness.tickets")}
          hint={t("lots.fineness.tickets-hint")}
          maxLength={2000}
        />
        <Select
          name="ofClaim"
          label={t("lots.fineness.of-claim")}
          empty="–"
          options={lot.claimsHere.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <Field kind="decimal" name="permille" label={t("payout.terms.fineness")} after="‰" required />
        <Select
          name="saidBy"
          label={t("payout.terms.said-by")}
          options={(["stamp", "laboratory", "customer"] as const).map((value) => ({
            value,
            label: t(`payout.sayers.${value}`),
          }))}
        />
        <Field name="saidByName" label={t("payout.terms.by")} required maxLength={100} />
        <Field
          name="saidSecond"
          label={t("settlement.second")}
          hint={t("settlement.second-above-hint")}
          maxLength={100}
        />
        <Field
          name="saidReason"
          label={t("settlement.reason")}
          hint={t("payout.reason-hint")}
          maxLength={400}
        />
        <button type="submit">{t("lots.fineness.go")}</button>
      </LotForm>
    </Fold>
  );
}

/** Ends the lot; its totals become an entry. */
export function CloseLot(lot: LotView) {
  const t = useTell();
  return (
    <Fold
      title={t("lots.closing.open")}
      open={lot.full !== undefined || lot.problem?.from?.endsWith("/closing")}
    >
      <p class="hint">{t("lots.closing.lead")}</p>
      <LotForm lot={lot} to="closing">
        {lot.closingAsks.map((asked) => {
          const name = `answer-${asked.code}`;
          return (
            <Field
              key={name}
              name={name}
              label={<Sentence message={asked} />}
              value={lot.problem?.typed[name] ?? ""}
              required
              maxLength={400}
            />
          );
        })}
        {lot.pays !== undefined && (
          <>
            <input type="hidden" name="shown" value={lot.pays} />
            <p>{t("lots.closing.pays", { amount: lot.pays })}</p>
          </>
        )}
        <Field
          name="note"
          id="closing-note"
          label={t("lots.closing.note")}
          value={lot.problem?.typed.note ?? ""}
          maxLength={400}
        />
        <Field
          name="by"
          id="closing-by"
          label={t("lots.closing.by")}
          value={lot.problem?.typed.by ?? ""}
          required={lot.pays !== undefined || lot.closingAsks.length > 0}
          maxLength={100}
        />
        <button type="submit">{t("lots.closing.go")}</button>
      </LotForm>
    </Fold>
  );
}
