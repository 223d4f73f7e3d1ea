import { virtualBalance } from "./balance.ts";
import type { Chance } from "./chance.ts";
import { type Bench, type World, world } from "./world.ts";

export type Method = "hung" | "displaced" | "flask";

/** A solid piece as it is; the density is that at the temperature of the water. */
export interface Piece {
  grams: number;
  gPerCm3: number;
}

/** Surface tension of water near 20 °C, N/m: IAPWS R1-76, table value at 20 °C 72.74 mN/m. */
const surfaceTension = 0.07274;
/** How far meniscus (part of it) and depth (mm) of the wire may differ between zero and reading. */
const meniscusChange = 0.2;
const depthChange = 1;

/** Forces in N on a piece and on the liquid it hangs in, written from gravity, buoyancy and surface tension alone. */
function forces(piece: Piece, bench: Bench, room: World, chance: Chance) {
  const { gravity, trueWater, trueAir } = room;
  const kg = piece.grams / 1000;
  const m3 = piece.grams / piece.gPerCm3 / 1e6;
  // a bubble of that much lift: its water less its own air
  const bubbleM3 = chance.between("bubbles", 0, bench.bubblesMg) / 1e6 / (trueWater - trueAir);
  const wireM = bench.wireMillimetres / 1000;
  const meniscus =
    Math.PI * wireM * surfaceTension * chance.between("meniscus", -meniscusChange, meniscusChange);
  const deeperM = chance.between("depth", -depthChange, depthChange) / 1000;
  const wireLift = (Math.PI / 4) * wireM ** 2 * deeperM * trueWater * gravity;
  const weight = kg * gravity;
  const lift = (m3 + bubbleM3) * trueWater * gravity - bubbleM3 * trueAir * gravity;
  return {
    /** piece on the pan in air */
    dry: weight - m3 * trueAir * gravity,
    /** pull on the hook, beyond the empty hanger at its mark */
    hook: weight - lift + meniscus - wireLift,
    /**
     * push on the pan under the beaker, beyond the beaker with the empty hanger: the reaction to the lift and to the
     * wire, less the air the risen water pushed aside
     */
    pan: lift - m3 * trueAir * gravity - meniscus + wireLift,
    /** flask filled to its mark with water, and with the piece in it and water to the same mark */
    full: (flaskM3: number, flaskKg: number) =>
      (flaskKg + flaskM3 * trueWater) * gravity - (flaskM3 + flaskKg / 2230) * trueAir * gravity,
    withPiece: (flaskM3: number, flaskKg: number) =>
      (flaskKg + kg + (flaskM3 - m3 - bubbleM3) * trueWater + bubbleM3 * trueAir) * gravity -
      (flaskM3 + flaskKg / 2230) * trueAir * gravity,
  };
}

/** The request a person at that bench would make after weighing the piece `repeats` times, as `underhook compute` reads it. */
export function weigh(
  id: string,
  method: Method,
  piece: Piece,
  bench: Bench,
  repeats: number,
  chance: Chance,
  claim?: string,
) {
  const room = world(bench, chance);
  const balance = virtualBalance(bench, room, chance);
  const newtons = forces(piece, bench, room, chance);
  const series = (force: (reading: number) => number, load: string, scatter: number) => ({
    readings: Array.from({ length: repeats }, (_, n) => balance.shows(force(n), load, n, scatter)),
  });
  const wet = bench.wetScatterGrams;
  const flaskM3 = Math.max(25e-6, (3 * piece.grams) / piece.gPerCm3 / 1e6);
  const flaskKg = 0.02 + flaskM3 * 400;
  const evaporated = chance.between("evaporation", 0.2, 1) * bench.evaporatedGrams;
  const decimals = Math.max(0, Math.round(-Math.log10(bench.readabilityGrams)));
  const weighed = {
    hung: () => ({ immersed: series(() => newtons.hook, "immersed", wet) }),
    displaced: () => ({
      rise: {
        // water leaves evenly between the zeros; each reading falls anywhere between them
        ...series(
          (n) => newtons.pan - (evaporated / 1000) * room.gravity * chance.share(`moment ${n}`),
          "rise",
          wet,
        ),
        zero_before: (0).toFixed(decimals),
        zero_after: (-evaporated).toFixed(decimals),
      },
    }),
    flask: () => ({
      flask: {
        full: series(() => newtons.full(flaskM3, flaskKg), "full", wet),
        with_piece: series(() => newtons.withPiece(flaskM3, flaskKg), "with piece", wet),
      },
    }),
  }[method]();
  return {
    id,
    method,
    dry: series(() => newtons.dry, "dry", bench.dryScatterGrams),
    ...weighed,
    liquid: {
      kind: "water",
      temperature_c: room.shownCelsius,
      temperature_u_c: bench.thermometerCelsius,
      purity: "distilled",
      dissolved_solids_mg_l: bench.solidsMgPerL,
    },
    air: { density_kg_m3: room.statedAir, u_kg_m3: bench.airKgPerM3 },
    balance: {
      readability_g: bench.readabilityGrams,
      repeatability_g: bench.dryScatterGrams,
      immersed_repeatability_g: wet,
      linearity_g: bench.linearityGrams,
    },
    hanger: { wire_mm: method === "flask" ? 0 : bench.wireMillimetres, zeroed: "immersed" },
    bubble_allowance_mg: bench.bubblesMg,
    pieces: 1,
    ...(claim === undefined ? {} : { claim }),
    confidence: 0.9545,
  };
}
