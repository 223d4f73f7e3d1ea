/** What a laboratory found later, held against the density. */
export const assay = {
  title: (ticket: string) => `Laboratory result of ${ticket}`,
  heading: "Laboratory result",
  problems: "These entries need another look",
  none: "None yet. The density leaves the fineness open; a laboratory decides between its ends.",
  enter: "Enter a laboratory result",
  follow: "Correct it, or enter a later one",
  all: "All laboratory results of this piece",
  fineness: "Fineness by the laboratory",
  finenessIs: (permille: string, metal: string) => `${permille} ‰ ${metal}`,
  finenessWithU: (permille: string, u: string, k: string, metal: string) =>
    `${permille} ± ${u} ‰ ${metal} (k = ${k}, as the laboratory states it)`,
  laboratory: "Laboratory",
  report: "Its report",
  method: "Its method",
  written: "Written down",
  reportIs: (number: string, date: string) => `${number}, ${date}`,
  writtenIs: (when: string, by: string) => (by === "" ? when : `${when} by ${by}`),
  byDensity: "Fineness by density",
  byDensityIs: (low: string, high: string) => `${low} to ${high} ‰`,
  impossible: "no sound alloy of this metal has the density measured",
  lies: "The laboratory lies",
  place: {
    inside: (permille: string) => `inside, ${permille} ‰ from the nearer end`,
    below: (permille: string) => `outside, ${permille} ‰ below the low end`,
    above: (permille: string) => `outside, ${permille} ‰ above the high end`,
  },
  withinItsU: (place: string) => `${place}; no more than the laboratory's own uncertainty`,
  fineByAssay: "Fine mass by the laboratory",
  fineByDensity: "Fine mass by density",
  fineRange: (low: string, high: string) => `${low} to ${high} g`,
  againstLow: "Against the low end",
  more: (grams: string) => `${grams} g more than the low end said`,
  less: (grams: string) => `${grams} g less than the low end said`,
  rest: "Rest of the alloy",
  split: (silver: string, copper: string, u: string) =>
    `silver to copper ${silver} : ${copper} reproduces the density (± ${u}, two standard uncertainties); zinc counts as copper here`,
  end: {
    copper: "all copper, within the uncertainty; zinc counts as copper here",
    silver: "all silver, within the uncertainty",
  },
  noneLight:
    "no split of silver and copper reproduces the density: with this gold even all copper would be denser. That hints at pores or a cavity in the piece, at zinc or another light metal in the rest, or at a sample unlike the whole",
  noneHeavy:
    "no split of silver and copper reproduces the density: with this gold even all silver would be lighter. That hints at palladium, platinum, lead or another heavy metal in the rest, or at a sample unlike the whole",
  hardlyARest: "so little is not gold that the density tells no split of it",
  hint: "The density was a density test and stays what it was. A sample must stand for the whole piece: a stirred melt, or drillings from both sides of a bar.",
  form: {
    metal: "Tested for",
    permille: "Fineness found",
    expanded: "Expanded uncertainty",
    expandedHint: "if the report states one",
    k: "Coverage factor",
    kHint: "as stated, mostly 2",
    laboratory: "Laboratory",
    report: "Number of its report",
    method: "Method",
    methodHint: "such as cupellation, ISO 11426; silver by potentiometry, ISO 11427",
    date: "Date of the report",
    reason: "Why another result is entered",
    reasonHint: "such as: second sample, or a figure mistyped",
    by: "Written by",
    go: "Write it down",
    stays: "What was written before stays in the ledger.",
  },
  list: {
    heading: "Every laboratory result written down",
    counts: "counts",
    earlier: "followed by a later one",
    setAside: (reason: string) => `set aside: ${reason}`,
    open: "Set this result aside",
    reason: "Why",
    go: "Set it aside",
  },
  house: {
    heading: "This house's melts so far",
    few: (melts: number, needed: number) =>
      `${melts} of the ${needed} gold melts with a laboratory result that it takes before they narrow the rest of the alloy.`,
    silent: (count: number) =>
      count === 1
        ? "1 melt with a laboratory result tells no split of silver and copper and is not counted."
        : `${count} melts with a laboratory result tell no split of silver and copper and are not counted.`,
    typical: (melts: number, mean: string, s: string, low: string, high: string) =>
      `${melts} gold melts with a laboratory result, of ${low} to ${high} ‰: silver was ${mean} of the silver and copper on average, with a standard deviation of ${s} from melt to melt.`,
    next: (confidence: string, low: string, high: string) =>
      `In one further melt like them silver's share lies between ${low} and ${high}, with ${confidence} confidence (prediction interval by Student's t).`,
    narrower: (low: string, high: string) =>
      `With that rest the fineness lies between ${low} and ${high} ‰, beside the full interval above, not in its place.`,
    impossible: "No melt with that rest has this density.",
    lot: (fine: string) =>
      `If the gold pieces of this lot are such a melt together, they hold ${fine} of gold, beside what stands above, not in its place.`,
    lotPaid: (fine: string, low: string, high: string, currency: string) =>
      `If the gold pieces of this lot are such a melt together, they hold ${fine} of gold, paid ${low} to ${high} ${currency} before the fee, beside what stands above, not in its place.`,
    only: "It holds for a melt of the same kind of scrap, if it is sound. It says nothing of a single piece before melting, nor of scrap from elsewhere.",
    recipe: "as this house's melts",
  },
};
