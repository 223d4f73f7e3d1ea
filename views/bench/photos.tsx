import { PhotoForm, type PhotoFormView, Photos, type PhotoView } from "../photos.tsx";
import { Sheet } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";

export interface BenchPhotosView {
  kept: readonly PhotoView[];
  form: PhotoFormView;
}

/** Photos of the piece on the bench; nothing while no piece is on it. */
export function BenchPhotos({ photos }: { photos: BenchPhotosView | undefined }) {
  const say = useWords().photos;
  if (!photos) return null;
  const { kept, form } = photos;
  return (
    <Sheet id="photo-sheet" title={say.heading}>
      {kept.length === 0 ? <p class="hint">{say.none}</p> : <Photos photos={kept} />}
      <details open={form.problem !== undefined || undefined}>
        <summary>{say.add}</summary>
        <PhotoForm {...form} />
      </details>
    </Sheet>
  );
}
