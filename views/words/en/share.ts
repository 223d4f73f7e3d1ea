/** One page to share of a record: a picture and the same as text. Never a word that promises more than a density can. */
export const share = {
  link: "One page to share: picture and text",
  pageTitle: "One page to share",
  lead: "Exactly this leaves the bench, and only when you take it. Nothing of the customer stands in it unless you tick it.",
  tick: "Add to it",
  ticket: "the ticket",
  piece: "what the piece looks like",
  day: "the day it was weighed",
  show: "Show it so",
  asPicture: "Picture (SVG)",
  asPng: "Picture (PNG)",
  asText: "Text file",
  copy: "Copy the text",
  copied: "Copied.",
  notCopied: "The browser does not let the page copy. Select the text and copy it by hand.",
  textLabel: "The same as text",
  pictureLabel: "The picture; its words stand below as text",
  heading: "Density test of one piece",
  demo: "Demonstration: an invented piece on a simulated balance, nothing real was weighed.",
  voided: "The record of this test was voided. It no longer stands.",
  weighed: "Weighed",
  readings: "Readings",
  typed: "typed",
  simulated: "simulated balance",
  fromBalance: "from the balance",
  setAside: (count: number) =>
    count === 1
      ? "1 more reading was voided; it is not used."
      : `${count} more readings were voided; they are not used.`,
  density: "Density",
  uncertainty: (expanded: string, k: string, percent: string) =>
    `U = ${expanded} g/cm³ with k = ${k}, for ${percent} % coverage`,
  interval: (interval: string) => `interval ${interval} g/cm³, at the temperature of the liquid`,
  saidToBe: (name: string, state: string) => `Said to be ${name}: ${state}.`,
  nothingClaimed: "Nothing is claimed.",
  notExcluded: "What this density does not exclude",

  nothingAlive: "None of the metals compared fits; a mixture or a closed void may.",
  foot: "Evidence, not an assay. A density belongs to the whole volume and proves no composition; whatever stands above as not excluded stays possible.",
};
