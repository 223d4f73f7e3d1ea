import type { ToldPair } from "../../told-pair.ts";

/** What the forms and lists of the pages send back: lots, prices, metals of one's own, specifications, files. */
export const entries: readonly ToldPair[] = [
  // files
  [
    "The photo could not be written to {folder}: {why}. Nothing was stored; make room or give the right to write, and send it again.",
    "Das Foto ließ sich nicht nach {folder} schreiben: {why}. Nichts wurde gespeichert; Platz schaffen oder das Schreiben erlauben und neu senden.",
  ],
  [
    "The quote opened in the row at line {n} is never closed. Close it, or take it away.",
    "Das Anführungszeichen in der Reihe bei Zeile {n} wird nie geschlossen. Es schließen oder wegnehmen.",
  ],
  [
    "The list is empty. Right: a first line {columns} and a row for each.",
    "Die Liste ist leer. Richtig: eine erste Zeile {columns} und eine Reihe für jedes.",
  ],
  [
    "The list has {n} rows; at most {n1} are taken at once. Cut it into parts.",
    "Die Liste hat {n} Reihen; höchstens {n1} werden auf einmal übernommen. Sie teilen.",
  ],
  [
    "The first line lacks {missing}; it has {headings}. Name the columns {columns}; units are part of the name.",
    "In der ersten Zeile fehlt {missing}; sie hat {headings}. Die Spalten {columns} nennen; Einheiten gehören zum Namen.",
  ],
  [
    'The first line has the column "{name}" twice. Take one away, or name it otherwise.',
    "Die erste Zeile hat die Spalte „{name}“ zweimal. Eine wegnehmen oder anders nennen.",
  ],
  // the bench's door
  [
    "Reload the page to see what stands; to change it, write an amendment.",
    "Die Seite neu laden und sehen, was da steht; um es zu ändern, eine Berichtigung schreiben.",
  ],
  [
    'A "{kind}" entry was refused and nothing was stored: {why}. Correct it and save again.',
    "Ein Eintrag „{kind}“ wurde zurückgewiesen und nichts gespeichert: {why}. Ihn berichtigen und neu speichern.",
  ],
  [
    "The {what} {value} of an entry was refused and nothing was stored. Right: 1 to 200 characters on one line.",
    "Ein Eintrag mit {what} {value} wurde zurückgewiesen und nichts gespeichert. Richtig: 1 bis 200 Zeichen auf einer Zeile.",
  ],
  // bench, record, report
  [
    "Asked before the record: {ask} Found: “{found}”",
    "Vor dem Protokoll gefragt: {ask} Festgestellt: „{found}“",
  ],
  [
    "Typed as water temperature and asked about: {celsius} °C.",
    "Als Wassertemperatur getippt und nachgefragt: {celsius} °C.",
  ],
  [
    "Typed as {role} reading and asked about: {reading}.",
    "Als Ablesung ({role}) getippt und nachgefragt: {reading}.",
  ],
  [
    "No free report number was found in 1000 tries. Try again.",
    "In 1000 Versuchen fand sich keine freie Berichtsnummer. Noch einmal versuchen.",
  ],
  ["The bench is closing.", "Der Messplatz wird geschlossen."],
  // other tests
  [
    "Measure the conductivity: {one} shows {percent}, {other} {percent1}; a skin thicker than the coil sees hides what is under it.",
    "Die Leitfähigkeit messen: {one} zeigt {percent}, {other} {percent1}; eine Haut, dicker als die Spule sieht, verdeckt, was darunter ist.",
  ],
  // lots and prices
  [
    '"{role}" is no reading of a weighing. Reload the page.',
    "„{role}“ ist keine Ablesung einer Wägung. Die Seite neu laden.",
  ],
  ["The ticket is empty. Scan it again, or type it.", "Der Beleg ist leer. Ihn neu einlesen oder tippen."],
  ["Type the temperature of the water first.", "Zuerst die Temperatur des Wassers tippen."],
  [
    "Ticket {ticket} was weighed in this lot already ({n} g). Scan the next one; to weigh it again, void its record first.",
    "Beleg {ticket} wurde in dieser Partie schon gewogen ({n} g). Den nächsten einlesen; um ihn neu zu wiegen, erst sein Protokoll verwerfen.",
  ],
  ["Look for it in the list of lots.", "Sie in der Liste der Partien suchen."],
  // metals and specifications
  // checks
  [
    "{what} needs at least {n} readings and got {n1}. Take {n2} more.",
    "{what}: mindestens {n} Ablesungen sind nötig, {n1} sind da. Noch {n2} nehmen.",
  ],
  ['There is no chart "{id}". Reload the page.', "Eine Karte „{id}“ gibt es nicht. Die Seite neu laden."],
  [
    "A point of {value} is no number. Right: the value found, in {unit}.",
    "Ein Punkt mit {value} ist keine Zahl. Richtig: der gefundene Wert, in {unit}.",
  ],
  [
    "A point of {at} cannot follow one of {last}: a chart is kept in order. Look at the clock.",
    "Ein Punkt von {at} kann keinem von {last} folgen: eine Karte wird der Reihe nach geführt. Auf die Uhr sehen.",
  ],
  [
    "New limits cannot begin at {at}, since those in force began at {before}. Limits hold from now on, never backwards.",
    "Neue Grenzen können nicht um {at} beginnen, da die geltenden um {before} begannen. Grenzen gelten von jetzt an, nie rückwärts.",
  ],
];

/** What is wrong with a part of an entry. */
export const entryParts: readonly ToldPair[] = [
  [
    "{part} is {value}: say it in words, it must not be empty",
    "{part} ist {value}: in Worten sagen, es darf nicht leer sein",
  ],
  ["reason", "Grund"],
  ["by", "Name"],
];
