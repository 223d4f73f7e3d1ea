import { virtualBalance } from "./balance.ts";
import type { Chance } from "./chance.ts";
import type { Request } from "./request.ts";
import type { Piece } from "./weighing.ts";
import { type Bench, roomOf } from "./world.ts";

/** A calliper: one step, the scatter of one reading, and how well it is calibrated, mm. */
const calliper = { stepMm: 0.01, scatterMm: 0.01, calibrationMm: 0.006 };
/** Chamfer and roundness of the piece, per cent of the plain solid: never more than it, half-width about the middle. */
const form = { percent: -0.4, halfWidthPercent: 0.4 };
const lengthReadings = 5;

/** A round bar twice as high as wide, measured with a calliper instead of immersed. */
export function measureOutline(
  id: string,
  piece: Piece,
  bench: Bench,
  chance: Chance,
  claim: string | undefined,
): Request {
  const room = roomOf(bench, chance);
  const balance = virtualBalance(bench, room, chance);
  const m3 = piece.grams / piece.gPerCm3 / 1e6;
  const departs =
    (form.percent + chance.between("form", -form.halfWidthPercent, form.halfWidthPercent)) / 100;
  const plainMm3 = (m3 * 1e9) / (1 + departs);
  const diameter = ((plainMm3 * 2) / Math.PI) ** (1 / 3);
  const calibration = chance.normal("calliper", 0, calliper.calibrationMm);
  const length = (name: string, mm: number) => ({
    readings: Array.from({ length: lengthReadings }, (_, n) => {
      const seen = mm + calibration + chance.normal(`${name} ${n}`, 0, calliper.scatterMm);
      return (Math.round(seen / calliper.stepMm) * calliper.stepMm).toFixed(2);
    }),
    readability_mm: calliper.stepMm,
    u_mm: calliper.calibrationMm,
    repeatability_mm: calliper.scatterMm,
  });
  const newtons = (piece.grams / 1000 - m3 * room.trueAir) * room.gravity;
  return {
    id,
    method: "dimensions",
    dry: { readings: [balance.shows(newtons, "dry", 0, bench.dryScatterGrams)] },
    dimensions: {
      shape: "cylinder",
      diameter_mm: length("diameter", diameter),
      height_mm: length("height", 2 * diameter),
      form_percent: form.percent,
      form_half_width_percent: form.halfWidthPercent,
      temperature_c: room.celsius,
    },
    air: room.statedAir,
    balance: {
      readability_g: bench.readabilityGrams,
      repeatability_g: bench.dryScatterGrams,
      linearity_g: bench.linearityGrams,
      span_u_relative: bench.spanRelative,
    },
    pieces: 1,
    ...(claim !== undefined && { claim }),
    confidence: 0.9545,
  };
}
