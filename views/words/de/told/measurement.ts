import type { ToldPair } from "../../told-pair.ts";

/** Inputs of the budget, and their units in words. */
export const inputs: readonly ToldPair[] = [
  ["{name}, repeatability", "{name}, Wiederholbarkeit"],
  ["{name}, repeatability about the drift", "{name}, Wiederholbarkeit um die Drift"],
  ["{name}, resolution at zero", "{name}, Auflösung bei null"],
  ["{name}, resolution at load", "{name}, Auflösung unter Last"],
  ["{name}, linearity", "{name}, Linearität"],
  ["{name}, zero drift", "{name}, Nullpunktdrift"],
  ["rise", "Anstieg"],
  ["full flask", "voller Kolben"],
  ["flask with piece", "Kolben mit Stück"],
  ["flask temperature difference", "Temperaturunterschied der Kolben"],
  ["density of {liquid}", "Dichte von {liquid}"],
  ["air density", "Luftdichte"],
  ["water temperature", "Wassertemperatur"],
  ["temperature gradient", "Temperaturgefälle"],
  ["water formula", "Formel des Wassers"],
  ["dissolved solids", "gelöste Stoffe"],
  ["dissolved air", "gelöste Luft"],
  ["wetting agent", "Netzmittel"],
  ["volume of the known body", "Volumen des bekannten Körpers"],
  ["balance span", "Spanne der Waage"],
  ["bubbles", "Blasen"],
  ["expansion to 20 °C", "Ausdehnung auf 20 °C"],
  ["wire meniscus", "Meniskus am Draht"],
  ["wire immersion", "Eintauchtiefe des Drahts"],
  ["{number} relative", "{number} relativ"],
  ["{number} share of saturation", "{number} Anteil der Sättigung"],
  ["relative", "relativ"],
  ["share of saturation", "Anteil der Sättigung"],
];

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
