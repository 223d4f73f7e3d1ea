/** Pictures of a piece, on the bench and on its record. */
export const photos = {
  heading: "Photos of this piece",
  choose: "Take a photo, or choose a file",
  chooseHint: (megabytes: number) =>
    `JPEG, PNG or WebP, at most ${megabytes} MB. Place, time and camera are taken out before it is stored; only the picture is kept.`,
  shows: "What it shows",
  showsHint: "front, back, edge, mark; best with a ruler and the ticket in the picture",
  keep: "Keep the photo",
  none: "No photo is kept yet.",
  add: "Add a photo",
  /** for who cannot see it */
  alt: (ticket: string, shows: string) =>
    shows === "" ? `Photo of ${ticket}` : `Photo of ${ticket}: ${shows}`,
  caption: (shows: string, when: string) => (shows === "" ? when : `${shows}, ${when}`),
  aside: "set aside",
  why: "Why it is set aside",
  whyExample: "it shows another piece",
  by: "Your initials",
  asideNow: "Set aside, keep the file",
  setAside: (count: number, reasons: string) =>
    `${count === 1 ? "1 photo" : `${count} photos`} set aside: ${reasons}. The file stays on the disk.`,
  checkSum: "Check sum",
};
