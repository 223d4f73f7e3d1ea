import type { ToldPair } from "../../told.ts";

/** What a balance and its cable say, and why nothing was captured. */
export const balance: readonly ToldPair[] = [
  [
    "Readings are typed on the Bench. Choose a port to hear a balance.",
    "Ablesungen werden am Messplatz getippt. Einen Anschluss wählen, um eine Waage zu hören.",
  ],
  ["Nothing has come yet.", "Noch kam nichts."],
  ["{meaning}, arrived at {time} UTC.", "{meaning}, angekommen um {time} UTC."],
  ["{says} (since {time} UTC)", "{says} (seit {time} UTC)"],
  ["{reading}, {label}, at rest", "{reading}, {label}, in Ruhe"],
  ["{reading}, {label}, moving", "{reading}, {label}, bewegt"],
  [
    "{reading}, {label}, the line does not say whether it rests",
    "{reading}, {label}, die Zeile sagt nicht, ob sie ruht",
  ],
  ["{reading}, at rest", "{reading}, in Ruhe"],
  ["{reading}, moving", "{reading}, bewegt"],
  ["{reading}, the line does not say whether it rests", "{reading}, die Zeile sagt nicht, ob sie ruht"],
  ["not understood: no number taken", "nicht verstanden: keine Zahl genommen"],
  ["as it was typed", "wie getippt"],
  ["on the network, as it was typed", "im Netz, wie getippt"],
  ["USB scale: {identity}", "USB-Waage: {identity}"],
  [
    "{identity}; named by the device itself: found again in any socket",
    "{identity}; vom Gerät selbst benannt: in jeder Buchse wiedergefunden",
  ],
  [
    "{identity}; named by its socket, because another device calls itself the same: keep it in this socket",
    "{identity}; nach seiner Buchse benannt, weil sich ein anderes Gerät ebenso nennt: in dieser Buchse lassen",
  ],
  [
    "{identity}; has no stable name: after unplugging it may have another number",
    "{identity}; hat keinen festen Namen: nach dem Abstecken kann die Nummer eine andere sein",
  ],
  [
    "has no stable name: after unplugging it may have another number",
    "hat keinen festen Namen: nach dem Abstecken kann die Nummer eine andere sein",
  ],
  [
    "Silent for {n} s. An old weight is not taken: check that the balance is on, sends by itself, and is plugged in.",
    "Seit {n} s stumm. Ein altes Gewicht wird nicht genommen: prüfen, ob die Waage an ist, von selbst sendet und angesteckt ist.",
  ],
  [
    '{name} was asked with "{request}" for {n} s and nothing came back. Check the request and its line end against its manual, its speed and parity, and the cable.',
    "{name} wurde {n} s lang mit „{request}“ gefragt, und nichts kam zurück. Anfrage und Zeilenende anhand der Anleitung prüfen, dazu Geschwindigkeit, Parität und Kabel.",
  ],
  [
    "{name} has been silent for {n} s. Its last weight is old and is not taken. Check that it is on, that it sends by itself, and the cable.",
    "{name} ist seit {n} s stumm. Das letzte Gewicht ist alt und wird nicht genommen. Prüfen, ob sie an ist und von selbst sendet, und das Kabel.",
  ],
  [
    "The {name} is back. Check its zero before weighing on.",
    "Wieder da: {name}. Vor dem Weiterwiegen die Null prüfen.",
  ],
  [
    "The {name} is gone. Nothing is taken until it is back.",
    "Weg: {name}. Nichts wird genommen, bis sie zurück ist.",
  ],
  [
    "The {name} is gone. Nothing is taken until it is back; it is tried again by itself.",
    "Weg: {name}. Nichts wird genommen, bis sie zurück ist; sie wird von selbst neu versucht.",
  ],
  [
    "The balance was gone and is back. Check its zero before weighing on.",
    "Die Waage war weg und ist wieder da. Vor dem Weiterwiegen ihre Null prüfen.",
  ],
  [
    "The balance was silent and speaks again. If it was switched off, its zero is a new one: check it before weighing on.",
    "Die Waage war stumm und spricht wieder. War sie aus, ist ihre Null eine neue: vor dem Weiterwiegen prüfen.",
  ],
  [
    "Before the cable was lost the balance showed {before}; what answers now shows {now}. Is it the same balance? Nothing is taken until that is answered.",
    "Bevor das Kabel ausfiel, zeigte die Waage {before}; was jetzt antwortet, zeigt {now}. Ist es dieselbe Waage? Bis das beantwortet ist, wird nichts genommen.",
  ],
  [
    "Before the cable was lost this port led to {before}; now it leads to {now}. Is it the same balance? Nothing is taken until that is answered.",
    "Bevor das Kabel ausfiel, führte dieser Anschluss zu {before}; jetzt führt er zu {now}. Ist es dieselbe Waage? Bis das beantwortet ist, wird nichts genommen.",
  ],
  // words on its display
  [
    'The balance says "{words}": {meaning}. Nothing was taken.',
    "Die Waage sagt „{words}“: {meaning}. Nichts wurde genommen.",
  ],
  [
    "the load is above the range. Take it off; use a lighter beaker, or hang the piece from the balance",
    "die Last ist zu groß. Abnehmen; einen leichteren Becher nehmen oder das Stück an die Waage hängen",
  ],
  [
    "the load is below the range. Put the pan or hanger back, then zero the balance",
    "die Last ist zu klein. Schale oder Aufhängung wieder auflegen, dann die Waage auf null stellen",
  ],
  [
    "the balance reports a fault. Look it up in its manual before weighing on",
    "die Waage meldet einen Fehler. Vor dem Weiterwiegen in der Anleitung nachsehen",
  ],
  [
    "its battery is low. Change it before weighing on",
    "ihre Batterie ist schwach. Vor dem Weiterwiegen wechseln",
  ],
  [
    "the balance is busy with itself. Wait until it shows a weight",
    "die Waage ist mit sich beschäftigt. Warten, bis sie ein Gewicht zeigt",
  ],
  // lines that are no weight
  [
    'The balance sent "{line}" without a unit. A number without a unit is no weight: set the balance to send its unit, or learn its lines.',
    "Die Waage sandte „{line}“ ohne Einheit. Eine Zahl ohne Einheit ist kein Gewicht: die Waage ihre Einheit senden lassen oder ihre Zeilen lernen.",
  ],
  [
    'The balance sent "{line}": the comma can be a decimal comma or a mark of thousands. Say once which it is for this balance.',
    "Die Waage sandte „{line}“: das Komma kann Dezimalkomma oder Tausenderzeichen sein. Für diese Waage einmal sagen, was es ist.",
  ],
  [
    'The balance sent a line that is not understood: "{line}". No number was taken from it. If all lines look like this, check speed and parity, or learn its lines.',
    "Die Waage sandte eine Zeile, die nicht verstanden wird: „{line}“. Keine Zahl wurde daraus genommen. Sehen alle Zeilen so aus, Geschwindigkeit und Parität prüfen oder ihre Zeilen lernen.",
  ],
  [
    'The check behind "{line}" is wrong or follows no known sum, so the line was dropped. If this goes on, check the cable and the parity.',
    "Die Prüfung hinter „{line}“ ist falsch oder folgt keiner bekannten Summe, die Zeile wurde verworfen. Geht das so weiter, Kabel und Parität prüfen.",
  ],
  [
    'The balance sent "{line}" without a decimal point. Say how many decimals its display shows; until then it is no weight.',
    "Die Waage sandte „{line}“ ohne Dezimalzeichen. Sagen, wie viele Stellen ihre Anzeige hat; bis dahin ist es kein Gewicht.",
  ],
  [
    "More than {n} characters came without a line end. That is noise or a wrong speed: check speed and parity.",
    "Mehr als {n} Zeichen kamen ohne Zeilenende. Das ist Störung oder eine falsche Geschwindigkeit: Geschwindigkeit und Parität prüfen.",
  ],
  [
    '"{line}" is not as long as the lines before it, so characters may be missing. It is taken once lines of this length have come three times in a row.',
    "„{line}“ ist nicht so lang wie die Zeilen davor, es können Zeichen fehlen. Sie gilt, sobald Zeilen dieser Länge dreimal nacheinander kamen.",
  ],
  // ports
  [
    "There is no port {port}. Plug the balance in and switch it on; it is tried again by itself. If it came back under another name, choose the name under /dev/serial/by-id.",
    "Es gibt keinen Anschluss {port}. Die Waage anstecken und einschalten; er wird von selbst neu versucht. Kam sie unter anderem Namen zurück, den Namen unter /dev/serial/by-id wählen.",
  ],
  [
    "{port} is in use by another program. Close that program, or unplug the balance and plug it in again.",
    "{port} wird von einem anderen Programm benutzt. Dieses schließen oder die Waage ab- und wieder anstecken.",
  ],
  [
    "{port} could not be opened: {why}. It is tried again by itself.",
    "{port} ließ sich nicht öffnen: {why}. Es wird von selbst neu versucht.",
  ],
  [
    "{port} is not a serial port. Choose a port such as /dev/serial/by-id/… or /dev/ttyUSB0.",
    "{port} ist kein serieller Anschluss. Einen wählen wie /dev/serial/by-id/… oder /dev/ttyUSB0.",
  ],
  // waiting for rest
  [
    "It was asked, and nothing came back. Check the request and its line end against the manual, and the cable.",
    "Sie wurde gefragt, und nichts kam zurück. Die Anfrage und ihr Zeilenende mit der Anleitung vergleichen und das Kabel prüfen.",
  ],
  ["Nothing was captured within {n} s.", "Innerhalb von {n} s wurde nichts abgelesen."],
  [
    "Nothing was captured within {n} s. {because} Shield the balance from draught, or take it by hand.",
    "Innerhalb von {n} s wurde nichts genommen. {because} Die Waage vor Luftzug schützen oder von Hand nehmen.",
  ],
  [
    "The capture was called off. Nothing was taken.",
    "Die Ablesung wurde abgebrochen. Nichts wurde genommen.",
  ],
  ["{why} Nothing was captured.", "{why} Nichts wurde genommen."],
  ["Waiting for the next line.", "Die nächste Zeile wird erwartet."],
  ["Waiting for {n} more line.", "Noch {n} Zeile wird erwartet."],
  ["No line has come yet.", "Noch kam keine Zeile."],
  ["The balance says that it is still moving.", "Die Waage sagt, dass sie sich noch bewegt."],
  [
    "Two lines marked as steady do not agree. Waiting for the next.",
    "Zwei als ruhig bezeichnete Zeilen stimmen nicht überein. Die nächste wird erwartet.",
  ],
  [
    "The balance does not say when it is steady: watching it for {n} s more.",
    "Die Waage sagt nicht, wann sie ruht: sie wird noch {n} s beobachtet.",
  ],
  [
    "Still moving: {n} last places within {n1} s, allowed {n2}.",
    "Noch bewegt: {n} letzte Stellen in {n1} s, erlaubt {n2}.",
  ],
  [
    "Still drifting by {n} last places a second, allowed {n1}.",
    "Wandert noch um {n} letzte Stellen in der Sekunde, erlaubt {n1}.",
  ],
  [
    "The unit changed ({units}). Readings in two units are not mixed.",
    "Die Einheit wechselte ({units}). Ablesungen in zwei Einheiten werden nicht gemischt.",
  ],
  [
    "Net and gross weights are mixed. Waiting for lines of one kind.",
    "Netto- und Bruttogewichte sind gemischt. Zeilen einer Art werden erwartet.",
  ],
  [
    "the device itself ({identity}), in whichever socket it is plugged",
    "das Gerät selbst ({identity}), in welcher Buchse es auch steckt",
  ],
  [
    "this socket, because another device calls itself the same",
    "diese Buchse, weil ein anderes Gerät sich ebenso nennt",
  ],
  [
    "this path: {device} tells no name of its own, so another device on it is taken for the same",
    "diesen Pfad: {device} nennt keinen eigenen Namen, ein anderes Gerät daran wird also für dasselbe gehalten",
  ],
  [
    "this path: the system knows no lasting name for it",
    "diesen Pfad: das System kennt keinen bleibenden Namen dafür",
  ],
  [
    "this network address: nothing else tells which balance answers",
    "diese Netzadresse: nichts anderes sagt, welche Waage antwortet",
  ],
  [
    "this raw USB device; its number may be another after plugging in",
    "dieses rohe USB-Gerät; nach dem Einstecken kann seine Nummer eine andere sein",
  ],
  [
    "The number of decimals changed. Waiting until it keeps still.",
    "Die Zahl der Stellen wechselte. Es wird gewartet, bis sie bleibt.",
  ],
];
