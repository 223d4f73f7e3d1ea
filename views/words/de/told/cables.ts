import type { ToldPair } from "../../told.ts";

/** What ports, networks and the lines of a balance have to say before any of it is a weight. */
export const cables: readonly ToldPair[] = [
  // opening
  ["Listening to the balance on {port} at {line}.", "Die Waage an {port} wird gehört mit {line}."],
  ["Listening to the balance at {place}.", "Die Waage bei {place} wird gehört."],
  ["Listening to the USB scale on {port}.", "Die USB-Waage an {port} wird gehört."],
  [
    "There is no USB scale on {port}. Plug it in and switch it on; it is tried again by itself.",
    "An {port} ist keine USB-Waage. Sie anstecken und einschalten; es wird von selbst neu versucht.",
  ],
  [
    "It was lost within seconds of being opened: the programs brltty and ModemManager are known to take such ports.",
    "Sie ging Sekunden nach dem Öffnen verloren: die Programme brltty und ModemManager nehmen solche Anschlüsse bekanntlich an sich.",
  ],
  [
    "Run: sudo systemctl stop ModemManager; sudo apt-get remove brltty.",
    "Ausführen: sudo systemctl stop ModemManager; sudo apt-get remove brltty.",
  ],
  [
    "It was lost within seconds: many converters serve one program at a time. Close the other one.",
    "Sie ging binnen Sekunden verloren: viele Umsetzer bedienen nur ein Programm zugleich. Das andere schließen.",
  ],
  [
    "No permission to open {port}: your user is not in the group that owns it (dialout on most systems).",
    "Keine Erlaubnis, {port} zu öffnen: Ihr Benutzer gehört nicht zur Gruppe, der er gehört (meist dialout).",
  ],
  [
    "Run: sudo usermod -aG dialout $USER, then log out and in again.",
    "Ausführen: sudo usermod -aG dialout $USER, dann ab- und wieder anmelden.",
  ],
  [
    'No permission to open {port}: raw USB devices belong to root. Put the line SUBSYSTEM=="hidraw", GROUP="dialout", MODE="0660" into /etc/udev/rules.d/60-scale.rules, run: sudo usermod -aG dialout $USER, then plug the scale in again and log in anew.',
    'Keine Erlaubnis, {port} zu öffnen: rohe USB-Geräte gehören root. Die Zeile SUBSYSTEM=="hidraw", GROUP="dialout", MODE="0660" in /etc/udev/rules.d/60-scale.rules schreiben, sudo usermod -aG dialout $USER ausführen, dann die Waage neu anstecken und sich neu anmelden.',
  ],
  [
    "{name} (now {port}): named by its socket, because another device calls itself the same. Keep it in this socket.",
    "{name} (jetzt {port}): nach seiner Buchse benannt, weil sich ein anderes Gerät ebenso nennt. Es in dieser Buchse lassen.",
  ],
  ['Line settings "{text}" are not understood.', "Die Leitungseinstellung „{text}“ wird nicht verstanden."],
  [
    "Right: speed, data bits, parity, stop bits, such as 9600-8n1 or 2400-7e1 (speeds {speeds}; parity n, e or o), then -rts-cts or -xon-xoff if the line uses it.",
    "Richtig: Geschwindigkeit, Datenbits, Parität, Stoppbits, wie 9600-8n1 oder 2400-7e1 (Geschwindigkeiten {speeds}; Parität n, e oder o), dann -rts-cts oder -xon-xoff, wenn die Leitung es benutzt.",
  ],
  [
    "The balance shows them in its menu for the interface.",
    "Die Waage zeigt sie in ihrem Menü zur Schnittstelle.",
  ],
  [
    '"{text}" is no network address of a balance. Right: host and port, such as 192.0.2.7:4001 or tcp://balance.example:4001.',
    "„{text}“ ist keine Netzadresse einer Waage. Richtig: Rechner und Anschluss, wie 192.0.2.7:4001 oder tcp://balance.example:4001.",
  ],
  [
    "{place} answers, but nothing listens on port {port} there. Check the port number in the balance's network menu.",
    "{place} antwortet, aber auf Anschluss {port} hört dort nichts. Die Nummer im Netzmenü der Waage prüfen.",
  ],
  [
    "There is no machine called {host} on this network. Check the name, or use the number the balance shows.",
    "In diesem Netz heißt kein Rechner {host}. Den Namen prüfen oder die Nummer nehmen, die die Waage zeigt.",
  ],
  [
    "{place} cannot be reached: {why}. Check cable and switch; it is tried again by itself.",
    "{place} ist nicht erreichbar: {why}. Kabel und Verteiler prüfen; es wird von selbst neu versucht.",
  ],
  [
    '"{address}" is no address of a balance. Right: the path of a port such as /dev/serial/by-id/…, host:port, or /dev/hidraw0.',
    "„{address}“ ist keine Adresse einer Waage. Richtig: der Pfad eines Anschlusses wie /dev/serial/by-id/…, Rechner:Anschluss oder /dev/hidraw0.",
  ],
  [
    "The USB scale on {port} tells in its own description how it writes a weight. There is nothing to learn.",
    "Die USB-Waage an {port} sagt in ihrer eigenen Beschreibung, wie sie ein Gewicht schreibt. Da ist nichts zu lernen.",
  ],
  [
    "No balance on a cable is chosen. Choose its port first.",
    "Keine Waage am Kabel ist gewählt. Zuerst ihren Anschluss wählen.",
  ],
  [
    "The simulated balance is never heard beside another.",
    "Die simulierte Waage wird nie neben einer anderen gehört.",
  ],
  [
    "In the demonstration the balance is simulated, and invented pieces never share a ledger with measured ones. End the demonstration first; nothing was changed.",
    "In der Vorführung ist die Waage simuliert, und erfundene Stücke stehen nie in einem Buch mit gemessenen. Zuerst die Vorführung beenden; nichts wurde geändert.",
  ],
  [
    "The simulated balance is on. It weighs invented pieces; nothing it says is a measurement.",
    "Die simulierte Waage ist an. Sie wiegt erfundene Stücke; nichts davon ist eine Messung.",
  ],
  // finding the settings
  [
    "The settings of {port} are being looked for. Stop that first.",
    "Die Einstellung von {port} wird gerade gesucht. Das zuerst beenden.",
  ],
  [
    '"{path}" is no serial port, so there are no settings to find. Right: a port such as /dev/serial/by-id/….',
    "„{path}“ ist kein serieller Anschluss, also gibt es keine Einstellung zu finden. Richtig: ein Anschluss wie /dev/serial/by-id/….",
  ],
  ["Stopped before it was found.", "Beendet, bevor sie gefunden war."],
  ["Nothing came.", "Nichts kam."],
  [
    "Characters came, but no readable lines: another speed or parity.",
    "Zeichen kamen, aber keine lesbaren Zeilen: eine andere Geschwindigkeit oder Parität.",
  ],
  ["Readable lines came, but of no known shape.", "Lesbare Zeilen kamen, aber von keiner bekannten Form."],
  ["Weights came, written as {shape}.", "Gewichte kamen, geschrieben so: {shape}."],
  ["The line is {line}; its lines are {shape}.", "Die Leitung ist {line}; ihre Zeilen: {shape}."],
  [
    "The line is {line}, and its text is readable, but none of the generic shapes reads a weight in it. Let the bench learn its lines.",
    "Die Leitung ist {line}, und ihr Text ist lesbar, aber keine der allgemeinen Formen liest darin ein Gewicht. Den Messplatz ihre Zeilen lernen lassen.",
  ],
  [
    "Nothing came at any setting ({list}). The balance may be off, may send only on its key or when asked, or the cable may be of the wrong kind.",
    "Bei keiner Einstellung kam etwas ({list}). Die Waage ist vielleicht aus, sendet nur auf ihre Taste oder auf Anfrage, oder das Kabel ist von der falschen Art.",
  ],
  [
    "Press its print key while the bench listens, or type the request from its manual.",
    "Ihre Drucktaste drücken, während der Messplatz horcht, oder die Anfrage aus ihrer Anleitung tippen.",
  ],
  [
    "No setting gave readable lines ({list}). Look up speed, data bits and parity in the balance's menu and enter them by hand; that always works.",
    "Keine Einstellung gab lesbare Zeilen ({list}). Geschwindigkeit, Datenbits und Parität im Menü der Waage nachsehen und von Hand eintragen; das geht immer.",
  ],
  // asking
  [
    "{request} is not sent: the owner of the balance has not agreed to it yet. Confirm it on the page of the balance.",
    "{request} wird nicht gesendet: der Besitzer der Waage hat noch nicht zugestimmt. Auf der Seite der Waage bestätigen.",
  ],
  [
    "{request} is empty. Right: the text that the balance's manual gives for asking a weight, with its line end, such as …\\r\\n.",
    "{request} ist leer. Richtig: der Text, den die Anleitung der Waage zum Abfragen eines Gewichts nennt, mit Zeilenende, wie …\\r\\n.",
  ],
  [
    "{request} reads as if it would zero, tare, adjust or switch off the balance. Such requests are never sent by themselves: use the key on the balance.",
    "{request} liest sich, als würde es die Waage nullen, tarieren, justieren oder ausschalten. Solche Anfragen werden nie von selbst gesendet: die Taste an der Waage benutzen.",
  ],
  [
    '"{text}" cannot be turned into bytes at place {n} ("{part}").',
    "„{text}“ lässt sich an Stelle {n} („{part}“) nicht in Bytes verwandeln.",
  ],
  [
    "Right: plain ASCII, with \\r, \\n, \\t, \\\\ and \\x1B for the bytes that cannot be typed.",
    "Richtig: reines ASCII, mit \\r, \\n, \\t, \\\\ und \\x1B für die Bytes, die sich nicht tippen lassen.",
  ],
  ["Nothing came back yet.", "Noch kam nichts zurück."],
  [
    "No balance on a cable is in use. Choose its port on Balances first.",
    "Keine Waage am Kabel ist in Gebrauch. Zuerst ihren Anschluss unter Waagen wählen.",
  ],
  [
    "No balance on a cable is in use, so nothing was asked.",
    "Keine Waage am Kabel ist in Gebrauch, also wurde nichts gefragt.",
  ],
  [
    "The USB scale on {port} sends by itself; nothing is asked of it.",
    "Die USB-Waage an {port} sendet von selbst; sie wird nichts gefragt.",
  ],
  [
    "Nothing was sent and nothing was kept: tick that the request comes from the manual of this balance and only asks for a weight.",
    "Nichts wurde gesendet und nichts aufgehoben: ankreuzen, dass die Anfrage aus der Anleitung dieser Waage stammt und nur nach einem Gewicht fragt.",
  ],
  [
    '"{when}" is no time to ask. Choose one of the two.',
    "„{when}“ ist keine Zeit zum Fragen. Eine der beiden wählen.",
  ],
  [
    'Again after "{every}" s is out of range. Right: 0.1 to 60 s.',
    "Wieder nach „{every}“ s liegt außerhalb. Richtig: 0,1 bis 60 s.",
  ],
  ["Nothing is asked at present.", "Zurzeit wird nichts gefragt."],
  [
    '"{comma}" is none of the two answers. Press one of the two buttons.',
    "„{comma}“ ist keine der beiden Antworten. Einen der beiden Knöpfe drücken.",
  ],
  // lines
  ['The balance repeats the request "{text}".', "Die Waage wiederholt die Anfrage „{text}“."],
  ['The balance sent "{line}", {what}.', "Die Waage sendete „{line}“, {what}."],
  ["Set it to weigh in g.", "Sie auf Gramm stellen."],
  [
    'A line of the print-out that is no weight: "{line}".',
    "Eine Zeile des Ausdrucks, die kein Gewicht ist: „{line}“.",
  ],
  [
    "The balance says its tare: {tare}. It is not a weight of the piece.",
    "Die Waage nennt ihre Tara: {tare}. Das ist kein Gewicht des Stücks.",
  ],
  [
    "The balance says its gross weight: {gross}. The net weight that follows is the one that counts.",
    "Die Waage nennt ihr Bruttogewicht: {gross}. Es zählt das Nettogewicht, das folgt.",
  ],
  [
    "The print-out does not add up: gross {gross} less tare {tare} is not net {net}. Nothing was taken; print again.",
    "Der Ausdruck geht nicht auf: brutto {gross} weniger Tara {tare} ist nicht netto {net}. Nichts wurde genommen; neu drucken.",
  ],
  [
    "{role} is taking a reading from the {name} at this moment. Wait until it is taken; nothing was captured twice.",
    "{role} nimmt gerade eine Ablesung von: {name}. Warten, bis sie genommen ist; nichts wurde doppelt genommen.",
  ],
  [
    'The balance typed "{text}", which is not understood as a weight. Nothing was entered.',
    "Die Waage tippte „{text}“, was nicht als Gewicht verstanden wird. Nichts wurde eingetragen.",
  ],
  [
    'The balance typed "{text}" while another field had the focus, and several fields wait for a weight.',
    "Die Waage tippte „{text}“, während ein anderes Feld den Fokus hatte, und mehrere Felder warten auf ein Gewicht.",
  ],
  [
    'The balance typed "{text}" while another field had the focus, and no field waits for a weight.',
    "Die Waage tippte „{text}“, während ein anderes Feld den Fokus hatte, und kein Feld wartet auf ein Gewicht.",
  ],
  [
    "Nothing was entered: choose the field of the weight, then press the key of the balance again.",
    "Nichts wurde eingetragen: das Feld des Gewichts wählen, dann die Taste der Waage noch einmal drücken.",
  ],
  [
    "The clock of this computer was moved forward by {n} s. The order of the readings is kept; check the date and time.",
    "Die Uhr dieses Rechners wurde um {n} s vorgestellt. Die Folge der Ablesungen bleibt; Datum und Zeit prüfen.",
  ],
  [
    "The clock of this computer was moved back by {n} s. The order of the readings is kept; check the date and time.",
    "Die Uhr dieses Rechners wurde um {n} s zurückgestellt. Die Folge der Ablesungen bleibt; Datum und Zeit prüfen.",
  ],
  // reports of a USB scale
  [
    "The report descriptor ends inside its item at byte {n}. It was read incompletely; unplug the scale and plug it in again.",
    "Die Beschreibung der Meldungen endet mitten in ihrem Eintrag bei Byte {n}. Sie wurde unvollständig gelesen; die Waage ab- und wieder anstecken.",
  ],
  [
    "A report of {n} bytes is too short for the weight it should carry. It was dropped.",
    "Eine Meldung von {n} Bytes ist zu kurz für das Gewicht, das sie tragen sollte. Sie wurde weggelassen.",
  ],
  [
    "The scale sent {n} steps without a unit. A number without a unit is no weight.",
    "Die Waage sendete {n} Schritte ohne Einheit. Eine Zahl ohne Einheit ist kein Gewicht.",
  ],
  [
    "The scale shows a unit that is not read here. Set it to weigh in g.",
    "Die Waage zeigt eine Einheit, die hier nicht gelesen wird. Sie auf Gramm stellen.",
  ],
  [
    "The scale reports a fault. Look it up in its manual before weighing on.",
    "Die Waage meldet eine Störung. Vor dem Weiterwiegen in ihrer Anleitung nachsehen.",
  ],
  [
    "The scale is below zero, and its report has no sign to say by how much. Zero it with the hanger or beaker on, or leave some load on the pan.",
    "Die Waage ist unter null, und ihre Meldung hat kein Vorzeichen, um zu sagen, wie weit. Sie mit Aufhängung oder Becher auf null stellen oder etwas Last auf der Schale lassen.",
  ],
  [
    "The load is above the range of the scale. Take it off; use a lighter beaker, or hang the piece from the balance.",
    "Die Last liegt über dem Bereich der Waage. Sie herunternehmen; einen leichteren Becher nehmen oder das Stück an die Waage hängen.",
  ],
  [
    "The scale asks to be adjusted. Do that with its own check weight before weighing on.",
    "Die Waage verlangt eine Justierung. Das vor dem Weiterwiegen mit ihrem eigenen Gewicht tun.",
  ],
  [
    "The scale asks to be zeroed. Empty the pan and press its zero key.",
    "Die Waage verlangt eine Null. Die Schale leeren und ihre Nulltaste drücken.",
  ],
];

/** Shapes of lines in words, and what is no weight to be used. */
export const shapeNames: readonly ToldPair[] = [
  ["a density worked out by the balance itself", "eine von der Waage selbst berechnete Dichte"],
  ["a count of pieces", "eine Stückzahl"],
  ["a percentage", "ein Prozentsatz"],
  ["a force", "eine Kraft"],
  ["a temperature", "eine Temperatur"],
  ["a weight in two units", "ein Gewicht in zwei Einheiten"],
  ["a weight in pounds", "ein Gewicht in Pfund"],
  [
    "a weight in taels, which differ from place to place",
    "ein Gewicht in Tael, die von Ort zu Ort verschieden sind",
  ],
  ["a weight in tolas", "ein Gewicht in Tola"],
  ["a weight in momme", "ein Gewicht in Momme"],
  [
    "a weight in gr, which is read as gram by some and as grain by others",
    "ein Gewicht in gr, das manche als Gramm und andere als Grän lesen",
  ],
  ["the last digit in brackets", "die letzte Ziffer in Klammern"],
  [
    "date, time, numbers of balance and sample, ruled lines",
    "Datum, Zeit, Nummern von Waage und Probe, gezogene Linien",
  ],
  ["net, gross or tare, then the number and the unit", "netto, brutto oder Tara, dann Zahl und Einheit"],
  [
    "a number with its sign directly before it, then the unit",
    "eine Zahl mit dem Vorzeichen unmittelbar davor, dann die Einheit",
  ],
  [
    "a print-out of several lines with gross, tare and net weight",
    "ein Ausdruck aus mehreren Zeilen mit Brutto, Tara und Netto",
  ],
  [
    "the sign in the first column, blanks, the number, the unit",
    "das Vorzeichen in der ersten Spalte, Leerzeichen, die Zahl, die Einheit",
  ],
  ["the number and the unit, then a word or sign", "Zahl und Einheit, dann ein Wort oder Zeichen"],
  ["a word or sign, then the number and the unit", "ein Wort oder Zeichen, dann Zahl und Einheit"],
  [
    "a number with its unit at rest, the same number with blanks in place of the unit while moving",
    "eine Zahl mit Einheit in Ruhe, dieselbe Zahl mit Leerzeichen statt der Einheit in Bewegung",
  ],
  [
    "framed by a start and an end character, with a check behind it; the decimal point may be left out",
    "eingefasst von einem Anfangs- und einem Endzeichen, dahinter eine Prüfung; der Dezimalpunkt darf fehlen",
  ],
];
