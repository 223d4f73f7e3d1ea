import { useTell } from "../messages/spoken.ts";
import { Facts } from "../sheet.tsx";

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
  const t = useTell();
  const { from, when, description, claim, mass, density, uncertainty, entry, hash } = view;
  return (
    <>
      <p>
        <strong>{t("imported.lead")}</strong>
      </p>
      <Facts
        facts={[
          [t("imported.from"), from],
          [t("imported.when"), when],
          [t("imported.piece"), description],
          [t("imported.claim"), claim],
          [t("imported.mass"), mass],
          [t("imported.density"), density],
          [t("imported.uncertainty"), uncertainty],
          [t("imported.entry"), entry],
          [t("imported.hash"), <code key="h">{hash}</code>],
        ]}
      />
    </>
  );
}
