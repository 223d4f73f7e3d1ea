import { Csrf } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Rows, Sheet } from "../sheet.tsx";

export interface FindingView {
  /** undefined until somebody has asked */
  port?: string;
  running: boolean;
  /** the setting that is listened at now */
  now?: string;
  /** the outcome and what to do next */
  message?: Sentence;
  /** settings that gave readable lines */
  line?: string;
  tried: readonly { line: string; bytes: number; first: string; message: Sentence }[];
}

/** Fragment: finding speed and parity by listening; what was tried and what came back. */
export function Finding({ finding, csrfToken }: { finding: FindingView; csrfToken: string }) {
  const t = useTell();
  const { port, running, now, message, line, tried } = finding;
  if (port === undefined) return null;
  return (
    <Sheet id="finding" title={t("balances.finding-title")}>
      {running && (
        <>
          <p role="status">{t("balances.listening", { port })}</p>
          {now !== undefined && <p>{t("beside.listening-at", { line: now, tried: tried.length })}</p>}
          <form method="post" action="/balances/finding/stop">
            <Csrf token={csrfToken} />
            <button type="submit" class="plain">
              {t("balances.stop-looking")}
            </button>
          </form>
        </>
      )}
      {message !== undefined && (
        <p>
          <Sentence message={message} />
        </p>
      )}
      {line !== undefined && (
        <form method="post" action="/balances/choice">
          <Csrf token={csrfToken} />
          <input type="hidden" name="port" value={port} />
          <input type="hidden" name="line" value={line} />
          <button type="submit">{t("balances.use-line", { line })}</button>
        </form>
      )}
      {tried.length > 0 && (
        <Rows
          caption={t("balances.tried-caption")}
          empty=""
          columns={[
            { head: t("balances.line") },
            { head: t("balances.bytes"), number: true },
            { head: t("balances.first-bytes") },
            { head: t("balances.outcome") },
          ]}
          rows={tried.map((one) => ({
            key: one.line,
            cells: [
              one.line,
              String(one.bytes),
              <code key="f">{one.first}</code>,
              <Sentence key="o" message={one.message} />,
            ],
          }))}
        />
      )}
    </Sheet>
  );
}
