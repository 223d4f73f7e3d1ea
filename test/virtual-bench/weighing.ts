import { virtualBalance } from "./balance.ts";
import type { Chance } from "./chance.ts";
import { type Pour, water } from "./liquids.ts";
import type { Request, Series } from "./request.ts";
import type { LoadName, Trouble } from "./trouble.ts";
import { type Bench, type Room, roomOf } from "./world.ts";

export type Method = "hung" | "displaced" | "flask";

/** A solid piece as it is; the density is that at the temperature of the water. */
export interface Piece {
  grams: number;
  gPerCm3: number;
}

/** How far meniscus (part of it) and depth (mm) of the wire may differ between zero and reading. */
const meniscusChange = 0.2;
const depthChange = 1;
/** Steel of a hanger, and borosilicate glass of a flask: kg/m³ and cubic expansion per °C (common practice). */
const hangerKgPerM3 = 7900;
const glass = { kgPerM3: 2230, perCelsius: 9.9e-6 };

interface Hung {
  room: Room;
  /** kg/m³ */
  liquid: number;
  surfaceTension: number;
  bench: Bench;
  chance: Chance;
}

/** Forces in N on a piece and on the liquid it hangs in, written from gravity, buoyancy and surface tension alone. */
function forces(piece: Piece, { room, liquid, surfaceTension, bench, chance }: Hung) {
  const { gravity, trueAir } = room;
  const kg = piece.grams / 1000;
  const m3 = piece.grams / piece.gPerCm3 / 1e6;
  // a bubble of that much lift: its water less its own air
  const bubbleM3 = chance.between("bubbles", 0, bench.bubblesMg) / 1e6 / (liquid - trueAir);
  const wireM = bench.wireMillimetres / 1000;
  const meniscus =
    Math.PI * wireM * surfaceTension * chance.between("meniscus", -meniscusChange, meniscusChange);
  const deeperM = chance.between("depth", -depthChange, depthChange) / 1000;
  const wireLift = (Math.PI / 4) * wireM ** 2 * deeperM * liquid * gravity;
  const weight = kg * gravity;
  const lift = (m3 + bubbleM3) * liquid * gravity - bubbleM3 * trueAir * gravity;
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
      (flaskKg + flaskM3 * liquid) * gravity - (flaskM3 + flaskKg / glass.kgPerM3) * trueAir * gravity,
    withPiece: (flaskM3: number, flaskKg: number) =>
      (flaskKg + kg + (flaskM3 - m3 - bubbleM3) * liquid + bubbleM3 * trueAir) * gravity -
      (flaskM3 + flaskKg / glass.kgPerM3) * trueAir * gravity,
  };
}

/** One weighing from the first look to the last. */
export interface Weighing {
  id: string;
  method: Method;
  piece: Piece;
  /** as its owner knows it */
  bench: Bench;
  /** what it truly does beside that */
  truly?: Partial<Bench> | undefined;
  repeats: number;
  chance: Chance;
  pour?: Pour | undefined;
  trouble?: Trouble | undefined;
  claim?: string | undefined;
  /** the hanger is weighed alone in the liquid instead of zeroed, g; hung only */
  hangerGrams?: number | undefined;
}

/** The request a person at that bench would make after weighing the piece, as `underhook compute` reads it. */
export function weigh(weighing: Weighing): Request {
  const { id, method, piece, bench, truly = {}, repeats, chance, pour = water, trouble = {} } = weighing;
  const { claim, hangerGrams = 0 } = weighing;
  const real: Bench = { ...bench, ...truly };
  const room = roomOf(real, chance);
  const poured = pour(real, room, chance);
  const displacedGrams = ((piece.grams / piece.gPerCm3) * poured.densityAt(room.celsius)) / 1000;
  const told = { pieceGrams: piece.grams, displacedGrams, repeats, bench, chance };
  const balance = virtualBalance(real, room, chance, (load, reading, grams) =>
    trouble.grams ? trouble.grams({ ...told, load: load as LoadName, reading, grams }) : 0,
  );
  const { surfaceTension } = poured;
  const warmth = (load: LoadName, reading: number) => trouble.warmer?.({ load, reading, chance }) ?? 0;
  const at = (load: LoadName, reading: number, more = 0) => {
    const liquid = poured.densityAt(room.celsius + warmth(load, reading) + more);
    return forces(piece, { room, liquid, surfaceTension, bench: real, chance });
  };
  const series = (load: LoadName, force: (reading: number) => number, scatter: number): Series => ({
    readings: Array.from({ length: repeats }, (_, n) => balance.shows(force(n), load, n, scatter)),
    ...(repeats > 1 && { zeroed: bench.zeroed }),
  });
  const wet = real.wetScatterGrams;
  const flaskM3 = Math.max(25e-6, (3 * piece.grams) / piece.gPerCm3 / 1e6);
  const flaskKg = 0.02 + flaskM3 * 400;
  const evaporated = chance.between("evaporation", 0.2, 1) * real.evaporatedGrams;
  const decimals = Math.max(0, Math.round(-Math.log10(bench.readabilityGrams)));
  const flaskWarmer = chance.normal("flask warmer", 0, real.flaskCelsius);
  const filled = (celsius: number) => flaskM3 * (1 + glass.perCelsius * celsius);
  const hanger = (hangerGrams / 1000) * room.gravity * (1 - poured.densityAt(room.celsius) / hangerKgPerM3);
  const weighed: Record<Method, () => Partial<Request>> = {
    hung: () => ({ immersed: series("immersed", (n) => at("immersed", n).hook + hanger, wet) }),
    displaced: () => ({
      rise: {
        // water leaves evenly between the zeros; the readings follow one another between them
        ...series(
          "rise",
          (n) =>
            at("rise", n).pan -
            (evaporated / 1000) * room.gravity * ((n + chance.share(`moment ${n}`)) / repeats),
          wet,
        ),
        ...(bench.evaporatedGrams > 0 && {
          zero_before: (0).toFixed(decimals),
          zero_after: (-evaporated).toFixed(decimals),
        }),
      },
    }),
    flask: () => ({
      flask: {
        full: series(
          "full",
          (n) => at("full", n, flaskWarmer).full(filled(flaskWarmer + warmth("full", n)), flaskKg),
          wet,
        ),
        with_piece: series(
          "with piece",
          (n) => at("with piece", n).withPiece(filled(warmth("with piece", n)), flaskKg),
          wet,
        ),
        ...(bench.flaskCelsius > 0 && {
          liquid_g: flaskM3 * 998e3,
          warmer_c: 0,
          warmer_u_c: bench.flaskCelsius,
        }),
      },
    }),
  };
  const request: Request = {
    id,
    method,
    dry: series("dry", () => at("dry", 0).dry, real.dryScatterGrams),
    ...weighed[method](),
    liquid: {
      ...poured.stated(balance),
      ...(bench.thermometerCelsius !== real.thermometerCelsius && {
        temperature_u_c: bench.thermometerCelsius,
      }),
      ...(bench.solidsMgPerL !== real.solidsMgPerL && { dissolved_solids_mg_l: bench.solidsMgPerL }),
    },
    air: room.statedAir,
    balance: {
      readability_g: bench.readabilityGrams,
      repeatability_g: bench.dryScatterGrams,
      immersed_repeatability_g: bench.wetScatterGrams,
      linearity_g: bench.linearityGrams,
      capacity_g: bench.capacityGrams,
      span_u_relative: bench.spanRelative,
    },
    hanger: {
      wire_mm: method === "flask" ? 0 : bench.wireMillimetres,
      ...(hangerGrams > 0
        ? { zeroed: "weighed", in_liquid: series("hanger", () => hanger, wet) }
        : { zeroed: "immersed" }),
    },
    bubble_allowance_mg: bench.bubblesMg,
    pieces: 1,
    ...(claim !== undefined && { claim }),
    confidence: 0.9545,
  };
  return trouble.written ? trouble.written(request, chance) : request;
}
