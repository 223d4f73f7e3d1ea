import { Check, Csrf, Field, type FieldError } from "../forms.tsx";
import { Caution, Sheet } from "../sheet.tsx";

export interface AskingView {
  profile: string;
  /** the line as typed, with escapes such as \r\n */
  request: string;
  everySeconds: string;
  consented: boolean;
  error?: FieldError;
  /** the bytes that would be sent, written out, and what came back last time */
  wouldSend?: string;
  lastAnswer?: string;
  csrfToken: string;
}

/** For a balance that must be asked: its owner types the request from its own manual. Never sent before consent. */
export function Asking(view: AskingView) {
  return (
    <>
      <p>
        Some balances send a line only when asked. Type the request that your balance's own manual gives; it
        is kept in the profile {view.profile}.
      </p>
      <Caution title="Only ask, never command">
        <p>
          Do not enter a request that zeroes, tares, calibrates or prints a report. Anything sent here is sent
          again and again while the bench runs.
        </p>
      </Caution>
      <form method="post" action="/balances/asking" class="sheet">
        <Csrf token={view.csrfToken} />
        <Field
          name="request"
          label="Request"
          hint="as in the manual; \r and \n for the line end, \x02 for a byte by its number"
          value={view.request}
          {...(view.error === undefined ? {} : { error: view.error })}
          required
        />
        <Field kind="decimal" name="every" label="Ask every" after="s" value={view.everySeconds} />
        <Check
          name="consent"
          label="I took this from the manual of this balance. It asks for a weight and changes nothing."
          checked={view.consented}
        />
        <button type="submit">Keep and ask</button>
      </form>
      {view.wouldSend !== undefined && (
        <Sheet id="sent" title="What is sent">
          <p>
            <code>{view.wouldSend}</code>
          </p>
          <p>
            {view.lastAnswer === undefined ? "Nothing came back yet." : `Last answer: ${view.lastAnswer}`}
          </p>
        </Sheet>
      )}
    </>
  );
}
