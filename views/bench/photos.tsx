import {
  type PhotoAsideForm,
  PhotoForm,
  type PhotoFormView,
  Photos,
  PhotosAside,
  type PhotoView,
} from "../photos.tsx";
import { Sheet } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";

export interface BenchPhotosView {
  kept: readonly PhotoView[];
  aside: PhotoAsideForm;
  /** why each photo that was set aside was */
  asideReasons: readonly string[];
  form: PhotoFormView;
}

/** Photos of the piece on the bench; nothing while no piece is on it. */
export function BenchPhotos({ photos }: { photos: BenchPhotosView | undefined }) {
  const say = useWords().photos;
  if (!photos) return null;
  const { kept, form, aside, asideReasons } = photos;
  return (
    <Sheet id="photo-sheet" title={say.heading}>
      {kept.length === 0 ? <p class="hint">{say.none}</p> : <Photos photos={kept} aside={aside} />}
      <PhotosAside reasons={asideReasons} />
      <details open={form.problem !== undefined || undefined}>
        <summary>{say.add}</summary>
        <PhotoForm {...form} />
      </details>
    </Sheet>
  );
}
