import type { Chance } from "./chance.ts";
import type { Request } from "./request.ts";
import type { Bench } from "./world.ts";

/** The load on the balance, named as its series in the request. */
export type LoadName = "dry" | "immersed" | "rise" | "full" | "with piece" | "hanger" | "hanger in air";

/** One reading about to be taken. */
export interface Moment {
  load: LoadName;
  /** 0 for the first reading of this load */
  reading: number;
  /** the true load on the balance, g */
  grams: number;
  /** mass and displaced liquid of the piece, g */
  pieceGrams: number;
  displacedGrams: number;
  /** readings of each load */
  repeats: number;
  /** the bench as its owner knows it */
  bench: Bench;
  chance: Chance;
}

/** What goes wrong in a weighing, and nobody states. */
export interface Trouble {
  /** g more on the balance than gravity, buoyancy and the stated errors put there */
  grams?(moment: Moment): number;
  /** how much warmer liquid and piece are than at the first look at the thermometer, °C */
  warmer?(moment: Pick<Moment, "load" | "reading" | "chance">): number;
  /** what the person writes instead of the request they should have written */
  written?(request: Request, chance: Chance): Request;
}
