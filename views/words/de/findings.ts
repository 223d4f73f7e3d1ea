import type { Words } from "../en/index.ts";

/** A finding and what surrounds it. */
export const finding: Words["finding"] = {
  heading: "Befund",
  saidToBe: "Angegeben als",
  noClaim: "Nichts ist angegeben: ",
  first: "Zuerst ausschließen",
  stillAlive: "Daneben noch möglich",
  more: (count: number) => (count === 1 ? "und ein weiteres" : `und ${count} weitere`),
  wouldDecide: "Was entscheiden würde:",
  opinion: "Die Dichte ist das Ergebnis; was sie für das Metall bedeutet, ist eine Folgerung daraus.",
};
