import { useTell } from "../messages/spoken.ts";
import { LotDots } from "../plots/lot-dots.tsx";
import { AnswerChecks } from "../records/answer.tsx";
import { StateWord } from "../result.tsx";
import { Facts, Sheet } from "../sheet.tsx";
import { TitleLine } from "../title-line.tsx";
import { CloseLot, FlagItem, StateFineness, WeighAgain } from "./actions.tsx";
import { Items } from "./items.tsx";
import { ScreeningStep } from "./step.tsx";
import { RunningTotals } from "./totals.tsx";
import { Trays } from "./trays.tsx";
import type { LotView } from "./view.ts";

/** Screening a lot, drawn anew by every form of it: left the balance, the tray and the one step to do, right all pieces. */
export function LotPage(lot: LotView) {
  const t = useTell();
  return (
    <div id="lot">
      <TitleLine title={lot.name} typed note={lot.note}>
        <a href={`/lots/${lot.id}/payout`}>{t("lots.list.payout")}</a>
      </TitleLine>
      <div class="bench lot">
        <div class="hand">
          {lot.live}
          <Tray {...lot} />
          <ScreeningStep {...lot} />
        </div>
        <div class="answer">
          {lot.dots.length > 0 && (
            <LotDots
              id="lot-dots"
              dots={lot.dots}
              bands={lot.bands}
              {...(lot.claim === "" ? {} : { claimId: lot.claim })}
            />
          )}
          <Closed {...lot} />
          {lot.stopped.map((one) => (
            <AnswerChecks
              key={one.about.subject}
              stopped={one}
              action={`/lots/${lot.id}/answers`}
              csrfToken={lot.csrfToken}
              typed={lot.problem?.typed}
            />
          ))}
          <Items {...lot} />
          <RunningTotals {...lot} />
          {lot.items.length > 0 && (
            <>
              <Trays {...lot} />
              {!lot.closed && (
                <>
                  <WeighAgain {...lot} />
                  <FlagItem {...lot} />
                  <StateFineness {...lot} />
                  <CloseLot {...lot} />
                </>
              )}
            </>
          )}
        </div>
      </div>
    </div>
  );
}

/** Where the piece weighed last goes: the largest word of the page, until the next one lies on the balance. */
function Tray({ last }: LotView) {
  const t = useTell();
  if (!last) return <div class="tray" />;
  return (
    <section
      class="tray"
      aria-label={t("lots.tray.label")}
      data-say={`${last.ticket} ${t(`state.${last.state}`)}`}
    >
      <p class="hint">{t("lots.tray.of", { ticket: last.ticket, claim: last.claimName || "–" })}</p>
      <p class="tray-word">
        <StateWord state={last.state} />
      </p>
    </section>
  );
}

function Closed({ id, closed }: LotView) {
  const t = useTell();
  if (!closed) return null;
  return (
    <Sheet id="closed" title={t("lots.closing.heading")}>
      <Facts facts={closed.facts} />
      <p>
        <a href={`/lots/${id}/payout`}>{t("lots.closing.settlement-and-open")}</a>
      </p>
    </Sheet>
  );
}
