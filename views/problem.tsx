import { useTell } from "./messages/spoken.ts";
import { codeMark, Told } from "./told.tsx";

/** A page that only says what went wrong and where to go on. */
export function Problem({ says }: { says: Told }) {
  const t = useTell();
  return (
    <div class="problems" role="alert">
      <p {...codeMark(says)}>
        <Told says={says} />
      </p>
      <p>
        <a href="/">{t("frame.back-to-bench")}</a>
      </p>
    </div>
  );
}
