import type { LotFine, LotPiece } from "./lot-piece.ts";

/** What is known of the lot as a whole before it was sorted. */
export interface GrossWeighing {
  grams: number;
  stepG: number;
}

export interface LotDoubt {
  says: string;
  todo: string;
  tickets: readonly string[];
}

export interface LotSums {
  pieces: number;
  sumG: number;
  /** decimals of the coarsest display that entered, for every mass told of the lot */
  decimals: number;
  /** two standard uncertainties of the sum against the gross weighing, g */
  withinG: number;
  /** gross minus sum, g; undefined without a gross weighing */
  missingG?: number;
  fine: Partial<Record<LotFine["metal"], { lowG: number; highG: number }>>;
  doubts: readonly LotDoubt[];
}

/**
 * The lot so far. The fine mass is added end by end: water, thermometer, balance and the free rest of the alloy are
 * common to all pieces, so their errors do not average away. Dry readings are independent: against the gross mass
 * they count with one step of the display each (common practice), in squares. Voided pieces count nowhere.
 */
export function lotSums(all: readonly LotPiece[], gross?: GrossWeighing, counted?: number): LotSums {
  const pieces = all.filter(({ voided }) => !voided);
  const sumG = pieces.reduce((sum, { dryG }) => sum + dryG, 0);
  const withinG = 2 * Math.hypot(gross?.stepG ?? 0, ...pieces.map(({ stepG }) => stepG));
  const shown = decimalsOf(Math.max(gross?.stepG ?? 0, ...pieces.map(({ stepG }) => stepG)));
  const fine: LotSums["fine"] = {};
  for (const { fine: one } of pieces)
    if (one) {
      const { lowG, highG } = fine[one.metal] ?? { lowG: 0, highG: 0 };
      fine[one.metal] = { lowG: lowG + one.lowG, highG: highG + one.highG };
    }
  const missingG = gross === undefined ? undefined : gross.grams - sumG;
  const excess = missingG !== undefined && -missingG > withinG ? -missingG : undefined;
  const doubts = [
    ...twins(pieces, excess, withinG),
    ...(excess !== undefined
      ? [
          {
            says: `The pieces weigh ${excess.toFixed(shown)} g more than the whole lot did.`,
            todo: "Look for a piece weighed twice or one of another lot; water left in a hollow piece adds too.",
            tickets: [],
          },
        ]
      : []),
    ...(missingG !== undefined && missingG > withinG && counted === pieces.length
      ? [
          {
            says: `All ${counted} counted pieces are weighed, and ${missingG.toFixed(shown)} g of the gross mass are missing.`,
            todo: "Count again; look for a piece left in the bag and for stones or string weighed with the lot.",
            tickets: [],
          },
        ]
      : []),
  ];
  return {
    pieces: pieces.length,
    sumG,
    decimals: shown,
    withinG,
    ...(missingG === undefined ? {} : { missingG }),
    fine,
    doubts,
  };
}

/** Decimals of a display with this step: 0.01 shows 2, 0.05 shows 2. */
export function decimalsOf(stepG: number): number {
  return stepG > 0 ? Math.max(0, Math.ceil(-Math.log10(stepG) - 1e-9)) : 2;
}

/** So few pairs of one mass may be chance before a pair says anything. */
const chancePairs = 0.5;

/**
 * Pieces of one mass to the last digit whose densities go together: perhaps one piece weighed twice. On a coarse scale
 * such pairs are chance; then only a pair that explains what the sum has too much is told.
 */
function twins(pieces: readonly LotPiece[], excess: number | undefined, withinG: number): LotDoubt[] {
  const byMass = new Map<string, LotPiece[]>();
  for (const piece of pieces) {
    const key = `${Math.round(piece.dryG / piece.stepG)} of ${piece.stepG}`;
    byMass.set(key, [...(byMass.get(key) ?? []), piece]);
  }
  const masses = pieces.map(({ dryG }) => dryG);
  const span = Math.max(...masses) - Math.min(...masses);
  const step = Math.max(...pieces.map(({ stepG }) => stepG));
  const expected = span > 0 ? ((pieces.length * (pieces.length - 1)) / 2) * (step / span) : 0;
  return [...byMass.values()].flatMap((same): LotDoubt[] => {
    const [first, ...others] = same;
    if (!first) return [];
    const alike = others.filter(
      ({ density, expanded }) => Math.abs(density - first.density) <= Math.hypot(expanded, first.expanded),
    );
    if (alike.length === 0) return [];
    const explains = excess !== undefined && Math.abs(excess - first.dryG) <= withinG;
    if (!explains && expected > chancePairs) return [];
    return [
      {
        says: `${alike.length + 1} tickets weigh ${Number(first.dryG.toPrecision(8))} g each, with densities that go together${explains ? ", and the pieces together are too heavy by just that" : ""}.`,
        todo: "Was one piece weighed twice? Lay them side by side.",
        tickets: [first, ...alike].map(({ ticket }) => ticket),
      },
    ];
  });
}
