import { Csrf, Field, Select } from "../forms.tsx";
import { RawLines } from "../records/captures.tsx";
import { Rows, Sheet } from "../sheet.tsx";

/** One place where a balance may be heard. */
export interface PortRow {
  /** name that stays the same after replugging, or the address typed */
  stableName: string;
  /** today's name, when it differs */
  todayName?: string;
  /** state in one or two words: heard, silent, refused, free */
  state: string;
  /** the same as a whole sentence: what, since when, what to do */
  says: string;
  chosen: boolean;
  profile?: { name: string; href: string };
}

export interface BalancesPage {
  ports: readonly PortRow[];
  /** how each line of the chosen balance was understood, newest last */
  lines: readonly { at: string; raw: string; meaning: string }[];
  lineSettings: string;
  simulated: boolean;
  csrfToken: string;
}

/** The ports, what is heard on them in words, and the last lines exactly as received. */
export function BalancesIndex(page: BalancesPage) {
  const { ports, lines, csrfToken } = page;
  return (
    <>
      {page.simulated && (
        <p>A simulated balance is in use: it weighs invented pieces and says so on every record.</p>
      )}
      <Rows
        caption="Where a balance may be heard"
        empty="No port was found. Plug the balance in; the list renews itself. A path or a network address can be typed below."
        columns={[
          { head: "Port" },
          { head: "State" },
          { head: "In words" },
          { head: "Profile" },
          { head: "Choice" },
        ]}
        rows={ports.map((port) => ({
          key: port.stableName,
          cells: [
            <span key="n">
              {port.stableName}
              {port.todayName !== undefined && <small> (today {port.todayName})</small>}
            </span>,
            <strong key="s">{port.state}</strong>,
            port.says,
            port.profile ? (
              <a key="p" href={port.profile.href}>
                {port.profile.name}
              </a>
            ) : (
              "generic shapes"
            ),
            port.chosen ? (
              "in use"
            ) : (
              <form key="f" method="post" action="/balances/choice">
                <Csrf token={csrfToken} />
                <input type="hidden" name="port" value={port.stableName} />
                <button type="submit" class="plain">
                  Use <span class="unseen">{port.stableName}</span>
                </button>
              </form>
            ),
          ],
        }))}
      />
      <Sheet id="lines" title="Last lines as received">
        <LastLines lines={lines} />
        <p class="hint">
          Garbage here usually means a wrong speed or parity; nothing here means a wrong cable or port.
        </p>
        <p class="row">
          <a class="button" href="/balances/learning">
            Learn this balance
          </a>
          <a class="button plain" href="/balances/asking">
            Lines to ask it with
          </a>
        </p>
      </Sheet>
      <form method="post" action="/balances/choice" class="sheet">
        <h2>Another port</h2>
        <Csrf token={csrfToken} />
        <Field name="port" id="port-typed" label="Path, or host:port for a balance on the network" required />
        <Field
          name="line"
          label="Line"
          hint="speed, then data bits, parity and stop bits, as your manual gives them: 9600-8n1, 1200-7e1"
          value={page.lineSettings}
        />
        <Select
          name="flow"
          label="Flow control"
          options={[
            { value: "none", label: "none" },
            { value: "xonxoff", label: "XON/XOFF" },
            { value: "rtscts", label: "RTS/CTS" },
          ]}
        />
        <button type="submit">Listen there</button>
      </form>
    </>
  );
}

/** Fragment: the lines with what each was understood to mean. */
export function LastLines({ lines }: Pick<BalancesPage, "lines">) {
  return (
    <div id="last-lines">
      <Rows
        caption="Newest last"
        empty="Nothing has arrived yet."
        columns={[{ head: "At" }, { head: "As received" }, { head: "Understood as" }]}
        rows={lines.map(({ at, raw, meaning }, index) => ({
          key: `${at} ${index}`,
          cells: [at, <code key="r">{raw}</code>, meaning],
        }))}
      />
    </div>
  );
}

/** Sample lines of a profile, which are also its own test. */
export function SampleLines({ lines }: { lines: readonly { at: string; raw: string }[] }) {
  return <RawLines title="Sample lines" lines={lines} />;
}
