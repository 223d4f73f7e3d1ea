import { z } from "zod";
import { flask as weighing } from "../../calibration/flask.ts";
import type { MeasurementCheck } from "../../calibration/measurement-check.ts";
import { message } from "../../calibration/message.ts";
import { repeats } from "../../calibration/repeats.ts";
import { gramsOf, readingTexts, type Series } from "../../calibration/series.ts";
import { omitUndefined } from "../compute/omit-undefined.ts";
import { series, seriesOf } from "../compute/series.ts";
import { method, planned } from "./method.ts";

/** Two fillings by careful hands differ by about this in temperature, °C (common practice). */
const uFlaskWarmerC = 0.1;
/** Share of a full flask that is liquid, where nobody stated it: its glass weighs about half as much (common practice). */
const liquidShare = 2 / 3;
/** Usual flasks, mL; the pieces may take half of one. */
const flasksMl = [10, 25, 50, 100, 250, 500, 1000, 2000] as const;

const meanGrams = (series: Series) =>
  repeats(readingTexts(series).map((text) => gramsOf(text, series.unit))).mean;

/** What one filling each, or temperatures nobody compared, leave open. */
function notesOn(found: {
  fillings: number;
  temperaturesStated: boolean;
  uCelsius: number;
}): MeasurementCheck[] {
  const { fillings, temperaturesStated, uCelsius } = found;
  const once = fillings === 1;
  if (!once && temperaturesStated) return [];
  const params = {
    case: once ? (temperaturesStated ? "once" : "both") : "temperature",
    fillings,
    u_c: uCelsius,
  };
  return [{ code: "measurement.flask-filling", severity: "warn", params }];
}

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
      liquid_g: z
        .number()
        .nonnegative()
        .optional()
        .describe("liquid in the full flask; two thirds of its reading when left out"),
      warmer_c: z.number().optional().describe("full flask warmer than the flask with the piece by"),
      warmer_u_c: z.number().nonnegative().optional().describe("0.1 when left out"),
      filling_repeatability_g: z
        .number()
        .nonnegative()
        .optional()
        .describe(
          "standard deviation of one filling beside the balance's own; when left out 0.002, or none where immersed_repeatability_g tells the scatter of a flask reading whole",
        ),
    }),
  },
  weighing: ({ flask: given }) => {
    const { full, with_piece, liquid_g, warmer_c, warmer_u_c = uFlaskWarmerC } = given;
    const fullSeries = seriesOf(full);
    const pieceSeries = seriesOf(with_piece);
    return weighing(
      omitUndefined({
        full: fullSeries,
        withPiece: pieceSeries,
        liquidGrams: liquid_g ?? liquidShare * meanGrams(fullSeries),
        warmerCelsius: warmer_c,
        uWarmerCelsius: warmer_u_c,
        fillingGrams: given.filling_repeatability_g ?? ("usual" as const),
        notes: notesOn({
          fillings: Math.min(...[fullSeries, pieceSeries].map((one) => readingTexts(one).length)),
          temperaturesStated: given.warmer_c !== undefined || given.warmer_u_c !== undefined,
          uCelsius: warmer_u_c,
        }),
      }),
    );
  },
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
