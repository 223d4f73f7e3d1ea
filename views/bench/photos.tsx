import { useTell } from "../messages/spoken.ts";
import {
  ExcludedPhotos,
  type ExcludePhotoForm,
  PhotoForm,
  type PhotoFormView,
  Photos,
  type PhotoView,
} from "../photos.tsx";
import type { Sentence } from "../sentence.tsx";
import { Fold } from "../sheet.tsx";

export interface BenchPhotosView {
  kept: readonly PhotoView[];
  exclude: ExcludePhotoForm;
  /** why each photo that was set aside was */
  excludedReasons: readonly Sentence[];
  form: PhotoFormView;
}

/** Photos of the piece on the bench; nothing while no piece is on it. */
export function BenchPhotos({ photos }: { photos: BenchPhotosView | undefined }) {
  const t = useTell();
  if (!photos) return null;
  const { kept, form, exclude, excludedReasons } = photos;
  return (
    <Fold
      title={t("photos.heading")}
      note={kept.length === 0 ? t("bench.fold.none") : kept.length}
      remember="bench-photos"
      open={form.problem !== undefined}
    >
      {kept.length === 0 ? (
        <p class="hint">{t("photos.none")}</p>
      ) : (
        <Photos photos={kept} exclude={exclude} />
      )}
      <ExcludedPhotos reasons={excludedReasons} />
      <PhotoForm {...form} />
    </Fold>
  );
}
