import { candidates } from "../../metals/composites/candidates.ts";
import type { Library } from "../../metals/library.ts";

/** Lists drawn before the first is asked for, and the pause before each, ms: pages come between them. */
const lists = 6;
const pauseMs = 500;

/**
 * Makes the lists of what reaches the density of some claims, one after the other while nothing else is to be done, so that the
 * first one a person asks for comes as fast as later ones. Keeps no program alive.
 */
export function warmMatches({ metals }: Library): void {
  const claims = metals.filter(({ recipes }) => recipes !== undefined).slice(0, lists);
  const next = () => {
    const claim = claims.pop();
    if (!claim) return;
    setTimeout(() => {
      const { low, high } = claim.densityGPerCm3;
      candidates([low, high], claim);
      next();
    }, pauseMs).unref();
  };
  next();
}
