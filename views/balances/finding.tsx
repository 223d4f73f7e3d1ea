import { Csrf } from "../forms.tsx";
import { Rows, Sheet } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";

export interface FindingView {
  /** undefined until somebody has asked */
  port?: string;
  running: boolean;
  /** the setting that is listened at now */
  now?: string;
  /** outcome in words and what to do next */
  says?: string;
  /** settings that gave readable lines */
  line?: string;
  tried: readonly { line: string; bytes: number; first: string; says: string }[];
}

/** Fragment: finding speed and parity by listening; what was tried and what came back. */
export function Finding({ finding, csrfToken }: { finding: FindingView; csrfToken: string }) {
  const say = useWords().beside;
  const { port, running, now, says, line, tried } = finding;
  if (port === undefined) return null;
  return (
    <Sheet id="finding" title="Finding it by listening">
      {running && (
        <>
          <p role="status">
            Listening on {port} at one speed and parity after the other. It takes up to a minute. If the
            balance sends on its key only, press that key now and then. Nothing is sent.
          </p>
          {now !== undefined && <p>{say.listeningAt(now, tried.length)}</p>}
          <form method="post" action="/balances/finding/stop">
            <Csrf token={csrfToken} />
            <button type="submit" class="plain">
              Stop looking
            </button>
          </form>
        </>
      )}
      {says !== undefined && <p>{says}</p>}
      {line !== undefined && (
        <form method="post" action="/balances/choice">
          <Csrf token={csrfToken} />
          <input type="hidden" name="port" value={port} />
          <input type="hidden" name="line" value={line} />
          <button type="submit">Use {line}</button>
        </form>
      )}
      {tried.length > 0 && (
        <Rows
          caption="What was tried"
          empty=""
          columns={[
            { head: "Line" },
            { head: "Bytes", number: true },
            { head: "First bytes" },
            { head: "Outcome" },
          ]}
          rows={tried.map((one) => ({
            key: one.line,
            cells: [one.line, String(one.bytes), <code key="f">{one.first}</code>, one.says],
          }))}
        />
      )}
    </Sheet>
  );
}
