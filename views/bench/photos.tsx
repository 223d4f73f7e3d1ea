import { useTell } from "../messages/spoken.ts";
import {
  type PhotoAsideForm,
  PhotoForm,
  type PhotoFormView,
  Photos,
  PhotosAside,
  type PhotoView,
} from "../photos.tsx";
import { Sheet } from "../sheet.tsx";

export interface BenchPhotosView {
  kept: readonly PhotoView[];
  aside: PhotoAsideForm;
  /** why each photo that was set aside was */
  asideReasons: readonly string[];
  form: PhotoFormView;
}

/** Photos of the piece on the bench; nothing while no piece is on it. */
export function BenchPhotos({ photos }: { photos: BenchPhotosView | undefined }) {
  const t = useTell();
  if (!photos) return null;
  const { kept, form, aside, asideReasons } = photos;
  return (
    <Sheet id="photo-sheet" title={t("photos.heading")}>
      {kept.length === 0 ? <p class="hint">{t("photos.none")}</p> : <Photos photos={kept} aside={aside} />}
      <PhotosAside reasons={asideReasons} />
      <details open={form.problem !== undefined || undefined}>
        <summary>{t("photos.add")}</summary>
        <PhotoForm {...form} />
      </details>
    </Sheet>
  );
}
