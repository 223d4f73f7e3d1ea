import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { BetweenItems } from "./between-items.tsx";
import { ReferencePieceDue, ScaleChecks } from "./checks.tsx";
import { ClosedByChecks } from "./closed.tsx";
import { ExpectedPart } from "./expected.tsx";
import { HandPart, type HandsView } from "./hand-part.tsx";
import { HandsFreeNow } from "./hands-free.tsx";
import { ItemSteps } from "./item-steps.tsx";
import { LedgerNotes } from "./ledger-notes.tsx";
import { LiveReading } from "./live-reading.tsx";
import { Opening } from "./opening.tsx";
import { OtherBalances } from "./other-balances.tsx";
import type { OtherTestsView } from "./other-tests.tsx";
import { ProblemNote } from "./parts.tsx";
import { BenchPhotos, type BenchPhotosView } from "./photos.tsx";
import { PieceLine } from "./piece-line.tsx";
import { Result } from "./result.tsx";
import { SimulatorControls } from "./simulator-controls.tsx";
import type { BenchView, LiveView } from "./view.ts";

export { BenchPhotos, PieceLine };

/** Seconds between two heartbeats of the live stream; a page that misses two turns grey. */
export const heartbeatSeconds = 2;

/** The live reading, and what to do while each load is taken by itself. */
export function LivePart(live: LiveView) {
  return (
    <>
      <LiveReading live={live.live} />
      {live.waitsBecause !== undefined && (
        <p class="hint wide-part">
          <Sentence message={live.waitsBecause} />
        </p>
      )}
      <HandsFreeNow {...live} />
    </>
  );
}

/** The left column under the live reading: the ticket of a new piece, or the step of the piece on the bench. */
export function ItemPart({ view }: { view: BenchView }) {
  return (
    <>
      <LedgerNotes view={view} />
      <ClosedByChecks closed={view.closed} />
      <ScaleChecks view={view} />
      <ReferencePieceDue {...view} />
      {view.item && !view.item.closed ? (
        <ItemSteps view={view} item={view.item} />
      ) : (
        <>
          <ProblemNote problem={view.problem} />
          <Opening view={view} />
        </>
      )}
      <OtherBalances view={view} />
    </>
  );
}

/** Where the readings come from; it changes when the bench changes over to another balance. */
export function LiveHeading({ scaleName }: { scaleName: Sentence | undefined }) {
  const t = useTell();
  return <>{scaleName === undefined ? t("bench.typed-readings") : t("bench.now-on", { scale: scaleName })}</>;
}

/** The right column: the answer; before it what may be expected, and between two pieces what was written. */
export function ResultPart({ view, tests }: { view: BenchView; tests?: OtherTestsView | undefined }) {
  const open = view.item && !view.item.closed;
  if (!open) return <BetweenItems view={view} />;
  const stop = view.checks.find(({ severity }) => severity === "stop");
  if (view.evaluation || stop) return <Result view={view} stop={stop} tests={tests} />;
  return <ExpectedPart view={view} tests={tests} />;
}

/** The Bench page: left the live reading and the one step to do now, right the answer. */
export function BenchMain({
  view,
  live,
  tests,
  photos,
  hands,
  pageId,
}: {
  view: BenchView;
  live: LiveView;
  photos?: BenchPhotosView | undefined;
  hands: HandsView;
  tests?: OtherTestsView | undefined;
  /** goes with the stream and with every form, so that a redraw keeps what was sent back to this very page */
  pageId: string;
}) {
  return (
    <div
      hx-sse:connect="/bench/live"
      data-heartbeat-seconds={heartbeatSeconds}
      hx-vals:inherited={JSON.stringify({ page: pageId })}
    >
      <div id="heartbeat" hidden />
      <div id="hands">
        <HandPart {...hands} />
      </div>
      <div id="piece-line">
        <PieceLine view={view} />
      </div>
      <div class="bench">
        <div class="hand">
          <section class="live-part" aria-labelledby="live-heading" data-live>
            <h2 id="live-heading" class="unseen">
              <LiveHeading {...view} />
            </h2>
            <div id="live-reading" class="live">
              <LivePart {...live} />
            </div>
            {view.demo && <SimulatorControls view={view} />}
          </section>
          <div id="piece">
            <ItemPart view={view} />
          </div>
        </div>
        <div class="known">
          <div id="result" class="answer">
            <ResultPart view={view} tests={tests} />
          </div>
          <div id="photos">
            <BenchPhotos photos={photos} />
          </div>
        </div>
      </div>
    </div>
  );
}
