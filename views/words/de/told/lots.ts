import type { ToldPair } from "../../told.ts";

/** Doubts about a lot, and why something was not done with it. */
export const lots: readonly ToldPair[] = [
  [
    "As light as gold of {n} ‰ gets: so are red gold, zinc or nickel in it, a hollow, solder, a steel spring.",
    "So leicht, wie Gold von {n} ‰ sein kann: so leicht sind Rotgold, Zink oder Nickel darin, ein Hohlraum, Lot, eine Stahlfeder.",
  ],
  [
    "Unless it is red, hold a magnet to it and look for seams; cut it before it counts, or lay it with the suspects.",
    "Wenn es nicht rot ist, einen Magneten daranhalten und nach Nähten sehen; aufschneiden, bevor es zählt, oder zu den verdächtigen legen.",
  ],
  [
    "The pieces weigh {n} g more than the whole lot did.",
    "Die Stücke wiegen {n} g mehr als die ganze Partie.",
  ],
  [
    "Look for a piece weighed twice or one of another lot; water left in a hollow piece adds too.",
    "Nach einem zweimal gewogenen Stück suchen oder einem aus einer anderen Partie; auch Wasser in einem hohlen Stück kommt hinzu.",
  ],
  [
    "All {n} counted pieces are weighed, and {n1} g of the gross mass are missing.",
    "Alle {n} gezählten Stücke sind gewogen, und {n1} g der Bruttomasse fehlen.",
  ],
  [
    "Count again; look for a piece left in the bag and for stones or string weighed with the lot.",
    "Noch einmal zählen; nach einem Stück in der Tüte suchen und nach Steinen oder Faden, die mitgewogen wurden.",
  ],
  [
    "{n} tickets weigh {n1} g each, with densities that go together, and the pieces together are too heavy by just that.",
    "{n} Belege wiegen je {n1} g, mit Dichten, die zusammenpassen, und die Stücke zusammen sind um genau das zu schwer.",
  ],
  [
    "{n} tickets weigh {n1} g each, with densities that go together.",
    "{n} Belege wiegen je {n1} g, mit Dichten, die zusammenpassen.",
  ],
  [
    "Was one piece weighed twice? Lay them side by side.",
    "Wurde ein Stück zweimal gewogen? Beide nebeneinanderlegen.",
  ],
  [
    "Mass gained {n} g since dry: water inside.",
    "Masse seit der trockenen Wägung um {n} g gewachsen: Wasser darin.",
  ],
  [
    "Dry it before paying by weight; what it weighed dry at first still counts.",
    "Trocknen, bevor nach Gewicht gezahlt wird; was es zuerst trocken wog, gilt weiter.",
  ],
  ["Mass lost {n} g since the first weighing.", "Masse seit der ersten Wägung um {n} g kleiner."],
  [
    "Look for a stone or a part that came off, or for water that was in it at first.",
    "Nach einem Stein oder Teil suchen, das abging, oder nach Wasser, das zuerst darin war.",
  ],
  [
    "What came back weighs {n} g more than this ticket did: it is another piece.",
    "Was zurückkam, wiegt {n} g mehr als dieser Beleg: es ist ein anderes Stück.",
  ],
  [
    "What came back weighs {n} g less than this ticket did: it is another piece.",
    "Was zurückkam, wiegt {n} g weniger als dieser Beleg: es ist ein anderes Stück.",
  ],
  ["It weighs what ticket {ticket} weighs: swapped?", "Es wiegt, was Beleg {ticket} wiegt: vertauscht?"],
  [
    "Hold it against the photo and the ticket before it goes back.",
    "Vor der Rückgabe gegen Foto und Beleg halten.",
  ],
  [
    "Two pieces weigh each what the list says of the other: swapped.",
    "Zwei Stücke wiegen je, was die Liste vom anderen sagt: vertauscht.",
  ],
  [
    "Put the tickets right, void both records and weigh them again.",
    "Die Belege richtigstellen, beide Protokolle für ungültig erklären und neu wägen.",
  ],
  ["It weighs {n} g, and the list says {n1} g.", "Es wiegt {n} g, und die Liste sagt {n1} g."],
  [
    "Is it the piece of this ticket? Look at the photo and the marks.",
    "Ist es das Stück dieses Belegs? Foto und Stempel ansehen.",
  ],
  [
    'No piece of this lot has the ticket "{ticket}". Right: one of its list.',
    "Kein Stück dieser Partie hat den Beleg „{ticket}“. Richtig: einer aus ihrer Liste.",
  ],
  [
    "Which flag? Choose one, or write one in own words.",
    "Welches Merkzeichen? Eines wählen oder in eigenen Worten schreiben.",
  ],
  [
    "A flag needs a reason, such as: magnet held the clasp.",
    "Ein Merkzeichen braucht einen Grund, etwa: Magnet hielt den Verschluss.",
  ],
  [
    "The balance is not free for this now. Finish the piece on the bench, or type the mass.",
    "Die Waage ist dafür jetzt nicht frei. Das Stück auf dem Messplatz zu Ende bringen oder die Masse tippen.",
  ],
  [
    "Ticket {ticket} is still on the bench. Finish it or put it aside, then close the lot.",
    "Beleg {ticket} liegt noch auf dem Messplatz. Zu Ende bringen oder beiseitelegen, dann die Partie schließen.",
  ],
  [
    "The lot {lot} is closed and takes no more pieces. Open a new one.",
    "Die Partie {lot} ist geschlossen und nimmt keine Stücke mehr auf. Eine neue eröffnen.",
  ],
];
