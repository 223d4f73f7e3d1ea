import { Csrf, Field, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Rows } from "../sheet.tsx";

/** One place where a balance may be heard. */
export interface PortRow {
  /** name that stays the same after replugging, or the address typed */
  stableName: string;
  /** today's name, when it differs */
  todayName?: string;
  /** state in one or two words: in use, free */
  state: Sentence;
  /** what sits there and what its name is worth */
  message: Sentence;
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
  const t = useTell();
  return (
    <Rows
      caption={t("balances.ports-caption")}
      empty={t("balances.no-ports")}
      columns={[
        { head: t("balances.port") },
        { head: t("balances.state") },
        { head: t("balances.in-words") },
        { head: t("balances.choice") },
      ]}
      rows={ports.map((port) => ({
        key: port.stableName,
        cells: [
          <span key="n">
            {port.stableName}
            {port.todayName !== undefined && (
              <small> ({t("balances.today", { name: port.todayName })})</small>
            )}
          </span>,
          <strong key="s">{port.beside ? t("beside.state") : <Sentence message={port.state} />}</strong>,
          <Sentence key="w" message={port.message} />,
          <span key="c" class="row">
            {!port.chosen && (
              <PortButton
                port={port}
                to="/balances/choice"
                does={t("balances.use-port")}
                csrfToken={csrfToken}
              />
            )}
            {!port.chosen && !port.beside && port.mayBeBeside && (
              <PortButton port={port} to="/balances/beside" does={t("beside.hear")} csrfToken={csrfToken} />
            )}
            {port.serial && (
              <PortButton
                port={port}
                to="/balances/finding"
                does={t("balances.find-settings")}
                csrfToken={csrfToken}
              />
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
  const t = useTell();
  return (
    <form method="post" action="/balances/choice" class="sheet">
      <h2>{t("balances.other-port")}</h2>
      <Csrf token={csrfToken} />
      <Field name="port" id="port-typed" label={t("balances.address")} value={typed.port} required />
      <Field name="line" label={t("balances.line")} hint={t("balances.line-hint")} value={typed.line} />
      <Select
        name="flow"
        label={t("balances.flow-control")}
        value={typed.flow}
        options={[
          { value: "none", label: t("balances.flow-none") },
          { value: "xon-xoff", label: "XON/XOFF" },
          { value: "rts-cts", label: "RTS/CTS" },
        ]}
      />
      <p class="row">
        <button type="submit">{t("balances.listen-there")}</button>
        {mayBeBeside && (
          <button type="submit" class="plain" formAction="/balances/beside">
            {t("beside.hear")}
          </button>
        )}
      </p>
    </form>
  );
}
