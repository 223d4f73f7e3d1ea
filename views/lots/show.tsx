import type { ComponentChildren } from "preact";
import { FindingState, type FindingStateName } from "../finding.tsx";
import { Csrf, Field, Select } from "../forms.tsx";
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

export interface LotView {
  id: string;
  name: string;
  /** what to do now, in one sentence */
  now: string;
  /** the piece on the bench */
  current: { ticket: string; step: "ticket" | "dry" | "immersed"; expected?: string };
  /** live reading, drawn by the bench */
  live: ComponentChildren;
  claims: readonly { id: string; name: string }[];
  claim: string;
  trays: readonly Tray[];
  totals: LotTotals;
  /** doubts: same mass twice, sum against gross, swapped */
  doubts: readonly { says: string; todo: string; tickets: readonly string[] }[];
  pieces: readonly LotPiece[];
  csrfToken: string;
  stepKey: string;
  locale?: Locale;
}

/** Screening a lot: ticket, dry, immersed, next. One key per weighing; the totals run along. */
export function LotPage(lot: LotView) {
  return (
    <>
      <div class="bench-columns">
        <ScreeningStep {...lot} />
        <RunningTotals {...lot} />
      </div>
      <Trays {...lot} />
      <Pieces {...lot} />
    </>
  );
}

/** Fragment: the step at hand with the live reading and the one button. */
export function ScreeningStep({ id, now, current, live, claims, claim, csrfToken, stepKey }: LotView) {
  return (
    <section class="sheet" id="screening" aria-label="Piece on the bench" data-say={now}>
      <h2>{now}</h2>
      {live}
      <form
        method="post"
        action={`/lots/${id}/pieces`}
        hx-post={`/lots/${id}/pieces`}
        hx-target="#screening"
        hx-swap="outerHTML"
      >
        <Csrf token={csrfToken} />
        <input type="hidden" name="step" value={stepKey} />
        {current.step === "ticket" ? (
          <>
            <Field
              name="ticket"
              label="Ticket"
              hint="scan or type; Enter goes on"
              value={current.ticket}
              required
              autoFocus
            />
            <Select
              name="claim"
              label="Said to be"
              empty="not said"
              value={claim}
              options={claims.map((one) => ({ value: one.id, label: one.name }))}
            />
            <button type="submit" class="large" data-key="F8">
              Next: dry <kbd>Enter</kbd>
            </button>
          </>
        ) : (
          <>
            <p>
              Ticket <strong>{current.ticket}</strong>
              {current.expected !== undefined && `, expected ${current.expected}`}
            </p>
            <button
              type="submit"
              class="large"
              name="take"
              value={current.step}
              data-key="F9 Enter"
              data-needs-live
              autofocus
            >
              Take {current.step} <kbd>Enter</kbd>
            </button>
          </>
        )}
      </form>
      {current.step !== "ticket" && (
        <details>
          <summary>Type it from another scale, or put this piece aside</summary>
          <form method="post" action={`/lots/${id}/pieces`}>
            <Csrf token={csrfToken} />
            <input type="hidden" name="step" value={stepKey} />
            <Field
              kind="decimal"
              name="typed"
              label={`${current.step === "dry" ? "Dry" : "Immersed"}, typed`}
              after="g"
            />
            <button type="submit">Keep as typed</button>{" "}
            <button type="submit" class="plain" name="aside" value="yes">
              Put aside
            </button>
          </form>
        </details>
      )}
    </section>
  );
}

/** Fragment: sums, fine mass with its interval, doubts. */
export function RunningTotals({ totals, doubts }: LotView) {
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

/** Fragment: the trays by finding. */
export function Trays({ trays, locale = "en" }: Pick<LotView, "trays" | "locale">) {
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

function Pieces({ id, pieces, locale = "en" }: LotView) {
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
        <a href={`/lots/${id}/payout`}>Payout worksheet</a>
      </p>
    </Sheet>
  );
}
