import { type About, AboutFields, Csrf, Field } from "./forms.tsx";
import { useLocale, useTell } from "./messages/spoken.ts";
import { codeMark, Sentence, sentenceText } from "./sentence.tsx";

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
export interface ExcludePhotoForm {
  /** entry of the photo, as it stands in the address */
  action: (entry: string) => string;
  csrfToken: string;
  about: About;
  /** what its answer fills when scripts run */
  fills?: string;
  /** asked who sets it aside */
  asksBy: boolean;
}

export interface PhotoFormView {
  /** where the form goes, and what its answer fills when scripts run */
  action: string;
  fills?: string;
  csrfToken: string;
  about: About;
  megabytes: number;
  /** typed before, while the form is sent back */
  shows: string;
  /** why the last one was not taken */
  problem?: Sentence | undefined;
}

/** Pictures in the order they were taken, each with what it shows. */
export function Photos({ photos, exclude }: { photos: readonly PhotoView[]; exclude?: ExcludePhotoForm }) {
  const t = useTell();
  return (
    <div class="photos">
      {photos.map(({ src, entry, ticket, shows, when, width, height }) => (
        <figure key={src}>
          <a href={src}>
            <img
              class="photo"
              src={src}
              alt={shows === "" ? t("photos.alt-plain", { ticket }) : t("photos.alt", { ticket, shows })}
              width={width}
              height={height}
              loading="lazy"
            />
          </a>
          <figcaption class="hint">{shows === "" ? when : t("photos.caption", { shows, when })}</figcaption>
          {exclude && entry !== undefined && <ExcludePhoto entry={entry} exclude={exclude} />}
        </figure>
      ))}
    </div>
  );
}

function ExcludePhoto({ entry, exclude }: { entry: string; exclude: ExcludePhotoForm }) {
  const t = useTell();
  const action = exclude.action(entry);
  const id = entry.slice(-12);
  return (
    <details>
      <summary>{t("photos.aside")}</summary>
      <form
        method="post"
        action={action}
        {...(exclude.fills === undefined
          ? {}
          : { "hx-post": action, "hx-target": `#${exclude.fills}`, "hx-swap": "innerMorph" })}
      >
        <Csrf token={exclude.csrfToken} />
        <AboutFields about={exclude.about} />
        <Field
          name="reason"
          id={`photo-why-${id}`}
          label={t("photos.why")}
          placeholder={t("photos.why-example")}
          maxLength={200}
          required
        />
        {exclude.asksBy && (
          <Field name="by" id={`photo-by-${id}`} label={t("photos.by")} maxLength={100} required />
        )}
        <button type="submit" class="plain">
          {t("photos.aside-now")}
        </button>
      </form>
    </details>
  );
}

/** How many photos were set aside, and why; they stay on the disk and in the ledger. */
export function ExcludedPhotos({ reasons }: { reasons: readonly Sentence[] }) {
  const locale = useLocale();
  const t = useTell();
  if (reasons.length === 0) return null;
  return (
    <p class="hint">
      {t("photos.excluded", {
        count: reasons.length,
        reasons: reasons.map((one) => sentenceText(one, locale)).join("; "),
      })}
    </p>
  );
}

/** Takes a photo with the camera or from a file; without scripts the page comes anew. */
export function PhotoForm({ action, fills, csrfToken, about, megabytes, shows, problem }: PhotoFormView) {
  const t = useTell();
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
      <AboutFields about={about} />
      {problem !== undefined && (
        <div class="problems" role="alert">
          <p {...codeMark(problem)}>
            <Sentence message={problem} />
          </p>
        </div>
      )}
      <div class="field">
        <label for="photo">{t("photos.choose")}</label>
        <span class="hint" id="photo-hint">
          {t("photos.choose-hint", { megabytes })}
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
      <Field
        name="shows"
        value={shows}
        label={t("photos.shows")}
        hint={t("photos.shows-hint")}
        maxLength={200}
      />
      <button type="submit">{t("photos.keep")}</button>
    </form>
  );
}
