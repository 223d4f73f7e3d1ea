import { type Message, message } from "../../../calibration/message.ts";
import { called } from "../../metals/called.ts";
import type { Metal } from "../../metals/metal.ts";
import { shareOf } from "../../metals/share-of.ts";
import { builtInWorth, type WorthTable } from "../../metals/worth-table.ts";
import { soundThrough } from "../sound-through.ts";
import { canBeCoatedAs } from "../worth.ts";
import { conductivityAt, couldLook, deadens, recipesOf, tooPoorToDrag } from "./appearance.ts";
import type { Evidence } from "./evidence.ts";

/** Reading and range must be further apart than this many standard uncertainties. */
const coverage = 2;
/** A printed sound speed holds for an alloy and temper to about 2 %, one computed from elastic constants to 4 % (common practice). */
const uOfSound = { printed: 0.02, estimated: 0.04 } as const;
/** A coil on a real surface is never better than 3 % (common practice). */
const leastUOfConductivity = 0.03;
/** Touch needles are read to about 15 ‰ (common practice). */
const uOfTouch = 15;

type Exclusion<K extends Evidence["kind"]> = (
  of: Extract<Evidence, { kind: K }>,
  m: Metal,
  worth: WorthTable,
) => Message | null;

const magnet: Exclusion<"magnet"> = ({ shows }, m) => {
  const metal = called(m);
  if (shows === "strong")
    return m.magnetism === "strong" ? null : message("test.excludes.magnet-strong", { metal });
  if (m.magnetism === "strong") return message("test.excludes.magnet-none", { metal });
  return shows === "drag" && tooPoorToDrag(m) ? message("test.excludes.magnet-drag", { metal }) : null;
};

const conductivity: Exclusion<"conductivity"> = ({ percentIacs, uPercentIacs, celsius }, m) => {
  if (!m.conductivityIacsPercent || m.family === "cored-and-plated") return null;
  const [low, high] = conductivityAt(m.conductivityIacsPercent, celsius);
  const u = Math.hypot(uPercentIacs, leastUOfConductivity * percentIacs);
  if (percentIacs + coverage * u >= low && percentIacs - coverage * u <= high) return null;
  return message("test.excludes.conductivity", {
    metal: called(m),
    low_iacs: low,
    high_iacs: high,
    celsius,
    percent_iacs: percentIacs,
    expanded_iacs: coverage * u,
  });
};

const sound: Exclusion<"sound"> = ({ mPerS, uMPerS }, m) => {
  const through = soundThrough(m);
  if (!through) return null;
  const relative = through.estimated ? uOfSound.estimated : uOfSound.printed;
  const u = Math.hypot(uMPerS, relative * through.mPerS);
  if (Math.abs(through.mPerS - mPerS) <= coverage * u) return null;
  return message("test.excludes.sound", {
    metal: called(m),
    speed: message(through.estimated ? "separation.speed-about" : "separation.speed", {
      speed_m_s: through.mPerS,
    }),
    measured_m_s: mPerS,
    expanded_m_s: coverage * u,
  });
};

const ring: Exclusion<"ring"> = ({ heard }, m) =>
  heard === "clear" && deadens(m) ? message("test.excludes.ring", { metal: called(m) }) : null;

/** A surface is that of the metal, or of a skin somebody had a reason to put there. */
const colour: Exclusion<"colour"> = ({ colour: seen }, m, worth) =>
  couldLook(seen, m.colour) || canBeCoatedAs(seen, m, worth) ? null : colourMessage("colour", seen, m);

/** Colour of the metal itself, where no thin skin is left. */
const bare = ({ kind, colour: seen }: Extract<Evidence, { kind: "worn" | "scratch" }>, m: Metal) =>
  m.family === "cored-and-plated" || couldLook(seen, m.colour) ? null : colourMessage(kind, seen, m);

function colourMessage(kind: "colour" | "worn" | "scratch", seen: Metal["colour"], m: Metal): Message {
  return message(`test.excludes.${kind}`, {
    metal: called(m),
    seen: message(`metal-page.colours.${seen}`),
    own: message(`metal-page.colours.${m.colour}`),
  });
}

const touch: Exclusion<"touch"> = ({ metal, permille }, m) => {
  if (m.family === "cored-and-plated") return null;
  const [gold, silver] = [shareOf(m, "Au"), shareOf(m, "Ag")];
  if (metal === "neither")
    return gold[0] > 0.3 || silver[0] > 0.5
      ? message("test.excludes.touch-neither", { metal: called(m) })
      : null;
  const [low, high] = metal === "gold" ? gold : silver;
  const reads = message(`evidence.${metal}`);
  if (high === 0) return message("test.excludes.touch-none", { metal: called(m), reads });
  if (!permille) return null;
  if (high * 1000 >= permille.low - 2 * uOfTouch && low * 1000 <= permille.high + 2 * uOfTouch) return null;
  return message("test.excludes.touch-range", {
    metal: called(m),
    reads,
    low_permille: permille.low,
    high_permille: permille.high,
    own_low_permille: low * 1000,
    own_high_permille: high * 1000,
  });
};

/** The piece cannot be larger than its outline, so its density is at least mass over outline. */
const outline: Exclusion<"outline"> = ({ massG, outlineCm3, uOutlineCm3 }, m) => {
  const least = massG / (outlineCm3 + coverage * uOutlineCm3);
  if (m.densityGPerCm3.high >= least) return null;
  return message("test.excludes.outline", { metal: called(m), mass_g: massG, least_g_cm3: least });
};

const exclusions: { [K in Evidence["kind"]]: Exclusion<K> } = {
  colour,
  worn: bare,
  magnet,
  ring,
  outline,
  conductivity,
  sound,
  scratch: bare,
  touch,
};

/**
 * Why the evidence excludes a metal, or null when it does not. A fineness family is excluded when each of its recipes
 * is. A cored piece is never excluded by what only sees its skin (conductivity, worn place, scratch, touch). The worth table
 * says which skins would pay.
 */
export function excludedBy(evidence: Evidence, m: Metal, worth: WorthTable = builtInWorth): Message | null {
  const reasons = recipesOf(m).map((recipe) => byOne(evidence, recipe, worth));
  return reasons.every((reason) => reason !== null) ? (reasons[0] ?? null) : null;
}

function byOne<K extends Evidence["kind"]>(
  evidence: Extract<Evidence, { kind: K }>,
  m: Metal,
  worth: WorthTable,
): Message | null {
  const by = exclusions[evidence.kind as K] as Exclusion<K>;
  return by(evidence, m, worth);
}
