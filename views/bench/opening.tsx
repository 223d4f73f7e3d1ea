import { useLocale, useTell } from "../messages/spoken.ts";
import { metalTold, tellId } from "../messages/tell.ts";
import { methodNames, methodViews } from "../methods/index.ts";
import { ForTheReport } from "./for-the-report.tsx";
import { BenchForm } from "./parts.tsx";
import type { BenchView, DemoPieceView } from "./view.ts";

/** The ticket of a new piece: what it is called, what it is said to be, how it will be weighed. */
export function Opening({ view }: { view: BenchView }) {
  const locale = useLocale();
  const t = useTell();
  const tickets = t("tickets.title");
  const typed = view.problem?.typed ?? {};
  const field = view.problem?.field;
  return (
    <section class="sheet" aria-labelledby="opening">
      <h2 id="opening">{t("bench.opening.heading")}</h2>
      {view.demo && <DemoChoice view={view} />}
      <BenchForm view={view} to="/bench/piece">
        <div class="field">
          <label for="ticket">{t("bench.opening.ticket")}</label>
          <input
            id="ticket"
            name="ticket"
            data-scan
            type="text"
            value={typed.ticket ?? ""}
            autocomplete="off"
            maxLength={80}
            required
            {...(field === "ticket" ? { "aria-invalid": "true" as const } : {})}
          />
        </div>
        <div class="field">
          <label for="description">{t("bench.opening.looks")}</label>
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
          <label for="claim">{t("bench.opening.claim")}</label>
          <select id="claim" name="claim">
            <option value="">{t("bench.opening.no-claim")}</option>
            {view.bands
              .filter(({ claimable }) => claimable)
              .map(({ id, name }) => (
                <option key={id} value={id} selected={typed.claim === id}>
                  {metalTold({ id, name }, locale)}
                </option>
              ))}
          </select>
          <span class="hint">{t("bench.opening.claim-hint")}</span>
        </div>
        <fieldset>
          <legend>{t("bench.opening.method")}</legend>
          {methodNames.map((method) => (
            <label key={method} class="choice">
              <input
                type="radio"
                name="method"
                value={method}
                checked={(typed.method ?? view.firstMethod) === method}
              />
              <span>
                <strong>{t(`method.${method}.name`)}</strong>
                <br />
                <span class="hint">
                  {t(`method.${method}.hint`)}
                  {methodViews[method].cautions?.map((code) => (
                    <span key={code}> {t(code)}</span>
                  ))}
                </span>
              </span>
            </label>
          ))}
        </fieldset>
        <ForTheReport typed={typed} />
        <div class="caution">
          <p>
            <strong>{t("bench.opening.keep-dry")}</strong> {t("bench.opening.keep-dry-what")}
          </p>
        </div>
        <button type="submit" data-key="Enter">
          {t("bench.opening.go")}
        </button>
        <p>
          <a href="/plan">{t("bench.opening.plan")}</a>
        </p>
        <p>
          <a href="/tickets">{tickets}</a>
        </p>
      </BenchForm>
    </section>
  );
}

/** How many invented pieces lie open; the others are folded, so that the ticket stays in sight. */
const inSight = 4;

function DemoChoice({ view }: { view: BenchView }) {
  const t = useTell();
  if (!view.demo) return null;
  const { items } = view.demo;
  return (
    <div class="demo-choice">
      <p>{t("bench.opening.demo", { counter: t("demo.counter") })}</p>
      <DemoPieces view={view} items={items.slice(0, inSight)} />
      {items.length > inSight && (
        <details>
          <summary>{t("bench.opening.demo-more", { count: items.length - inSight })}</summary>
          <DemoPieces view={view} items={items.slice(inSight)} />
        </details>
      )}
    </div>
  );
}

function DemoPieces({ view, items }: { view: BenchView; items: readonly DemoPieceView[] }) {
  const locale = useLocale();
  return (
    <ul>
      {items.map((item) => (
        <li key={item.id}>
          <BenchForm view={view} to="/demo/piece" hidden={{ piece: item.id }}>
            <button type="submit" class="plain">
              {item.ticket}: {tellId("demo.pieces", item.id, locale)}
            </button>
          </BenchForm>
        </li>
      ))}
    </ul>
  );
}
