import type { ToldPair } from "../../told.ts";

/** Doubts about a lot, and why something was not done with it. */
export const lots: readonly ToldPair[] = [
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
