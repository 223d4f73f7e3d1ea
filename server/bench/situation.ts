import type { Library } from "../alloys/library.ts";
import { type Evaluation, isRefused } from "../compute/evaluation.ts";
import type { Situation } from "../watch/situation.ts";
import type { Role } from "./method.ts";
import { type Piece, standing } from "./piece.ts";
import type { balanceFor } from "./request.ts";

/** Names of budget inputs that further immersions would lessen. */
const lessenedByRepeats = /repeatability/;

/** What the procedure watch is told of a piece, as far as it goes. */
export function situationOf(
  piece: Piece,
  balance: ReturnType<typeof balanceFor>,
  evaluation: Evaluation | undefined,
  library: Library,
): Situation {
  const of = (role: Role) => standing(piece, role).map(({ at, text, unit }) => ({ at, text, unit }));
  const wet =
    piece.method === "hung" ? "immersed" : piece.method === "displaced" ? "rise" : "flask-with-piece";
  const claimed = piece.claim === undefined ? undefined : library.metal(piece.claim);
  const evaluated = evaluation && !isRefused(evaluation) ? evaluation.response : undefined;
  return {
    method: piece.method,
    dry: of("dry"),
    wet: of(wet),
    ...(piece.method === "flask" ? { flaskFull: of("flask-full") } : {}),
    ...(piece.waterCelsius === undefined ? {} : { waterCelsius: Number(piece.waterCelsius) }),
    ...(claimed
      ? {
          claim: {
            name: claimed.name,
            lowGPerCm3: claimed.densityGPerCm3.low,
            highGPerCm3: claimed.densityGPerCm3.high,
          },
        }
      : {}),
    ...(evaluated
      ? {
          density: { valueGPerCm3: evaluated.density_g_cm3, expandedGPerCm3: evaluated.expanded_g_cm3 },
          repeatsShare: evaluated.budget
            .filter(({ input }) => lessenedByRepeats.test(input))
            .reduce((sum, { share }) => sum + share, 0),
        }
      : {}),
    balance: {
      readabilityGrams: balance.readability_g,
      repeatabilityGrams: balance.repeatability_g,
      immersedRepeatabilityGrams: balance.immersed_repeatability_g,
    },
  };
}
