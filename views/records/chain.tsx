import { useLocale, useTell } from "../messages/spoken.ts";
import { tellId } from "../messages/tell.ts";
import { Facts, Fold } from "../sheet.tsx";
import type { RecordView } from "./view.ts";

/** Its place in the ledger, and how anyone checks it. */
export function RecordChain(record: Pick<RecordView, "chain" | "id" | "versions">) {
  const locale = useLocale();
  const t = useTell();
  return (
    <Fold id="chain" title={t("record-page.chain")} note={record.chain.sequence}>
      <Facts
        facts={[
          [t("record-page.entry"), `${record.chain.sequence}`],
          [t("record-page.hash"), <code key="h">{record.chain.hash}</code>],
          [t("record-page.hash-before"), <code key="p">{record.chain.previous}</code>],
          ...record.versions.map(
            ([name, value]) => [tellId("record-page.version", name, locale), value] as const,
          ),
        ]}
      />
      <p>
        <a href={`/records/${record.id}/file`}>{t("record-page.file")}</a>, {t("record-page.file-rest")}
      </p>
      <p class="hint">{t("record-page.verify")}</p>
    </Fold>
  );
}
