import type { PhotoFormView, PhotoView } from "../../../views/photos.tsx";
import type { EntryOf } from "../../ledger/entry.ts";
import { photoLimit } from "../../photos/photo.ts";
import { photoName } from "../../photos/photo-name.ts";
import type { Piece } from "../../weighing/piece.ts";
import { whenOf } from "../when.ts";

/** A kept photo as pages show it. */
export function photoView({ id, at, body }: EntryOf<"photo">, ticket: string): PhotoView {
  const { width, height, shows = "" } = body;
  return { entry: id, src: `/photos/${photoName(body)}`, ticket, shows, when: whenOf(at), width, height };
}

/** The form that adds a photo to a piece. */
export function photoForm(action: string, csrfToken: string, problem?: string): PhotoFormView {
  return {
    action,
    csrfToken,
    megabytes: photoLimit / 2 ** 20,
    ...(problem === undefined ? {} : { problem }),
  };
}

/** The photos of the piece on the bench with their form; undefined while no piece is on it. */
export function benchPhotos(piece: Piece | undefined, csrfToken: string, problem?: string) {
  if (!piece || piece.closed) return undefined;
  return {
    kept: piece.photos.map((entry) => photoView(entry, piece.ticket)),
    aside: {
      action: (entry: string) => `/bench/photos/${encodeURIComponent(entry)}/voiding`,
      csrfToken,
      fills: "photos",
      asksBy: false,
    },
    asideReasons: piece.photosAside.map(({ reason }) => reason),
    form: { ...photoForm("/bench/photos", csrfToken, problem), fills: "photos", piece: piece.id },
  };
}
