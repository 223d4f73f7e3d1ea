import { Csrf } from "../forms.tsx";
import { RawLines } from "../records/captures.tsx";
import { Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useWords } from "../words/spoken.ts";
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
  problem?: string;
}

/** The ports, the balance in use in words, and the last lines exactly as received. */
export function BalancesIndex(page: BalancesPage) {
  const { csrfToken } = page;
  const { balances: say, beside } = useWords();
  return (
    <div hx-sse:connect="/balances/live" data-heartbeat-seconds={2}>
      <div id="heartbeat" hidden />
      {page.problem !== undefined && (
        <div class="problems" role="alert">
          <p>
            <Told says={page.problem} />
          </p>
        </div>
      )}
      {page.simulated && <p>{say.simulatedInUse}</p>}
      <Sheet id="now" title={say.balanceInUse}>
        <div id="balance-now">
          <BalanceNow {...page} />
        </div>
        <div id="balance-asks">
          <BalanceAsks {...page} />
        </div>
        <div id="last-lines">
          <LastLines {...page} />
        </div>
        <p class="hint">{say.garbage}</p>
        {page.choice && (
          <p class="row">
            <a class="button" href="/balances/learning">
              {say.learnThisBalance}
            </a>
            <a class="button plain" href="/balances/asking">
              {say.toAsking}
            </a>
          </p>
        )}
      </Sheet>
      {!page.simulated && (
        <>
          {(page.choice || page.beside.length > 0) && (
            <Sheet id="beside" title={beside.heading}>
              <div id="beside-now">
                <BesideNow beside={page.beside} />
              </div>
              <div id="beside-asks">
                <BesideAsks beside={page.beside} csrfToken={csrfToken} />
              </div>
            </Sheet>
          )}
          <div id="ports">
            <Ports ports={page.ports} csrfToken={csrfToken} />
          </div>
          <div id="finding">
            <Finding finding={page.finding} csrfToken={csrfToken} />
          </div>
          <OtherPort typed={page.typed} mayBeBeside={page.choice !== undefined} csrfToken={csrfToken} />
        </>
      )}
      <Profiles profiles={page.profiles} csrfToken={csrfToken} />
    </div>
  );
}

function Profiles({ profiles, csrfToken }: Pick<BalancesPage, "profiles" | "csrfToken">) {
  const { balances: say, beside } = useWords();
  return (
    <Sheet id="profiles" title={say.learnedProfiles}>
      {profiles.length === 0 ? (
        <p>{say.noProfiles}</p>
      ) : (
        <ul>
          {profiles.map(({ name, version, href, inUse }) => (
            <li key={name}>
              <a href={href}>{name}</a>, {say.versionOf(version)}
              {inUse && `, ${say.inUseNow}`}
            </li>
          ))}
        </ul>
      )}
      <p>
        <a href="/balances/learning#pasted-heading">{say.learnFromPasted}</a>
      </p>
      <details class="inline">
        <summary>{say.takeOverProfile}</summary>
        <form method="post" action="/balances/profiles/import" enctype="multipart/form-data">
          <Csrf token={csrfToken} />
          <div class="field">
            <label for="profile-file">{beside.profileFile}</label>
            <input id="profile-file" name="file" type="file" accept="application/json,.json" />
          </div>
          <div class="field">
            <label for="profile-text">{beside.profileText}</label>
            <textarea id="profile-text" name="text" rows={6} spellcheck={false} />
          </div>
          <button type="submit">{say.testAndKeep}</button>
        </form>
      </details>
    </Sheet>
  );
}

/** Sample lines of a profile, which are also its own test. */
export function SampleLines({ lines }: { lines: readonly { at: string; raw: string }[] }) {
  const say = useWords().balances;
  return <RawLines title={say.sampleLines} lines={lines} />;
}
