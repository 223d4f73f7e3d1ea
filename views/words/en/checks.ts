/** The Checks page and the form of a guided check. */
export const checks = {
  title: "Checks",
  limitsRefused: "The new limits were not kept",
  closed: "Bench closed",
  closedSince: (since: string) => `The bench is closed since ${since}.`,
  weighingMarked: "You can go on weighing; every record written until then carries this mark.",
  toChecks: "To the checks",
  caption: "The checks of this bench",
  noneYet:
    "None has been made yet, and the bench weighs all the same: its budgets then rest on the last digit of the balance and on what Settings say. Begin with the check weight, then the repeatability.",
  empty: "No checks are set up.",
  check: "Check",
  stands: "Stands",
  last: "Last",
  next: "Next",
  standings: {
    "in order": "in order",
    due: "due",
    "never made": "never made",
    warning: "warning",
    stopped: "stopped",
  },
  now: "now",
  since: (when: string) => `since ${when}`,
  holdsUntil: (when: string) => `holds until ${when}`,
  lookBack: "To look back at",
  lookBackLead:
    "Weighed since the last good check. Nothing is deleted; each keeps this mark until someone answers it.",
  profile: {
    title: "What budgets take from these checks",
    lead: "Each change is a version in the ledger, and every record names the one it used.",
    dry: "Repeatability, dry",
    immersed: "Repeatability, immersed",
    linearity: "Linearity",
    offCentre: "Off-centre load, for 100 g (in no budget: see there)",
    thermometer: "Thermometer",
    dof: (count: string) => ` with ${count} degrees of freedom`,
    manyDof: " with very many degrees of freedom",
    from: (day: string, by: string) => `${day} by ${by}`,
    ofFailed: ", from a failed check: it counts because it is worse than the last good one",
    corrected: (celsius: string, u: string) => `${celsius} °C added, u = ${u} °C`,
  },
  sign: "Sign new limits",
  signLead:
    "They rest on the passed points since the last limits and hold from now on, never backwards. The old ones stay visible.",
  by: "Your name or initials",
  why: "Why",
  whyHint: "first limits, new water, balance moved, new hanger",
  signNow: "Sign these limits",
  limitsFrom: (when: string) => `Limits from ${when}:`,
  limitsEntry: (number: number) => `Entry ${number} of the ledger, under its signature.`,
  olderLeftOut: "Drawn from the newest weighings; older ones stand in the ledger.",
};

export const checkForm = {
  problems: "These entries need another look",
  how: "How",
  attempt: (count: number) => `Attempt ${count} of this occasion.`,
  attemptRest: "The earlier ones stay and are drawn.",
  unit: "Unit of the readings",
  note: "Note",
  keep: "Keep this check",
  inside: "Inside its limits",
  outside: "Outside its limits",
  now: "Now:",
  of: "Of",
  by: "By",
  at: "At",
};

const weighed = {
  dry: { label: "dry" },
  full: { label: "flask full of water", hint: "by the flask only" },
  wet: { label: "immersed, rise, or flask with the piece" },
};

interface GuideWords {
  title: string;
  why: string;
  steps: readonly string[];
  /** one name for each row, or one word that is counted */
  rows: readonly string[];
  /** labels of the entries by their name, with a hint where one is needed */
  entries: Readonly<Record<string, { label: string; hint?: string }>>;
}

const weights = {
  class: { label: "Class of the weights", hint: "E2, F1, F2 or M1; empty if they are calibrated" },
  expanded: {
    label: "or U of each stated value",
    hint: "expanded uncertainty, k = 2, from their calibration",
  },
};

/** Each guided check: why, how, and its entries. Numbers of repeats and places: common practice. */
export const guides: Record<
  | "check-weight"
  | "zero-return"
  | "reference"
  | "trainee"
  | "repeatability"
  | "immersed-repeatability"
  | "linearity"
  | "eccentricity"
  | "ice-point"
  | "thermometer",
  GuideWords
> = {
  "check-weight": {
    title: "Check weight",
    why: "Whether the balance shows today what it should. One weight near your usual load, each day before the first piece.",
    steps: [
      "Level, clean, warmed up; zero with the pan empty.",
      "Put the weight on the middle with tweezers or a cloth, let it settle, read.",
      "Every attempt is kept and drawn, also one that fails.",
    ],
    rows: ["Weighing"],
    entries: { ...weights, stated: { label: "Stated value" }, reading: { label: "shows" } },
  },
  "zero-return": {
    title: "Zero after a load",
    why: "Whether the empty pan comes back to its zero. What it does not come back by is inside every displaced mass.",
    steps: [
      "Read the empty pan, put your usual load on, take it off, read the empty pan again.",
      "Three times.",
    ],
    rows: ["Load"],
    entries: { before: { label: "zero before" }, after: { label: "zero after" } },
  },
  repeatability: {
    title: "Repeatability",
    why: "How far equal weighings scatter. It enters every budget and says which masses are too small for this balance.",
    steps: [
      "Take one weight near your usual load; what it weighs exactly does not matter.",
      "Let the balance come to rest at zero, put the weight on the middle, read, take it off.",
      "Ten times, each time from an empty pan.",
    ],
    rows: ["Reading"],
    entries: { reading: { label: "shows" } },
  },
  "immersed-repeatability": {
    title: "Repeatability, immersed",
    why: "How far equal weighings in water scatter: the wire, the meniscus and the water move too. It rules most densities.",
    steps: [
      "Hang one solid piece in water, wholly covered and free of bubbles, zeroed with the hanger at the same depth.",
      "Read, lift it out of the water, lower it again, let it rest, read.",
      "Ten times; at least six.",
    ],
    rows: ["Immersion"],
    entries: { reading: { label: "shows" } },
  },
  linearity: {
    title: "Linearity",
    why: "Whether the balance is as right at a small load as at a large one. The displaced mass is small, the dry mass large.",
    steps: [
      "Use check weights whose values are known, from a small one to your largest load.",
      "Weigh them upwards. Enter the stated value and what the balance shows.",
      "Weigh each several times if you can, zeroed before each: one row a weighing, with the same stated value. Their mean counts.",
      "Leave rows empty that you have no weight for.",
    ],
    rows: ["Load"],
    entries: { ...weights, stated: { label: "stated value" }, reading: { label: "shows" } },
  },
  eccentricity: {
    title: "Off-centre load",
    why: "Whether the place on the pan matters. It should not, but a beaker or a hanger never stands quite in the middle.",
    steps: [
      "Take one weight of about a third of the capacity.",
      "Weigh it in the middle, then half-way towards each edge, then in the middle again.",
      "No budget holds a share for it, and this is why: a hanger pulls at one place, dry and immersed, so its error grows with the load like an error of span and cancels in the density. A beaker that stays where it stands is the same at zero and at the reading. Both end when the dry piece lies off the middle of the pan: put it where the hanger pulls.",
    ],
    rows: ["Middle", "Front left", "Back left", "Back right", "Front right", "Middle again"],
    entries: { reading: { label: "shows" } },
  },
  "ice-point": {
    title: "Thermometer at the ice point",
    why: "At 20 °C half a degree is 0.01 % of the density. A probe that went wrong looks like any other.",
    steps: [
      "Fill a vacuum flask with crushed ice of distilled water and top up with distilled water.",
      "Hold the probe in the middle, off the wall, and wait five minutes: it should show 0.0 °C.",
      "Take it out, put it back, read again: three times.",
    ],
    rows: ["Reading"],
    entries: { reading: { label: "shows" } },
  },
  thermometer: {
    title: "Thermometer beside a second one",
    why: "A monthly look that needs no ice: two thermometers in the same stirred water must agree.",
    steps: [
      "Hold both in one beaker of room-warm water, side by side, stirred.",
      "Read both at once: three times, a minute apart.",
    ],
    rows: ["Reading"],
    entries: {
      referenceU: {
        label: "Standard uncertainty of the second thermometer",
        hint: "half its U from a calibration, or its stated ± divided by 1.73",
      },
      stated: { label: "second shows" },
      reading: { label: "own shows" },
    },
  },
  reference: {
    title: "Reference piece",
    why: "The whole procedure at once: water, wire, thermometer and balance must give the known density again.",
    steps: [
      "Take the reference piece: solid, smooth, clean, with its stated density.",
      "Weigh it dry and immersed exactly as you weigh a customer's piece.",
      "Enter every attempt. A second try does not erase the first; both are drawn.",
    ],
    rows: ["Immersion"],
    entries: {
      piece: { label: "Mark of the reference piece" },
      stated: { label: "Its stated density, g/cm³" },
      expanded: { label: "U of that value, g/cm³", hint: "expanded uncertainty, k = 2" },
      celsius: { label: "Water temperature" },
      ...weighed,
    },
  },
  trainee: {
    title: "A trainee beside the house",
    why: "Whether somebody new weighs as steadily as the house does. Ten runs of the reference piece, judged against the house's own scatter by an F-test, one-sided at 95 %. It closes nothing.",
    steps: [
      "The trainee weighs the reference piece dry and immersed ten times, each time from the beginning: dry it, hang it anew, look for bubbles.",
      "The house's own scatter is that of the limits in force on the chart of this piece, or of its checks while no limits are signed.",
      "Enter every run, also one that went wrong; say so in the note.",
    ],
    rows: ["Run"],
    entries: {
      trainee: { label: "Name of the trainee" },
      piece: { label: "Mark of the reference piece" },
      celsius: { label: "Water temperature" },
      ...weighed,
    },
  },
};
