import { Facts } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";

export interface ImportedView {
  from: string;
  when: string;
  description: string;
  claim: string;
  mass: string;
  density: string;
  uncertainty: string;
  entry: string;
  hash: string;
}

/** A weighing that was taken over from a list: what the list says, and that nothing more is known of it. */
export function ImportedRecord(view: ImportedView) {
  const say = useWords().imported;
  const { from, when, description, claim, mass, density, uncertainty, entry, hash } = view;
  return (
    <>
      <p>
        <strong>{say.lead}</strong>
      </p>
      <Facts
        facts={[
          [say.from, from],
          [say.when, when],
          [say.piece, description],
          [say.claim, claim],
          [say.mass, mass],
          [say.density, density],
          [say.uncertainty, uncertainty],
          [say.entry, entry],
          [say.hash, <code key="h">{hash}</code>],
        ]}
      />
    </>
  );
}
