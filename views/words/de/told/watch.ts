import type { ToldPair } from "../../told.ts";

/** What the watch over the procedure sees, asks and advises. */
export const watch: readonly ToldPair[] = [
  // a display that does not move
  [
    "The display has stood at {text} {unit} without the least change since the reading before.",
    "Die Anzeige steht seit der vorigen Ablesung ohne die kleinste Änderung auf {text} {unit}.",
  ],
  [
    "Was the piece lifted off and put back in between?",
    "Wurde das Stück dazwischen abgehoben und wieder aufgelegt?",
  ],
  [
    "If it was: touch the pan. A display that does not move then is stuck; switch the balance off and on.",
    "Wenn ja: die Schale berühren. Eine Anzeige, die sich dann nicht bewegt, hängt; die Waage aus- und einschalten.",
  ],
  [
    "If it was not: set this reading aside. One load read twice is one reading.",
    "Wenn nicht: diese Ablesung beiseitelegen. Eine Last zweimal abgelesen ist eine Ablesung.",
  ],
  // readings in each other's boxes, or of the other method
  [
    "Dry {dry} is less than the immersed reading, {wet}. Changed over, they give about {density}.",
    "Trocken {dry} ist weniger als die eingetauchte Ablesung, {wet}. Vertauscht ergeben sie etwa {density}.",
  ],
  [
    "Dry {dry} is less than the rise, {wet}. Changed over, they give about {density}.",
    "Trocken {dry} ist weniger als der Anstieg, {wet}. Vertauscht ergeben sie etwa {density}.",
  ],
  ["Are the two readings in each other's boxes?", "Stehen die beiden Ablesungen im falschen Feld?"],
  [
    "Change them over; the readings stay as first entered.",
    "Vertauschen; die Ablesungen bleiben, wie sie eingegeben wurden.",
  ],
  [
    "If not: the hanger was probably not tared. Zero it hanging empty in the water.",
    "Wenn nicht: die Aufhängung war wohl nicht auf null gestellt. Leer im Wasser hängend auf null stellen.",
  ],
  [
    "If not: the balance was not zeroed with the beaker on the pan. Zero it and lower the piece again.",
    "Wenn nicht: die Waage stand mit dem Becher auf der Schale nicht auf null. Auf null stellen und das Stück noch einmal absenken.",
  ],
  [
    "As entered, the piece would have {density}, lighter than any metal. If {entered} is the displaced mass, it has about {other}.",
    "Wie eingegeben hätte das Stück {density}, leichter als jedes Metall. Ist {entered} die verdrängte Masse, hat es etwa {other}.",
  ],
  [
    "As entered, the piece would have {density}, lighter than any metal. If {entered} is the reading of the piece hanging in water, it has about {other}.",
    "Wie eingegeben hätte das Stück {density}, leichter als jedes Metall. Ist {entered} die Ablesung des im Wasser hängenden Stücks, hat es etwa {other}.",
  ],
  [
    "Does the water stand on the balance? Then the reading is the displaced mass.",
    "Steht das Wasser auf der Waage? Dann ist die Ablesung die verdrängte Masse.",
  ],
  [
    "Does the piece hang from the balance? Then the reading is the immersed one.",
    "Hängt das Stück an der Waage? Dann ist die Ablesung die eingetauchte.",
  ],
  ["Record it as beaker on the pan.", "Als Becher auf der Schale führen."],
  ["Record it as hung from the balance.", "Als an der Waage hängend führen."],
  [
    "If the method is right, the piece rests on the bottom: lift it clear and read again.",
    "Stimmt das Verfahren, liegt das Stück auf dem Boden: frei heben und neu ablesen.",
  ],
  // bubbles and repeats
  [
    "The density falls immersion by immersion: {densities}; the displaced mass grew by {mass}.",
    "Die Dichte fällt von Eintauchen zu Eintauchen: {densities}; die verdrängte Masse wuchs um {mass}.",
  ],
  [
    "Is the water fresh from the tap, so that bubbles grow on piece and hanger? Does the string drink?",
    "Kommt das Wasser frisch aus dem Hahn, sodass Blasen an Stück und Aufhängung wachsen? Saugt sich die Schnur voll?",
  ],
  [
    "Boil the water for five minutes, let it cool covered, and begin again with it.",
    "Das Wasser fünf Minuten kochen, zugedeckt abkühlen lassen und damit neu beginnen.",
  ],
  [
    "Brush the bubbles off under water and read at once.",
    "Die Blasen unter Wasser abstreifen und gleich ablesen.",
  ],
  [
    "Hang the piece on thin wire instead of string.",
    "Das Stück an dünnen Draht hängen statt an eine Schnur.",
  ],
  [
    "The immersions climbed and levelled off: {densities}. The first held about {mass} of bubbles.",
    "Die Werte stiegen und blieben dann stehen: {densities}. Am ersten hingen etwa {mass} Blasen.",
  ],
  ["Set the early, bubbly immersions aside?", "Die frühen Ablesungen mit Blasen beiseitelegen?"],
  [
    "Set them aside with the reason “bubbles leaving”; they stay in the record.",
    "Mit dem Grund „Blasen lösen sich“ beiseitelegen; sie bleiben im Protokoll.",
  ],
  [
    "If the piece is hollow or porous, dry it and weigh it again: a gain means water went in.",
    "Ist das Stück hohl oder porös, trocknen und noch einmal wiegen: eine Zunahme heißt, dass Wasser eindrang.",
  ],
  [
    "Still rising: {densities}. The displaced mass fell by {mass} over {n} immersions, so there is no mean to state yet.",
    "Steigt noch: {densities}. Die verdrängte Masse fiel um {mass} in {n} Ablesungen, ein Mittel gibt es also noch nicht.",
  ],
  [
    "Five immersions and no two agree: is the piece porous, hollow or drinking water?",
    "Fünf Ablesungen und keine zwei stimmen überein: ist das Stück porös oder hohl, saugt es Wasser?",
  ],
  ["Do bubbles still leave the piece?", "Lösen sich noch Blasen vom Stück?"],
  [
    "Stop the run. Dry the piece and weigh it dry: a gain means water inside.",
    "Die Reihe abbrechen. Das Stück trocknen und trocken wiegen: eine Zunahme heißt Wasser im Inneren.",
  ],
  [
    "Boil and cool the water, wet the piece in alcohol where it may be, and begin again.",
    "Das Wasser abkochen und abkühlen, das Stück, wo es das verträgt, mit Alkohol benetzen und neu beginnen.",
  ],
  ["Go on until two immersions agree.", "Weiter, bis zwei Ablesungen übereinstimmen."],
  [
    "Brush the piece under water, hang it on edge, use a trace of wetting agent.",
    "Das Stück unter Wasser abstreifen, hochkant hängen, eine Spur Netzmittel nehmen.",
  ],
  [
    "Repeats make up {n} % of the variance: even endless immersions would only bring U from {from} to {to} g/cm³.",
    "Wiederholungen tragen {n} % der Varianz: auch endloses Eintauchen brächte U nur von {from} auf {to} g/cm³.",
  ],
  [
    "Is the answer good enough, or should something other than the repeats be improved?",
    "Genügt die Antwort, oder soll etwas anderes als die Wiederholungen besser werden?",
  ],
  [
    "Look at the largest bar of the budget: thermometer, readability, bubbles or wire.",
    "Den größten Balken des Budgets ansehen: Thermometer, Ablesbarkeit, Blasen oder Draht.",
  ],
  [
    "Pool several identical pieces, or use a finer balance.",
    "Mehrere gleiche Stücke zusammen wiegen oder eine feinere Waage nehmen.",
  ],
  // drift
  [
    "While the piece hangs in the water the reading rises by {mass} a minute.",
    "Während das Stück im Wasser hängt, steigt die Anzeige um {mass} in der Minute.",
  ],
  [
    "While the piece hangs in the water the reading falls by {mass} a minute.",
    "Während das Stück im Wasser hängt, fällt die Anzeige um {mass} in der Minute.",
  ],
  [
    "Does water evaporate from the beaker, in a draught or from a wide cup?",
    "Verdunstet Wasser aus dem Becher, im Luftzug oder aus einem weiten Gefäß?",
  ],
  [
    "Do bubbles leave the piece, or does water go into it?",
    "Lösen sich Blasen vom Stück, oder dringt Wasser ein?",
  ],
  [
    "Do bubbles grow on the piece, or does it slowly swing, sink or touch?",
    "Wachsen Blasen am Stück, oder schwingt, sinkt oder berührt es langsam?",
  ],
  [
    "Take zero, reading, zero quickly; the loss between the zeros is then known.",
    "Rasch Null, Ablesung, Null nehmen; der Verlust zwischen den Nullen ist dann bekannt.",
  ],
  [
    "Use a narrow high cup with a slotted lid, out of the draught.",
    "Ein enges, hohes Gefäß mit geschlitztem Deckel nehmen, außerhalb des Luftzugs.",
  ],
  [
    "Wait until it moves less than one last place in ten seconds, then read.",
    "Warten, bis sie sich in zehn Sekunden um weniger als eine letzte Stelle bewegt, dann ablesen.",
  ],
  [
    "If it never rests: lift the piece out, dry it and weigh it dry. A gain means water inside.",
    "Ruht sie nie: das Stück herausheben, trocknen und trocken wiegen. Eine Zunahme heißt Wasser im Inneren.",
  ],
  // dry readings
  [
    "Dry before {before}, dry after {after}: gained {gain}, more than the {tolerable} this balance can scatter.",
    "Trocken vorher {before}, trocken nachher {after}: {gain} schwerer, mehr als die {tolerable}, um die diese Waage streut.",
  ],
  [
    "Dry before {before}, dry after {after}: lost {loss}, more than the {tolerable} this balance can scatter.",
    "Trocken vorher {before}, trocken nachher {after}: {loss} leichter, mehr als die {tolerable}, um die diese Waage streut.",
  ],
  ["Is this the same piece?", "Ist es dasselbe Stück?"],
  ["Is there water inside or still on the piece?", "Ist Wasser im Stück oder noch daran?"],
  [
    "Was it wet at the first dry weighing, or did dirt, a stone or a part come off?",
    "War es beim ersten Trockenwiegen nass, oder ging Schmutz, ein Stein oder ein Teil ab?",
  ],
  [
    "Compare the piece with its ticket and photograph before anything else.",
    "Das Stück zuerst mit Beleg und Foto vergleichen.",
  ],
  [
    "Dry it longer in warm air and weigh again; water that stays has filled pores or a hollow.",
    "Länger in warmer Luft trocknen und noch einmal wiegen; bleibendes Wasser füllt Poren oder einen Hohlraum.",
  ],
  [
    "Weigh it dry again and look into the beaker for what is missing.",
    "Noch einmal trocken wiegen und im Becher nach dem Fehlenden sehen.",
  ],
  [
    "A porous or hollow piece reads too dense as it fills: the density is no evidence of its metal.",
    "Ein poröses oder hohles Stück zeigt zu hohe Dichte, während es sich füllt: sie sagt nichts über sein Metall.",
  ],
  [
    "The dry readings lie {span} apart; this balance scatters by at most {tolerable}.",
    "Die trockenen Ablesungen liegen {span} auseinander; diese Waage streut höchstens um {tolerable}.",
  ],
  [
    "Was it the same piece each time, dry, and alone on the pan?",
    "War es jedes Mal dasselbe Stück, trocken und allein auf der Schale?",
  ],
  [
    "Dry the piece, let the balance return to zero and weigh it again.",
    "Das Stück trocknen, die Waage auf null kommen lassen und noch einmal wiegen.",
  ],
  [
    "Draughts and static wander too: close the shield and lay the piece in a metal dish.",
    "Auch Luftzug und Aufladung lassen sie wandern: Windschutz schließen und das Stück in eine Metallschale legen.",
  ],
  // slips of entry
  [
    "The readings changed their decimals: {fine} and {coarse}.",
    "Die Ablesungen wechselten die Stellen: {fine} und {coarse}.",
  ],
  [
    "Is it the same balance in the same setting, or did a typed reading lose its last figures?",
    "Ist es dieselbe Waage in derselben Einstellung, oder fehlen einer getippten Ablesung die letzten Stellen?",
  ],
  [
    "If figures were lost in typing (10.40 typed as 10.4), amend the reading as it was shown.",
    "Gingen beim Tippen Stellen verloren (10,40 als 10,4), die Ablesung berichtigen, wie sie angezeigt war.",
  ],
  [
    "If another balance or setting came in, take all readings of this piece again on one.",
    "Kam eine andere Waage oder Einstellung hinzu, alle Ablesungen dieses Stücks auf einer neu nehmen.",
  ],
  [
    "Water at {n} °C would be too hot to keep a hand in; {n1} °F is {n2} °C.",
    "Wasser mit {n} °C wäre zu heiß für eine Hand; {n1} °F sind {n2} °C.",
  ],
  [
    "Was the thermometer read in °F? Then the water is at {n} °C.",
    "Wurde das Thermometer in °F abgelesen? Dann hat das Wasser {n} °C.",
  ],
  ["Enter {n} °C.", "{n} °C eintragen."],
  [
    "Read the thermometer in the water again, in °C.",
    "Das Thermometer im Wasser noch einmal ablesen, in °C.",
  ],
  [
    "The dry reading is {mass}: no piece weighs that.",
    "Die trockene Ablesung ist {mass}: so viel wiegt kein Stück.",
  ],
  [
    "Was the balance zeroed with the piece on the pan?",
    "Wurde die Waage mit dem Stück auf der Schale auf null gestellt?",
  ],
  [
    "Zero the empty pan, then weigh the piece again.",
    "Die leere Schale auf null stellen, dann das Stück noch einmal wiegen.",
  ],
  [
    "The piece weighs {mass}; the {from} says {low} to {high}.",
    "Das Stück wiegt {mass}; laut {from} sind es {low} bis {high}.",
  ],
  ["Read as {unit}, it would fit.", "Als {unit} gelesen, würde es passen."],
  [
    "With the point one or two places over, it would fit.",
    "Mit dem Komma ein oder zwei Stellen weiter würde es passen.",
  ],
  [
    "Is this the piece of that ticket, dry and alone on the pan?",
    "Ist es das Stück dieses Belegs, trocken und allein auf der Schale?",
  ],
  ["Does the balance show {unit} rather than {other}?", "Zeigt die Waage {unit} statt {other}?"],
  [
    "Compare the piece with its photograph and ticket: mass is the fingerprint of a piece.",
    "Das Stück mit Foto und Beleg vergleichen: die Masse ist sein Fingerabdruck.",
  ],
  [
    "Look at the unit the balance shows, and at the decimal point of a typed reading.",
    "Auf die Einheit sehen, die die Waage zeigt, und auf das Komma einer getippten Ablesung.",
  ],
  [
    "The unit changed in mid-run: {first}, then {other} ({grams}).",
    "Die Einheit wechselte mitten in der Reihe: {first}, dann {other} ({grams}).",
  ],
  [
    "Did the balance really change to {unit}, or was the unit typed wrong?",
    "Wechselte die Waage wirklich auf {unit}, oder wurde die Einheit falsch getippt?",
  ],
  [
    "Set the balance back to {unit} and take the reading again.",
    "Die Waage auf {unit} zurückstellen und die Ablesung neu nehmen.",
  ],
  [
    "If both units are as shown, keep the readings: each is converted by itself.",
    "Sind beide Einheiten wie angezeigt, die Ablesungen behalten: jede wird für sich umgerechnet.",
  ],
  // zero and hanger
  [
    "The displaced mass comes out as {mass}: in water every piece loses some weight.",
    "Die verdrängte Masse ergibt sich zu {mass}: im Wasser wird jedes Stück leichter.",
  ],
  [
    "Was the piece under water, and was the empty hanger tared in the water before?",
    "War das Stück unter Wasser, und war die leere Aufhängung vorher im Wasser auf null gestellt?",
  ],
  [
    "Was the balance zeroed with the beaker and the empty hanger in place, before the piece went in?",
    "Stand die Waage mit Becher und leerer Aufhängung auf null, bevor das Stück hineinkam?",
  ],
  [
    "Was the flask topped up to the mark, and weighed full of water alone in the same way?",
    "War der Kolben bis zur Marke gefüllt und ebenso nur mit Wasser gewogen?",
  ],
  [
    "Take the zero again with the empty hanger in the water at its mark.",
    "Die Null mit der leeren Aufhängung, an ihrer Marke im Wasser, neu nehmen.",
  ],
  ["Immerse the piece fully and read again.", "Das Stück ganz eintauchen und neu ablesen."],
  [
    "As weighed: {density}, not {claim}. With the hanger ({mass}) taken out of the dry reading it would be {other}, which is.",
    "Wie gewogen: {density}, nicht {claim}. Ohne die Aufhängung ({mass}) in der trockenen Ablesung wären es {other}, und das passt.",
  ],
  [
    "Was the hanger on the pan, or the string on the piece, in the dry reading?",
    "Lag bei der trockenen Ablesung die Aufhängung auf der Schale oder die Schnur am Stück?",
  ],
  [
    "Weigh the bare piece dry; the hanger belongs only to the zero in the water.",
    "Das bloße Stück trocken wiegen; die Aufhängung gehört nur zur Null im Wasser.",
  ],
  [
    "The immersed reading, {mass}, seems not to hold the hanger: with the stated {hanger} left in it the density would be about {density}.",
    "Die eingetauchte Ablesung, {mass}, scheint die Aufhängung nicht zu enthalten: mit den angegebenen {hanger} darin gelassen wäre die Dichte etwa {density}.",
  ],
  [
    "If so, take the hanger's reading out of what was stated: the zero has taken it off.",
    "Wenn ja, die Ablesung der Aufhängung aus den Angaben nehmen: die Null hat sie schon abgezogen.",
  ],
  [
    "{density} is below {claim} ({low} and up), the immersions agree and the piece dried to the mass it had: a closed void of {n} % or more, or a lighter alloy.",
    "{density} liegt unter {claim} ({low} und mehr), die Eintauchungen stimmen überein, und das Stück hat getrocknet wieder seine Masse: ein geschlossener Hohlraum von {n} % oder mehr, oder eine leichtere Legierung.",
  ],
  ["Density cannot tell which.", "Die Dichte kann nicht sagen, welches von beiden."],
  [
    "Is there a shrink cavity, a core or another alloy inside?",
    "Steckt ein Lunker, ein Kern oder eine andere Legierung darin?",
  ],
  [
    "Ultrasound through the piece finds a void or a core without harm.",
    "Ultraschall durch das Stück findet einen Hohlraum oder Kern, ohne ihm zu schaden.",
  ],
  [
    "A drilled sample decides, with the owner's consent; a licensed laboratory takes it.",
    "Eine Bohrprobe entscheidet, mit Einwilligung des Eigentümers; ein zugelassenes Labor nimmt sie.",
  ],
  [
    "The water is at {water} °C, colder than a room.",
    "Das Wasser hat {water} °C und ist kälter als ein Raum.",
  ],
  [
    "Its density is known there, so the result stands as stated, but bubbles will grow on the piece while it warms.",
    "Seine Dichte ist dort bekannt, das Ergebnis gilt also wie angegeben; aber am Stück wachsen Blasen, während es wärmer wird.",
  ],
  [
    "Does it come fresh from the tap or the refrigerator?",
    "Kommt es frisch aus der Leitung oder dem Kühlschrank?",
  ],
  [
    "The water is stated at {water} °C, where it freezes.",
    "Das Wasser ist mit {water} °C angegeben, wo es gefriert.",
  ],
  [
    "Is there ice in the beaker, or was the thermometer off or not yet read?",
    "Ist Eis im Becher, oder war das Thermometer aus oder noch nicht abgelesen?",
  ],
  [
    "Ice lifts the piece: take it out and let the beaker stand in the room.",
    "Eis hebt das Stück: herausnehmen und den Becher im Raum stehen lassen.",
  ],
  [
    "Was the balance zeroed with the empty hanger hanging in the water at its mark?",
    "Stand die Waage auf null, als die leere Aufhängung an ihrer Marke im Wasser hing?",
  ],
  [
    "Hang the empty hanger in the water at its mark, zero, then immerse the piece again.",
    "Die leere Aufhängung an ihrer Marke ins Wasser hängen, auf null stellen, dann das Stück neu eintauchen.",
  ],
  [
    "After the immersion the empty hanger reads {zero}, the immersed reading with its sign turned: the zero moved while the piece was in the water.",
    "Nach dem Eintauchen zeigt die leere Aufhängung {zero}, die eingetauchte Ablesung mit umgekehrtem Zeichen: die Null verschob sich, während das Stück im Wasser war.",
  ],
  [
    "The live reading went from {from} to {to} in one step while the piece was in the water.",
    "Die Anzeige sprang von {from} auf {to}, während das Stück im Wasser war.",
  ],
  [
    "Was the zero or tare key pressed during the immersion?",
    "Wurde während des Eintauchens die Null- oder Tarataste gedrückt?",
  ],
  [
    "Lift the piece out, zero the empty hanger in the water, and immerse again.",
    "Das Stück herausheben, die leere Aufhängung im Wasser auf null stellen und neu eintauchen.",
  ],
  [
    "If the piece was lifted out or fell off at that moment, hang it again.",
    "Wurde das Stück in diesem Moment gehoben oder fiel es ab, neu einhängen.",
  ],
  [
    "The empty hanger read {before} before and {after} after: moved by {moved}, more than {tolerable}.",
    "Die leere Aufhängung zeigte vorher {before}, nachher {after}: um {moved} verschoben, mehr als {tolerable}.",
  ],
  [
    "Was the table or the wire knocked, or does water or a bubble cling to the hanger?",
    "Wurde an Tisch oder Draht gestoßen, oder hängt Wasser oder eine Blase an der Aufhängung?",
  ],
  [
    "Did something fall into the beaker, or does the stand or the thread lean on the balance?",
    "Fiel etwas in den Becher, oder lehnt der Ständer oder Faden an der Waage?",
  ],
  [
    "Was water splashed or carried out, or does a draught take it?",
    "Wurde Wasser verspritzt oder herausgetragen, oder nimmt es ein Luftzug mit?",
  ],
  [
    "Void this immersion with its reason and take zero, reading, zero again.",
    "Diese Ablesung mit ihrem Grund verwerfen und Null, Ablesung, Null neu nehmen.",
  ],
  [
    "Clean the wire with alcohol and always come to the mark from the same side.",
    "Den Draht mit Alkohol reinigen und immer von derselben Seite zur Marke kommen.",
  ],
  // the piece in the water
  [
    "The piece weighs {mass} and displaces {displaced}: about {density}, lighter than water.",
    "Das Stück wiegt {mass} und verdrängt {displaced}: etwa {density}, leichter als Wasser.",
  ],
  [
    "Does it float, or is it hollow, filled or holding air?",
    "Schwimmt es, oder ist es hohl, gefüllt oder hält es Luft?",
  ],
  [
    "A hollow or filled piece: density says nothing about its metal. Set it aside.",
    "Ein hohles oder gefülltes Stück: die Dichte sagt nichts über sein Metall. Beiseitelegen.",
  ],
  [
    "To measure it all the same, hang a sinker below it: weigh the sinker alone in the water, state that as the hanger's own reading, then weigh both together.",
    "Um es doch zu messen, einen Senkkörper darunterhängen: den Senkkörper allein im Wasser wiegen, das als eigene Ablesung der Aufhängung angeben, dann beide zusammen wiegen.",
  ],
  [
    "If it sinks: the zero was lost. Zero the empty hanger in the water and read again.",
    "Sinkt es: die Null ging verloren. Die leere Aufhängung im Wasser auf null stellen und neu ablesen.",
  ],
  [
    "Only {displaced} displaced by {mass}: about {density}, denser than any metal there is.",
    "Nur {displaced} verdrängt von {mass}: etwa {density}, dichter als jedes Metall.",
  ],
  [
    "Is the piece covered everywhere, with a finger's breadth of water above it?",
    "Ist das Stück überall bedeckt, eine Fingerbreite Wasser darüber?",
  ],
  [
    "Lower the piece until it is fully covered, hanger at its mark, and read again.",
    "Das Stück senken, bis es ganz bedeckt ist, Aufhängung an ihrer Marke, und neu ablesen.",
  ],
  [
    "The hanger may be in one reading and not in the other: zero it hanging empty in the water.",
    "Die Aufhängung steckt vielleicht in einer Ablesung und nicht in der anderen: leer im Wasser hängend auf null stellen.",
  ],
  [
    "With the beaker on the pan, evaporation and automatic zero both eat displaced mass: zero and read quickly.",
    "Mit dem Becher auf der Schale zehren Verdunstung und selbsttätige Null an der verdrängten Masse: rasch auf null stellen und ablesen.",
  ],
  [
    "The immersed reading is {mass}, so the density would be that of water: reads like an empty hook.",
    "Die eingetauchte Ablesung ist {mass}, die Dichte wäre also die von Wasser: das liest sich wie ein leerer Haken.",
  ],
  [
    "The beaker rose by {mass}; the densest metal of {dry} would make {least}.",
    "Der Becher stieg um {mass}; das dichteste Metall von {dry} ergäbe {least}.",
  ],
  [
    "Does the piece hang free, or has it fallen off and lies on the bottom?",
    "Hängt das Stück frei, oder ist es abgefallen und liegt am Boden?",
  ],
  [
    "Is the piece in the water, and does the scale follow slow small loads?",
    "Ist das Stück im Wasser, und folgt die Waage langsamen kleinen Lasten?",
  ],
  [
    "Hang the piece again, clear of wall and bottom, and read.",
    "Das Stück neu einhängen, frei von Wand und Boden, und ablesen.",
  ],
  [
    "Some scales swallow slow small changes near zero: leave a 20 g weight on the pan, zero, and lower the piece briskly.",
    "Manche Waagen schlucken nahe null langsame kleine Änderungen: ein 20-g-Gewicht auf der Schale lassen, auf null stellen, das Stück zügig absenken.",
  ],
  [
    "The beaker rose by {mass}, the whole weight of the piece: reads like a piece resting on the bottom.",
    "Der Becher stieg um {mass}, das ganze Gewicht des Stücks: das liest sich wie ein Stück, das am Boden liegt.",
  ],
  [
    "The piece would have {density}, lighter than any solid metal: reads like a piece that touches.",
    "Das Stück hätte {density}, leichter als jedes massive Metall: das liest sich wie ein Stück, das anstößt.",
  ],
  [
    "Does the piece hang free of the wall and the bottom? Is it solid metal?",
    "Hängt das Stück frei von Wand und Boden? Ist es massives Metall?",
  ],
  [
    "Lift the piece clear, wait until it hangs still, and read again.",
    "Das Stück frei heben, warten, bis es still hängt, und neu ablesen.",
  ],
  [
    "A hollow or filled piece, a stone, pearl or amber can be this light: do not leave it in the water.",
    "Ein hohles oder gefülltes Stück, ein Stein, Perle oder Bernstein kann so leicht sein: nicht im Wasser lassen.",
  ],
  // beside the claim
  [
    "{density} is below {claim} ({low} and up). {mass} too much displaced would explain it: one bubble of {size}.",
    "{density} liegt unter {claim} (ab {low}). {mass} zu viel verdrängt würde es erklären: eine Blase von {size}.",
  ],
  [
    "No bubbles, no touching, clean and solid, same depth as at the zero?",
    "Keine Blasen, kein Anstoßen, sauber und massiv, gleich tief wie beim Nullstellen?",
  ],
  [
    "Look from the side with a lamp, brush off bubbles, hang it free and read again.",
    "Mit einer Lampe von der Seite ansehen, Blasen abstreifen, frei hängen und neu ablesen.",
  ],
  [
    "Grease, lacquer, stones, solder and hollows lower the density of a true piece.",
    "Fett, Lack, Steine, Lot und Hohlräume senken die Dichte eines echten Stücks.",
  ],
  [
    "If all that is ruled out, the metal itself is lighter than claimed.",
    "Ist das alles ausgeschlossen, ist das Metall selbst leichter als angegeben.",
  ],
  [
    "{density} is above {claim} (up to {high}). {missing} too little displaced, or {heavy} too much in the dry reading, would explain it.",
    "{density} liegt über {claim} (bis {high}). {missing} zu wenig verdrängt oder {heavy} zu viel in der trockenen Ablesung würde es erklären.",
  ],
  [
    "Fully covered, bare piece in the dry reading, dry when weighed, hanger zeroed at the same depth?",
    "Ganz bedeckt, trocken nur das bloße Stück gewogen, dabei wirklich trocken, Aufhängung in gleicher Tiefe auf null gestellt?",
  ],
  [
    "Cover the piece by a finger's breadth and read again.",
    "Das Stück eine Fingerbreite bedecken und neu ablesen.",
  ],
  ["Weigh the bare piece, dry and without hanger.", "Das bloße Stück wiegen, trocken und ohne Aufhängung."],
  [
    "Evaporation and automatic zero eat displaced mass: zero again and read quickly.",
    "Verdunstung und selbsttätige Null zehren an der verdrängten Masse: neu auf null stellen und rasch ablesen.",
  ],
  [
    "If all that is ruled out, the piece holds something denser than claimed.",
    "Ist das alles ausgeschlossen, enthält das Stück etwas Dichteres als angegeben.",
  ],
  [
    "The water is at {water} °C and the room at {room} °C: {difference} °C warmer.",
    "Das Wasser hat {water} °C, der Raum {room} °C: {difference} °C wärmer.",
  ],
  [
    "The water is at {water} °C and the room at {room} °C: {difference} °C colder.",
    "Das Wasser hat {water} °C, der Raum {room} °C: {difference} °C kälter.",
  ],
  [
    "Has the water stood in the room, and was the thermometer in the beaker?",
    "Stand das Wasser im Raum, und war das Thermometer im Becher?",
  ],
  [
    "Let the beaker stand for an hour, better overnight, then read the thermometer in the water.",
    "Den Becher eine Stunde stehen lassen, besser über Nacht, dann das Thermometer im Wasser ablesen.",
  ],
  [
    "Cold tap water grows bubbles while it warms: boil and cool it first.",
    "Kaltes Leitungswasser bildet Blasen, während es sich erwärmt: vorher abkochen und abkühlen.",
  ],
];
