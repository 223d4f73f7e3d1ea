import { Csrf, Field, Select } from "../forms.tsx";
import { Rows } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";

/** One place where a balance may be heard. */
export interface PortRow {
  /** name that stays the same after replugging, or the address typed */
  stableName: string;
  /** today's name, when it differs */
  todayName?: string;
  /** state in one or two words: in use, free */
  state: string;
  /** what sits there and what its name is worth */
  says: string;
  chosen: boolean;
  /** heard although the bench takes from another one */
  beside: boolean;
  /** another balance is in use, beside which this one may be heard */
  mayBeBeside: boolean;
  /** settings can be found by listening on it */
  serial: boolean;
}

/** What was found on this machine, stable names first. */
export function Ports({ ports, csrfToken }: { ports: readonly PortRow[]; csrfToken: string }) {
  const { beside: say } = useWords();
  return (
    <Rows
      caption="Where a balance may be heard"
      empty="No port was found. Plug the balance in: it is listed as soon as it is there. A path or a network address can be typed below."
      columns={[{ head: "Port" }, { head: "State" }, { head: "In words" }, { head: "Choice" }]}
      rows={ports.map((port) => ({
        key: port.stableName,
        cells: [
          <span key="n">
            {port.stableName}
            {port.todayName !== undefined && <small> (today {port.todayName})</small>}
          </span>,
          <strong key="s">{port.beside ? say.state : port.state}</strong>,
          port.says,
          <span key="c" class="row">
            {!port.chosen && (
              <PortButton port={port} to="/balances/choice" does="Use" csrfToken={csrfToken} />
            )}
            {!port.chosen && !port.beside && port.mayBeBeside && (
              <PortButton port={port} to="/balances/beside" does={say.hear} csrfToken={csrfToken} />
            )}
            {port.serial && (
              <PortButton port={port} to="/balances/finding" does="Find its settings" csrfToken={csrfToken} />
            )}
          </span>,
        ],
      }))}
    />
  );
}

function PortButton({
  port,
  to,
  does,
  csrfToken,
}: {
  port: PortRow;
  to: string;
  does: string;
  csrfToken: string;
}) {
  return (
    <form method="post" action={to}>
      <Csrf token={csrfToken} />
      <input type="hidden" name="port" value={port.stableName} />
      <button type="submit" class="plain">
        {does} <span class="unseen">{port.stableName}</span>
      </button>
    </form>
  );
}

/** A port that is not in the list, or one with other line settings. */
export function OtherPort({
  typed,
  mayBeBeside,
  csrfToken,
}: {
  typed: { port: string; line: string; flow: string };
  mayBeBeside: boolean;
  csrfToken: string;
}) {
  const { beside: say } = useWords();
  return (
    <form method="post" action="/balances/choice" class="sheet">
      <h2>Another port, or other settings</h2>
      <Csrf token={csrfToken} />
      <Field
        name="port"
        id="port-typed"
        label="Path, or host:port for a balance on the network"
        value={typed.port}
        required
      />
      <Field
        name="line"
        label="Line"
        hint="speed, then data bits, parity and stop bits, as your manual gives them: 9600-8n1, 1200-7e1"
        value={typed.line}
      />
      <Select
        name="flow"
        label="Flow control"
        value={typed.flow}
        options={[
          { value: "none", label: "none" },
          { value: "xon-xoff", label: "XON/XOFF" },
          { value: "rts-cts", label: "RTS/CTS" },
        ]}
      />
      <p class="row">
        <button type="submit">Listen there</button>
        {mayBeBeside && (
          <button type="submit" class="plain" formAction="/balances/beside">
            {say.hear}
          </button>
        )}
      </p>
    </form>
  );
}
