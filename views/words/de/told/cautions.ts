import type { ToldPair } from "../../told-pair.ts";

/** Cautions where they matter; local codes and licensed practice come first. */
export const cautions: readonly ToldPair[] = [
  [
    "Lead: Wash hands, do not eat or smoke at the bench, do not file it dry. EU and UK law limits it in jewellery to 0.05 %.",
    "Blei: Hände waschen, am Messplatz nicht essen oder rauchen, nicht trocken feilen. In Schmuck ist es nach EU- und britischem Recht auf 0,05 % begrenzt.",
  ],
  [
    "Cadmium: Old solders hold it. Never heat or melt it without extraction: the fume kills. EU and UK law limits it in jewellery to 0.01 % of each metal part.",
    "Cadmium: In alten Loten. Nie ohne Absaugung erhitzen oder schmelzen: der Rauch tötet. In Schmuck ist es nach EU- und britischem Recht auf 0,01 % jedes Metallteils begrenzt.",
  ],
  [
    "Beryllium copper: Its dust harms the lungs for life: do not file, grind or sand it.",
    "Berylliumkupfer: Sein Staub schadet der Lunge lebenslang: nicht feilen oder schleifen.",
  ],
  [
    "Nickel: It brings on skin allergy; its release from what is worn on the skin is limited (0.5 µg/cm² a week, 0.2 for posts).",
    "Nickel: Es löst Hautallergien aus; die Abgabe aus auf der Haut Getragenem ist begrenzt (0,5 µg/cm² in der Woche, 0,2 für Stecker).",
  ],
  [
    "Thallium: Very poisonous through the skin: do not handle it.",
    "Thallium: Sehr giftig durch die Haut: nicht anfassen.",
  ],
  [
    "Mercury: Gold with a silvery, greasy skin may carry amalgam: do not heat it.",
    "Quecksilber: Gold mit silbriger, fettiger Haut kann Amalgam tragen: nicht erhitzen.",
  ],
  [
    "Uranium: As dense as gold, weakly radioactive, poisonous; its filings burn by themselves, and in most countries it may not be held without a licence. Do not file, scratch or acid-test it; set it aside and ask the authority.",
    "Uran: So dicht wie Gold, schwach radioaktiv, giftig; seine Späne entzünden sich von selbst, und in den meisten Ländern darf man es nicht ohne Erlaubnis besitzen. Nicht feilen, ritzen oder mit Säure prüfen; beiseitelegen und die Behörde fragen.",
  ],
];
