import { keysOf } from "../../calibration/keyed.ts";
import { remembered } from "../../calibration/remembered.ts";
import type { Metal } from "../metals/metal.ts";
import type { EvidenceKind } from "./evidence/evidence.ts";
import { type HarmlessTest, type SeparatingTest, separationBy } from "./separation.ts";

/** A test to make next. */
export interface NextTest {
  test: SeparatingTest;
  /** ids of what it would tell from the claim */
  separates: string[];
  /** the instrument is not owned here: somebody else has one */
  elsewhere?: true;
}

/** What everybody has: eyes, ears and a magnet. */
const atHand: readonly HarmlessTest[] = ["magnet", "colour", "ring"];
/** Instruments, and the ways to ask somebody who has one. */
export const instruments = ["conductivity", "sound"] as const;
export type Instrument = (typeof instruments)[number];

/** The test a kind of evidence is the result of. */
export const testOf: Readonly<Partial<Record<EvidenceKind, HarmlessTest>>> = {
  worn: "colour",
  scratch: "colour",
  magnet: "magnet",
  ring: "ring",
  conductivity: "conductivity",
  sound: "sound",
};

/**
 * The harmless tests, of those not done, that tell something of what is left from the claim: first what everybody has,
 * then the instruments that are owned, then those that are not; of each the most separating first. Without a claim the
 * first of what is left stands in for it. A laboratory when no harmless test is left; none when nothing else is left.
 */
export function nextTests(
  others: readonly Metal[],
  claimed: Metal | undefined,
  { done = [], owned = instruments }: { done?: readonly EvidenceKind[]; owned?: readonly Instrument[] } = {},
): NextTest[] {
  const against = claimed ?? others[0];
  const rest = others.filter((m) => m !== against);
  if (!against || rest.length === 0) return [];
  const made = new Set(done.map((kind) => testOf[kind]));
  const useful = (tests: readonly HarmlessTest[]) =>
    tests
      .filter((test) => !made.has(test))
      .map((test) => ({
        test,
        separates: rest.filter((m) => tells(test, against, m)).map(({ id }) => id),
      }))
      .filter(({ separates }) => separates.length > 0)
      .sort((a, b) => b.separates.length - a.separates.length);
  const found: NextTest[] = [
    ...useful(atHand),
    ...useful(instruments.filter((one) => owned.includes(one))),
    ...useful(instruments.filter((one) => !owned.includes(one))).map(
      (next): NextTest => ({ ...next, elsewhere: true }),
    ),
  ];
  return found.length > 0 ? found : [{ test: "laboratory", separates: rest.map(({ id }) => id) }];
}

const known = remembered((a: Metal) =>
  remembered((b: Metal) => keysOf(separationBy).filter((test) => separationBy[test](a, b) !== null)),
);

/** True where the test shows one thing of the one metal and another of the other. */
function tells(test: HarmlessTest, a: Metal, b: Metal): boolean {
  return a.made || b.made ? separationBy[test](a, b) !== null : known(a)(b).includes(test);
}
