import type { ToldPair } from "../../told-pair.ts";

/** Remarks beside a result, why a reading was taken, and readings from which no density follows. */
export const measurement: readonly ToldPair[] = [
  ["the balance marked it as at rest", "die Waage hat sie als ruhig bezeichnet"],
  [
    "spread and slope over the window were within the bench's limits",
    "Streuung und Steigung im Zeitfenster lagen in den Grenzen des Messplatzes",
  ],
  ["taken by hand as it stood", "von Hand genommen, wie sie stand"],
  ["typed by a person", "von einem Menschen getippt"],
  [
    "The computing thread ended with code {n} before it answered. Ask again.",
    "Der Rechenfaden endete mit {n}, bevor er antwortete. Noch einmal fragen.",
  ],
];
