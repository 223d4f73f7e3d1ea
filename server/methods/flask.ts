import { z } from "zod";
import { flask as weighing } from "../../calibration/flask.ts";
import { message } from "../../calibration/message.ts";
import { omitUndefined } from "../compute/omit-undefined.ts";
import { series, seriesOf } from "../compute/series.ts";
import { method, planned } from "./method.ts";

/** Two fillings by careful hands differ by about this in temperature, °C (common practice). */
const uFlaskWarmerC = 0.1;
/** Usual flasks, mL; the pieces may take half of one. */
const flasksMl = [10, 25, 50, 100, 250, 500, 1000, 2000] as const;

/** The smallest usual flask that pieces of this volume leave half free, mL. */
function flaskFor(piecesCm3: number): number {
  return flasksMl.find((ml) => ml >= 2 * piecesCm3) ?? 2 * Math.ceil(piecesCm3);
}

/** Filings, granules and small scrap in a flask filled to its mark. */
export const flask = method({
  name: "flask",
  called: "flask",
  loads: [
    { role: "dry", key: ["dry"] },
    { role: "flask-full", key: ["flask", "full"] },
    { role: "flask-with-piece", key: ["flask", "with_piece"] },
  ],
  zeros: "of-load",
  wetReading: "contents",
  without: [
    "check.boxes-swapped",
    "check.displaced-for-immersed",
    "check.hanger-in-dry",
    "check.hanger-in-immersed",
    "check.nothing-on-hook",
    "check.rests-on-bottom",
    "check.tare-while-immersed",
    "check.zero-moved",
  ],
  details: ["pool", "added", "flask", "liquid", "room", "display"],
  screensLots: false,
  keys: {
    flask: z.strictObject({
      full: series,
      with_piece: series,
      liquid_g: z.number().nonnegative().optional(),
      warmer_c: z.number().optional(),
      warmer_u_c: z.number().nonnegative().optional(),
    }),
  },
  weighing: ({ flask: { full, with_piece, liquid_g, warmer_c, warmer_u_c } }) =>
    weighing(
      omitUndefined({
        full: seriesOf(full),
        withPiece: seriesOf(with_piece),
        liquidGrams: liquid_g,
        warmerCelsius: warmer_c,
        uWarmerCelsius: warmer_u_c,
      }),
    ),
  asked: ({ load, details }) => ({
    flask: {
      full: load("flask-full"),
      with_piece: load("flask-with-piece"),
      ...(details.flask && {
        liquid_g: Number(details.flask.liquid_g),
        warmer_c: Number(details.flask.warmer_c),
        warmer_u_c: Number(details.flask.warmer_u_c),
      }),
    },
  }),
  corrections: [],
  plan: {
    // the glass is on the balance both times and falls out of the difference; its water stands for its load
    weighing: (dryGrams, displacedGrams) => {
      const fullGrams = flaskFor(displacedGrams);
      return weighing({
        full: planned(fullGrams),
        withPiece: planned(fullGrams + dryGrams - displacedGrams),
        liquidGrams: fullGrams,
        warmerCelsius: 0,
        uWarmerCelsius: uFlaskWarmerC,
      });
    },
    scatterGrams: 0.002, // topping up and wiping (common practice: about 2 mg with a capillary stopper)
    others: ["hung", "displaced"],
    insteadSays: message("plan.remedy.flask"),
    showsWet: ({ immersed_g, displacedGrams }) =>
      message("plan.shows.flask", { more_g: immersed_g, flask_ml: flaskFor(displacedGrams) }),
  },
});
