import type { ToldPair } from "../../told-pair.ts";

/** What the bench refuses or reports while a piece is weighed. */
export const refusals: readonly ToldPair[] = [
  // typed numbers
  [
    "{what} is empty. Right: a number such as {example}.",
    "{what} ist leer. Richtig: eine Zahl wie {example}.",
  ],
  [
    '{what} "{typed}" is not a number. Right: digits with one comma or point, such as {example}.',
    "{what} „{typed}“ ist keine Zahl. Richtig: Ziffern mit einem Komma oder Punkt, wie {example}.",
  ],
  [
    "Water at {n} °C: the density of water is known here from {n1} to {n2} °C. Check the thermometer.",
    "Wasser mit {n} °C: die Dichte von Wasser ist hier von {n1} bis {n2} °C bekannt. Das Thermometer prüfen.",
  ],
  [
    "Water at {n} °C: the density of water is known here from {n1} to {n2} °C. If the thermometer shows °F, {n3} °F is {n4} °C: type that.",
    "Wasser mit {n} °C: die Dichte von Wasser ist hier von {n1} bis {n2} °C bekannt. Zeigt das Thermometer °F, sind {n3} °F {n4} °C: das tippen.",
  ],
  // the ticket
  // taking a reading
  [
    "The balance was exchanged or opened anew while a piece is on the bench. Check its zero before weighing on.",
    "Die Waage wurde gewechselt oder neu geöffnet, während ein Stück auf dem Messplatz liegt. Vor dem Weiterwiegen ihre Null prüfen.",
  ],
  [
    "Readings of this piece came from another balance, and an error that both readings share cancels on one balance only. Check that both show the same for one check weight, and the zero of this one.",
    "Ablesungen dieses Stücks kamen von einer anderen Waage, und ein Fehler, den beide Ablesungen teilen, hebt sich nur auf einer Waage auf. Prüfen, dass beide für ein Prüfgewicht dasselbe zeigen, und die Null dieser Waage.",
  ],
  [
    "The cable of the balance in use is lent to learning or to the search for its settings. Wait until that is done, or stop it first.",
    "Das Kabel der benutzten Waage ist an das Lernen oder an die Suche nach ihren Einstellungen verliehen. Warten, bis das fertig ist, oder es erst beenden.",
  ],
  [
    'No balance at "{address}" is heard beside the one in use. Reload the page.',
    "Keine Waage an „{address}“ wird neben der benutzten gehört. Die Seite neu laden.",
  ],
  // each load by itself
  ["Ready. Hang the piece.", "Bereit. Das Stück einhängen."],
  ["A change below {n} g is taken for no load.", "Eine Änderung unter {n} g gilt als keine Last."],
  ["Ready for the next. Hang the piece.", "Bereit für das nächste. Das Stück einhängen."],
  [
    "Lifted before it was still. Nothing was taken. Hang the piece.",
    "Gehoben, bevor sie ruhig war. Nichts wurde genommen. Das Stück einhängen.",
  ],
  ["Keep still.", "Stillhalten."],
  ["Taken: {reading}. Lift the piece out.", "Genommen: {reading}. Das Stück herausheben."],
  ["Lift the piece out.", "Das Stück herausheben."],
  // entries of any form
  ["{what}: nothing was typed.", "{what}: nichts wurde getippt."],
  ['The unit "{typed}" is not in the list.', "Die Einheit „{typed}“ steht nicht in der Liste."],
  ["{what} is not a number from {n} to {n1} {unit}.", "{what} ist keine Zahl von {n} bis {n1} {unit}."],
  ["{what} is none of those offered.", "{what} ist keines der Angebotenen."],
  ["Right: one of the list.", "Richtig: eines aus der Liste."],
  [
    'No metal is called "{typed}" in library {version}. Near it: {names}. Look for it in the list of metals.',
    "Kein Metall heißt in Sammlung {version} „{typed}“. In der Nähe: {names}. In der Liste der Metalle danach suchen.",
  ],
  // forms and the whole bench
  ['The ledger {place} says "{cause}". {remedy}', "Das Buch {place} sagt „{cause}“. {remedy}"],
  ["Nothing was stored.", "Nichts wurde gespeichert."],
  [
    "The disk is full or failing, and nothing was stored. Make room or copy the data folder to another disk, then save again.",
    "Die Platte ist voll oder defekt, nichts wurde gespeichert. Platz schaffen oder den Datenordner auf eine andere Platte kopieren, dann noch einmal speichern.",
  ],
  [
    "The file or its disk cannot be written, and nothing was stored. Give this user the right to write there.",
    "Die Datei oder ihre Platte ist nicht beschreibbar, nichts wurde gespeichert. Diesem Benutzer das Schreibrecht geben.",
  ],
  [
    "Another program kept the file locked for too long, and nothing was stored. Close it, then save again.",
    "Ein anderes Programm hielt die Datei zu lange gesperrt, nichts wurde gespeichert. Es schließen, dann noch einmal speichern.",
  ],
  [
    "The file is damaged. Keep it as it is, run `underhook verify` on a copy, and restore the last backup with `underhook restore`.",
    "Die Datei ist beschädigt. So lassen, wie sie ist, `underhook verify` auf einer Kopie ausführen und die letzte Sicherung mit `underhook restore` zurückholen.",
  ],
  // a second person
  [
    "A limit of {n} is none. Right: a number above 0, or nothing for never.",
    "{n} ist keine Grenze. Richtig: eine Zahl über 0, oder nichts für nie.",
  ],
  // another piece than the ticket's
  // amending a record
];
