import { useTell } from "../messages/spoken.ts";
import { ExcludedPhotos, PhotoForm, Photos } from "../photos.tsx";
import { Sentence } from "../sentence.tsx";
import { Facts, Fold, Sheet } from "../sheet.tsx";
import type { RecordView } from "./view.ts";

/** The piece: whose it is, what was said of it, how and when it was weighed. */
export function RecordItem(
  record: Pick<
    RecordView,
    | "broughtBy"
    | "description"
    | "measured"
    | "method"
    | "operator"
    | "piece"
    | "place"
    | "saidByCustomer"
    | "ticket"
    | "when"
  >,
) {
  const t = useTell();
  return (
    <Sheet id="piece" title={t("record-page.piece")}>
      <Facts
        facts={[
          [t("record-page.ticket"), record.ticket],
          [t("record-page.piece"), record.piece],
          [t("record-page.description"), record.description],
          [t("record-page.brought-by"), record.broughtBy],
          [t("record-page.said-by-customer"), record.saidByCustomer],
          [t("record-page.method"), record.method],
          [t("record-page.weighed"), record.when],
          [t("record-page.by"), record.operator],
          [t("record-page.at"), record.place],
          ...(record.measured?.results ?? []),
        ]}
      />
    </Sheet>
  );
}

/** Its pictures, and the form for one more. */
export function RecordPhotos(
  record: Pick<RecordView, "excludePhoto" | "excludedPhotos" | "photoForm" | "photos">,
) {
  const t = useTell();
  const { photos, photoForm } = record;
  const rest = (
    <>
      <ExcludedPhotos reasons={record.excludedPhotos} />
      <details open={photoForm.shows !== "" || undefined}>
        <summary>{t("photos.add")}</summary>
        <PhotoForm {...photoForm} />
      </details>
    </>
  );
  if (photos.length === 0)
    return (
      <Fold id="photos" title={t("photos.heading")} note={t("bench.fold.none")} open={photoForm.shows !== ""}>
        {rest}
      </Fold>
    );
  return (
    <Sheet id="photos" title={t("photos.heading")}>
      <Photos photos={photos} exclude={record.excludePhoto} />
      {rest}
    </Sheet>
  );
}

/** Answers to checks and notes, in order. */
export function RecordNotes(record: Pick<RecordView, "notes">) {
  const t = useTell();
  if (record.notes.length === 0) return null;
  return (
    <Sheet id="notes" title={t("record-page.notes")}>
      <ul>
        {record.notes.map(({ when, by, message }) => (
          <li key={`${when} ${typeof message === "string" ? message : message.code}`}>
            {typeof message === "string" ? message : <Sentence message={message} />}{" "}
            <small>({[by, when].filter(Boolean).join(", ")})</small>
          </li>
        ))}
      </ul>
    </Sheet>
  );
}
