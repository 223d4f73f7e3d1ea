/** Where a caution belongs: a page shows those of its own moment, and no others. */
export type CautionMoment = "before-wetting" | "magnet" | "surface-test" | "metal" | "buying" | "report";

/** One caution, in words a person at a counter reads before acting. */
export interface Caution {
  id: string;
  moment: CautionMoment;
  title: string;
  says: string;
  /** for moment "metal": shown when a metal still alive holds at least this share of the element */
  element?: { symbol: string; share: number };
  source: string;
}

const practice = "common practice";

/** The usual cautions; local codes and licensed practice come before them. */
export const cautions: readonly Caution[] = [
  {
    id: "porous-stones",
    moment: "before-wetting",
    title: "Do not wet these stones",
    says: "Pearl, opal, turquoise, coral, amber, lapis lazuli, malachite and oiled emerald drink water or lose their oil; a wetting agent or warm water harms them too. Any stone at all makes the density that of metal and stone together.",
    source: "jewellers' care pages",
  },
  {
    id: "glued-or-strung",
    moment: "before-wetting",
    title: "Nothing glued, strung or with a movement",
    says: "Glue softens, thread drinks, and a watch is ruined. Leave them dry.",
    source: practice,
  },
  {
    id: "sealed-or-patinated",
    moment: "before-wetting",
    title: "Not out of a sealed holder, not off a patina",
    says: "Opening a holder or washing an old surface can cost more than the metal is worth. Ask the owner and record the consent.",
    source: practice,
  },
  {
    id: "hollow-or-filled",
    moment: "before-wetting",
    title: "Hollow or filled pieces",
    says: "Water goes in and stays, the piece weighs more than it did, and the density says nothing about the metal. Weigh dry again afterwards.",
    source: practice,
  },
  {
    id: "strong-magnets",
    moment: "magnet",
    title: "Strong magnets",
    says: "They pinch fingers and shatter, disturb pacemakers and cards, and shift the reading of a balance from a hand's breadth away and more. Hang the piece, or move well away from the balance.",
    source: practice,
  },
  {
    id: "acids",
    moment: "surface-test",
    title: "Test acids",
    says: "They burn eyes, skin and lungs and give off poisonous fumes. Only for trained people, with goggles, gloves and an extractor; never near bleach, never on porous stones, never as a first test, never before the piece is weighed. Aqua regia gives off chlorine. Rinse, and follow the local rules for waste.",
    source: `${practice}; aqua regia from memory`,
  },
  {
    id: "scratches",
    moment: "surface-test",
    title: "A scratch stays",
    says: "Scratch, touch and drill marks lower the value of a piece for good. Ask the owner first.",
    source: practice,
  },
  {
    id: "lead",
    moment: "metal",
    element: { symbol: "Pb", share: 0.01 },
    title: "Lead",
    says: "Wash hands, do not eat or smoke at the bench, do not file it dry. EU and UK law limits it in jewellery to 0.05 %.",
    source: "REACH annex XVII entry 63",
  },
  {
    id: "cadmium",
    moment: "metal",
    element: { symbol: "Cd", share: 0.0005 },
    title: "Cadmium",
    says: "Old solders hold it. Never heat or melt it without extraction: the fume kills. EU and UK law limits it in jewellery to 0.01 % of each metal part.",
    source: "REACH annex XVII entry 23; fume from memory",
  },
  {
    id: "beryllium",
    moment: "metal",
    element: { symbol: "Be", share: 0.0005 },
    title: "Beryllium copper",
    says: "Its dust harms the lungs for life: do not file, grind or sand it.",
    source: "from memory",
  },
  {
    id: "nickel",
    moment: "metal",
    element: { symbol: "Ni", share: 0.02 },
    title: "Nickel",
    says: "It brings on skin allergy; its release from what is worn on the skin is limited (0.5 µg/cm² a week, 0.2 for posts).",
    source: "REACH annex XVII entry 27",
  },
  {
    id: "thallium",
    moment: "metal",
    element: { symbol: "Tl", share: 0.0005 },
    title: "Thallium",
    says: "Very poisonous through the skin: do not handle it.",
    source: "from memory",
  },
  {
    id: "mercury",
    moment: "metal",
    element: { symbol: "Hg", share: 0.0001 },
    title: "Mercury",
    says: "Gold with a silvery, greasy skin may carry amalgam: do not heat it.",
    source: "from memory",
  },
  {
    id: "uranium",
    moment: "metal",
    element: { symbol: "U", share: 0.01 },
    title: "Uranium",
    says: "As dense as gold, weakly radioactive, poisonous; its filings burn by themselves, and in most countries it may not be held without a licence. Do not file, scratch or acid-test it; set it aside and ask the authority.",
    source: "US 10 CFR 40.13, 40.25; elsewhere local law",
  },
  {
    id: "trade-weighing",
    moment: "buying",
    title: "Weighing for trade",
    says: "Only the verified balance's own indication counts for buying and selling, within its marked range. In the United Kingdom precious metal is weighed for trade on accuracy class I or II only. The suspended reading and the density are never a trade quantity; other countries have other rules.",
    source: "UK SI 2000/3236 reg. 28; elsewhere EU 2014/31/EU and OIML R 76 (from memory)",
  },
  {
    id: "hallmarking",
    moment: "buying",
    title: "Hallmarks and dealing",
    says: "Describing unmarked pieces as gold, silver, platinum or palladium is restricted in many countries, and dealing needs a licence and a register in some. Local law comes first.",
    source: "for example UK Hallmarking Act 1973",
  },
  {
    id: "not-an-assay",
    moment: "report",
    title: "A density is evidence, not an assay",
    says: "It sees the whole volume and cannot name a metal. The referee methods are cupellation for gold (ISO 11426) and potentiometric titration for silver (ISO 11427), done by licensed laboratories on a sample.",
    source: "ISO 11426:2021, ISO 11427:2024",
  },
];
