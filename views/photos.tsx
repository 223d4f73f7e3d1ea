import { Csrf, Field } from "./forms.tsx";
import { Told } from "./told.tsx";
import { useWords } from "./words/spoken.ts";

/** A kept photo; width and height in pixels. */
export interface PhotoView {
  src: string;
  /** id of its entry in the ledger, where it can be set aside */
  entry?: string;
  /** name of the piece, for who cannot see the picture */
  ticket: string;
  shows: string;
  when: string;
  width: number;
  height: number;
}

/** Where a photo is set aside with a reason. */
export interface PhotoAsideForm {
  /** entry of the photo, as it stands in the address */
  action: (entry: string) => string;
  csrfToken: string;
  /** what its answer fills when scripts run */
  fills?: string;
  /** asked who sets it aside */
  asksBy: boolean;
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
export function Photos({ photos, aside }: { photos: readonly PhotoView[]; aside?: PhotoAsideForm }) {
  const say = useWords().photos;
  return (
    <div class="photos">
      {photos.map(({ src, entry, ticket, shows, when, width, height }) => (
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
          {aside && entry !== undefined && <SetPhotoAside entry={entry} aside={aside} />}
        </figure>
      ))}
    </div>
  );
}

function SetPhotoAside({ entry, aside }: { entry: string; aside: PhotoAsideForm }) {
  const say = useWords().photos;
  const action = aside.action(entry);
  const id = entry.slice(-12);
  return (
    <details>
      <summary>{say.aside}</summary>
      <form
        method="post"
        action={action}
        {...(aside.fills === undefined
          ? {}
          : { "hx-post": action, "hx-target": `#${aside.fills}`, "hx-swap": "innerMorph" })}
      >
        <Csrf token={aside.csrfToken} />
        <Field
          name="reason"
          id={`photo-why-${id}`}
          label={say.why}
          placeholder={say.whyExample}
          maxLength={200}
          required
        />
        {aside.asksBy && <Field name="by" id={`photo-by-${id}`} label={say.by} maxLength={100} required />}
        <button type="submit" class="plain">
          {say.asideNow}
        </button>
      </form>
    </details>
  );
}

/** How many photos were set aside, and why; they stay on the disk and in the ledger. */
export function PhotosAside({ reasons }: { reasons: readonly string[] }) {
  const say = useWords().photos;
  if (reasons.length === 0) return null;
  return <p class="hint">{say.setAside(reasons.length, reasons.join("; "))}</p>;
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
