import type { ToldPair } from "../../told-pair.ts";

/** What a density says about a claim, what else it leaves alive, and what would decide. */
export const findings: readonly ToldPair[] = [
  [
    "No claim was made, and no metal of the library has this density: look for a hollow, filled or stone-set piece, or a fault in the procedure.",
    "Nichts wurde angegeben, und kein Metall der Sammlung hat diese Dichte: nach einem hohlen, gefüllten oder mit Steinen besetzten Stück sehen, oder nach einem Fehler im Vorgehen.",
  ],
  [
    "No claim was made. The density leaves alive: {names}.",
    "Nichts wurde angegeben. Nach der Dichte sind noch möglich: {names}.",
  ],
  [
    "The density is that of {claim}, and at {confidence} it excludes every other metal of the library and every mixture worth making.",
    "Die Dichte ist die von {claim} und schließt mit {confidence} jedes andere Metall der Sammlung und jede lohnende Mischung aus.",
  ],
  [
    "The density does not exclude {claim} at {confidence}, but it fits as well: {names}. No density separates these.",
    "Die Dichte schließt {claim} mit {confidence} nicht aus, passt aber auch zu: {names}. Keine Dichte trennt diese.",
  ],
  [
    "The interval {interval} lies wholly below the band of {claim}, {band}: at {confidence} the density excludes the claim.",
    "Das Intervall {interval} liegt ganz unter dem Band von {claim}, {band}: mit {confidence} schließt die Dichte die Angabe aus.",
  ],
  [
    "The interval {interval} lies wholly above the band of {claim}, {band}: at {confidence} the density excludes the claim.",
    "Das Intervall {interval} liegt ganz über dem Band von {claim}, {band}: mit {confidence} schließt die Dichte die Angabe aus.",
  ],
  [
    "A low result is first a suspicion of the procedure: rule out bubbles, touching and pores, then weigh again.",
    "Ein niedriges Ergebnis ist zuerst ein Verdacht gegen das Vorgehen: Blasen, Anstoßen und Poren ausschließen, dann neu wiegen.",
  ],
  [
    "A high result has few innocent causes: rule them out, then weigh again.",
    "Ein hohes Ergebnis hat wenige harmlose Ursachen: sie ausschließen, dann neu wiegen.",
  ],
  ["It fits {names}.", "Sie passt zu {names}."],
  [
    "The interval {interval} holds {claim} and also {names}, which a finer measurement would tell apart.",
    "Das Intervall {interval} enthält {claim} und auch {names}; eine feinere Messung würde sie unterscheiden.",
  ],
  [
    "The value lies where both bands nearly meet: no finer density decides here; use the separating test named.",
    "Der Wert liegt, wo beide Bänder sich fast berühren: keine feinere Dichte entscheidet hier; die genannte Trennprobe nehmen.",
  ],
  [
    "The half-width must {fall} g/cm³: {readability}, {mass}, or {n} like pieces weighed together would do it, as long as readings dominate the budget.",
    "Die halbe Breite muss {fall} g/cm³: {readability}, {mass} oder {n} gleiche Stücke zusammen gewogen täten es, solange die Ablesungen das Budget bestimmen.",
  ],
  // look-alikes
  ["its band {band} is not excluded", "sein Band {band} ist nicht ausgeschlossen"],
  [
    "its band {band} meets that of the claim: no density can separate them",
    "sein Band {band} trifft das der Angabe: keine Dichte kann sie trennen",
  ],
  [
    "its band {band} lies {n} g/cm³ from that of the claim: a finer density would separate them",
    "sein Band {band} liegt {n} g/cm³ von dem der Angabe: eine feinere Dichte würde sie trennen",
  ],
  [
    "its maker is free to choose the shares, so it can be given this density",
    "wer es macht, wählt die Anteile frei und kann ihm diese Dichte geben",
  ],
  [
    "its maker is free to choose the thickness of the skin, so it can be given this density",
    "wer es macht, wählt die Dicke der Haut frei und kann ihm diese Dichte geben",
  ],
  // separating tests
  [
    "State a claim, and the test that separates it is named here.",
    "Eine Angabe machen, dann steht hier die Probe, die sie trennt.",
  ],
  [
    "Hold a magnet to it: {pulled} is pulled, {other} is not.",
    "Einen Magneten daran halten: {pulled} wird angezogen, {other} nicht.",
  ],
  [
    "Measure the conductivity: {one} shows {n} % IACS, {other} {n2} % IACS; a skin thicker than the coil sees hides what is under it.",
    "Die Leitfähigkeit messen: {one} zeigt {n} % IACS, {other} {n2} % IACS; eine Haut, dicker als die Spule sieht, verbirgt, was darunter ist.",
  ],
  [
    "Measure the conductivity: {one} shows {n} % IACS, {other} {n2} to {n3} % IACS; a skin thicker than the coil sees hides what is under it.",
    "Die Leitfähigkeit messen: {one} zeigt {n} % IACS, {other} {n2} bis {n3} % IACS; eine Haut, dicker als die Spule sieht, verbirgt, was darunter ist.",
  ],
  [
    "Measure the conductivity: {one} shows {n} to {n1} % IACS, {other} {n2} % IACS; a skin thicker than the coil sees hides what is under it.",
    "Die Leitfähigkeit messen: {one} zeigt {n} bis {n1} % IACS, {other} {n2} % IACS; eine Haut, dicker als die Spule sieht, verbirgt, was darunter ist.",
  ],
  [
    "Measure the conductivity: {one} shows {n} to {n1} % IACS, {other} {n2} to {n3} % IACS; a skin thicker than the coil sees hides what is under it.",
    "Die Leitfähigkeit messen: {one} zeigt {n} bis {n1} % IACS, {other} {n2} bis {n3} % IACS; eine Haut, dicker als die Spule sieht, verbirgt, was darunter ist.",
  ],
  [
    "Measure the longitudinal sound speed through the thickness: {one} carries it at {speed}, {other} at {speed2}.",
    "Die Schallgeschwindigkeit (längs) durch die Dicke messen: {one} leitet mit {speed}, {other} mit {speed2}.",
  ],
  [
    "Hang it on a thread beside a strong magnet: {drawn} may drift towards it, {other} does not; some grades of the first do not either.",
    "An einem Faden neben einen starken Magneten hängen: {drawn} kann sich ihm nähern, {other} nicht; manche Sorten des ersten auch nicht.",
  ],
  [
    "No harmless test here separates {one} from {other}: a licensed laboratory does (gold ISO 11426, silver ISO 11427).",
    "Keine schonende Probe hier trennt {one} von {other}: ein zugelassenes Labor kann es (Gold ISO 11426, Silber ISO 11427).",
  ],
  [
    "No harmless test is left that separates what is alive beside {claim}: a licensed laboratory decides (gold ISO 11426, silver ISO 11427).",
    "Keine schonende Probe bleibt, die trennt, was neben {claim} möglich ist: ein zugelassenes Labor entscheidet (Gold ISO 11426, Silber ISO 11427).",
  ],
  [
    "{doing}: it separates {share} that are alive beside {claim}, such as {names}.",
    "{doing}: das trennt {share}, die neben {claim} möglich sind, wie {names}.",
  ],
  ["Hold a magnet to it next", "Als Nächstes einen Magneten daran halten"],
  ["Measure the conductivity next", "Als Nächstes die Leitfähigkeit messen"],
  [
    "Measure the sound speed through the thickness next",
    "Als Nächstes die Schallgeschwindigkeit durch die Dicke messen",
  ],
  // procedure, when the claim is excluded
  [
    "bubbles on the piece or the hanger: brush under water, immerse again, see whether the readings creep up",
    "Blasen an Stück oder Aufhängung: unter Wasser abstreifen, neu eintauchen, sehen, ob die Ablesungen steigen",
  ],
  [
    "the piece or the hanger touched the wall or the bottom",
    "das Stück oder die Aufhängung berührte Wand oder Boden",
  ],
  ["the hanger hung deeper than when it was zeroed", "die Aufhängung hing tiefer als beim Nullstellen"],
  ["the water was colder or saltier than entered", "das Wasser war kälter oder salziger als angegeben"],
  ["grease, lacquer or wax on the piece", "Fett, Lack oder Wachs am Stück"],
  [
    "closed pores of a casting, a hollow or filled piece, stones, solder",
    "geschlossene Gussporen, ein hohles oder gefülltes Stück, Steine, Lot",
  ],
  ["the piece was not wholly under water", "das Stück war nicht ganz unter Wasser"],
  [
    "the hanger was counted in the dry weight, or hung shallower than when it was zeroed",
    "die Aufhängung zählte beim Trockengewicht mit oder hing höher als beim Nullstellen",
  ],
  [
    "water evaporated between zero and reading, or the balance's zero tracking swallowed part of the rise",
    "Wasser verdunstete zwischen Null und Ablesung, oder die Nullnachführung der Waage schluckte einen Teil des Anstiegs",
  ],
  [
    "open pores still filling with water: weigh dry again and look for a gain",
    "offene Poren füllen sich noch mit Wasser: noch einmal trocken wiegen und nach einer Zunahme sehen",
  ],
  [
    "the water was warmer than entered, or taken as 1.000",
    "das Wasser war wärmer als angegeben oder wurde als 1,000 genommen",
  ],
  [
    "the piece was weighed dry while still wet (beaker on the pan)",
    "das Stück wurde trocken gewogen, als es noch nass war (Becher auf der Schale)",
  ],
];
