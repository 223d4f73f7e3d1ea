import {
  type SeparatingTest,
  type Separation,
  separatingTests,
  separation,
} from "../../conformity/separation.ts";
import { worthPassingOff, worthPerGram } from "../../conformity/worth.ts";
import { builtIn, type Library } from "../library.ts";
import type { Metal } from "../metal.ts";
import type { WorthTable } from "../worth-table.ts";
import { type BinaryMixture, binaryMixtures, type DensityInterval } from "./binary-mixtures.ts";
import { type CoreAndSkin, coreAndSkins } from "./core-and-skin.ts";
import { pieceAsMetal, piecePays, skinLooksLike } from "./cored-piece.ts";
import { mixtureAsMetal } from "./mixture-as-metal.ts";
import type { Shape } from "./shape.ts";

/** One way to reach the density, with how it would be told from the claim. */
export interface Candidate {
  kind: "single" | "mixture" | "core-and-skin";
  id: string;
  /** the candidate written as a metal, for evidence */
  as: Metal;
  likelihood: Metal["likelihood"];
  /** true when it is worth less than the claim; null without a claim */
  worthMaking: boolean | null;
  /** rough worth of a gram, in units of base metal */
  worthPerGram: number;
  separatedBy: Separation | null;
  detail: BinaryMixture | CoreAndSkin | null;
}

const likelihoodOrder = { common: 0, possible: 1, rare: 2 } as const;
/** Hardest to separate first: what only a laboratory can tell is what the person at the counter must know of. */
const ease = (test: SeparatingTest) => separatingTests.length - separatingTests.indexOf(test);

/**
 * Everything that reaches a density interval (g/cm³ at 20 °C): single metals, two-part mixtures, cores under skins, ranked
 * by how likely a bench meets it, whether passing it off as the claim would pay, and how hard it is to separate.
 */
export function candidates(
  interval: DensityInterval,
  claimed?: Metal,
  shape?: Shape,
  library: Library = builtIn,
): Candidate[] {
  const [low, high] = interval;
  const against = { claimed, worth: library.worth };
  const singles = library.metals
    .filter((m) => m.densityGPerCm3.high >= low && m.densityGPerCm3.low <= high)
    .map((m) => candidate("single", m, null, against));
  const mixtures = binaryMixtures(interval, library).map((mixture) =>
    candidate("mixture", mixtureAsMetal(mixture, interval), mixture, against),
  );
  const cored = coreAndSkins(interval, shape, library).map((piece) =>
    coredCandidate(piece, interval, against),
  );
  return ranked([...singles, ...mixtures, ...cored]);
}

/** What a candidate is held against. */
interface Against {
  claimed: Metal | undefined;
  worth: WorthTable;
}

function candidate(
  kind: Candidate["kind"],
  as: Metal,
  detail: Candidate["detail"],
  { claimed, worth }: Against,
): Candidate {
  const itself = claimed?.id === as.id;
  return {
    kind,
    id: as.id,
    as,
    likelihood: as.likelihood,
    worthMaking: claimed && kind !== "core-and-skin" ? worthPassingOff(as, claimed, worth) : null,
    worthPerGram: worthPerGram(as, worth),
    separatedBy: claimed && !itself ? separation(claimed, as) : null,
    detail,
  };
}

/** A skin of another colour than the claim deceives nobody, and a sliver of core saves nothing. */
function coredCandidate(piece: CoreAndSkin, interval: DensityInterval, against: Against): Candidate {
  const { claimed, worth } = against;
  const found = candidate("core-and-skin", pieceAsMetal(piece, interval), piece, against);
  if (!claimed) return found;
  return {
    ...found,
    likelihood: skinLooksLike(piece.skin, claimed) ? piece.likelihood : "rare",
    worthMaking: piecePays(piece, claimed, worth),
  };
}

function ranked(found: Candidate[]): Candidate[] {
  const keyed = found.map((c) => ({
    c,
    rank:
      likelihoodOrder[c.likelihood] * 100 +
      (c.worthMaking === false ? 10 : 0) +
      (c.separatedBy ? ease(c.separatedBy.test) : 0),
  }));
  return keyed.sort((a, b) => a.rank - b.rank || a.c.worthPerGram - b.c.worthPerGram).map(({ c }) => c);
}
