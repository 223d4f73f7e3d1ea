import type { Sentence } from "../sentence.tsx";
import { Csrf, TextArea } from "./field.tsx";
import { Problem } from "./problems.tsx";

/** The words around a file that is taken over, in the page's language. */
export interface TakeOverWords {
  choose: string;
  paste: string;
  hint: string;
  takeOver: string;
}

/** Taking over a JSON file: chosen from the device, or pasted as text where no file can be chosen. */
export function TakeOver({
  action,
  csrfToken,
  words,
  pasted = "",
  error,
}: {
  action: string;
  csrfToken: string;
  words: TakeOverWords;
  /** the text as pasted, while it is refused */
  pasted?: string;
  error?: Sentence;
}) {
  return (
    <form method="post" action={action} enctype="multipart/form-data">
      <Csrf token={csrfToken} />
      <div class="field">
        <label for="json-file">{words.choose}</label>
        <span class="hint" id="json-file-hint">
          {words.hint}
        </span>
        <input
          type="file"
          id="json-file"
          name="json-file"
          accept=".json,application/json"
          aria-describedby={error === undefined ? "json-file-hint" : "json-file-hint json-file-problem"}
          {...(error === undefined ? {} : { "aria-invalid": true })}
        />
        {error !== undefined && <Problem id="json-file-problem" error={error} />}
      </div>
      <details open={pasted !== "" || undefined}>
        <summary>{words.paste}</summary>
        <TextArea name="file" label={words.paste} rows={6} value={pasted} />
      </details>
      <button type="submit">{words.takeOver}</button>
    </form>
  );
}
