/** An invented piece: what the simulated balance weighs. */
export interface SimulatedPiece {
  name: string;
  massGrams: number;
  densityGPerCm3: number;
}

/** What hangs from or stands on the balance. */
export type Arrangement =
  | { on: "nothing" }
  | { on: "pan"; piece: SimulatedPiece }
  | { on: "hanger"; piece: SimulatedPiece | null }
  | { on: "beaker"; piece: SimulatedPiece | null; touching: boolean };

export interface Surroundings {
  liquidKgPerM3: number;
  airKgPerM3: number;
  /** empty hanger, immersed, as the balance shows it, g */
  hangerGrams: number;
  /** beaker with its liquid, as the balance shows it, g */
  beakerGrams: number;
  /** bubbles on an immersed piece lift it by so many mg */
  bubblesMg: number;
}

/** Density balances are adjusted to show mass against, kg/m³: OIML D 28 conventional mass [from memory]. */
const referenceKgPerM3 = 8000;

/**
 * What the balance would show for a load, in g, before noise and rounding. Air lifts a dry piece, liquid an immersed
 * one; a piece hung from a stand into the beaker pushes the pan down by what it displaces.
 */
export function loadGrams(arrangement: Arrangement, around: Surroundings): number {
  if (arrangement.on === "nothing") return 0;
  const { piece } = arrangement;
  const air = around.airKgPerM3 / 1000;
  const liquid = around.liquidKgPerM3 / 1000;
  const shown = (grams: number) => grams / (1 - around.airKgPerM3 / referenceKgPerM3);
  const cm3 = piece ? piece.massGrams / piece.densityGPerCm3 : 0;
  const dry = piece ? shown(piece.massGrams - cm3 * air) : 0;
  const displaced = shown(cm3 * (liquid - air)) + (piece ? around.bubblesMg / 1000 : 0);
  switch (arrangement.on) {
    case "pan":
      return dry;
    case "hanger":
      return around.hangerGrams + dry - displaced;
    case "beaker":
      return around.beakerGrams + (arrangement.touching ? dry : displaced);
  }
}
