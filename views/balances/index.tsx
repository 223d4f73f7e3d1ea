import { Csrf } from "../forms.tsx";
import { RawLines } from "../records/captures.tsx";
import { Sheet } from "../sheet.tsx";
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
  const say = useWords().beside;
  return (
    <div hx-sse:connect="/balances/live" data-heartbeat-seconds={2}>
      <div id="heartbeat" hidden />
      {page.problem !== undefined && (
        <div class="problems" role="alert">
          <p>{page.problem}</p>
        </div>
      )}
      {page.simulated && (
        <p>
          A simulated balance is in use: it weighs invented pieces and says so on every record. End the
          demonstration to choose a balance of your own.
        </p>
      )}
      <Sheet id="now" title="The balance of this bench">
        <div id="balance-now">
          <BalanceNow {...page} />
        </div>
        <div id="balance-asks">
          <BalanceAsks {...page} />
        </div>
        <div id="last-lines">
          <LastLines {...page} />
        </div>
        <p class="hint">
          Garbage here usually means a wrong speed or parity; nothing here means a wrong cable or port, or a
          balance that sends only on its key or when asked.
        </p>
        {page.choice && (
          <p class="row">
            <a class="button" href="/balances/learning">
              Learn this balance
            </a>
            <a class="button plain" href="/balances/asking">
              Lines to ask it with
            </a>
          </p>
        )}
      </Sheet>
      {!page.simulated && (
        <>
          {(page.choice || page.beside.length > 0) && (
            <Sheet id="beside" title={say.heading}>
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
  const say = useWords().beside;
  return (
    <Sheet id="profiles" title="Learned profiles">
      {profiles.length === 0 ? (
        <p>None yet. Without one, lines are read by the generic shapes.</p>
      ) : (
        <ul>
          {profiles.map(({ name, version, href, inUse }) => (
            <li key={name}>
              <a href={href}>{name}</a>, version {version}
              {inUse && ", in use"}
            </li>
          ))}
        </ul>
      )}
      <p>
        <a href="/balances/learning#pasted-heading">Learn from pasted lines</a>
      </p>
      <details class="inline">
        <summary>take over a profile from a file</summary>
        <form method="post" action="/balances/profiles/import" enctype="multipart/form-data">
          <Csrf token={csrfToken} />
          <div class="field">
            <label for="profile-file">{say.profileFile}</label>
            <input id="profile-file" name="file" type="file" accept="application/json,.json" />
          </div>
          <div class="field">
            <label for="profile-text">{say.profileText}</label>
            <textarea id="profile-text" name="text" rows={6} spellcheck={false} />
          </div>
          <button type="submit">Test and keep it</button>
        </form>
      </details>
    </Sheet>
  );
}

/** Sample lines of a profile, which are also its own test. */
export function SampleLines({ lines }: { lines: readonly { at: string; raw: string }[] }) {
  return <RawLines title="Sample lines" lines={lines} />;
}
