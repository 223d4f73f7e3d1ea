import type { Metal } from "../../metals/metal.ts";
import { type NextTest, nextTest } from "../next-test.ts";
import { type Evidence, type EvidenceKind, evidenceKinds } from "./evidence.ts";
import { strike } from "./strike.ts";

/** What one test struck out. */
export interface Struck {
  id: string;
  name: string;
  by: EvidenceKind;
  because: string;
}

/** Density and all other evidence side by side; nothing is averaged and nothing scored. */
export interface WeighedEvidence {
  /** what density leaves and no evidence strikes out */
  alive: Metal[];
  struck: Struck[];
  /** tests that were not made */
  holes: { kind: EvidenceKind; name: string; harmless: boolean }[];
  /** tests that cannot all be right, in words */
  contradictions: string[];
  /** findings that are odd but strike nothing */
  doubts: string[];
  nextTest: NextTest | null;
}

const nameOf = (kind: EvidenceKind) => evidenceKinds.find((e) => e.kind === kind)!.name;

/**
 * Weighs evidence on what may be on the bench. `fits` are the metals and made-up pieces that the density leaves alive,
 * `others` those it excludes: they are needed to see that two tests contradict each other.
 */
export function weighEvidence(
  fits: readonly Metal[],
  others: readonly Metal[],
  evidence: readonly Evidence[],
  claimed?: Metal,
): WeighedEvidence {
  const struck: Struck[] = [];
  const alive = fits.filter((m) => {
    const reasons = evidence.flatMap((e) => {
      const because = strike(e, m);
      return because === null ? [] : { id: m.id, name: m.name, by: e.kind, because };
    });
    struck.push(...reasons);
    return reasons.length === 0;
  });
  const done = new Set(evidence.map((e) => e.kind));
  const rest = claimed ? alive.filter((m) => m.id !== claimed.id) : alive;
  return {
    alive,
    struck,
    holes: evidenceKinds
      .filter((e) => !done.has(e.kind))
      .map(({ kind, name, harmless }) => ({ kind, name, harmless })),
    contradictions: contradictions(fits, others, evidence),
    doubts: evidence.flatMap(doubt),
    nextTest: nextTest(rest, claimed, done),
  };
}

/** Pairs of tests that leave nothing in common, density being one of the tests. */
function contradictions(
  fits: readonly Metal[],
  others: readonly Metal[],
  evidence: readonly Evidence[],
): string[] {
  const everything = [...fits, ...others];
  const tests = [
    { name: "density", leaves: new Set(fits) },
    ...evidence.map((e) => ({
      name: nameOf(e.kind),
      leaves: new Set(everything.filter((m) => strike(e, m) === null)),
    })),
  ];
  const found: string[] = [];
  for (const [i, a] of tests.entries()) {
    if (a.leaves.size === 0) found.push(`Nothing known fits the ${a.name} alone: look at the reading again.`);
    for (const b of tests.slice(i + 1))
      if (a.leaves.size > 0 && b.leaves.size > 0 && disjoint(a.leaves, b.leaves))
        found.push(
          `The ${a.name} and the ${b.name} contradict each other: nothing known fits both. Repeat both before believing either; a piece of two bodies is the other reading.`,
        );
  }
  return found;
}

function disjoint<T>(a: ReadonlySet<T>, b: ReadonlySet<T>): boolean {
  for (const x of a) if (b.has(x)) return false;
  return true;
}

function doubt(e: Evidence): string[] {
  if (e.kind === "ring" && e.heard === "dull")
    return [
      "A dull ring strikes nothing out: a crack, a core, a thin piece or a finger on the edge all deaden it.",
    ];
  if (e.kind === "magnet" && e.shows === "weak")
    return [
      "A weak pull fits no sound gold, silver or platinum-ruthenium: look for a steel pin or spring, a nickel plate, or iron dirt.",
    ];
  return [];
}
