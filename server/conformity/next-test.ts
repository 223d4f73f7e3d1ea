import type { Metal } from "../metals/metal.ts";
import { type SeparatingTest, separationBy } from "./separation.ts";

/** The test to make next. */
export interface NextTest {
  test: SeparatingTest;
  /** ids of what it would separate from the claim */
  separates: string[];
  /** one sentence: which test, and why this one */
  says: string;
}

const doing = {
  magnet: "Hold a magnet to it next",
  conductivity: "Measure the conductivity next",
  sound: "Measure the sound speed through the thickness next",
} as const;

type HarmlessTest = keyof typeof doing;

/**
 * The harmless test, of those not done, that separates most of what is alive from the claim; of two that separate as
 * much, the easier. Without a claim the likeliest of what is alive stands in for it. A laboratory when no harmless
 * test is left that separates anything; null when nothing else is alive.
 */
export function nextTest(
  others: readonly Metal[],
  claimed: Metal | undefined,
  done: ReadonlySet<string> = new Set(),
): NextTest | null {
  const against = claimed ?? others[0];
  const rest = others.filter((m) => m !== against);
  if (!against || rest.length === 0) return null;
  let best: NextTest | null = null;
  for (const test of Object.keys(doing) as HarmlessTest[]) {
    if (done.has(test)) continue;
    const separated = rest.filter((m) => separationBy[test](against, m));
    if (separated.length > (best?.separates.length ?? 0)) best = chosen(test, separated, rest, against);
  }
  return (
    best ?? {
      test: "laboratory",
      separates: rest.map((m) => m.id),
      says: `No harmless test is left that separates what is alive beside ${against.name}: a licensed laboratory decides (gold ISO 11426, silver ISO 11427).`,
    }
  );
}

function chosen(test: HarmlessTest, separated: Metal[], rest: Metal[], against: Metal): NextTest {
  const names = separated.slice(0, 3).map((m) => m.name);
  const share = separated.length === rest.length ? "all" : `${separated.length} of the ${rest.length}`;
  return {
    test,
    separates: separated.map((m) => m.id),
    says: `${doing[test]}: it separates ${share} that are alive beside ${against.name}, such as ${names.join(", ")}.`,
  };
}
