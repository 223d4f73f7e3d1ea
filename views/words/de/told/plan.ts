import type { ToldPair } from "../../told.ts";

/** What a plan answers, and what fineness and two bodies come to. */
export const plan: readonly ToldPair[] = [
  [
    "This scale cannot tell {claim} from {others} here.",
    "Diese Waage kann hier {claim} nicht von {others} unterscheiden.",
  ],
  [
    "This scale can tell {claim} from {others} here, not from {rest}.",
    "Diese Waage kann hier {claim} von {others} unterscheiden, nicht von {rest}.",
  ],
  [
    "This scale can tell {claim} from {others} here.",
    "Diese Waage kann hier {claim} von {others} unterscheiden.",
  ],
  [
    "The piece displaces about {n} g; the density comes out within ±{n1} g/cm³ ({n2} %).",
    "Das Stück verdrängt etwa {n} g; die Dichte kommt auf ±{n1} g/cm³ heraus ({n2} %).",
  ],
  [
    "{n} pieces together displace about {n1} g; the density comes out within ±{n2} g/cm³ ({n3} %).",
    "{n} Stücke zusammen verdrängen etwa {n1} g; die Dichte kommt auf ±{n2} g/cm³ heraus ({n3} %).",
  ],
  ["That excludes {names}.", "Das schließt aus: {names}."],
  [
    "It does not tell {claim} from {names}; {ways} would.",
    "Sie unterscheidet {claim} nicht von {names}; dafür bräuchte es {ways}.",
  ],
  ["It does not tell {claim} from {names}.", "Sie unterscheidet {claim} nicht von {names}."],
  ["No density ever excludes {names}.", "Keine Dichte schließt je aus: {names}."],
  [
    "Not possible: the piece displaces about {n} g and the scale shows steps of {n1} g.",
    "Nicht möglich: das Stück verdrängt etwa {n} g, und die Waage zeigt Schritte von {n1} g.",
  ],
  ["It takes {ways}.", "Es braucht {ways}."],
  [
    "its band lies outside what this weighing would find",
    "sein Band liegt außerhalb dessen, was diese Wägung fände",
  ],
  ['"{typed}" is not above zero. {right}', "„{typed}“ liegt nicht über null. {right}"],
  ["Right: about what the piece weighs, such as 31.1.", "Richtig: etwa, was das Stück wiegt, wie 31,1."],
  [
    "Right: the standard deviation of a few readings of one piece, or nothing.",
    "Richtig: die Standardabweichung einiger Ablesungen eines Stücks, oder nichts.",
  ],
  [
    '"{typed}" pieces: right is a whole number from 1 to 1000.',
    "„{typed}“ Stücke: richtig ist eine ganze Zahl von 1 bis 1000.",
  ],
  // fineness
  [
    "If this is sound gold alloyed with {rest}, its fineness lies between {n} and {n1} ‰. It does not show that it is gold.",
    "Ist das gesundes Gold, legiert mit {rest}, liegt sein Feingehalt zwischen {n} und {n1} ‰. Es zeigt nicht, dass es Gold ist.",
  ],
  [
    "If this is sound silver alloyed with {rest}, its fineness lies between {n} and {n1} ‰. It does not show that it is silver.",
    "Ist das gesundes Silber, legiert mit {rest}, liegt sein Feingehalt zwischen {n} und {n1} ‰. Es zeigt nicht, dass es Silber ist.",
  ],
  [
    "No gold alloyed with {rest} has this density: they reach from {n} to {n1} g/cm³. Look for stones, hollows, a core, or another metal.",
    "Kein Gold, legiert mit {rest}, hat diese Dichte: sie reicht von {n} bis {n1} g/cm³. Nach Steinen, Hohlräumen, einem Kern oder einem anderen Metall sehen.",
  ],
  [
    "No silver alloyed with {rest} has this density: they reach from {n} to {n1} g/cm³. Look for stones, hollows, a core, or another metal.",
    "Kein Silber, legiert mit {rest}, hat diese Dichte: sie reicht von {n} bis {n1} g/cm³. Nach Steinen, Hohlräumen, einem Kern oder einem anderen Metall sehen.",
  ],
  // two bodies
  [
    "{first} of the first body in {second} of the second.",
    "{first} des ersten Körpers in {second} des zweiten.",
  ],
  ["The other body has a density of {density}.", "Der andere Körper hat eine Dichte von {density}."],
];

/** Labels, remedies and short reasons of the plan. */
export const planNames: readonly ToldPair[] = [
  [
    "Two bodies in one piece: stone and metal, core and skin",
    "Zwei Körper in einem Stück: Stein und Metall, Kern und Haut",
  ],
  [
    "What can have a density, and how thick a skin would be?",
    "Was kann eine Dichte haben, und wie dick wäre eine Haut?",
  ],
  ["copper", "Kupfer"],
  ["brass", "Messing"],
  ["nickel silver", "Neusilber"],
  ["cupronickel", "Kupfernickel"],
  ["lead", "Blei"],
  ["tungsten", "Wolfram"],
  ["steel", "Stahl"],
  ["fine silver", "Feinsilber"],
  ["a scale that shows {step}", "eine Waage, die {step} zeigt"],
  ["A scale that shows {step}", "Eine Waage, die {step} zeigt"],
  ["the piece hung from the balance", "das Stück an der Waage hängend"],
  ["The piece hung from the balance", "Das Stück an der Waage hängend"],
  [
    "the beaker on the pan and the piece hung in it from a stand",
    "der Becher auf der Schale und das Stück darin an einem Ständer",
  ],
  [
    "The beaker on the pan and the piece hung in it from a stand",
    "Der Becher auf der Schale und das Stück darin an einem Ständer",
  ],
  ["{n} like pieces weighed together", "{n} gleiche Stücke zusammen gewogen"],
  ["a piece of about {mass}", "ein Stück von etwa {mass}"],
  ["A piece of about {mass}", "Ein Stück von etwa {mass}"],
  ["a finer density would separate them", "eine feinere Dichte würde sie trennen"],
  ["no density separates them", "keine Dichte trennt sie"],
  ["its maker is free to choose its density", "wer es macht, wählt seine Dichte frei"],
  [
    "of other tests only a licensed laboratory's does",
    "von anderen Proben nur die eines zugelassenen Labors",
  ],
  ["Displaced mass, if it is what it is said to be", "Verdrängte Masse, wenn es ist, was angegeben wird"],
  ["The scale would then show", "Die Waage würde dann zeigen"],
  ["{dry} dry, {wet} immersed", "{dry} trocken, {wet} eingetaucht"],
  ["{dry} dry, a rise of {rise}", "{dry} trocken, einen Anstieg von {rise}"],
  ["Density", "Dichte"],
  ["That is", "Das sind"],
  ["Not told apart besides those below", "Nicht unterschieden außer den unten genannten"],
  ["any", "beliebig"],
  ["no answer", "keine Antwort"],
  ["Mass", "Masse"],
  ["Mass of one", "Masse eines Stücks"],
  ["displaces", "verdrängt"],
  [
    "{dry} dry, {less} more than the full flask of {ml} mL",
    "{dry} trocken, {less} mehr als der volle Kolben von {ml} mL",
  ],
  ["hung, steps of {step}", "hängend, Schritte von {step}"],
  ["water on the scale, steps of {step}", "Wasser auf der Waage, Schritte von {step}"],
  [
    "{claim}: how well the density comes out, {confidence} % of the time",
    "{claim}: wie genau die Dichte herauskommt, in {confidence} % der Fälle",
  ],
  [
    "{claim}, {n} pieces together: how well the density comes out, {confidence} % of the time",
    "{claim}, {n} Stücke zusammen: wie genau die Dichte herauskommt, in {confidence} % der Fälle",
  ],
  ["What fineness does a density leave open?", "Welchen Feingehalt lässt eine Dichte offen?"],
  // fineness and two bodies
  ["Fineness", "Feingehalt"],
  ["Fine {metal}, if so", "Feinmasse {metal}, wenn es so ist"],
  ["gold", "Gold"],
  ["silver", "Silber"],
  ["Width left by the measurement", "Breite aus der Messung"],
  ["Width left by the mixture law", "Breite aus dem Mischungsgesetz"],
  ["Width left by the freedom of the rest", "Breite aus der Freiheit des Rests"],
  ["With plainly added volumes", "Mit einfach addierten Volumen"],
  ["any colour", "jede Farbe"],
  ["with copper", "mit Kupfer"],
  ["any: {list}", "beliebig: {list}"],
  ["yellow: {list}", "gelb: {list}"],
  ["pink: {list}", "rosa: {list}"],
  ["red: {list}", "rot: {list}"],
  ["green: {list}", "grün: {list}"],
  ["yellow", "gelb"],
  ["pink", "rosa"],
  ["red", "rot"],
  ["green", "grün"],
  [
    "silver, copper and up to a fifth of zinc in any ratio",
    "Silber, Kupfer und bis zu einem Fünftel Zink in jedem Verhältnis",
  ],
  ["silver and copper both present, some zinc", "Silber und Kupfer beide vorhanden, etwas Zink"],
  ["mostly copper, a little silver", "meist Kupfer, wenig Silber"],
  ["silver and copper as in this house's melts", "Silber und Kupfer wie in den Schmelzen dieses Hauses"],
  ["nearly all copper", "fast nur Kupfer"],
  ["nearly all silver", "fast nur Silber"],
  ["First body", "Erster Körper"],
  ["Second body", "Zweiter Körper"],
  ["Share of the first by mass", "Anteil des ersten an der Masse"],
  ["Density of the other body", "Dichte des anderen Körpers"],
  ["Its mass", "Seine Masse"],
  ["Density of the metal, at least", "Dichte des Metalls, mindestens"],
];
