import { useTell } from "../messages/spoken.ts";
import { AnswerChecks } from "../records/answer.tsx";
import { Facts, Sheet } from "../sheet.tsx";
import { CloseLot, FlagItem, StateFineness, WeighAgain } from "./actions.tsx";
import { Items } from "./items.tsx";
import { ScreeningStep } from "./step.tsx";
import { RunningTotals } from "./totals.tsx";
import { Trays } from "./trays.tsx";
import type { LotView } from "./view.ts";

/** Screening a lot: ticket, dry, immersed, next. One key per weighing; the totals run along. */
export function LotPage(lot: LotView) {
  const t = useTell();
  return (
    <>
      {lot.live !== undefined && (
        <section class="sheet live-box" aria-label={t("lots.balance")} data-live>
          {lot.live}
        </section>
      )}
      <LotPart {...lot} />
    </>
  );
}

/** Fragment: everything of the lot that a weighing changes. */
export function LotPart(lot: LotView) {
  const t = useTell();
  return (
    <div id="lot">
      <div class="bench-columns">
        <ScreeningStep {...lot} />
        <RunningTotals {...lot} />
      </div>
      {lot.closed && (
        <Sheet id="closed" title={t("lots.closing.heading")}>
          <Facts facts={lot.closed.facts} />
          <p>
            <a href={`/lots/${lot.id}/payout`}>{t("lots.closing.settlement")}</a>
          </p>
        </Sheet>
      )}
      {lot.stopped.map((one) => (
        <AnswerChecks
          key={one.about.subject}
          stopped={one}
          action={`/lots/${lot.id}/answers`}
          csrfToken={lot.csrfToken}
          typed={lot.problem?.typed}
        />
      ))}
      <Trays {...lot} />
      <Items {...lot} />
      {lot.items.length > 0 && (
        <>
          <WeighAgain {...lot} />
          <FlagItem {...lot} />
          <StateFineness {...lot} />
          {!lot.closed && <CloseLot {...lot} />}
        </>
      )}
    </div>
  );
}
