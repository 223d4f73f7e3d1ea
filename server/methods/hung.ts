import { hung as weighing } from "../../calibration/hung.ts";
import { message } from "../../calibration/message.ts";
import { seriesOf, wetSeries } from "../compute/series.ts";
import { method, planned } from "./method.ts";

/** Hung from the balance: the piece hangs in the liquid, which stands beside the balance. */
export const hung = method({
  name: "hung",
  called: "hung from the balance",
  loads: [
    { role: "dry", key: ["dry"] },
    { role: "immersed", key: ["immersed"] },
  ],
  zeros: "of-hanger",
  wetReading: "remaining",
  without: [],
  details: ["pool", "added", "hanger", "liquid", "room", "display"],
  screensLots: true,
  keys: { immersed: wetSeries },
  weighing: ({ immersed }) => weighing(seriesOf(immersed)),
  asked: ({ load }) => ({ immersed: load("immersed") }),
  corrections: ["report.corrections.wire"],
  plan: {
    weighing: (dryGrams, displacedGrams) => weighing(planned(dryGrams - displacedGrams)),
    scatterGrams: 0.001, // bubbles and the meniscus at a careful immersion (common practice: about 1 mg)
    others: ["displaced"],
    insteadSays: message("plan.remedy.hung"),
    showsWet: ({ immersed_g }) => message("plan.shows.hung", { immersed_g }),
  },
});
