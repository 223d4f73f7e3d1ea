import { Told } from "./told.tsx";
import { useWords } from "./words/spoken.ts";

/** A page that only says what went wrong and where to go on. */
export function Problem({ says }: { says: Told }) {
  const say = useWords().frame;
  return (
    <div class="problems" role="alert">
      <p>
        <Told says={says} />
      </p>
      <p>
        <a href="/">{say.backToBench}</a>
      </p>
    </div>
  );
}
