import { massUnits } from "../../calibration/units.ts";
import { type Role, roleNames } from "../../server/bench/method.ts";
import { type Capture, type Piece, standing } from "../../server/bench/piece.ts";
import type { Step } from "../../server/bench/steps.ts";
import type { BenchView } from "../../server/bench/view.ts";
import { isRefused } from "../../server/compute/evaluation.ts";
import { FindingState } from "../finding.tsx";
import { plusMinus } from "../numbers.ts";
import { Doubts } from "./doubts.tsx";
import { Csrf, ProblemNote } from "./parts.tsx";

/** The piece on the bench: what to do now, what to mind, and every reading taken so far. */
export function PieceSteps({ view, piece }: { view: BenchView; piece: Piece }) {
  return (
    <section class="sheet" aria-labelledby="piece-heading">
      <h2 id="piece-heading">
        {piece.ticket}
        {piece.description && <small> {piece.description}</small>}
      </h2>
      <ProblemNote problem={view.problem} />
      {view.trouble && (
        <div class="problems" role="alert">
          <p>{view.trouble}</p>
        </div>
      )}
      <Doubts doubts={view.doubts} />
      <ol class="steps">
        {view.steps.map((step) => (
          <StepLine key={step.name} step={step} view={view} piece={piece} />
        ))}
      </ol>
      <SetPieceAside view={view} />
    </section>
  );
}

function StepLine({ step, view, piece }: { step: Step; view: BenchView; piece: Piece }) {
  const { name } = step;
  return (
    <li
      class={step.state === "done" ? "done" : undefined}
      {...(step.state === "due" ? { "aria-current": "step" as const } : {})}
    >
      <p class="step-title">
        <strong>{step.title}</strong> {step.state === "done" && <span class="tag">done</span>}
      </p>
      {step.state === "due" && (
        <>
          <p>{step.does}</p>
          <p class="hint">Mind: {step.minds}</p>
        </>
      )}
      {name === "water" ? (
        <WaterForm view={view} piece={piece} due={step.state === "due"} />
      ) : name === "record" ? (
        step.state === "due" && <RecordForm view={view} />
      ) : (
        <RoleReadings role={name} view={view} piece={piece} due={step.state === "due"} />
      )}
    </li>
  );
}

function RoleReadings({
  role,
  view,
  piece,
  due,
}: {
  role: Role;
  view: BenchView;
  piece: Piece;
  due: boolean;
}) {
  const captures = piece.captures.filter((capture) => capture.role === role);
  const taken = standing(piece, role).length;
  if (!due && taken === 0 && captures.length === 0) return null;
  return (
    <>
      {captures.length > 0 && (
        <ul class="readings">
          {captures.map((capture) => (
            <CaptureLine key={capture.id} capture={capture} view={view} />
          ))}
        </ul>
      )}
      {view.waitingFor === role ? (
        <Waiting view={view} />
      ) : (
        <>
          {view.scaleName !== undefined && <TakeButton role={role} view={view} due={due} again={taken > 0} />}
          <TypedForm role={role} view={view} open={due && view.scaleName === undefined} again={taken > 0} />
        </>
      )}
    </>
  );
}

const howTaken = {
  mark: "at rest by the balance's own mark",
  "own-criterion": "at rest by its spread",
  "by-hand": "taken by hand",
  typed: "typed",
} as const;

function CaptureLine({ capture, view }: { capture: Capture; view: BenchView }) {
  return (
    <li>
      <span class={capture.setAside ? "voided number" : "number"}>
        {capture.text} {capture.unit}
      </span>{" "}
      <span class="hint">{howTaken[capture.takenBy]}</span>
      {capture.setAside ? (
        <span class="hint"> set aside: {capture.setAside.reason}</span>
      ) : (
        <details class="inline">
          <summary>set aside</summary>
          <form
            method="post"
            action={`/bench/captures/${capture.id}/voiding`}
            hx-post={`/bench/captures/${capture.id}/voiding`}
            hx-target="#piece"
            hx-swap="innerHTML"
          >
            <Csrf token={view.csrfToken} />
            <div class="entry">
              <label class="unseen" for={`why-${capture.id}`}>
                Why is it set aside
              </label>
              <input
                id={`why-${capture.id}`}
                name="reason"
                type="text"
                placeholder="bubble on the edge"
                maxLength={200}
              />
              <button type="submit" class="plain">
                Set aside, keep visible
              </button>
            </div>
          </form>
        </details>
      )}
    </li>
  );
}

function TakeButton({
  role,
  view,
  due,
  again,
}: {
  role: Role;
  view: BenchView;
  due: boolean;
  again: boolean;
}) {
  return (
    <form
      method="post"
      action="/bench/captures"
      hx-post="/bench/captures"
      hx-target="#piece"
      hx-swap="innerHTML"
    >
      <Csrf token={view.csrfToken} />
      <input type="hidden" name="role" value={role} />
      <button
        type="submit"
        class={due ? "large" : "plain"}
        data-needs-live
        {...(due ? { "data-key": "t F9" } : {})}
      >
        {again ? `Take the ${roleNames[role]} reading again` : `Take the ${roleNames[role]} reading`}{" "}
        {due && <kbd>T</kbd>}
      </button>
    </form>
  );
}

function Waiting({ view }: { view: BenchView }) {
  return (
    <div class="row" role="status">
      <p>
        <strong>Waiting for the balance to rest…</strong>
      </p>
      <form
        method="post"
        action="/bench/capture-by-hand"
        hx-post="/bench/capture-by-hand"
        hx-target="#piece"
        hx-swap="innerHTML"
      >
        <Csrf token={view.csrfToken} />
        <button type="submit" class="plain">
          Take it as it stands
        </button>
      </form>
      <form
        method="post"
        action="/bench/capture-cancelled"
        hx-post="/bench/capture-cancelled"
        hx-target="#piece"
        hx-swap="innerHTML"
      >
        <Csrf token={view.csrfToken} />
        <button type="submit" class="plain">
          Do not take it
        </button>
      </form>
    </div>
  );
}

function TypedForm({
  role,
  view,
  open,
  again,
}: {
  role: Role;
  view: BenchView;
  open: boolean;
  again: boolean;
}) {
  const typed = view.problem?.typed?.role === role ? view.problem.typed : {};
  const id = `typed-${role}`;
  const form = (
    <form
      method="post"
      action="/bench/typed-readings"
      hx-post="/bench/typed-readings"
      hx-target="#piece"
      hx-swap="innerHTML"
    >
      <Csrf token={view.csrfToken} />
      <input type="hidden" name="role" value={role} />
      <input type="hidden" name="key" value={`${view.key}-${role}`} />
      <div class="entry">
        <label class="unseen" for={id}>
          The {roleNames[role]} reading
        </label>
        <input
          id={id}
          name="reading"
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={typed.reading ?? ""}
          required
          {...(typed.reading === undefined ? {} : { "aria-invalid": "true" as const })}
        />
        <label class="unseen" for={`${id}-unit`}>
          Unit
        </label>
        <select id={`${id}-unit`} name="unit">
          {massUnits.map((unit) => (
            <option key={unit} value={unit} selected={(typed.unit ?? lastUnit(view)) === unit}>
              {unit}
            </option>
          ))}
        </select>
        <button type="submit">Enter</button>
      </div>
      <span class="hint">All decimals the scale shows, zeros too: 31.10 says more than 31.1.</span>
    </form>
  );
  if (open && !again) return form;
  return (
    <details class="inline" open={typed.reading !== undefined}>
      <summary>{again ? `type another ${roleNames[role]} reading` : "type it instead"}</summary>
      {form}
    </details>
  );
}

function lastUnit(view: BenchView): string {
  return view.piece?.captures.at(-1)?.unit ?? "g";
}

function WaterForm({ view, piece, due }: { view: BenchView; piece: Piece; due: boolean }) {
  if (!due && piece.waterCelsius === undefined) return null;
  const typed = view.problem?.field === "celsius" ? view.problem.typed?.celsius : undefined;
  const form = (
    <form method="post" action="/bench/water" hx-post="/bench/water" hx-target="#piece" hx-swap="innerHTML">
      <Csrf token={view.csrfToken} />
      <input type="hidden" name="key" value={`${view.key}-water`} />
      <div class="entry">
        <label class="unseen" for="celsius">
          Water temperature in °C
        </label>
        <input
          id="celsius"
          name="celsius"
          type="text"
          inputMode="decimal"
          autocomplete="off"
          required
          value={typed ?? piece.waterCelsius ?? ""}
          {...(typed === undefined ? {} : { "aria-invalid": "true" as const })}
        />
        <span>°C</span>
        <button type="submit" class={due ? undefined : "plain"}>
          Enter
        </button>
      </div>
    </form>
  );
  if (due) return form;
  return (
    <>
      <span class="number">{piece.waterCelsius} °C</span>{" "}
      <details class="inline" open={typed !== undefined}>
        <summary>state it anew</summary>
        {form}
      </details>
    </>
  );
}

function RecordForm({ view }: { view: BenchView }) {
  const { evaluation } = view;
  const told = evaluation && !isRefused(evaluation) ? evaluation : undefined;
  return (
    <>
      {told && (
        <p>
          <a href="#result">{plusMinus(told.response.density_g_cm3, told.response.expanded_g_cm3)} g/cm³</a>{" "}
          <FindingState state={told.finding.state} />
        </p>
      )}
      <form
        method="post"
        action="/bench/record"
        hx-post="/bench/record"
        hx-target="#piece"
        hx-swap="innerHTML"
      >
        <Csrf token={view.csrfToken} />
        <button type="submit" class="large" data-key="w">
          Write the record <kbd>W</kbd>
        </button>
      </form>
    </>
  );
}

function SetPieceAside({ view }: { view: BenchView }) {
  return (
    <details class="inline">
      <summary>set the whole piece aside</summary>
      <form
        method="post"
        action="/bench/piece-set-aside"
        hx-post="/bench/piece-set-aside"
        hx-target="#piece"
        hx-swap="innerHTML"
      >
        <Csrf token={view.csrfToken} />
        <div class="entry">
          <label class="unseen" for="piece-why">
            Why the piece is set aside
          </label>
          <input
            id="piece-why"
            name="reason"
            type="text"
            placeholder="hollow, water came out"
            maxLength={200}
          />
          <button type="submit" class="plain">
            Set aside, keep its readings
          </button>
        </div>
      </form>
    </details>
  );
}
