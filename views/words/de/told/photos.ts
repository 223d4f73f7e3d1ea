import type { ToldPair } from "../../told-pair.ts";

/** Why a photo was not taken. */
export const photos: readonly ToldPair[] = [
  [
    "No picture was chosen. Take one with the camera, or choose a file.",
    "Es wurde kein Bild gewählt. Eines mit der Kamera aufnehmen oder eine Datei wählen.",
  ],
  [
    "The picture has {n} MB; at most {n1} MB are taken. Choose a smaller size on the camera.",
    "Das Bild hat {n} MB; höchstens {n1} MB werden angenommen. An der Kamera eine kleinere Größe wählen.",
  ],
  [
    "The picture breaks off in the middle or is damaged, so nothing was stored. Take it again.",
    "Das Bild bricht mittendrin ab oder ist beschädigt, deshalb wurde nichts gespeichert. Noch einmal aufnehmen.",
  ],
  [
    "That file is no JPEG, PNG or WebP picture, and no other is taken. Let the camera save as JPEG.",
    "Diese Datei ist kein JPEG-, PNG- oder WebP-Bild, und andere werden nicht angenommen. Die Kamera als JPEG speichern lassen.",
  ],
  [
    "The picture has no picture in it. Take it again.",
    "In der Bilddatei ist kein Bild. Noch einmal aufnehmen.",
  ],
  [
    "A moving picture cannot be kept with a piece. Take a still one.",
    "Ein bewegtes Bild kann nicht zum Stück gelegt werden. Ein stehendes aufnehmen.",
  ],
];
