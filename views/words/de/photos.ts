import type { Words } from "../en/index.ts";

export const photos: Words["photos"] = {
  heading: "Fotos dieses Stücks",
  choose: "Foto aufnehmen oder Datei wählen",
  chooseHint: (megabytes) =>
    `JPEG, PNG oder WebP, höchstens ${megabytes} MB. Ort, Zeit und Kamera werden vor dem Speichern entfernt; nur das Bild bleibt.`,
  shows: "Was zu sehen ist",
  showsHint: "Vorderseite, Rückseite, Rand, Stempel; am besten mit Maßstab und Beleg im Bild",
  keep: "Foto behalten",
  none: "Noch kein Foto.",
  add: "Foto hinzufügen",
  alt: (ticket, shows) => (shows === "" ? `Foto von ${ticket}` : `Foto von ${ticket}: ${shows}`),
  caption: (shows, when) => (shows === "" ? when : `${shows}, ${when}`),
  aside: "beiseitelegen",
  why: "Warum es beiseitegelegt wird",
  whyExample: "es zeigt ein anderes Stück",
  by: "Ihr Kürzel",
  asideNow: "Beiseitelegen, Datei behalten",
  setAside: (count, reasons) =>
    `${count === 1 ? "1 Foto" : `${count} Fotos`} beiseitegelegt: ${reasons}. Die Datei bleibt auf der Platte.`,
  checkSum: "Prüfsumme",
};
