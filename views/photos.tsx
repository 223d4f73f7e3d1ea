import { Csrf, Field } from "./forms.tsx";
import { Told } from "./told.tsx";
import { useWords } from "./words/spoken.ts";

/** A kept photo; width and height in pixels. */
export interface PhotoView {
  src: string;
  /** name of the piece, for who cannot see the picture */
  ticket: string;
  shows: string;
  when: string;
  width: number;
  height: number;
}

export interface PhotoFormView {
  /** where the form goes, and what its answer fills when scripts run */
  action: string;
  fills?: string;
  /** id of the piece, where the address does not say it */
  piece?: string;
  csrfToken: string;
  megabytes: number;
  /** why the last one was not taken */
  problem?: string | undefined;
}

/** Pictures in the order they were taken, each with what it shows. */
export function Photos({ photos }: { photos: readonly PhotoView[] }) {
  const say = useWords().photos;
  return (
    <div class="photos">
      {photos.map(({ src, ticket, shows, when, width, height }) => (
        <figure key={src}>
          <a href={src}>
            <img
              class="photo"
              src={src}
              alt={say.alt(ticket, shows)}
              width={width}
              height={height}
              loading="lazy"
            />
          </a>
          <figcaption class="hint">{say.caption(shows, when)}</figcaption>
        </figure>
      ))}
    </div>
  );
}

/** Takes a photo with the camera or from a file; without scripts the page comes anew. */
export function PhotoForm({ action, fills, piece, csrfToken, megabytes, problem }: PhotoFormView) {
  const say = useWords().photos;
  return (
    <form
      method="post"
      action={action}
      enctype="multipart/form-data"
      {...(fills === undefined
        ? {}
        : {
            "hx-post": action,
            "hx-target": `#${fills}`,
            "hx-swap": "innerMorph",
            "hx-encoding": "multipart/form-data",
          })}
    >
      <Csrf token={csrfToken} />
      {piece !== undefined && <input type="hidden" name="piece" value={piece} />}
      {problem !== undefined && (
        <div class="problems" role="alert">
          <p>
            <Told says={problem} />
          </p>
        </div>
      )}
      <div class="field">
        <label for="photo">{say.choose}</label>
        <span class="hint" id="photo-hint">
          {say.chooseHint(megabytes)}
        </span>
        <input
          id="photo"
          name="photo"
          type="file"
          accept="image/jpeg,image/png,image/webp"
          capture="environment"
          aria-describedby="photo-hint"
          required
        />
      </div>
      <Field name="shows" label={say.shows} hint={say.showsHint} maxLength={200} />
      <button type="submit">{say.keep}</button>
    </form>
  );
}
