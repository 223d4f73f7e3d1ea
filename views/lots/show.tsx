import { Facts, Sheet } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";
import { CloseLot, FlagPiece, WeighAgain } from "./deeds.tsx";
import { Pieces } from "./pieces.tsx";
import { ScreeningStep } from "./step.tsx";
import { RunningTotals } from "./totals.tsx";
import { Trays } from "./trays.tsx";
import type { LotView } from "./view.ts";

/** Screening a lot: ticket, dry, immersed, next. One key per weighing; the totals run along. */
export function LotPage(lot: LotView) {
  const say = useWords().lots;
  return (
    <>
      {lot.live !== undefined && (
        <section class="sheet live-box" aria-label={say.balance} data-live>
          {lot.live}
        </section>
      )}
      <LotPart {...lot} />
    </>
  );
}

/** Fragment: everything of the lot that a weighing changes. */
export function LotPart(lot: LotView) {
  const say = useWords().lots.closing;
  return (
    <div id="lot">
      <div class="bench-columns">
        <ScreeningStep {...lot} />
        <RunningTotals {...lot} />
      </div>
      {lot.closed && (
        <Sheet id="closed" title={say.heading}>
          <Facts facts={lot.closed.facts} />
        </Sheet>
      )}
      <Trays {...lot} />
      <Pieces {...lot} />
      {lot.pieces.length > 0 && (
        <>
          <WeighAgain {...lot} />
          <FlagPiece {...lot} />
          {!lot.closed && <CloseLot {...lot} />}
        </>
      )}
    </div>
  );
}
