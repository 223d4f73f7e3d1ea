import type { Words } from "../en/index.ts";

/** Die trockene Masse ist nicht die zum Beleg angekündigte. */
export const otherPiece: Words["otherPiece"] = {
  heading: "Ist das das Stück zum Beleg?",
  lead: "Halt, bevor etwas nass wird: Die trockene Masse ist nicht die zu diesem Beleg angekündigte.",
  announced: { told: "Zum Beleg angekündigt", earlier: "Früher unter diesem Beleg gewogen" },
  weighed: "Auf der Schale, trocken",
  apart: "Unterschied",
  apartBy: (apart, within) => `${apart} g; beide Anzeigen erklären höchstens ${within} g`,
  right: "Es ist das richtige Stück",
  why: "Warum es anders wiegt",
  whyExample: "die Liste rundet auf ganze Gramm",
  by: "Ihr Kürzel",
  goOn: "Damit weitermachen",
  other: (ticket) => `Es ist ein anderes Stück: beiseitelegen und ${ticket} neu öffnen`,
  otherHint:
    "Das Gewogene bleibt mit seinem Grund in der Kette; danach das Stück zum Beleg auf die Schale legen.",
  noPhoto: "Vom Stück zum Beleg gibt es kein Foto.",
  note: (weighed, announced, reason) =>
    `Wiegt ${weighed}, angekündigt ${announced}; als das richtige Stück genommen: ${reason}`,
};
