import { useTell } from "../messages/spoken.ts";
import { Told } from "../told.tsx";
import { BenchForm } from "./parts.tsx";
import type { BenchView, CheckView } from "./view.ts";

/** What looks wrong about the procedure, each with its question and what to do; it never changes a reading. */
export function Checks({ view, checks }: { view: BenchView; checks: readonly CheckView[] }) {
  const t = useTell();
  if (checks.length === 0) return null;
  return (
    <section class="caution" aria-labelledby="checks-heading">
      <h3 id="checks-heading">{t("bench.steps.doubts")}</h3>
      {checks.map(({ code, severity, params, remedies }) => (
        <div key={code} data-check={code} data-severity={severity}>
          <p>
            {t(code, params)} <strong>{t(`${code}.ask`, params)}</strong>
          </p>
          <ul>
            {remedies.map((remedy) => (
              <li key={remedy.code}>
                {t(remedy.code, remedy.params)}
                {remedy.offer?.do === "swap-dry-and-wet" && (
                  <BenchForm view={view} to="/bench/changed-over">
                    <button type="submit" class="plain">
                      {t("bench.steps.change-over")}
                    </button>
                  </BenchForm>
                )}
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}

/** After a lost cable: what to look at on the balance, and the button that says it was looked at. */
export function ScaleChecks({ view }: { view: BenchView }) {
  const t = useTell();
  return (
    <>
      {view.scaleChecks.map(({ kind, message }) => (
        <section key={kind} class="caution" aria-label={t("bench.steps.look-at-balance")}>
          <p>
            <Told says={message} />
          </p>
          <BenchForm view={view} to="/bench/balance-looked-at" hidden={{ kind: kind }}>
            <button type="submit" class="plain">
              {t("bench.steps.looked")}
            </button>
          </BenchForm>
        </section>
      ))}
    </>
  );
}
