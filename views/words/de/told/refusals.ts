import type { ToldPair } from "../../told.ts";

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
  [
    "The ticket is empty. Right: a short name such as A-17.",
    "Der Beleg ist leer. Richtig: ein kurzer Name wie A-17.",
  ],
  [
    '"{typed}" is no way to weigh. Right: one of the three on the form.',
    "„{typed}“ ist keine Art zu wiegen. Richtig: eine der drei im Formular.",
  ],
  [
    'No metal is called "{typed}" here. Right: one of the list.',
    "Kein Metall heißt hier „{typed}“. Richtig: eines aus der Liste.",
  ],
  [
    'Piece "{ticket}" is still on the bench. Write its record or set it aside, then open "{other}".',
    "Stück „{ticket}“ liegt noch auf dem Messplatz. Sein Protokoll schreiben oder es beiseitelegen, dann „{other}“ öffnen.",
  ],
  [
    'The demonstration has no piece "{typed}". Choose one of its list.',
    "Die Vorführung hat kein Stück „{typed}“. Eines aus ihrer Liste wählen.",
  ],
  [
    'Hands cannot "{typed}". Use one of the buttons.',
    "Hände können „{typed}“ nicht. Einen der Knöpfe nehmen.",
  ],
  [
    '"{typed}" is no reading of a weighing. Reload the page and use its form.',
    "„{typed}“ ist keine Ablesung einer Wägung. Die Seite neu laden und ihr Formular nehmen.",
  ],
  // taking a reading
  [
    "No balance is on a cable here: type the reading instead.",
    "Hier ist keine Waage am Kabel: die Ablesung eintippen.",
  ],
  [
    "A capture of the {role} reading is already waiting for the balance to rest, for everybody at this bench. Wait for it, or call it off first.",
    "Eine Ablesung ({role}) wartet schon darauf, dass die Waage ruht, für alle an diesem Messplatz. Darauf warten oder sie erst abbrechen.",
  ],
  [
    "No capture is waiting, so there is nothing to take by hand.",
    "Keine Ablesung wartet, also ist nichts von Hand zu nehmen.",
  ],
  [
    "The cable of the balance in use is lent to learning or to the search for its settings. Wait until that is done, or stop it first.",
    "Das Kabel der benutzten Waage ist an das Lernen oder an die Suche nach ihren Einstellungen verliehen. Warten, bis das fertig ist, oder es erst beenden.",
  ],
  [
    'No balance at "{address}" is heard beside the one in use. Reload the page.',
    "Keine Waage an „{address}“ wird neben der benutzten gehört. Die Seite neu laden.",
  ],
  [
    'The method "{method}" has no {role} reading. It takes: {roles}.',
    "Das Verfahren „{method}“ hat keine solche Ablesung: {role}. Es nimmt: {roles}.",
  ],
  [
    "No piece is on the bench. Open one with its ticket first.",
    "Kein Stück liegt auf dem Messplatz. Erst eines mit seinem Beleg öffnen.",
  ],
  [
    "That reading does not belong to the piece on the bench. Reload the page.",
    "Diese Ablesung gehört nicht zum Stück auf dem Messplatz. Die Seite neu laden.",
  ],
  ["That reading was already set aside: {reason}.", "Diese Ablesung wurde schon beiseitegelegt: {reason}."],
  [
    "Setting a reading aside needs a reason, such as: bubble on the edge.",
    "Eine Ablesung beiseitezulegen braucht einen Grund, etwa: Blase am Rand.",
  ],
  [
    "Setting a piece aside needs a reason, such as: hollow, water came out.",
    "Ein Stück beiseitezulegen braucht einen Grund, etwa: hohl, Wasser kam heraus.",
  ],
  ["The record was not written. {why}", "Das Protokoll wurde nicht geschrieben. {why}"],
  [
    "Only two readings can be changed over, and this method takes three.",
    "Nur zwei Ablesungen lassen sich vertauschen, und dieses Verfahren nimmt drei.",
  ],
  [
    "There is nothing to change over: the dry or the wet reading is missing.",
    "Es gibt nichts zu vertauschen: die trockene oder die nasse Ablesung fehlt.",
  ],
  ["The record needs {missing} first.", "Das Protokoll braucht erst {missing}."],
  // each load by itself
  [
    "No balance on a cable here, so nothing can be taken by itself. Type the reading.",
    "Hier ist keine Waage am Kabel, also kann nichts von selbst genommen werden. Die Ablesung eintippen.",
  ],
  ["Taken: {reading}. Lift the piece out.", "Genommen: {reading}. Das Stück herausheben."],
  ["Lift the piece out.", "Das Stück herausheben."],
  [
    "Not taken: somebody's own capture is waiting. Lift the piece out and hang it again for the {role} reading.",
    "Nicht genommen: jemandes eigene Ablesung wartet. Das Stück herausheben und neu einhängen ({role}).",
  ],
  // entries of any form
  ["{what}: nothing was typed.", "{what}: nichts wurde getippt."],
  ['The unit "{typed}" is not in the list.', "Die Einheit „{typed}“ steht nicht in der Liste."],
  ["{what} is not a number from {n} to {n1} {unit}.", "{what} ist keine Zahl von {n} bis {n1} {unit}."],
  ["{what} is none of those offered.", "{what} ist keines der Angebotenen."],
  ["Right: one of the list.", "Richtig: eines aus der Liste."],
  [
    "One of the three questions has no answer of its list, so nothing was set up. Go back, choose one answer to each, and send again.",
    "Eine der drei Fragen hat keine Antwort aus ihrer Liste, nichts wurde eingerichtet. Zurückgehen, auf jede eine Antwort wählen und noch einmal senden.",
  ],
  [
    "This start of the bench cannot be exchanged. Stop it with Ctrl+C and begin a real bench with: underhook serve --typed. The demonstration keeps a folder of its own and is not touched.",
    "Dieser Start des Messplatzes lässt sich nicht auswechseln. Mit Strg+C anhalten und einen echten beginnen mit: underhook serve --typed. Die Vorführung hat einen eigenen Ordner und bleibt unberührt.",
  ],
  [
    "This is a real bench: there is no demonstration to clear, and nothing was done.",
    "Das ist ein echter Messplatz: es gibt keine Vorführung zu entfernen, nichts wurde getan.",
  ],
  [
    'No record is called "{typed}" in this ledger. Look for it in the list of records.',
    "Kein Protokoll heißt in diesem Buch „{typed}“. In der Liste der Protokolle danach suchen.",
  ],
  [
    'No metal is called "{typed}" in library {version}. Near it: {names}. Look for it in the list of metals.',
    "Kein Metall heißt in Sammlung {version} „{typed}“. In der Nähe: {names}. In der Liste der Metalle danach suchen.",
  ],
  // forms and the whole bench
  [
    "The form is older than this start of the bench, so it was not taken. Reload the page and send it again.",
    "Das Formular ist älter als dieser Start des Messplatzes und wurde nicht genommen. Die Seite neu laden und es noch einmal senden.",
  ],
  ["That was more than {n} kB at once. Send less.", "Das waren mehr als {n} kB auf einmal. Weniger senden."],
  [
    "Something went wrong inside the bench, and it is written to its output. Readings already taken are safe in the ledger; reload the page.",
    "Im Messplatz ging etwas schief, es steht in seiner Ausgabe. Genommene Ablesungen sind im Buch sicher; die Seite neu laden.",
  ],
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
    "Typed readings of a piece above {limit} are confirmed by a second person before the record is written.",
    "Getippte Ablesungen eines Stücks über {limit} bestätigt eine zweite Person, bevor das Protokoll geschrieben wird.",
  ],
  ["No second person is needed for this piece.", "Für dieses Stück ist keine zweite Person nötig."],
  [
    "Who typed the readings? Give the initials of that person, too.",
    "Wer hat die Ablesungen getippt? Auch das Kürzel dieser Person angeben.",
  ],
  ["Who reads them now? Give your own initials.", "Wer liest sie jetzt ab? Das eigene Kürzel angeben."],
  [
    '"{who}" typed these readings. A second person, with other initials, must read them.',
    "„{who}“ hat diese Ablesungen getippt. Eine zweite Person mit anderem Kürzel muss sie ablesen.",
  ],
  // another piece than the ticket's
  [
    "The dry mass is the announced one by now. Nothing needs an answer.",
    "Die trockene Masse ist inzwischen die angekündigte. Es ist nichts zu beantworten.",
  ],
  [
    "Going on needs the reason why it weighs otherwise, such as: the list rounds to whole grams.",
    "Zum Weitermachen gehört der Grund, warum es anders wiegt, etwa: die Liste rundet auf ganze Gramm.",
  ],
  [
    "The piece weighs {weighed}, and {announced} is announced for ticket {ticket}. Say first whether it is the right piece.",
    "Das Stück wiegt {weighed}, und {announced} sind zum Beleg {ticket} angekündigt. Zuerst sagen, ob es das richtige Stück ist.",
  ],
  // amending a record
  [
    "Only a reading that was typed and still counts can be amended. One from the balance stands as it was received: void the record and weigh again.",
    "Nur eine Ablesung, die getippt wurde und noch zählt, lässt sich berichtigen. Eine von der Waage bleibt, wie sie ankam: das Protokoll verwerfen und neu wiegen.",
  ],
  [
    '"{text}" has other decimals than the "{before}" it replaces, and they say how fine the scale reads. Right: as many decimals.',
    "„{text}“ hat andere Stellen als „{before}“, das es ersetzt, und sie sagen, wie fein die Waage anzeigt. Richtig: ebenso viele Stellen.",
  ],
  [
    "This reading went into a drift fit or together with others, and cannot be put right alone. Void the record and weigh again.",
    "Diese Ablesung ging in eine Driftanpassung oder mit anderen zusammen ein und lässt sich nicht allein berichtigen. Das Protokoll verwerfen und neu wiegen.",
  ],
  [
    "There is no piece to amend. Look for it in the list of records.",
    "Es gibt kein Stück zu berichtigen. In der Liste der Protokolle suchen.",
  ],
  [
    '"{who}" typed these readings, and the piece is above {limit}. Another person puts them right.',
    "„{who}“ hat diese Ablesungen getippt, und das Stück liegt über {limit}. Eine andere Person stellt sie richtig.",
  ],
];
