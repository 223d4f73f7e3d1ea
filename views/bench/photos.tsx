import { useTell } from "../messages/spoken.ts";
import {
  ExcludedPhotos,
  type ExcludePhotoForm,
  PhotoForm,
  type PhotoFormView,
  Photos,
  type PhotoView,
} from "../photos.tsx";

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
    <details class="fold" data-remember="bench-photos" open={form.problem !== undefined || undefined}>
      <summary>
        {t("photos.heading")}{" "}
        <span class="note">{kept.length === 0 ? t("bench.fold.none") : kept.length}</span>
      </summary>
      {kept.length === 0 ? (
        <p class="hint">{t("photos.none")}</p>
      ) : (
        <Photos photos={kept} exclude={exclude} />
      )}
      <ExcludedPhotos reasons={excludedReasons} />
      <PhotoForm {...form} />
    </details>
  );
}
