import type { PhotoFormView, PhotoView } from "../../../views/photos.tsx";
import type { Sentence } from "../../../views/sentence.tsx";
import type { EntryOf } from "../../ledger/entry.ts";
import { photoLimit } from "../../photos/photo.ts";
import { photoName } from "../../photos/photo-name.ts";
import type { Bench } from "../../station/bench.ts";
import { timeZoneOf } from "../../station/bench-settings.ts";
import { whenOf } from "../when.ts";

/** The form of a photo as it was sent back. */
export interface RefusedPhoto {
  message: Sentence;
  typed: Readonly<Record<string, string>>;
}

/** A kept photo as pages show it. */
export function photoView({ id, at, body }: EntryOf<"photo">, ticket: string, zone: string): PhotoView {
  const { width, height, shows = "" } = body;
  return {
    entry: id,
    src: `/photos/${photoName(body)}`,
    ticket,
    shows,
    when: whenOf(at, zone),
    width,
    height,
  };
}

/** The form that adds a photo to a piece. */
export function photoForm(
  action: string,
  csrfToken: string,
  {
    about,
    problem,
    shows,
  }: Pick<PhotoFormView, "about"> & { problem?: Sentence; shows?: string | undefined },
): PhotoFormView {
  return {
    action,
    csrfToken,
    about,
    megabytes: photoLimit / 2 ** 20,
    shows: shows ?? "",
    ...(problem === undefined ? {} : { problem }),
  };
}

/** The photos of the piece on the bench with their form; undefined while no piece is on it. */
export function benchPhotos(
  { open: item, about, preferences }: Bench,
  csrfToken: string,
  refused?: RefusedPhoto,
) {
  if (!item) return undefined;
  return {
    kept: item.photos.map((entry) => photoView(entry, item.ticket, timeZoneOf(preferences))),
    exclude: {
      action: (entry: string) => `/bench/photos/${encodeURIComponent(entry)}/voiding`,
      csrfToken,
      about,
      fills: "photos",
      asksBy: false,
    },
    excludedReasons: item.excludedPhotos.map(({ reason }) => reason),
    form: {
      ...photoForm("/bench/photos", csrfToken, {
        about,
        ...(refused && { problem: refused.message, shows: refused.typed.shows }),
      }),
      fills: "photos",
    },
  };
}
