import { claimedPermille } from "./light-for-claim.ts";
import type { LotDoubt } from "./lot-doubt.ts";
import type { LotPiece } from "./lot-piece.ts";

/** Pieces as light as gold of their claim gets, by claim. */
export function lightForTheirClaim(pieces: readonly LotPiece[]): LotDoubt[] {
  const light = pieces.filter((piece) => piece.light);
  const finenesses = [...new Set(light.map(({ claim }) => claimedPermille(claim)!))].sort((a, b) => a - b);
  return finenesses.map((permille) => ({
    flag: "light for its claim",
    says: `As light as gold of ${permille} ‰ gets: so are red gold, zinc or nickel in it, a hollow, solder, a steel spring.`,
    todo: "Unless it is red, hold a magnet to it and look for seams; cut it before it counts, or lay it with the suspects.",
    tickets: light.filter(({ claim }) => claimedPermille(claim) === permille).map(({ ticket }) => ticket),
  }));
}
