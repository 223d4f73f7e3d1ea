import { useTell } from "./messages/spoken.ts";
import { codeMark, Sentence } from "./sentence.tsx";

/** A page that only says what went wrong and where to go on. */
export function Problem({ message }: { message: Sentence }) {
  const t = useTell();
  return (
    <div class="problems" role="alert">
      <p {...codeMark(message)}>
        <Sentence message={message} />
      </p>
      <p>
        <a href="/">{t("frame.back-to-bench")}</a>
      </p>
    </div>
  );
}
