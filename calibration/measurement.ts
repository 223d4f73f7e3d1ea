import type { Ambient } from "./ambient.ts";
import type { BalanceTraits } from "./balance.ts";
import type { Liquid } from "./liquid.ts";
import type { Series } from "./series.ts";
import type { Hanger } from "./suspension.ts";
import type { Weighing } from "./weighing.ts";

/** A body of known mass and density weighed with the piece, such as a stone in its setting. */
export interface AddedBody {
  name: string;
  massGrams: number;
  uMassGrams: number;
  gPerCm3: number;
  uGPerCm3: number;
}

/** One measurement of one piece, or of several identical pieces together. */
export interface Measurement {
  dry: Series;
  /** how what it displaces was found: hung, displaced, flask … */
  weighing: Weighing;
  liquid: Liquid;
  air: Ambient;
  balance: BalanceTraits;
  /** where the readings in the liquid were taken on another balance: their spans do not cancel */
  immersedBalance?: BalanceTraits;
  hanger: Hanger;
  /** most that bubbles may lift, mg; they only ever lift */
  bubbleAllowanceMg: number;
  pieces: number;
  /** density of an odd piece that might be among several, g/cm³; a tenth less dense than the mean when absent */
  oddGPerCm3?: number;
  added?: readonly AddedBody[];
  /** dry and immersed readings were taken in pairs, so their scatter may be correlated */
  paired?: boolean;
  /** linear thermal expansion of the piece, 1/°C, where its metal is claimed; else that of the trade's metals */
  linearExpansionPerCelsius?: number;
  /** coverage probability of the interval */
  confidence: number;
}
