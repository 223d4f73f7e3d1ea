import type { Metal } from "../../metals/metal.ts";
import { soundThrough } from "../separation.ts";
import type { Evidence } from "./evidence.ts";
import { conductivityAt, couldLook, recipesOf, shareOf } from "./ranges.ts";

/** Reading and range must be further apart than this many standard uncertainties. */
const coverage = 2;
/** A printed sound speed holds for an alloy and temper to about 2 %, one computed from elastic constants to 4 % (common practice). */
const uOfSound = { printed: 0.02, estimated: 0.04 } as const;
/** A coil on a real surface is never better than 3 % (common practice). */
const leastUOfConductivity = 0.03;
/** Touch needles are read to about 15 ‰ (common practice). */
const uOfTouch = 15;

type Strike<K extends Evidence["kind"]> = (of: Extract<Evidence, { kind: K }>, m: Metal) => string | null;

const magnet: Strike<"magnet"> = ({ shows }, m) => {
  if (shows === "strong" && m.magnetism !== "strong")
    return `a strong pull needs iron, nickel or cobalt, and ${m.name} has too little`;
  if (shows !== "strong" && m.magnetism === "strong")
    return `${m.name} is pulled strongly, even under a skin`;
  return null;
};

const conductivity: Strike<"conductivity"> = ({ percentIacs, uPercentIacs, celsius }, m) => {
  if (!m.conductivityIacsPercent || m.family === "cored-and-plated") return null;
  const [low, high] = conductivityAt(m.conductivityIacsPercent, celsius);
  const u = Math.hypot(uPercentIacs, leastUOfConductivity * percentIacs);
  if (percentIacs + coverage * u >= low && percentIacs - coverage * u <= high) return null;
  return `${m.name} conducts ${low.toFixed(0)} to ${high.toFixed(0)} % IACS at ${celsius} °C, the coil reads ${percentIacs} ± ${(coverage * u).toFixed(1)}`;
};

const sound: Strike<"sound"> = ({ mPerS, uMPerS }, m) => {
  const through = soundThrough(m);
  if (!through) return null;
  const relative = through.estimated ? uOfSound.estimated : uOfSound.printed;
  const u = Math.hypot(uMPerS, relative * through.mPerS);
  if (Math.abs(through.mPerS - mPerS) <= coverage * u) return null;
  return `${m.name} carries sound at ${through.estimated ? "about " : ""}${through.mPerS.toFixed(0)} m/s, measured ${mPerS.toFixed(0)} ± ${(coverage * u).toFixed(0)}`;
};

const ring: Strike<"ring"> = ({ heard }, m) => {
  if (heard === "dull") return null;
  const [lead] = shareOf(m, "Pb");
  const deadened = lead >= 0.5 || "polymer" in m.composition;
  return deadened ? `${m.name} deadens sound and does not ring` : null;
};

const scratch: Strike<"scratch"> = ({ colour }, m) => {
  if (m.family === "cored-and-plated" || couldLook(colour, m.colour)) return null;
  return `under the scratch the metal is ${colour}, ${m.name} is ${m.colour}`;
};

const touch: Strike<"touch"> = ({ metal, permille }, m) => {
  if (m.family === "cored-and-plated") return null;
  const [gold, silver] = [shareOf(m, "Au"), shareOf(m, "Ag")];
  if (metal === "neither")
    return gold[0] > 0.3 || silver[0] > 0.5 ? `the touch shows neither gold nor silver` : null;
  const [low, high] = metal === "gold" ? gold : silver;
  if (high === 0) return `the touch shows ${metal}, ${m.name} has none`;
  if (!permille) return null;
  if (high * 1000 >= permille.low - 2 * uOfTouch && low * 1000 <= permille.high + 2 * uOfTouch) return null;
  return `the touch reads ${permille.low} to ${permille.high} ‰ ${metal}, ${m.name} holds ${(low * 1000).toFixed(0)} to ${(high * 1000).toFixed(0)}`;
};

/** The piece cannot be larger than its outline, so its density is at least mass over outline. */
const outline: Strike<"outline"> = ({ massG, outlineCm3, uOutlineCm3 }, m) => {
  const least = massG / (outlineCm3 + coverage * uOutlineCm3);
  if (m.densityGPerCm3.high >= least) return null;
  return `${massG} g of ${m.name} would not fit the outline: it needs at least ${least.toFixed(2)} g/cm³`;
};

const strikes: { [K in Evidence["kind"]]: Strike<K> } = {
  magnet,
  conductivity,
  sound,
  ring,
  scratch,
  touch,
  outline,
};

/**
 * Why the evidence strikes a metal out, or null when it does not. A fineness family is struck when each of its recipes
 * is. A cored piece is never struck by what only sees its skin (conductivity, scratch, touch).
 */
export function strike(evidence: Evidence, m: Metal): string | null {
  const reasons = recipesOf(m).map((recipe) => strikeOne(evidence, recipe));
  return reasons.every((reason) => reason !== null) ? (reasons[0] ?? null) : null;
}

function strikeOne<K extends Evidence["kind"]>(
  evidence: Extract<Evidence, { kind: K }>,
  m: Metal,
): string | null {
  const by = strikes[evidence.kind as K] as Strike<K>;
  return by(evidence, m);
}
