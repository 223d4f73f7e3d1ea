import type { ToldPair } from "../../told.ts";

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
    "The GUM interval is not validated by Monte Carlo (JCGM 101 clause 8), so the Monte Carlo interval is quoted: the uncertainty of the displaced mass is a large part of it, which makes the distribution lopsided.",
    "Das GUM-Intervall wird von Monte Carlo nicht bestätigt (JCGM 101 Abschnitt 8), daher gilt das Monte-Carlo-Intervall: die Unsicherheit der verdrängten Masse ist groß gegen diese selbst, das macht die Verteilung schief.",
  ],
  [
    "The GUM interval is not validated by Monte Carlo (JCGM 101 clause 8), so the Monte Carlo interval is quoted: the distribution is not Gaussian, because display steps or few readings rule it.",
    "Das GUM-Intervall wird von Monte Carlo nicht bestätigt (JCGM 101 Abschnitt 8), daher gilt das Monte-Carlo-Intervall: die Verteilung ist nicht normal, weil Anzeigeschritte oder wenige Ablesungen sie bestimmen.",
  ],
  [
    "The Monte Carlo interval had not settled to two digits of u after {n} trials.",
    "Das Monte-Carlo-Intervall stand nach {n} Versuchen noch nicht auf zwei Stellen von u fest.",
  ],
  [
    "Second-order terms change u from {from} to {to} g/cm³: the density does not follow the readings in a straight line over so wide a range.",
    "Glieder zweiter Ordnung ändern u von {from} auf {to} g/cm³: über einen so weiten Bereich folgt die Dichte den Ablesungen nicht geradlinig.",
  ],
  [
    "The reading {reading} shows steps of {step}, coarser than the stated readability {d}. If a zero was left off at the end, write it; if the display is coarser, state its step.",
    "Die Ablesung {reading} zeigt Schritte von {step}, gröber als die angegebene Ablesbarkeit {d}. Fehlt am Ende eine Null, sie schreiben; ist die Anzeige gröber, ihren Schritt angeben.",
  ],
  [
    "All {n} readings {name} are the same: the display hides any scatter below its step, so the step itself stays in the budget.",
    "Alle {n} Ablesungen {name} sind gleich: die Anzeige verbirgt Streuung unter ihrem Schritt, daher bleibt der Schritt selbst im Budget.",
  ],
  [
    "Tap water with unknown dissolved solids: 0 to 600 mg/L is allowed for. Distilled water, or its measured solids, would narrow the result.",
    "Leitungswasser mit unbekannten gelösten Stoffen: 0 bis 600 mg/L sind berücksichtigt. Destilliertes Wasser oder gemessene Stoffe würden das Ergebnis einengen.",
  ],
  [
    "No temperature of the liquid was given: its stated density is taken as that of the weighing, and 20 °C for the piece.",
    "Keine Temperatur der Flüssigkeit angegeben: ihre Dichte gilt als die bei der Wägung, und 20 °C für das Stück.",
  ],
  [
    "{n} pieces weighed together: the density is their mean, not that of each. {rest}",
    "{n} Stücke zusammen gewogen: die Dichte ist ihr Mittel, nicht die eines jeden. {rest}",
  ],
  [
    "A single odd one of {n} g/cm³ would move the mean out of its interval.",
    "Ein einziges abweichendes mit {n} g/cm³ würde das Mittel aus seinem Intervall rücken.",
  ],
  [
    "Up to {n} odd ones of {n1} g/cm³ could hide among them.",
    "Bis zu {n} abweichende mit {n1} g/cm³ könnten sich darunter verbergen.",
  ],
  [
    "Up to {n} odd one of {n1} g/cm³ could hide among them.",
    "Ein abweichendes mit {n1} g/cm³ könnte sich darunter verbergen.",
  ],
  // no density follows
  [
    "Water at {n} °C: the density of water is known here from {n1} to {n2} °C. Check the thermometer, or let the water come to room temperature.",
    "Wasser mit {n} °C: die Dichte von Wasser ist hier von {n1} bis {n2} °C bekannt. Das Thermometer prüfen oder das Wasser auf Raumtemperatur kommen lassen.",
  ],
  [
    "A timed series needs zeros and readings; this has {n} and {n1}.",
    "Eine zeitliche Reihe braucht Nullen und Ablesungen; diese hat {n} und {n1}.",
  ],
  [
    "These {n} looks cannot tell drift from load: {n1} unknowns. Add a zero some time after the first zero, before the piece goes in, or a second reading some time after the first.",
    "Diese {n} Blicke können Drift und Last nicht trennen: {n1} Unbekannte. Eine Null einige Zeit nach der ersten hinzufügen, bevor das Stück hineinkommt, oder eine zweite Ablesung einige Zeit nach der ersten.",
  ],
  [
    "Pairs need as many readings on both sides; there are {n} and {n1}.",
    "Paare brauchen auf beiden Seiten gleich viele Ablesungen; es sind {n} und {n1}.",
  ],
  ["Air at {n} °C: right is {n1} to {n2} °C.", "Luft mit {n} °C: richtig ist {n1} bis {n2} °C."],
  ["Air pressure {n} hPa: right is {n1} to {n2} hPa.", "Luftdruck {n} hPa: richtig ist {n1} bis {n2} hPa."],
  ["Air humidity {n} %: right is {n1} to {n2} %.", "Relative Feuchte {n} %: richtig ist {n1} bis {n2} %."],
  [
    "Height above the sea {n} m: right is {n1} to {n2} m.",
    "Höhe über dem Meer {n} m: richtig ist {n1} bis {n2} m.",
  ],
  [
    "Check the instrument, or state the density of the air itself.",
    "Das Gerät prüfen oder die Dichte der Luft selbst angeben.",
  ],
  [
    "The computing thread ended with code {n} before it answered. Ask again.",
    "Der Rechenfaden endete mit {n}, bevor er antwortete. Noch einmal fragen.",
  ],
];
