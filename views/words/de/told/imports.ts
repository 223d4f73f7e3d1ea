import type { ToldPair } from "../../told-pair.ts";

/** Why a cell of a list is refused, and what the check of a ledger found. */
export const imports: readonly ToldPair[] = [
  ["must not be empty", "darf nicht leer sein"],
  ["must be above zero", "muss über null liegen"],
  ["must be one of {words}", "muss eines von diesen sein: {words}"],
  [
    "could be thousands or decimals; write {one} or {other}",
    "könnte Tausender oder Dezimalen meinen; {one} oder {other} schreiben",
  ],
  [
    "is no decimal number; write it as 31.1035, without unit or thousands",
    "ist keine Dezimalzahl; als 31.1035 schreiben, ohne Einheit und Tausenderzeichen",
  ],
  [
    "is no date by ISO 8601; write 2024-03-31, or 2024-03-31T14:05:00Z with the zone",
    "ist kein Datum nach ISO 8601; 2024-03-31 schreiben, oder 2024-03-31T14:05:00Z mit der Zone",
  ],
  [
    "stands already in line {line}; keep one of the two",
    "steht schon in Zeile {line}; eine der beiden behalten",
  ],
  [
    "stands behind the last heading; is a comma missing its quotes?",
    "steht hinter der letzten Überschrift; fehlen einem Komma die Anführungszeichen?",
  ],
  [
    "is no metal here; write the id that stands on the Metals page, such as ag-925",
    "ist hier kein Metall; die Kennung schreiben, die auf der Seite Metalle steht, etwa ag-925",
  ],
  [
    "is above 25 g/cm³, more than any metal; is it kg/m³?",
    "liegt über 25 g/cm³, mehr als jedes Metall; sind es kg/m³?",
  ],
  ["is above 1000 per mille", "liegt über 1000 Promille"],
  [
    "must lie between {low} and {high}, the low and the high density",
    "muss zwischen {low} und {high} liegen, der niedrigen und der hohen Dichte",
  ],
  [
    "adds up to {sum} %; name the rest of the alloy, so that it is 100 %",
    "ergibt zusammen {sum} %; den Rest der Legierung nennen, damit es 100 % sind",
  ],
  [
    "row {row} has another hash than the checkpoint kept elsewhere says: the chain up to here was rewritten.",
    "Zeile {row} hat eine andere Prüfsumme, als der anderswo aufbewahrte Prüfpunkt sagt: Die Kette bis hierher wurde umgeschrieben.",
  ],
  [
    "the ledger ends at row {end}, but a checkpoint kept elsewhere vouches for row {row}: rows were removed from the end.",
    "das Hauptbuch endet mit Zeile {end}, ein anderswo aufbewahrter Prüfpunkt steht aber für Zeile {row} ein: Am Ende wurden Zeilen entfernt.",
  ],
  [
    'the list shows a record of "{subject}", and the ledger has no such measurement.',
    "die Liste zeigt ein Protokoll von „{subject}“, und das Hauptbuch hat keine solche Messung.",
  ],
  ['the list lacks the record of "{subject}".', "der Liste fehlt das Protokoll von „{subject}“."],
];
