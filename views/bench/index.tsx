import { useLocale, useTell } from "../messages/spoken.ts";
import { tellId } from "../messages/tell.ts";
import { Told } from "../told.tsx";
import { ScaleChecks } from "./checks.tsx";
import { ClosedByChecks } from "./closed.tsx";
import { EachLoadNow } from "./each-load.tsx";
import { HandPart, type HandsView } from "./hand-part.tsx";
import { ItemSteps } from "./item-steps.tsx";
import { LedgerNotes } from "./ledger-notes.tsx";
import { LiveReading } from "./live-reading.tsx";
import { Opening } from "./opening.tsx";
import { OtherBalances } from "./other-balances.tsx";
import { OtherTests, type OtherTestsView } from "./other-tests.tsx";
import { ProblemNote } from "./parts.tsx";
import { BenchPhotos, type BenchPhotosView } from "./photos.tsx";
import { Result } from "./result.tsx";
import { SimulatorControls } from "./simulator-controls.tsx";
import type { BenchView, LiveView } from "./view.ts";

export { BenchPhotos, OtherTests };

/** Seconds between two heartbeats of the live stream; a page that misses two turns grey. */
export const heartbeatSeconds = 2;

/** The live reading, and what to do while each load is taken by itself. */
export function LivePart(live: LiveView) {
  return (
    <>
      <LiveReading {...live} />
      {live.waitsBecause !== undefined && (
        <p class="hint">
          <Told says={live.waitsBecause} />
        </p>
      )}
      <EachLoadNow {...live} />
    </>
  );
}

/** The left column: the ticket of a new piece, or the steps of the piece on the bench. */
export function ItemPart({ view }: { view: BenchView }) {
  const locale = useLocale();
  const t = useTell();
  if (view.item && !view.item.closed)
    return (
      <>
        <LedgerNotes view={view} />
        <ClosedByChecks closed={view.closed} />
        <ScaleChecks view={view} />
        <OtherBalances view={view} />
        <ItemSteps view={view} item={view.item} />
      </>
    );
  return (
    <>
      <LedgerNotes view={view} />
      <ClosedByChecks closed={view.closed} />
      <ScaleChecks view={view} />
      {view.item?.closed?.how === "recorded" && (
        <p class="state state-consistent">
          <span class="sign" aria-hidden="true">
            ✓
          </span>
          {t("bench.record-written", { ticket: view.item.ticket })}{" "}
          <a href={`/records/${view.item.id}`}>{t("bench.read-record")}</a>
        </p>
      )}
      {view.demo?.behind !== undefined && view.item && (
        <p class="hint">
          {t("bench.opening.demo-truth", {
            ticket: view.item.ticket,
            truth: tellId("demo.truth", view.demo.behind, locale),
          })}
        </p>
      )}
      <ProblemNote problem={view.problem} />
      <Opening view={view} />
    </>
  );
}

/** Where the readings come from; it changes when the bench changes over to another balance. */
export function LiveHeading({ scaleName }: { scaleName: Told | undefined }) {
  const t = useTell();
  return <>{scaleName === undefined ? t("bench.typed-readings") : t("bench.now-on", { scale: scaleName })}</>;
}

/** The right column: what the readings say so far. */
export function ResultPart({ view }: { view: BenchView }) {
  const t = useTell();
  if (view.item && !view.item.closed && view.evaluation)
    return <Result view={view} evaluation={view.evaluation} />;
  return (
    <section class="sheet" aria-labelledby="result-heading">
      <h2 id="result-heading">{t("bench.density")}</h2>
      <p class="hint">{t("bench.density-later")}</p>
    </section>
  );
}

/** The Bench page: the live reading, the piece with its steps, the result. */
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
      <section class="sheet live-box" aria-labelledby="live-heading" data-live>
        <h2 id="live-heading" class="label">
          <LiveHeading {...view} />
        </h2>
        <div id="live-reading">
          <LivePart {...live} />
        </div>
        {view.demo && <SimulatorControls view={view} />}
      </section>
      <div id="hands">
        <HandPart {...hands} />
      </div>
      <div class="columns">
        <div>
          <div id="piece">
            <ItemPart view={view} />
          </div>
          <div id="photos">
            <BenchPhotos photos={photos} />
          </div>
          <div id="other-tests">
            <OtherTests tests={tests} />
          </div>
        </div>
        <div id="result">
          <ResultPart view={view} />
        </div>
      </div>
    </div>
  );
}
