import { useTell } from "../messages/spoken.ts";
import { Facts, Fold } from "../sheet.tsx";
import type { AssayView } from "./view.ts";

/** On the page of a record: the laboratory's result beside the density, or the way to enter one. */
export function AssaySheet({ href, facts }: AssayView) {
  const t = useTell();
  return (
    <Fold
      id="laboratory-result"
      title={t("assay.heading")}
      note={facts === undefined ? t("bench.fold.none") : undefined}
      open={facts !== undefined}
    >
      {facts === undefined ? <p>{t("assay.none")}</p> : <Facts facts={facts} />}
      <p>
        <a href={href}>{facts === undefined ? t("assay.enter") : t("assay.all")}</a>
      </p>
    </Fold>
  );
}
