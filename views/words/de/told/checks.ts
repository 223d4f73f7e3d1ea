import type { ToldPair } from "../../told-pair.ts";

/** What checks and their charts found, and what to do. */
export const checks: readonly ToldPair[] = [
  [
    "The thermometer reads {n} °C too low {where} (u {n1} °C), {how} {n2} °C.",
    "Das Thermometer zeigt {where} {n} °C zu wenig (u {n1} °C), {how} {n2} °C.",
  ],
  [
    "The thermometer reads {n} °C too high {where} (u {n1} °C), {how} {n2} °C.",
    "Das Thermometer zeigt {where} {n} °C zu viel (u {n1} °C), {how} {n2} °C.",
  ],
  [
    "Record it: {n} °C is added to its readings from now on.",
    "Notieren: ab jetzt werden {n} °C zu seinen Ablesungen addiert.",
  ],
  [
    "Crush the ice finer, drain surplus water, wait five minutes and try again. If it stays, use another thermometer.",
    "Das Eis feiner zerstoßen, überschüssiges Wasser abgießen, fünf Minuten warten und neu versuchen. Bleibt es so, ein anderes Thermometer nehmen.",
  ],
  [
    "Make an ice point with both to see which one is off, and do not use that one.",
    "Mit beiden einen Eispunkt machen, um zu sehen, welches falsch ist, und dieses nicht benutzen.",
  ],
  [
    "The errors depart from a straight line by {mass} at {load}, within the {most} allowed.",
    "Die Fehler weichen bei {load} um {mass} von einer Geraden ab, innerhalb der erlaubten {most}.",
  ],
  [
    "The errors depart from a straight line by {mass} at {load}, more than the {most} allowed.",
    "Die Fehler weichen bei {load} um {mass} von einer Geraden ab, mehr als die erlaubten {most}.",
  ],
  [
    "Span low by {n} %: it cancels in a density, not in a mass.",
    "Spanne um {n} % zu klein: das hebt sich in einer Dichte auf, nicht in einer Masse.",
  ],
  [
    "Span high by {n} %: it cancels in a density, not in a mass.",
    "Spanne um {n} % zu groß: das hebt sich in einer Dichte auf, nicht in einer Masse.",
  ],
  [
    "At {load} the weights are less certain than that limit.",
    "Bei {load} sind die Gewichte unsicherer als diese Grenze.",
  ],
  [
    "Use weights of a finer class, or calibrated ones, to see more with this test.",
    "Gewichte einer feineren Klasse oder kalibrierte nehmen, um mit dieser Prüfung mehr zu sehen.",
  ],
  [
    "Record it; the half-width goes into every later budget of this balance.",
    "Notieren; die halbe Breite geht in jedes spätere Budget dieser Waage ein.",
  ],
  [
    "Level and adjust the balance as its own manual says, clean under the pan, and repeat the test. Until then weigh dry and immersed close to a checked load.",
    "Die Waage nach ihrer Anleitung ausrichten und justieren, unter der Schale reinigen und die Prüfung wiederholen. Bis dahin trocken und eingetaucht nahe einer geprüften Last wiegen.",
  ],
  ["s = {s} from {n} weighings, within {most}.", "s = {s} aus {n} Wägungen, innerhalb von {most}."],
  [
    "The display hides the rest: budgets use {floor}.",
    "Die Anzeige verbirgt den Rest: Budgets nehmen {floor}.",
  ],
  [
    "s = {s} from {n} weighings: more than the {most} it may be.",
    "s = {s} aus {n} Wägungen: mehr als die {most}, die es sein dürfen.",
  ],
  [
    "s = {s} from {n} weighings: more than the house's {house} by an F-test (chance {n1} %).",
    "s = {s} aus {n} Wägungen: nach einem F-Test mehr als die {house} des Hauses (Zufall {n1} %).",
  ],
  [
    "Record it; it goes into every later budget of this balance.",
    "Notieren; es geht in jedes spätere Budget dieser Waage ein.",
  ],
  [
    "Look for draught, vibration, a balance not warmed up or not level; then repeat the whole test.",
    "Nach Luftzug, Erschütterung, einer nicht warm gelaufenen oder schiefen Waage sehen; dann die ganze Prüfung wiederholen.",
  ],
  [
    "Clean the wire, add a trace of wetting agent, come to the mark from the same side; then repeat the whole test.",
    "Den Draht reinigen, eine Spur Netzmittel zugeben, von derselben Seite zur Marke kommen; dann die ganze Prüfung wiederholen.",
  ],
  [
    "The {load} check weight reads {error} off, within {most}.",
    "Das Prüfgewicht {load} wird um {error} falsch angezeigt, innerhalb von {most}.",
  ],
  [
    "The {load} check weight reads {error} off, more than {most}.",
    "Das Prüfgewicht {load} wird um {error} falsch angezeigt, mehr als {most}.",
  ],
  ["Record it as a point of the check weight chart.", "Als Punkt der Karte des Prüfgewichts festhalten."],
  [
    "Clean weight and pan, level, let warm up, and weigh it again; every attempt is kept. If it stays, adjust the balance as its manual says and look back at what was weighed since the last good check.",
    "Gewicht und Schale reinigen, ausrichten, warm laufen lassen und neu wiegen; jeder Versuch wird behalten. Bleibt es so, die Waage nach ihrer Anleitung justieren und zurücksehen, was seit der letzten guten Prüfung gewogen wurde.",
  ],
  [
    "After the load the zero is off by {mass}, within {most}.",
    "Nach der Last ist die Null um {mass} falsch, innerhalb von {most}.",
  ],
  [
    "After the load the zero is off by {mass}, more than {most}.",
    "Nach der Last ist die Null um {mass} falsch, mehr als {most}.",
  ],
  ["Nothing to do.", "Nichts zu tun."],
  [
    "Let the balance warm up for an hour, look for crumbs, drops or a draught, and repeat. A battery near its end does this too.",
    "Die Waage eine Stunde warm laufen lassen, nach Krümeln, Tropfen oder Luftzug sehen und wiederholen. Auch eine fast leere Batterie tut das.",
  ],
  [
    "{piece}: found {found}, stated {stated}; E_n = {en}, within ±1. A fault below {n} g/cm³ would not have shown.",
    "{piece}: gefunden {found}, angegeben {stated}; E_n = {en}, innerhalb ±1. Ein Fehler unter {n} g/cm³ hätte sich nicht gezeigt.",
  ],
  [
    "{piece}: found {found}, stated {stated}; E_n = {en}, outside ±1. A fault below {n} g/cm³ would not have shown.",
    "{piece}: gefunden {found}, angegeben {stated}; E_n = {en}, außerhalb ±1. Ein Fehler unter {n} g/cm³ hätte sich nicht gezeigt.",
  ],
  [
    "Record it as a point of the reference density chart.",
    "Als Punkt der Karte der Referenzdichte festhalten.",
  ],
  [
    "A scratch or a dent changes the piece's mass, not its density: if its dry mass moved too, the piece itself is worn or dirty, and its stated value is to be found anew.",
    "Ein Kratzer oder eine Delle ändert die Masse des Stücks, nicht seine Dichte: hat sich auch seine trockene Masse geändert, ist das Stück selbst abgenutzt oder schmutzig, und sein angegebener Wert ist neu zu bestimmen.",
  ],
  [
    "Too low: bubbles, touching, wrong water temperature or dirt, in this order. Find the cause before the next piece is weighed.",
    "Zu niedrig: Blasen, Anstoßen, falsche Wassertemperatur oder Schmutz, in dieser Folge. Die Ursache finden, bevor das nächste Stück gewogen wird.",
  ],
  [
    "Too high: not covered, hanger in the dry reading, evaporation, water warmer than stated. Find the cause before the next piece is weighed.",
    "Zu hoch: nicht bedeckt, Aufhängung in der trockenen Ablesung, Verdunstung, Wasser wärmer als angegeben. Die Ursache finden, bevor das nächste Stück gewogen wird.",
  ],
  [
    "With {load} {place} the reading moves by {mass}, within {most}.",
    "Mit {load} {place} bewegt sich die Anzeige um {mass}, innerhalb von {most}.",
  ],
  [
    "With {load} {place} the reading moves by {mass}, more than {most}.",
    "Mit {load} {place} bewegt sich die Anzeige um {mass}, mehr als {most}.",
  ],
  [
    "Keep beaker and hook in the same place for zero and reading; then even this cancels.",
    "Becher und Haken bei Null und Ablesung am selben Platz lassen; dann hebt sich selbst das auf.",
  ],
  [
    "Level the balance, look for something touching the pan, and repeat. Until it passes, centre every load with care.",
    "Die Waage ausrichten, nachsehen, ob etwas die Schale berührt, und wiederholen. Bis sie besteht, jede Last sorgfältig in die Mitte stellen.",
  ],
  // charts
  ["taken before there were limits", "genommen, bevor es Grenzen gab"],
  ["in control", "in Ordnung"],
  ["passed at the {attempt} attempt", "bestanden beim {attempt} Versuch"],
  [
    "Mean {mean}, s {s} from {n} points, signed by {by}: {why}.",
    "Mittel {mean}, s {s} aus {n} Punkten, unterschrieben von {by}: {why}.",
  ],
  ["Provisional until {n} points.", "Vorläufig bis {n} Punkte."],
  ["{n} points and no limits yet.", "{n} Punkte und noch keine Grenzen."],
  ["{n} point and no limits yet.", "{n} Punkt und noch keine Grenzen."],
  ["Sign the first limits.", "Die ersten Grenzen unterschreiben."],
  [
    "Go on checking: {n} more points make provisional limits.",
    "Weiter prüfen: {n} weitere Punkte ergeben vorläufige Grenzen.",
  ],
  ["Out of control at the {attempt} attempt.", "Außer Kontrolle beim {attempt} Versuch."],
  [
    "The limits are signed, and nothing was measured under them yet.",
    "Die Grenzen sind unterschrieben, und noch wurde nichts unter ihnen gemessen.",
  ],
  ["Go on checking.", "Weiter prüfen."],
  [
    "Something shifted: water, thermometer, span, hanger or the piece itself.",
    "Etwas hat sich verschoben: Wasser, Thermometer, Spanne, Aufhängung oder das Stück selbst.",
  ],
  [
    "Something scatters: bubbles, draught, vibration or a dirty wire.",
    "Etwas streut: Blasen, Luftzug, Erschütterung oder ein schmutziger Draht.",
  ],
  [
    "Look at water, wire, level and draught before going on.",
    "Vor dem Weitermachen Wasser, Draht, Waagrechte und Luftzug ansehen.",
  ],
  ["1-3s: {why}.", "1-3s: {why}."],
  ["2-2s: {why}.", "2-2s: {why}."],
  ["R-4s: {why}.", "R-4s: {why}."],
  ["4-1s: {why}.", "4-1s: {why}."],
  ["10-x: {why}.", "10-x: {why}."],
  ["1-2s: {why}.", "1-2s: {why}."],
  ["Check weight: reading minus its value, {of}:", "Prüfgewicht: Ablesung minus Wert, {of}:"],
  ["Reference piece: density found, {of}:", "Referenzstück: gefundene Dichte, {of}:"],
  [
    "Stop. Find the cause, note it, check again, and look back at what was measured since the last good check.",
    "Anhalten. Die Ursache finden, notieren, neu prüfen und zurücksehen, was seit der letzten guten Prüfung gemessen wurde.",
  ],
  ["Warning.", "Warnung."],
  // a trainee beside the house
  [
    "{trainee}: s = {s} g/cm³ from {n} runs of {piece}, the house {house} g/cm³ with {n1} degrees of freedom.",
    "{trainee}: s = {s} g/cm³ aus {n} Durchgängen mit {piece}, das Haus {house} g/cm³ mit {n1} Freiheitsgraden.",
  ],
  [
    "F = {n}, chance {n1} %: no larger than the house by an F-test at 95 %.",
    "F = {n}, Zufall {n1} %: nach einem F-Test bei 95 % nicht größer als beim Haus.",
  ],
  [
    "F = {n}, chance {n1} %: larger than the house by an F-test at 95 %.",
    "F = {n}, Zufall {n1} %: nach einem F-Test bei 95 % größer als beim Haus.",
  ],
  [
    "Record it. A small scatter does not show a wrong mean: compare it on the reference density chart.",
    "Notieren. Eine kleine Streuung zeigt kein falsches Mittel: auf der Karte der Referenzdichte vergleichen.",
  ],
  [
    "Go through the procedure together: bubbles, the depth of the hanger, drying, patience. Then ten more runs.",
    "Das Vorgehen gemeinsam durchgehen: Blasen, Tiefe der Aufhängung, Trocknen, Geduld. Dann zehn weitere Durchgänge.",
  ],
  [
    'No check of a reference piece "{piece}" is kept. Right: the mark under which the house checks it.',
    "Keine Prüfung eines Referenzstücks „{piece}“ ist vorhanden. Richtig: das Zeichen, unter dem das Haus es prüft.",
  ],
  [
    "The house's own scatter of {piece} is not known: {n} good checks of it are kept, and {n1} are needed. Let the house check it first.",
    "Die Streuung des Hauses bei {piece} ist nicht bekannt: {n} gute Prüfungen sind vorhanden, {n1} sind nötig. Zuerst das Haus prüfen lassen.",
  ],
  [
    "In control, but only {how}, and no cause was noted.",
    "In Ordnung, aber nur {how}, und keine Ursache wurde notiert.",
  ],
  [
    "Ask for the cause and note it. Work may go on; a second warning in a row stops it.",
    "Nach der Ursache fragen und sie notieren. Die Arbeit darf weitergehen; eine zweite Warnung in Folge hält sie an.",
  ],
  ["In control: {how}.", "In Ordnung: {how}."],
  ["beyond three s of the mean", "über drei s vom Mittel"],
  ["two in a row beyond two s on the same side", "zwei nacheinander über zwei s auf derselben Seite"],
  ["two in a row beyond two s on opposite sides", "zwei nacheinander über zwei s auf verschiedenen Seiten"],
  ["four in a row beyond one s on the same side", "vier nacheinander über ein s auf derselben Seite"],
  ["ten in a row on the same side of the mean", "zehn nacheinander auf derselben Seite des Mittels"],
  ["beyond two s of the mean", "über zwei s vom Mittel"],
  ['"{typed}" is no class. Right: {classes}.', "„{typed}“ ist keine Klasse. Richtig: {classes}."],
  [
    "New limits need a name and a reason. Sign them, and say what changed.",
    "Neue Grenzen brauchen einen Namen und einen Grund. Unterschreiben und sagen, was sich geändert hat.",
  ],
  [
    "Limits from {n} points would be guesswork. Right: at least {n1}. Go on checking without limits until then.",
    "Grenzen aus {n} Punkten wären geraten. Richtig: mindestens {n1}. Bis dahin ohne Grenzen weiter prüfen.",
  ],
];

/** Places on the pan and the names of charts. */
export const checkNames: readonly ToldPair[] = [
  ["in melting ice", "in schmelzendem Eis"],
  ["beside the other thermometer", "neben dem anderen Thermometer"],
  ["within", "innerhalb von"],
  ["more than", "mehr als"],
  ["front left", "vorn links"],
  ["back left", "hinten links"],
  ["back right", "hinten rechts"],
  ["front right", "vorn rechts"],
  ["middle again", "in der Mitte noch einmal"],
  ["thermometer", "Thermometer"],
  ["{n} g on {balance}", "{n} g auf {balance}"],
  ["Check weight: reading minus its value, {of}", "Prüfgewicht: Ablesung minus Wert, {of}"],
  ["Reference piece: density found, {of}", "Referenzstück: gefundene Dichte, {of}"],
  ["Zero after the lift minus zero before, {of}", "Null nach dem Herausheben minus Null davor, {of}"],
  ["Dry mass after minus before, {of}", "Trockene Masse danach minus davor, {of}"],
  ["1st", "1."],
  ["2nd", "2."],
  ["3rd", "3."],
  ["{n}th", "{n}."],
];
