import { displaced as weighing } from "../../calibration/displaced.ts";
import { message } from "../../calibration/message.ts";
import { seriesOf, wetSeries } from "../compute/series.ts";
import { method, planned } from "./method.ts";

/** Beaker on the pan: the piece hangs from a stand, and what it displaces weighs on the balance. */
export const displaced = method({
  name: "displaced",
  called: "beaker on the pan",
  loads: [
    { role: "dry", key: ["dry"] },
    { role: "rise", key: ["rise"] },
  ],
  zeros: "of-vessel",
  wetReading: "displaced",
  without: ["check.hanger-in-immersed"],
  details: ["pool", "added", "stand", "liquid", "room", "display"],
  screensLots: true,
  keys: { rise: wetSeries },
  weighing: ({ rise }) => weighing(seriesOf(rise, "wet")),
  asked: ({ load }) => ({ rise: load("rise") }),
  corrections: [],
  plan: {
    weighing: (_, displacedGrams) => weighing(planned(displacedGrams)),
    scatterGrams: 0.001, // as for a hung piece (common practice)
    others: ["hung"],
    insteadSays: message("plan.remedy.displaced"),
    showsWet: ({ displaced_g }) => message("plan.shows.displaced", { displaced_g }),
  },
});
