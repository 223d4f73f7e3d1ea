import { useTell } from "./messages/spoken.ts";
import { codeMark, Sentence } from "./sentence.tsx";

/** A page that only says what went wrong and where to go on. */
export function Problem({ says }: { says: Sentence }) {
  const t = useTell();
  return (
    <div class="problems" role="alert">
      <p {...codeMark(says)}>
        <Sentence says={says} />
      </p>
      <p>
        <a href="/">{t("frame.back-to-bench")}</a>
      </p>
    </div>
  );
}
