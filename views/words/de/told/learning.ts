import type { ToldPair } from "../../told.ts";

/** The guided half minute: what the owner is told to do, what was learned, what is asked back. */
export const learning: readonly ToldPair[] = [
  // steps
  ["Leave the pan empty and do not touch the bench.", "Die Schale leer lassen und den Tisch nicht berühren."],
  [
    "Put a weight on, one that needs most of the digits of the display, and jog it a little.",
    "Ein Gewicht auflegen, das die meisten Stellen der Anzeige braucht, und es etwas anstoßen.",
  ],
  ["Hands off. Let the weight lie still.", "Hände weg. Das Gewicht ruhig liegen lassen."],
  [
    "Touch the pan lightly with a finger and keep pressing a little more and a little less.",
    "Die Schale leicht mit einem Finger berühren und immer ein wenig mehr und ein wenig weniger drücken.",
  ],
  ["Hands off again. Let it settle.", "Wieder Hände weg. Zur Ruhe kommen lassen."],
  ["Take the weight off.", "Das Gewicht herunternehmen."],
  [
    "If you like: with the weight on press the balance's own zero key, take the weight off and wait. It shows how a minus is written. Otherwise leave this out.",
    "Wenn Sie mögen: mit aufliegendem Gewicht die Nulltaste der Waage drücken, das Gewicht herunternehmen und warten. Das zeigt, wie ein Minus geschrieben wird. Sonst auslassen.",
  ],
  [
    "If you like: press the pan carefully just beyond its range, as its manual allows, and hold. It shows what is sent then. Otherwise leave this out.",
    "Wenn Sie mögen: die Schale vorsichtig knapp über ihren Bereich drücken, wie es ihre Anleitung erlaubt, und halten. Das zeigt, was dann gesendet wird. Sonst auslassen.",
  ],
  ["Done. The lines are read now.", "Fertig. Die Zeilen werden jetzt gelesen."],
  [
    "Nothing comes by itself: press the print key of the balance {n} times, about a second apart.",
    "Von selbst kommt nichts: die Drucktaste der Waage {n}-mal drücken, etwa im Abstand einer Sekunde.",
  ],
  [
    "Nothing comes by itself: press the print key of the balance {n} time, about a second apart.",
    "Von selbst kommt nichts: die Drucktaste der Waage {n}-mal drücken.",
  ],
  // bytes and lines
  [
    "Every byte is a whole character; no parity bit shows in it.",
    "Jedes Byte ist ein ganzes Zeichen; darin zeigt sich kein Paritätsbit.",
  ],
  [
    "The balance sends seven data bits with even parity (7E1), received as 8N1.",
    "Die Waage sendet sieben Datenbits mit gerader Parität (7E1), empfangen als 8N1.",
  ],
  [
    "The balance sends seven data bits with odd parity (7O1), received as 8N1.",
    "Die Waage sendet sieben Datenbits mit ungerader Parität (7O1), empfangen als 8N1.",
  ],
  ["The parity bit is checked and taken off.", "Das Paritätsbit wird geprüft und abgenommen."],
  ["The eighth bit is always set.", "Das achte Bit ist immer gesetzt."],
  ["It is taken off.", "Es wird abgenommen."],
  ["Every line ends with {mark}.", "Jede Zeile endet mit {mark}."],
  ["Every line ends with the bytes {hex}.", "Jede Zeile endet mit den Bytes {hex}."],
  ["Every line stands between STX and ETX.", "Jede Zeile steht zwischen STX und ETX."],
  [
    "Every line stands between STX and ETX, with {n} more byte behind.",
    "Jede Zeile steht zwischen STX und ETX, dahinter noch {n} Byte.",
  ],
  [
    "Every line stands between STX and ETX, with {n} more bytes behind.",
    "Jede Zeile steht zwischen STX und ETX, dahinter noch {n} Bytes.",
  ],
  [
    "Lines have no end character; a pause of {n} ms ends one.",
    "Zeilen haben kein Endzeichen; eine Pause von {n} ms beendet eine.",
  ],
  [
    "Any CR or LF ends a line; the true line end was not seen.",
    "Jedes CR oder LF beendet eine Zeile; das wahre Zeilenende wurde nicht gesehen.",
  ],
  ["A check byte, {law}, fits {n} of {n1} lines.", "Ein Prüfbyte, {law}, passt zu {n} von {n1} Zeilen."],
  [
    "A check of two hexadecimal digits, {law}, fits {n} of {n1} lines.",
    "Eine Prüfung aus zwei Hexadezimalziffern, {law}, passt zu {n} von {n1} Zeilen.",
  ],
  ["A line whose check does not fit is dropped.", "Eine Zeile, deren Prüfung nicht passt, wird weggelassen."],
  ["{n} lines make one reading.", "{n} Zeilen ergeben eine Ablesung."],
  [
    "{n} lines make one reading, but no pause shows which of them is the first.",
    "{n} Zeilen ergeben eine Ablesung, aber keine Pause zeigt, welche die erste ist.",
  ],
  // number and unit
  ['"{line}" is read as {reading}.', "„{line}“ wird gelesen als {reading}."],
  [
    '"{line}" is read as {reading}, but other text in the line changed in more ways than could be explained.',
    "„{line}“ wird gelesen als {reading}, doch anderer Text in der Zeile änderte sich auf mehr Arten, als sich erklären ließ.",
  ],
  ["Decimals: {places}.", "Dezimalstellen: {places}."],
  ["Decimals: {places}, told by you.", "Dezimalstellen: {places}, von Ihnen angegeben."],
  ["The comma is a decimal comma.", "Das Komma ist ein Dezimalkomma."],
  ['"{mark}" marks thousands.', "„{mark}“ trennt Tausender."],
  [
    "A minus stands at the left end of the number's field.",
    "Ein Minus steht am linken Ende des Zahlenfelds.",
  ],
  ["A minus stands right before the digits.", "Ein Minus steht unmittelbar vor den Ziffern."],
  ["No number below zero was seen.", "Keine Zahl unter null wurde gesehen."],
  [
    "A minus is expected where the plus stands, or right before the digits.",
    "Ein Minus wird dort erwartet, wo das Plus steht, oder unmittelbar vor den Ziffern.",
  ],
  ["Only numbers of one length were seen.", "Nur Zahlen von einer Länge wurden gesehen."],
  [
    "Longer ones may be refused; learn again with a heavier weight before relying on them.",
    "Längere werden vielleicht zurückgewiesen; mit einem schwereren Gewicht neu lernen, bevor man sich darauf verlässt.",
  ],
  ["The unit in the line is {unit}.", "Die Einheit in der Zeile ist {unit}."],
  [
    "The unit is {unit}, told by you; the line does not say it.",
    "Die Einheit ist {unit}, von Ihnen angegeben; die Zeile nennt sie nicht.",
  ],
  // rest and motion
  [
    "While the number moves the line has {moving}, at rest it has {steady} ({n} lines at rest and {n1} in motion).",
    "Während sich die Zahl bewegt, hat die Zeile {moving}, in Ruhe {steady} ({n} Zeilen in Ruhe und {n1} in Bewegung).",
  ],
  ["What {mark} means was seen too seldom to say.", "Was {mark} bedeutet, wurde zu selten gesehen."],
  ['Moving: "{line}".', "Bewegt: „{line}“."],
  ['At rest: "{line}".', "In Ruhe: „{line}“."],
  [
    "The line does not say whether the number moves ({n} lines at rest and {n1} in motion).",
    "Die Zeile sagt nicht, ob sich die Zahl bewegt ({n} Zeilen in Ruhe und {n1} in Bewegung).",
  ],
  [
    "It is not sure whether the line says that the number moves ({n} lines at rest and {n1} in motion).",
    "Es ist nicht sicher, ob die Zeile sagt, dass sich die Zahl bewegt ({n} Zeilen in Ruhe und {n1} in Bewegung).",
  ],
  ["The bench judges rest from the numbers.", "Der Messplatz beurteilt die Ruhe nach den Zahlen."],
  ["While it moves the balance sends no number.", "Während sie sich bewegt, sendet die Waage keine Zahl."],
  [
    'While it moves the balance sends no number, but "{line}".',
    "Während sie sich bewegt, sendet die Waage keine Zahl, sondern „{line}“.",
  ],
  ["A line with a number is a line at rest.", "Eine Zeile mit einer Zahl ist eine Zeile in Ruhe."],
  // other lines and pace
  [
    "Loaded beyond its range the balance says {lines}.",
    "Über ihren Bereich belastet sendet die Waage {lines}.",
  ],
  [
    "Loaded beyond its range the balance said nothing that differs from its other lines.",
    "Über ihren Bereich belastet sendete die Waage nichts, was sich von ihren anderen Zeilen unterscheidet.",
  ],
  [
    "What it says when loaded beyond its range was not tried.",
    "Was sie über ihren Bereich belastet sendet, wurde nicht probiert.",
  ],
  ["Such a line is refused as unknown.", "Eine solche Zeile wird als unbekannt zurückgewiesen."],
  [
    "Lines without a weight stand between the readings and are passed over: {lines}.",
    "Zwischen den Ablesungen stehen Zeilen ohne Gewicht, die übergangen werden: {lines}.",
  ],
  ["Readings come by themselves, {n} a second.", "Ablesungen kommen von selbst, {n} je Sekunde."],
  [
    "Readings came {n} times and at no steady pace: on a key, when asked, or when the number changes.",
    "Ablesungen kamen {n}-mal und ohne festen Takt: auf Tastendruck, auf Anfrage oder wenn sich die Zahl ändert.",
  ],
  [
    "Of {n} lines {n1} are not read by what was learned.",
    "Von {n} Zeilen werden {n1} mit dem Gelernten nicht gelesen.",
  ],
  [
    "That is more than torn lines explain: look at them before trusting the rest.",
    "Das ist mehr, als zerrissene Zeilen erklären: sie ansehen, bevor man dem Rest traut.",
  ],
  // nothing was learned
  ['The balance sends {what}, as in "{line}".', "Die Waage sendet {what}, wie in „{line}“."],
  ["Set it to weigh in g, then learn again.", "Sie auf Gramm stellen, dann neu lernen."],
  [
    '{n} lines came, such as "{line}", but no number in them grew when the weight was put on and fell when it was taken off.',
    "{n} Zeilen kamen, wie „{line}“, aber keine Zahl darin wuchs beim Auflegen des Gewichts und sank beim Herunternehmen.",
  ],
  [
    "Learn again with a heavier weight, and press on only when asked.",
    "Mit einem schwereren Gewicht neu lernen und nur drücken, wenn es verlangt wird.",
  ],
  [
    'The lines, such as "{line}", could not be read back by what was learned of them.',
    "Die Zeilen, wie „{line}“, ließen sich mit dem Gelernten nicht zurücklesen.",
  ],
  ["Nothing came from the balance.", "Von der Waage kam nichts."],
  [
    "Check that it is on and connected and that it is set to send; where it sends only on a key, press its print key in every step.",
    "Prüfen, ob sie an und angeschlossen ist und ob sie senden soll; sendet sie nur auf Tastendruck, ihre Drucktaste in jedem Schritt drücken.",
  ],
  [
    "{n} bytes came and only {n1} of them are characters of text.",
    "{n} Bytes kamen, und nur {n1} davon sind Textzeichen.",
  ],
  [
    "That is what a wrong speed looks like: try another speed, then learn again.",
    "So sieht eine falsche Geschwindigkeit aus: eine andere versuchen, dann neu lernen.",
  ],
  [
    "{n} bytes came, but no end of a line can be seen in them: no character that comes again at every end, and no pause.",
    "{n} Bytes kamen, aber kein Zeilenende ist darin zu sehen: kein Zeichen, das an jedem Ende wiederkommt, und keine Pause.",
  ],
  [
    "Set the balance to send a line end, then learn again.",
    "Die Waage so einstellen, dass sie ein Zeilenende sendet, dann neu lernen.",
  ],
  ["The pasted text marks no moment.", "Der eingefügte Text bezeichnet keinen Zeitpunkt."],
  [
    'Put a line such as "# empty", "# putting-on", "# loaded", "# touched", "# settled" or "# taking-off" where each began.',
    "Eine Zeile wie „# empty“, „# putting-on“, „# loaded“, „# touched“, „# settled“ oder „# taking-off“ dorthin setzen, wo jeder begann.",
  ],
  [
    '"# {name}" names no moment. Right: {names}.',
    "„# {name}“ bezeichnet keinen Zeitpunkt. Richtig: {names}.",
  ],
  // what is asked back
  [
    'The line "{line}" says {digits}. Is that a little more than {whole}, or more than {whole1} thousand?',
    "Die Zeile „{line}“ sagt {digits}. Ist das etwas mehr als {whole} oder mehr als {whole1} tausend?",
  ],
  ["{n} and {n1} thousandths", "{n} und {n1} Tausendstel"],
  ["{n}, without decimals", "{n}, ohne Dezimalstellen"],
  ['"{answer}" is not one of the two answers.', "„{answer}“ ist keine der beiden Antworten."],
  [
    'The line "{line}" came while the weight lay on the pan.',
    "Die Zeile „{line}“ kam, während das Gewicht auf der Schale lag.",
  ],
  ["It carries no decimal point.", "Sie trägt keinen Dezimalpunkt."],
  ["What did the display of the balance show then?", "Was zeigte die Anzeige der Waage da?"],
  [
    '"{answer}" does not carry the digits {digits} of the line.',
    "„{answer}“ trägt nicht die Ziffern {digits} der Zeile.",
  ],
  [
    "Right: all digits that the display showed, zeros at the end included, with its point.",
    "Richtig: alle Ziffern, die die Anzeige zeigte, auch Nullen am Ende, mit ihrem Punkt.",
  ],
  [
    'The line "{line}" names no unit that is known here.',
    "Die Zeile „{line}“ nennt keine hier bekannte Einheit.",
  ],
  ["Which unit does the display of the balance show?", "Welche Einheit zeigt die Anzeige der Waage?"],
  ['"{answer}" is none of {units}.', "„{answer}“ ist keines von {units}."],
  [
    'In "{line}" more than one number follows the weight.',
    "In „{line}“ folgt mehr als eine Zahl dem Gewicht.",
  ],
  ["Which one is to be read?", "Welche soll gelesen werden?"],
  ['"{answer}" is none of the numbers.', "„{answer}“ ist keine der Zahlen."],
  // the page
  [
    "The guided half minute is running. Stop it first.",
    "Die angeleitete halbe Minute läuft. Sie zuerst beenden.",
  ],
  ["Nothing was learned yet, so nothing was asked.", "Noch wurde nichts gelernt, also wurde nichts gefragt."],
  [
    "Nothing was learned that could be kept. Learn the balance first.",
    "Nichts wurde gelernt, was sich aufheben ließe. Zuerst die Waage lernen.",
  ],
  [
    '"{go}" is no step of learning. Reload the page and use its buttons.',
    "„{go}“ ist kein Schritt des Lernens. Die Seite neu laden und ihre Knöpfe benutzen.",
  ],
  [
    "The profile has no name of 1 to 120 characters. Give it the name you call the balance by.",
    "Das Profil hat keinen Namen von 1 bis 120 Zeichen. Ihm den Namen geben, den die Waage bei Ihnen hat.",
  ],
  [
    "The profile was not kept: compare the numbers of its sample lines with the display, then tick that they are the same.",
    "Das Profil wurde nicht aufgehoben: die Zahlen seiner Beispielzeilen mit der Anzeige vergleichen, dann ankreuzen, dass sie gleich sind.",
  ],
  [
    "The profile does not read its own sample lines: {failure}",
    "Das Profil liest seine eigenen Beispielzeilen nicht: {failure}",
  ],
  [
    "This profile does not read its own sample lines: {failure}",
    "Dieses Profil liest seine eigenen Beispielzeilen nicht: {failure}",
  ],
  ["Learn again.", "Neu lernen."],
  ["Learn the balance again.", "Die Waage neu lernen."],
  [
    'The sample "{line}" should be read as {reading}; it is read as {other}.',
    "Das Beispiel „{line}“ sollte gelesen werden als {reading}; gelesen wird {other}.",
  ],
  [
    "This profile is damaged: its weight line must have exactly one number.",
    "Dieses Profil ist beschädigt: seine Gewichtszeile muss genau eine Zahl haben.",
  ],
  [
    "This profile is damaged: a line without a weight carries a number or a mark.",
    "Dieses Profil ist beschädigt: eine Zeile ohne Gewicht trägt eine Zahl oder ein Zeichen.",
  ],
  ["This profile is damaged at {place}: {why}.", "Dieses Profil ist beschädigt bei {place}: {why}."],
  [
    "Export it again where it came from, or learn the balance again.",
    "Es dort neu ausgeben, wo es herkam, oder die Waage neu lernen.",
  ],
  [
    "This is not a profile: it is no JSON ({why}). Choose a file that was exported as a profile.",
    "Das ist kein Profil: es ist kein JSON ({why}). Eine Datei wählen, die als Profil ausgegeben wurde.",
  ],
  [
    "This profile says format {format}; this version reads format 1. Learn the balance again, or update the bench.",
    "Dieses Profil nennt Format {format}; diese Fassung liest Format 1. Die Waage neu lernen oder den Messplatz erneuern.",
  ],
  [
    "The file is no text in UTF-8. Right: a file that was exported on the Balances page.",
    "Die Datei ist kein Text in UTF-8. Richtig: eine Datei, die auf der Seite Waagen ausgegeben wurde.",
  ],
  [
    "No profile of that name is kept here. Go back to Balances and choose one of its list.",
    "Kein Profil dieses Namens wird hier aufgehoben. Zurück zu Waagen gehen und eines der Liste wählen.",
  ],
  [
    "Neither a file was chosen nor a text pasted. Choose the exported file, or paste it.",
    "Weder eine Datei wurde gewählt noch ein Text eingefügt. Die ausgegebene Datei wählen oder einfügen.",
  ],
  [
    "The profile {path} cannot be read: {why}. Right: a file that was exported on the Balances page.",
    "Das Profil {path} lässt sich nicht lesen: {why}. Richtig: eine Datei, die auf der Seite Waagen ausgegeben wurde.",
  ],
  // a learned balance speaks
  [
    'The balance sent "{line}", as it did when it was loaded beyond its range. Take the load off; nothing was taken.',
    "Die Waage sendete „{line}“, wie damals über ihrem Bereich. Die Last herunternehmen; nichts wurde genommen.",
  ],
  [
    'The balance sent "{line}", a line without a weight that stands between its readings.',
    "Die Waage sendete „{line}“, eine Zeile ohne Gewicht, die zwischen ihren Ablesungen steht.",
  ],
  [
    'The balance sent "{line}", one of the {n} lines that together are one reading.',
    "Die Waage sendete „{line}“, eine der {n} Zeilen, die zusammen eine Ablesung sind.",
  ],
  [
    '"{line}" is not written as the lines this balance was learned from. Nothing was taken.',
    "„{line}“ ist nicht so geschrieben wie die Zeilen, von denen diese Waage gelernt wurde. Nichts wurde genommen.",
  ],
  ["If this goes on, learn its lines again.", "Geht das so weiter, ihre Zeilen neu lernen."],
  [
    '"{line}" came with a wrong parity bit, so a character in it is damaged. Nothing was taken.',
    "„{line}“ kam mit einem falschen Paritätsbit, also ist ein Zeichen darin beschädigt. Nichts wurde genommen.",
  ],
  [
    '"{line}" came with a check byte that does not fit. Nothing was taken.',
    "„{line}“ kam mit einem Prüfbyte, das nicht passt. Nichts wurde genommen.",
  ],
  [
    "If this goes on, check the cable, the speed and the parity.",
    "Geht das so weiter, Kabel, Geschwindigkeit und Parität prüfen.",
  ],
  [
    'The balance sent "{line}" without its unit. A number without a unit is no weight; set the balance to send it.',
    "Die Waage sendete „{line}“ ohne Einheit. Eine Zahl ohne Einheit ist kein Gewicht; die Waage so einstellen, dass sie sie sendet.",
  ],
];

/** Marks of a line by name. */
export const markNames: readonly ToldPair[] = [
  ["exclusive or", "exklusives Oder"],
  ["sum", "Summe"],
  ["a blank", "ein Leerzeichen"],
  ["{n} blanks", "{n} Leerzeichen"],
  ["nothing", "nichts"],
];
