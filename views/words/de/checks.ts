import type { Words } from "../en/index.ts";

/** Die Prüfungen. */
export const checks: Words["checks"] = {
  title: "Prüfungen",
  limitsRefused: "Die neuen Grenzen wurden nicht gemerkt",
  closed: "Messplatz geschlossen",
  closedSince: (since) => `Der Messplatz ist seit ${since} geschlossen.`,
  weighingMarked: "Weiterwiegen ist möglich; jedes Protokoll bis dahin trägt diesen Vermerk.",
  toChecks: "Zu den Prüfungen",
  caption: "Die Prüfungen dieses Messplatzes",
  noneYet:
    "Noch keine ist gemacht, und gewogen wird trotzdem: Die Unsicherheiten beruhen dann auf der letzten Stelle der Waage und auf dem, was unter Einstellungen steht. Beginnen Sie mit dem Prüfgewicht, dann der Wiederholbarkeit.",
  empty: "Keine Prüfungen sind eingerichtet.",
  check: "Prüfung",
  stands: "Stand",
  last: "Zuletzt",
  next: "Nächste",
  standings: {
    "in order": "in Ordnung",
    due: "fällig",
    "never made": "nie gemacht",
    warning: "Warnung",
    stopped: "angehalten",
  },
  now: "jetzt",
  since: (when) => `seit ${when}`,
  holdsUntil: (when) => `gilt bis ${when}`,
  lookBack: "Zum Zurücksehen",
  lookBackLead:
    "Gewogen seit der letzten guten Prüfung. Nichts wird gelöscht; jedes behält dieses Zeichen, bis jemand es beantwortet.",
  profile: {
    title: "Was Budgets aus diesen Prüfungen nehmen",
    lead: "Jede Änderung ist eine Fassung im Hauptbuch, und jedes Protokoll nennt die, die es benutzt hat.",
    dry: "Wiederholbarkeit, trocken",
    immersed: "Wiederholbarkeit, eingetaucht",
    linearity: "Linearität",
    offCentre: "Last außer der Mitte, bei 100 g (in keinem Budget: siehe dort)",
    thermometer: "Thermometer",
    dof: (count) => ` mit ${count} Freiheitsgraden`,
    manyDof: " mit sehr vielen Freiheitsgraden",
    from: (day, by) => `${day} durch ${by}`,
    ofFailed: ", aus einer nicht bestandenen Prüfung: sie zählt, weil sie schlechter ist als die letzte gute",
    corrected: (celsius, u) => `${celsius} °C addiert, u = ${u} °C`,
  },
  sign: "Neue Grenzen unterschreiben",
  signLead:
    "Sie beruhen auf den bestandenen Punkten seit den letzten Grenzen und gelten ab jetzt, nie rückwärts. Die alten bleiben sichtbar.",
  by: "Name oder Kürzel",
  why: "Warum",
  whyHint: "erste Grenzen, neues Wasser, Waage versetzt, neue Aufhängung",
  signNow: "Diese Grenzen unterschreiben",
  limitsFrom: (when) => `Grenzen ab ${when}:`,
  limitsEntry: (number) => `Eintrag ${number} im Hauptbuch, unter dessen Unterschrift.`,
  olderLeftOut: "Gezeichnet aus den neuesten Wägungen; ältere stehen im Hauptbuch.",
};

export const checkForm: Words["checkForm"] = {
  problems: "Diese Eingaben bitte noch einmal ansehen",
  how: "Wie",
  attempt: (count) => `Versuch ${count} bei dieser Gelegenheit.`,
  attemptRest: "Die früheren bleiben und werden gezeichnet.",
  unit: "Einheit der Ablesungen",
  note: "Notiz",
  keep: "Diese Prüfung behalten",
  inside: "Innerhalb der Grenzen",
  outside: "Außerhalb der Grenzen",
  now: "Jetzt:",
  of: "Von",
  by: "Durch",
  at: "Um",
};

const weights = {
  class: { label: "Klasse der Gewichte", hint: "E2, F1, F2 oder M1; leer, wenn sie kalibriert sind" },
  expanded: {
    label: "oder U jedes angegebenen Werts",
    hint: "erweiterte Unsicherheit, k = 2, aus ihrer Kalibrierung",
  },
};

const weighed = {
  dry: { label: "trocken" },
  full: { label: "Flasche voll Wasser", hint: "nur mit der Flasche" },
  wet: { label: "eingetaucht, Anstieg, oder Flasche mit dem Stück" },
};

/** Jede geführte Prüfung: warum, wie, und ihre Eingaben. */
export const guides: Words["guides"] = {
  "check-weight": {
    title: "Prüfgewicht",
    why: "Ob die Waage heute zeigt, was sie soll. Ein Gewicht nahe der üblichen Last, jeden Tag vor dem ersten Stück.",
    steps: [
      "Waagrecht, sauber, warm gelaufen; mit leerer Schale auf null stellen.",
      "Das Gewicht mit Pinzette oder Tuch in die Mitte legen, zur Ruhe kommen lassen, ablesen.",
      "Jeder Versuch wird behalten und gezeichnet, auch ein misslungener.",
    ],
    rows: ["Wägung"],
    entries: { ...weights, stated: { label: "Angegebener Wert" }, reading: { label: "zeigt" } },
  },
  "zero-return": {
    title: "Null nach einer Last",
    why: "Ob die leere Schale auf ihre Null zurückkommt. Was daran fehlt, steckt in jeder verdrängten Masse.",
    steps: [
      "Die leere Schale ablesen, die übliche Last auflegen, abnehmen, die leere Schale wieder ablesen.",
      "Dreimal.",
    ],
    rows: ["Last"],
    entries: { before: { label: "Null vorher" }, after: { label: "Null nachher" } },
  },
  repeatability: {
    title: "Wiederholbarkeit",
    why: "Wie weit gleiche Wägungen streuen. Sie geht in jedes Budget ein und sagt, welche Massen für diese Waage zu klein sind.",
    steps: [
      "Ein Gewicht nahe der üblichen Last nehmen; was es genau wiegt, ist gleich.",
      "Die Waage auf null zur Ruhe kommen lassen, das Gewicht in die Mitte legen, ablesen, abnehmen.",
      "Zehnmal, jedes Mal von der leeren Schale.",
    ],
    rows: ["Ablesung"],
    entries: { reading: { label: "zeigt" } },
  },
  "immersed-repeatability": {
    title: "Wiederholbarkeit, eingetaucht",
    why: "Wie weit gleiche Wägungen im Wasser streuen: Draht, Meniskus und Wasser bewegen sich mit. Sie bestimmt die meisten Dichten.",
    steps: [
      "Ein massives Stück ins Wasser hängen, ganz bedeckt und frei von Blasen, mit der Aufhängung in gleicher Tiefe auf null gestellt.",
      "Ablesen, aus dem Wasser heben, wieder absenken, zur Ruhe kommen lassen, ablesen.",
      "Zehnmal; mindestens sechsmal.",
    ],
    rows: ["Eintauchen"],
    entries: { reading: { label: "zeigt" } },
  },
  linearity: {
    title: "Linearität",
    why: "Ob die Waage bei kleiner Last so richtig ist wie bei großer. Die verdrängte Masse ist klein, die trockene groß.",
    steps: [
      "Prüfgewichte mit bekannten Werten nehmen, vom kleinen bis zur größten Last.",
      "Aufsteigend wiegen. Den angegebenen Wert eintragen und was die Waage zeigt.",
      "Jedes wenn möglich mehrmals wiegen, davor jeweils auf null: eine Zeile je Wägung, mit demselben angegebenen Wert. Das Mittel zählt.",
      "Zeilen leer lassen, für die kein Gewicht da ist.",
    ],
    rows: ["Last"],
    entries: { ...weights, stated: { label: "angegebener Wert" }, reading: { label: "zeigt" } },
  },
  eccentricity: {
    title: "Last außer der Mitte",
    why: "Ob der Platz auf der Schale zählt. Er sollte nicht, aber ein Becher oder eine Aufhängung steht nie ganz in der Mitte.",
    steps: [
      "Ein Gewicht von etwa einem Drittel der Höchstlast nehmen.",
      "In der Mitte wiegen, dann auf halbem Weg zu jedem Rand, dann wieder in der Mitte.",
      "Kein Budget enthält dafür einen Anteil, aus diesem Grund: Eine Aufhängung zieht an einer Stelle, trocken wie eingetaucht; ihr Fehler wächst mit der Last wie ein Fehler der Spanne und hebt sich in der Dichte auf. Ein Becher, der stehen bleibt, ist bei Null und Ablesung gleich. Beides gilt nicht mehr, wenn das trockene Stück außer der Mitte der Schale liegt: dorthin legen, wo die Aufhängung zieht.",
    ],
    rows: ["Mitte", "Vorn links", "Hinten links", "Hinten rechts", "Vorn rechts", "Mitte noch einmal"],
    entries: { reading: { label: "zeigt" } },
  },
  "ice-point": {
    title: "Thermometer am Eispunkt",
    why: "Bei 20 °C ist ein halbes Grad 0,01 % der Dichte. Ein falscher Fühler sieht aus wie jeder andere.",
    steps: [
      "Ein Isoliergefäß mit zerstoßenem Eis aus destilliertem Wasser füllen und mit destilliertem Wasser auffüllen.",
      "Den Fühler in die Mitte halten, weg von der Wand, fünf Minuten warten: er sollte 0,0 °C zeigen.",
      "Herausnehmen, wieder hineinhalten, ablesen: dreimal.",
    ],
    rows: ["Ablesung"],
    entries: { reading: { label: "zeigt" } },
  },
  thermometer: {
    title: "Thermometer neben einem zweiten",
    why: "Ein monatlicher Blick, der kein Eis braucht: zwei Thermometer im selben gerührten Wasser müssen übereinstimmen.",
    steps: [
      "Beide in einen Becher zimmerwarmes Wasser halten, nebeneinander, gerührt.",
      "Beide zugleich ablesen: dreimal, im Abstand von einer Minute.",
    ],
    rows: ["Ablesung"],
    entries: {
      referenceU: {
        label: "Standardunsicherheit des zweiten Thermometers",
        hint: "die Hälfte seines U aus einer Kalibrierung, oder sein angegebenes ± durch 1,73",
      },
      stated: { label: "das zweite zeigt" },
      reading: { label: "das eigene zeigt" },
    },
  },
  reference: {
    title: "Referenzstück",
    why: "Das ganze Vorgehen auf einmal: Wasser, Draht, Thermometer und Waage müssen wieder die bekannte Dichte ergeben.",
    steps: [
      "Das Referenzstück nehmen: massiv, glatt, sauber, mit angegebener Dichte.",
      "Trocken und eingetaucht wiegen, genau wie das Stück eines Kunden.",
      "Jeden Versuch eintragen. Ein zweiter löscht den ersten nicht; beide werden gezeichnet.",
    ],
    rows: ["Eintauchen"],
    entries: {
      piece: { label: "Zeichen des Referenzstücks" },
      stated: { label: "Seine angegebene Dichte, g/cm³" },
      expanded: { label: "U dieses Werts, g/cm³", hint: "erweiterte Unsicherheit, k = 2" },
      celsius: { label: "Wassertemperatur" },
      ...weighed,
    },
  },
  trainee: {
    title: "Wer lernt, neben dem Haus",
    why: "Ob jemand Neues so gleichmäßig wiegt wie das Haus. Zehn Durchgänge mit dem Referenzstück, verglichen mit der hauseigenen Streuung durch einen F-Test, einseitig bei 95 %. Geschlossen wird dadurch nichts.",
    steps: [
      "Wer lernt, wiegt das Referenzstück zehnmal trocken und eingetaucht, jedes Mal von vorn: trocknen, neu einhängen, nach Blasen sehen.",
      "Die Streuung des Hauses ist die der geltenden Grenzen auf der Karte dieses Stücks, oder die seiner Prüfungen, solange keine Grenzen unterschrieben sind.",
      "Jeden Durchgang eintragen, auch einen misslungenen; das in der Notiz sagen.",
    ],
    rows: ["Durchgang"],
    entries: {
      trainee: { label: "Name der lernenden Person" },
      piece: { label: "Zeichen des Referenzstücks" },
      celsius: { label: "Wassertemperatur" },
      ...weighed,
    },
  },
};
