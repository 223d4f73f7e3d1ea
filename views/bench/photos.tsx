import { useTell } from "../messages/spoken.ts";
import {
  ExcludedPhotos,
  type ExcludePhotoForm,
  PhotoForm,
  type PhotoFormView,
  Photos,
  type PhotoView,
} from "../photos.tsx";
import { Sheet } from "../sheet.tsx";

export interface BenchPhotosView {
  kept: readonly PhotoView[];
  exclude: ExcludePhotoForm;
  /** why each photo that was set aside was */
  excludedReasons: readonly string[];
  form: PhotoFormView;
}

/** Photos of the piece on the bench; nothing while no piece is on it. */
export function BenchPhotos({ photos }: { photos: BenchPhotosView | undefined }) {
  const t = useTell();
  if (!photos) return null;
  const { kept, form, exclude, excludedReasons } = photos;
  return (
    <Sheet id="photo-sheet" title={t("photos.heading")}>
      {kept.length === 0 ? (
        <p class="hint">{t("photos.none")}</p>
      ) : (
        <Photos photos={kept} exclude={exclude} />
      )}
      <ExcludedPhotos reasons={excludedReasons} />
      <details open={form.problem !== undefined || undefined}>
        <summary>{t("photos.add")}</summary>
        <PhotoForm {...form} />
      </details>
    </Sheet>
  );
}
