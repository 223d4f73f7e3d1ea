import type { Param } from "../../calibration/message.ts";
import { called } from "../metals/called.ts";
import type { Substitute } from "../metals/composites/substitutes.ts";
import type { Likelihood, Metal } from "../metals/metal.ts";
import { type Separation, separation } from "./separation.ts";
import { worthPassingOff } from "./worth.ts";

/**
 * Two bands closer than this share of the density are not told apart by any density: handbooks disagree about fine gold
 * alone by 0.2 % (19.28 to 19.33 g/cm³).
 */
const closestGap = 0.002;

/** A metal that the density leaves alive beside the claim. */
export interface LookAlike {
  id: string;
  name: string;
  /** its name for a message */
  called: Param;
  /** a metal of the library (its id is in `alive`), or a piece made of two */
  kind: "metal" | "mixture" | "core-and-skin";
  likelihood: Likelihood;
  /**
   * "band": its band meets the claim's, no density can separate them; "uncertainty": a finer density would;
   * "freedom": its maker is free to choose the shares, so it can be given any density
   */
  why: "band" | "uncertainty" | "freedom";
  whySays: string;
  /** true when it is worth less than the claim, so that passing it off would pay */
  worthMaking: boolean;
  separatedBy: Separation;
}

/** True for a look-alike that matters and that a finer density would exclude: it makes a finding undecided. */
export function needsFiner({ why, worthMaking, likelihood }: LookAlike): boolean {
  return why === "uncertainty" && worthMaking && likelihood !== "rare";
}

/** True when a piece of `m` is what the claim promises: the claim itself, one of its recipes, or the same fine metal. */
export function satisfies(m: Metal, claimed: Metal): boolean {
  if (m.id === claimed.id || claimed.recipes?.includes(m.id) || m.recipes?.includes(claimed.id)) return true;
  const main = principal(claimed);
  const floor = leastOf(claimed, main);
  const fine = floor >= 0.99;
  return fine && m.family !== "cored-and-plated" && principal(m) === main && leastOf(m, main) >= floor;
}

const principal = (m: Metal): string =>
  Object.entries(m.composition).sort(([, a], [, b]) => b[0] - a[0])[0]![0];

function leastOf(m: Metal, component: string): number {
  const fraction = m.composition[component];
  return fraction ? (fraction[1] ?? fraction[0]) : 0;
}

/** The look-alike entry for a metal left alive, against the claimed metal or on its own. */
export function lookAlike(m: Metal, claimed: Metal | undefined): LookAlike {
  const own = { id: m.id, name: m.name, called: called(m), kind: "metal" as const, likelihood: m.likelihood };
  if (!claimed)
    return {
      ...own,
      why: "band",
      whySays: `its band ${bandText(m)} is not excluded`,
      worthMaking: false,
      separatedBy: {
        test: "laboratory",
        says: "State a claim, and the test that separates it is named here.",
      },
    };
  const gap = gapBetween(m, claimed);
  const inherent = gap <= closestGap * claimed.densityGPerCm3.nominal;
  return {
    ...own,
    why: inherent ? "band" : "uncertainty",
    whySays: inherent
      ? `its band ${bandText(m)} meets that of the claim: no density can separate them`
      : `its band ${bandText(m)} lies ${gap.toFixed(2)} g/cm³ from that of the claim: a finer density would separate them`,
    worthMaking: worthPassingOff(m, claimed),
    separatedBy: separation(claimed, m),
  };
}

/** The look-alike entry for a piece made of two, which reaches the measured density by its maker's choice. */
export function madeUp({ kind, as }: Substitute, claimed: Metal): LookAlike {
  return {
    id: as.id,
    name: as.name,
    called: called(as),
    kind,
    likelihood: as.likelihood,
    why: "freedom",
    whySays:
      kind === "mixture"
        ? "its maker is free to choose the shares, so it can be given this density"
        : "its maker is free to choose the thickness of the skin, so it can be given this density",
    worthMaking: true,
    separatedBy: separation(claimed, as),
  };
}

/** Band of a metal as text, in g/cm³. */
function bandText(m: Metal): string {
  const { low, high } = m.densityGPerCm3;
  return low === high ? `${low.toFixed(2)} g/cm³` : `${low.toFixed(2)} to ${high.toFixed(2)} g/cm³`;
}

function gapBetween(a: Metal, b: Metal): number {
  const [x, y] = [a.densityGPerCm3, b.densityGPerCm3];
  return Math.max(x.low - y.high, y.low - x.high, 0);
}
