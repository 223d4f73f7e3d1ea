import { methods } from "../../server/bench/method.ts";
import type { BenchView } from "../../server/bench/view.ts";
import { BenchForm } from "./parts.tsx";

const methodHints = {
  hung: "The piece hangs from the balance; the water stands beside it.",
  displaced: "The water stands on the scale; the piece hangs from a stand. Works on any scale.",
  flask: "Filings, granules and small scrap inside a filled flask.",
} as const;

/** The ticket of a new piece: what it is called, what it is said to be, how it will be weighed. */
export function Opening({ view }: { view: BenchView }) {
  const typed = view.problem?.typed ?? {};
  const field = view.problem?.field;
  return (
    <section class="sheet" aria-labelledby="opening">
      <h2 id="opening">A piece for the bench</h2>
      {view.demo && <DemoChoice view={view} />}
      <BenchForm view={view} to="/bench/piece" hidden={{ key: view.key }}>
        <div class="field">
          <label for="ticket">Ticket</label>
          <input
            id="ticket"
            name="ticket"
            type="text"
            value={typed.ticket ?? ""}
            autocomplete="off"
            maxLength={80}
            required
            {...(field === "ticket" ? { "aria-invalid": "true" as const } : {})}
          />
        </div>
        <div class="field">
          <label for="description">What it looks like</label>
          <input
            id="description"
            name="description"
            type="text"
            value={typed.description ?? ""}
            maxLength={400}
            autocomplete="off"
          />
        </div>
        <div class="field">
          <label for="claim">Said to be</label>
          <select id="claim" name="claim">
            <option value="">nothing is claimed</option>
            {view.bands
              .filter(({ claimable }) => claimable)
              .map(({ id, name }) => (
                <option key={id} value={id} selected={typed.claim === id}>
                  {name}
                </option>
              ))}
          </select>
          <span class="hint">The seller's word. It is tested, never taken as a result.</span>
        </div>
        <fieldset>
          <legend>How it is weighed</legend>
          {(Object.keys(methodHints) as (keyof typeof methodHints)[]).map((method) => (
            <label key={method} class="choice">
              <input
                type="radio"
                name="method"
                value={method}
                checked={(typed.method ?? view.firstMethod) === method}
              />
              <span>
                <strong>{methods[method].name}</strong>
                <br />
                <span class="hint">{methodHints[method]}</span>
              </span>
            </label>
          ))}
        </fieldset>
        <div class="caution">
          <p>
            <strong>Keep dry:</strong> pearl, opal, turquoise, coral, amber, anything glued or strung, sealed
            or patinated coins, hollow or filled pieces. Take a density only of what may get wet.
          </p>
        </div>
        <button type="submit" data-key="Enter">
          Put it on the bench
        </button>
        <p>
          <a href="/plan">Plan first: can this scale answer the question?</a>
        </p>
      </BenchForm>
    </section>
  );
}

function DemoChoice({ view }: { view: BenchView }) {
  if (!view.demo) return null;
  return (
    <div class="demo-choice">
      <p>
        This is a demonstration at the {view.demo.counter}. Town, pieces and readings are invented. Take one
        of these to try the bench, or fill in a ticket of your own below.
      </p>
      <ul class="plain-list">
        {view.demo.pieces.map((piece) => (
          <li key={piece.id}>
            <BenchForm view={view} to="/demo/piece" hidden={{ piece: piece.id, key: view.key }}>
              <button type="submit" class="plain">
                {piece.ticket}: {piece.description}
              </button>
            </BenchForm>
          </li>
        ))}
      </ul>
    </div>
  );
}
