import { useLocale, useTell } from "../messages/spoken.ts";
import { metalTold } from "../messages/tell.ts";
import { methodNames, methodViews } from "../methods/index.ts";
import { ForTheReport } from "./for-the-report.tsx";
import { HandsFreeSwitch } from "./hands-free.tsx";
import { NextButton } from "./next-button.tsx";
import { BenchForm } from "./parts.tsx";
import type { BenchView } from "./view.ts";

/** The ticket of a new piece: what it is called, what it is claimed to be, how it will be weighed. */
export function Opening({ view }: { view: BenchView }) {
  const locale = useLocale();
  const t = useTell();
  const typed = view.problem?.typed ?? {};
  const field = view.problem?.field;
  const chosen = methodNames.find((method) => method === typed.method) ?? view.firstMethod;
  return (
    <section id="now" aria-label={t("bench.opening.heading")}>
      <BenchForm view={view} to="/bench/piece">
        <div class="now opening" data-step="opening">
          <div class="across fields">
            <div class="field whole">
              <label for="ticket">{t("bench.opening.ticket")}</label>
              <input type="hidden" name="nextTicket" value={view.nextTicket} />
              <input
                id="ticket"
                name="ticket"
                data-scan
                data-step-field
                type="text"
                value={typed.ticket ?? ""}
                autocomplete="off"
                maxLength={80}
                aria-describedby="ticket-hint"
                {...(field === "ticket" ? { "aria-invalid": "true" as const } : {})}
              />
              <span class="hint" id="ticket-hint">
                {t("bench.opening.ticket-hint", { next: view.nextTicket })}
              </span>
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
            </div>
            <div class="field">
              <label for="method">{t("bench.opening.method")}</label>
              <select id="method" name="method">
                {methodNames.map((method) => (
                  <option key={method} value={method} selected={method === chosen}>
                    {t(`method.${method}.name`)}
                  </option>
                ))}
              </select>
            </div>
          </div>
          <div class="act">
            <NextButton keys="Enter">{t("bench.opening.go")}</NextButton>
          </div>
          <details class="fold across" open={(typed.description ?? "") !== "" || undefined}>
            <summary>{t("bench.opening.more")}</summary>
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
            <ForTheReport typed={typed} />
            {methodNames.flatMap((method) =>
              (methodViews[method].cautions ?? []).map((code) => (
                <p key={code} class="hint">
                  {t(code)}
                </p>
              )),
            )}
          </details>
        </div>
      </BenchForm>
      {view.scaleName !== undefined && (
        <div class="beside-next">
          <HandsFreeSwitch view={view} />
        </div>
      )}
    </section>
  );
}
