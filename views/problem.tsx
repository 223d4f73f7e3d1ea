import { useTell } from "./messages/spoken.ts";
import { Told } from "./told.tsx";

/** A page that only says what went wrong and where to go on. */
export function Problem({ says }: { says: Told }) {
  const t = useTell();
  return (
    <div class="problems" role="alert">
      <p>
        <Told says={says} />
      </p>
      <p>
        <a href="/">{t("frame.back-to-bench")}</a>
      </p>
    </div>
  );
}
