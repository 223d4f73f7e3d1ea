import type { Evidence } from "../conformity/evidence/evidence.ts";
import type { GivenEvidence } from "./contract.ts";

/** A test as a request gives it, in the terms of conformity. */
export function evidenceOf(given: GivenEvidence): Evidence {
  switch (given.kind) {
    case "conductivity":
      return {
        kind: "conductivity",
        percentIacs: given.percent_iacs,
        uPercentIacs: given.u_percent_iacs,
        celsius: given.temperature_c,
      };
    case "sound":
      return { kind: "sound", mPerS: given.m_per_s, uMPerS: given.u_m_per_s };
    case "touch": {
      const { permille, ...touch } = given;
      return permille ? { ...touch, permille: { low: permille[0], high: permille[1] } } : { ...touch };
    }
    case "outline":
      return {
        kind: "outline",
        massG: given.mass_g,
        outlineCm3: given.outline_cm3,
        uOutlineCm3: given.u_outline_cm3,
      };
    default:
      return given;
  }
}

/** A test of a recorded piece as a request gives it. */
export function evidenceAsked(evidence: Evidence): GivenEvidence {
  switch (evidence.kind) {
    case "conductivity":
      return {
        kind: "conductivity",
        percent_iacs: evidence.percentIacs,
        u_percent_iacs: evidence.uPercentIacs,
        temperature_c: evidence.celsius,
      };
    case "sound":
      return { kind: "sound", m_per_s: evidence.mPerS, u_m_per_s: evidence.uMPerS };
    case "touch": {
      const { permille, ...touch } = evidence;
      return permille ? { ...touch, permille: [permille.low, permille.high] } : { ...touch };
    }
    case "outline":
      return {
        kind: "outline",
        mass_g: evidence.massG,
        outline_cm3: evidence.outlineCm3,
        u_outline_cm3: evidence.uOutlineCm3,
      };
    default:
      return evidence;
  }
}
