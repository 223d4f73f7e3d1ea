import { Csrf } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Fold, Sheet } from "../sheet.tsx";
import { BesideAsks, BesideNow, type BesideView } from "./beside.tsx";
import { Finding, type FindingView } from "./finding.tsx";
import { BalanceAsks, BalanceNow, LastLines, type NowView } from "./now.tsx";
import { OtherPort, type PortRow, Ports } from "./ports.tsx";

export interface BalancesPage extends NowView {
  ports: readonly PortRow[];
  beside: readonly BesideView[];
  /** what stands in the form for another port */
  typed: { port: string; line: string; flow: string };
  finding: FindingView;
  simulated: boolean;
  /** learned profiles, for the list of them */
  profiles: readonly { name: string; version: number; href: string; inUse: boolean }[];
  problem?: Sentence;
}

/** The ports, the balance in use in words, and the last lines exactly as received. */
export function BalancesIndex(page: BalancesPage) {
  const { csrfToken } = page;
  const t = useTell();
  return (
    <div hx-sse:connect="/balances/live" data-heartbeat-seconds={2}>
      <div id="heartbeat" hidden />
      {page.problem !== undefined && (
        <div class="problems" role="alert">
          <p>
            <Sentence message={page.problem} />
          </p>
        </div>
      )}
      {page.simulated && <p>{t("balances.simulated-in-use")}</p>}
      <Sheet id="now" title={t("balances.balance-in-use")}>
        <div id="balance-now">
          <BalanceNow {...page} />
        </div>
        <div id="balance-asks">
          <BalanceAsks {...page} />
        </div>
        {page.choice && (
          <p class="row">
            <a class="button" href="/balances/learning">
              {t("balances.learn-this-balance")}
            </a>
            <a class="button plain" href="/balances/asking">
              {t("balances.to-asking")}
            </a>
          </p>
        )}
        <Fold title={t("balances.last-lines")} remember="last-lines">
          <div id="last-lines">
            <LastLines {...page} />
          </div>
          <p class="hint">{t("balances.garbage")}</p>
        </Fold>
      </Sheet>
      {!page.simulated && (
        <>
          {(page.choice || page.beside.length > 0) && (
            <Sheet id="beside" title={t("beside.heading")}>
              <div id="beside-now">
                <BesideNow beside={page.beside} />
              </div>
              <div id="beside-asks">
                <BesideAsks beside={page.beside} csrfToken={csrfToken} />
              </div>
            </Sheet>
          )}
          <div id="finding">
            <Finding finding={page.finding} csrfToken={csrfToken} />
          </div>
          <Fold
            title={t("balances.connect-other")}
            open={page.choice === undefined || page.problem !== undefined}
          >
            <div id="ports">
              <Ports ports={page.ports} csrfToken={csrfToken} />
            </div>
            <OtherPort typed={page.typed} mayBeBeside={page.choice !== undefined} csrfToken={csrfToken} />
          </Fold>
        </>
      )}
      <Profiles profiles={page.profiles} csrfToken={csrfToken} />
    </div>
  );
}

function Profiles({ profiles, csrfToken }: Pick<BalancesPage, "profiles" | "csrfToken">) {
  const t = useTell();
  return (
    <Sheet id="profiles" title={t("balances.learned-profiles")}>
      {profiles.length === 0 ? (
        <p>{t("balances.no-profiles")}</p>
      ) : (
        <ul>
          {profiles.map(({ name, version, href, inUse }) => (
            <li key={name}>
              <a href={href}>{name}</a>, {t("balances.version-of", { version })}
              {inUse && `, ${t("balances.in-use-now")}`}
            </li>
          ))}
        </ul>
      )}
      <p>
        <a href="/balances/learning#pasted-heading">{t("balances.learn-from-pasted")}</a>
      </p>
      <details class="inline">
        <summary>{t("balances.take-over-profile")}</summary>
        <form method="post" action="/balances/profiles/import" enctype="multipart/form-data">
          <Csrf token={csrfToken} />
          <div class="field">
            <label for="profile-file">{t("beside.profile-file")}</label>
            <input id="profile-file" name="file" type="file" accept="application/json,.json" />
          </div>
          <div class="field">
            <label for="profile-text">{t("beside.profile-text")}</label>
            <textarea id="profile-text" name="text" rows={6} spellcheck={false} />
          </div>
          <button type="submit">{t("balances.test-and-keep")}</button>
        </form>
      </details>
    </Sheet>
  );
}
