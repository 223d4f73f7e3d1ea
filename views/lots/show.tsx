import type { ComponentChildren } from "preact";
import { FindingState, type FindingStateName } from "../finding.tsx";
import { Csrf, Field, Select, UnitSelect } from "../forms.tsx";
import { Facts, Rows, Sheet } from "../sheet.tsx";
import { type Locale, words } from "../words/index.ts";

/** Pieces that go onto one tray, by what was found. */
export interface Tray {
  state: FindingStateName;
  pieces: number;
  /** "412.36 g" */
  mass: string;
  /** the last few tickets put there, newest first */
  tickets: readonly string[];
}

export interface LotPiece {
  recordId?: string;
  ticket: string;
  claimName: string;
  dry: string;
  density?: string;
  state?: FindingStateName;
  fine?: string;
  /** twin mass, swapped, typed, voided */
  flags: readonly string[];
  voided?: boolean;
}

export interface LotTotals {
  pieces: string;
  sum: string;
  gross?: string;
  /** in words: agrees within …, or how far off and what that suggests */
  against?: string;
  /** "low to high" with unit, and how the common errors were kept common */
  fine: string;
  fineWords: string;
}

/** What is due: the water once, then for every piece its ticket and its two weighings; "elsewhere" while another piece is on the bench. */
export type LotStep = "water" | "ticket" | "dry" | "immersed" | "rise" | "elsewhere";

const weighingNames = { dry: "dry", immersed: "immersed", rise: "rise" } as const;

export interface LotView {
  id: string;
  name: string;
  /** what to do now, in one sentence */
  now: string;
  /** the piece on the bench */
  current: { ticket: string; step: LotStep };
  /** live reading, drawn by the bench; left out when readings are typed */
  live?: ComponentChildren;
  /** water temperature in °C that counts now; empty until it was typed */
  water: string;
  units: readonly string[];
  /** why the last entry was not taken, with what was typed */
  problem?: { says: string; field?: string | undefined; typed: Readonly<Record<string, string>> };
  claims: readonly { id: string; name: string }[];
  claim: string;
  trays: readonly Tray[];
  totals: LotTotals;
  /** doubts: same mass twice, sum against gross, swapped */
  doubts: readonly { says: string; todo: string; tickets: readonly string[] }[];
  /** the newest few */
  pieces: readonly LotPiece[];
  /** how many more there are */
  more?: number;
  csrfToken: string;
  stepKey: string;
  locale?: Locale;
}

/** Screening a lot: ticket, dry, immersed, next. One key per weighing; the totals run along. */
export function LotPage(lot: LotView) {
  return (
    <>
      {lot.live !== undefined && (
        <section class="sheet live-box" aria-label="Balance" data-live>
          {lot.live}
        </section>
      )}
      <LotPart {...lot} />
    </>
  );
}

/** Fragment: everything of the lot that a weighing changes. */
export function LotPart(lot: LotView) {
  return (
    <div id="lot">
      <div class="bench-columns">
        <ScreeningStep {...lot} />
        <RunningTotals {...lot} />
      </div>
      <Trays {...lot} />
      <Pieces {...lot} />
    </div>
  );
}

/** The step at hand with its one entry or its one button. */
function ScreeningStep(lot: LotView) {
  const { now, current, problem } = lot;
  return (
    <section class="sheet" id="screening" aria-label="Piece on the bench" data-say={now}>
      <h2>{now}</h2>
      {problem && (
        <div class="problems" role="alert">
          <p>{problem.says}</p>
        </div>
      )}
      {current.step === "elsewhere" ? (
        <p>
          Piece <strong>{current.ticket}</strong> of other work is on the bench.{" "}
          <a href="/">Finish it or set it aside there</a>, then come back.
        </p>
      ) : current.step === "water" ? (
        <WaterForm lot={lot} />
      ) : current.step === "ticket" ? (
        <TicketForm lot={lot} />
      ) : (
        <WeighingForms lot={lot} step={current.step} />
      )}
      {lot.water !== "" && current.step === "ticket" && (
        <details>
          <summary>Water at {lot.water} °C: measured anew</summary>
          <WaterForm lot={lot} />
        </details>
      )}
    </section>
  );
}

function StepForm({ lot, children }: { lot: LotView; children: ComponentChildren }) {
  const action = `/lots/${lot.id}/pieces`;
  return (
    <form method="post" action={action} hx-post={action} hx-target="#lot" hx-swap="outerHTML">
      <Csrf token={lot.csrfToken} />
      <input type="hidden" name="step" value={lot.stepKey} />
      {children}
    </form>
  );
}

function WaterForm({ lot }: { lot: LotView }) {
  const { problem, current } = lot;
  return (
    <StepForm lot={lot}>
      <Field
        kind="decimal"
        name="celsius"
        label="Temperature in the water"
        after="°C"
        value={problem?.typed.celsius ?? ""}
        required
        autoFocus={current.step === "water"}
      />
      <button type="submit">Keep</button>
    </StepForm>
  );
}

function TicketForm({ lot }: { lot: LotView }) {
  const { claim, claims, problem } = lot;
  return (
    <StepForm lot={lot}>
      <Field
        name="ticket"
        label="Ticket"
        hint="scan or type; Enter goes on"
        value={problem?.typed.ticket ?? ""}
        required
        autoFocus
      />
      <Select
        name="claim"
        label="Said to be"
        empty="not said"
        value={problem?.typed.claim ?? claim}
        options={claims.map((one) => ({ value: one.id, label: one.name }))}
      />
      <button type="submit" class="large">
        Next: dry <kbd>Enter</kbd>
      </button>
    </StepForm>
  );
}

function WeighingForms({ lot, step }: { lot: LotView; step: keyof typeof weighingNames }) {
  const typed = (
    <StepForm lot={lot}>
      <input type="hidden" name="role" value={step} />
      <Field
        kind="decimal"
        name="typed"
        label={`Reading, ${weighingNames[step]}`}
        value={lot.problem?.typed.typed ?? ""}
        required
        autoFocus={lot.live === undefined}
        after={
          <UnitSelect
            name="unit"
            label="Unit of the reading"
            units={lot.units}
            value={lot.problem?.typed.unit ?? "g"}
          />
        }
      />
      <button type="submit">
        Keep as typed <kbd>Enter</kbd>
      </button>
    </StepForm>
  );
  return (
    <>
      <p>
        Ticket <strong>{lot.current.ticket}</strong>
      </p>
      {lot.live === undefined ? (
        typed
      ) : (
        <StepForm lot={lot}>
          <button
            type="submit"
            class="large"
            name="take"
            value={step}
            data-key="F9"
            data-needs-live
            autofocus
          >
            Take {weighingNames[step]} <kbd>Enter</kbd>
          </button>
        </StepForm>
      )}
      {lot.live !== undefined && (
        <details>
          <summary>Type it from another scale</summary>
          {typed}
        </details>
      )}
      <StepForm lot={lot}>
        <button type="submit" class="plain" name="aside" value="yes">
          Put this piece aside
        </button>
      </StepForm>
    </>
  );
}

/** Sums, fine mass with its interval, doubts. */
function RunningTotals({ totals, doubts }: LotView) {
  return (
    <section class="sheet" id="totals" aria-labelledby="totals-heading">
      <h2 id="totals-heading">So far</h2>
      <Facts
        facts={[
          ["Pieces", totals.pieces],
          ["Sum of the pieces", totals.sum],
          ["Gross mass of the lot", totals.gross],
          ["Held against each other", totals.against],
          ["Fine mass", <strong key="f">{totals.fine}</strong>],
        ]}
      />
      <p class="hint">{totals.fineWords}</p>
      {doubts.length > 0 && (
        <>
          <h3>Look again</h3>
          <ul>
            {doubts.map(({ says, todo, tickets }) => (
              <li key={says}>
                {says} {todo} {tickets.length > 0 && <small>({tickets.join(", ")})</small>}
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** The trays by finding. */
function Trays({ trays, locale = "en" }: Pick<LotView, "trays" | "locale">) {
  return (
    <section id="trays" aria-label="Trays" class="trays">
      {trays.map(({ state, pieces, mass, tickets }) => (
        <section class="sheet" key={state} aria-label={words(locale).findings[state]}>
          <FindingState state={state} locale={locale} />
          <p class="result-value">{pieces}</p>
          <p>{mass}</p>
          <p class="hint">{tickets.join(", ")}</p>
        </section>
      ))}
    </section>
  );
}

function Pieces({ id, pieces, more = 0, locale = "en" }: LotView) {
  return (
    <Sheet id="pieces" title="Pieces">
      <Rows
        caption="Newest first"
        empty="No piece has been weighed yet."
        columns={[
          { head: "Ticket" },
          { head: "Said to be" },
          { head: "Dry", number: true },
          { head: "Density, g/cm³", number: true },
          { head: "Finding" },
          { head: "Fine mass", number: true },
          { head: "Remarks" },
        ]}
        rows={pieces.map((one, index) => ({
          key: `${one.ticket} ${index}`,
          voided: one.voided ?? false,
          cells: [
            one.recordId === undefined ? (
              one.ticket
            ) : (
              <a key="a" href={`/records/${one.recordId}`}>
                {one.ticket}
              </a>
            ),
            one.claimName,
            one.dry,
            one.density ?? "–",
            one.state ? <FindingState key="s" state={one.state} locale={locale} /> : "–",
            one.fine ?? "–",
            one.flags.join(", "),
          ],
        }))}
      />
      <p>
        <a href={`/lots/${id}/payout`}>Payout worksheet</a>{" "}
        {more > 0 && <span class="hint">{more} earlier pieces are in the records.</span>}
      </p>
    </Sheet>
  );
}
