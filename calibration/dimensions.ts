import { type Arithmetic, plain } from "./arithmetic.ts";
import { lastPlace } from "./decimal.ts";
import type { Expression, Input, Inputs } from "./input.ts";
import { message } from "./message.ts";
import { Refusal } from "./refusal.ts";
import { ownScatterFrom, repeats } from "./repeats.ts";
import type { Weighing } from "./weighing.ts";

/** One outside length of a piece as a calliper or micrometer showed it. */
export interface Length {
  /** decimal texts, mm */
  readings: readonly string[];
  /** one step of the display, mm; that of the readings' last place when absent */
  readabilityMm?: number;
  /** standard uncertainty of the instrument's calibration at this length, mm */
  uMm: number;
  /** standard deviation of one reading, used below four readings, mm; one step when absent (common practice) */
  repeatabilityMm?: number;
}

type Volume = <N>(a: Arithmetic<N>, lengths: readonly N[]) => N;

const round: Volume = (a, [diameter, height]) =>
  a.times(a.times(a.times(diameter!, diameter!), a.of(Math.PI / 4)), height!);

/** The solids that a few outside lengths tell, with their volume in mm³; elementary geometry, as in any handbook. */
export const solids = {
  /** l·w·h */
  box: {
    lengths: ["length", "width", "height"],
    volume: (a, [length, width, height]) => a.times(a.times(length!, width!), height!),
  },
  /** (π/4)·d²·h */
  cylinder: { lengths: ["diameter", "height"], volume: round },
  /** π·w·(D − w)·l */
  tube: {
    lengths: ["diameter", "wall", "length"],
    volume: (a, [diameter, wall, length]) =>
      a.times(a.times(a.times(wall!, a.minus(diameter!, wall!)), a.of(Math.PI)), length!),
  },
  /** (π/4)·d²·t */
  disc: { lengths: ["diameter", "thickness"], volume: round },
} as const satisfies Record<string, { lengths: readonly string[]; volume: Volume }>;

export type SolidName = keyof typeof solids;
export type LengthName = (typeof solids)[SolidName]["lengths"][number];

/** A piece measured instead of immersed. */
export interface MeasuredBody {
  solid: SolidName;
  lengths: Readonly<Partial<Record<LengthName, Length>>>;
  /** by how much the true volume departs from that of the plain solid: estimate and half-width, per cent of it */
  formPercent: number;
  formHalfWidthPercent: number;
}

/**
 * Density from dimensions: the volume follows from outside lengths instead of a displaced mass, as in method F of OIML
 * R 111-1:2004, annex B.7 [from memory; the least certain of its methods, its table of uncertainties is not quoted]. Each
 * length carries its repeats (own s/√n from four readings on), its step (±d/2, JCGM 100:2008, F.2.2.1) and the
 * calibration of the instrument, which all lengths share, since one instrument errs the same way on each. Form
 * (roundness, chamfer, relief) is a contribution of its own. The volume stands in the model where the displaced mass of
 * a liquid would that lifts 1 g on the balance for each cm³. Throws Refusal for lengths that enclose no solid.
 */
export function dimensions(body: MeasuredBody): Weighing {
  const lengths = lengthsOf(body);
  const { volume } = solids[body.solid];
  return {
    key: "dimensions",
    series: [],
    term(inputs) {
      const calibration = inputs.normal("instrument for lengths, calibration", "u", 0, 1);
      const inModel = lengths.map(({ name, length }) => lengthIn(inputs, name, length, calibration));
      const means = lengths.map(({ meanMm }) => meanMm);
      const cm3 = volume(plain, means) / 1000;
      const form = inputs.rectangular(
        "form of the piece",
        "cm³",
        (cm3 * body.formPercent) / 100,
        (cm3 * body.formHalfWidthPercent) / 100,
      );
      return {
        loads: [],
        displacedGrams: (a, of, { scale }) => {
          const mm3 = volume(
            a,
            inModel.map((length) => length(a, of)),
          );
          return a.over(a.plus(a.times(mm3, a.of(1e-3)), of(form)), scale);
        },
        open: [{ input: form, factor: 1 }],
      };
    },
    nothing: "dimensions.nothing",
    drowned: (volume_cm3, reach_cm3) => message("dimensions.within-uncertainty", { volume_cm3, reach_cm3 }),
  };
}

interface MeanLength {
  name: LengthName;
  length: Length;
  meanMm: number;
}

function lengthsOf({ solid, lengths }: MeasuredBody): MeanLength[] {
  const means = solids[solid].lengths.map((name): MeanLength => {
    const length = lengths[name];
    if (!length) throw new Refusal("dimensions.missing", { length: named(name) }, keyOf(name));
    for (const mm of length.readings)
      if (!(Number(mm) > 0))
        throw new Refusal(
          "dimensions.not-above-zero",
          { length: named(name), mm: { decimal: mm } },
          keyOf(name),
        );
    return { name, length, meanMm: repeats(length.readings.map(Number)).mean };
  });
  const wall = means.find(({ name }) => name === "wall");
  const diameter = means.find(({ name }) => name === "diameter");
  if (wall && diameter && 2 * wall.meanMm >= diameter.meanMm)
    throw new Refusal(
      "dimensions.wall-beyond-radius",
      { wall_mm: wall.meanMm, radius_mm: diameter.meanMm / 2 },
      keyOf("wall"),
    );
  return means;
}

const named = (name: LengthName) => message(`dimensions.length.${name}`);
const keyOf = (name: LengthName) => `dimensions.${name}_mm`;

function lengthIn(inputs: Inputs, name: LengthName, length: Length, calibration: Input): Expression {
  const { mean, s, n } = repeats(length.readings.map(Number));
  const step = length.readabilityMm ?? Math.max(...length.readings.map(lastPlace));
  const own = n >= ownScatterFrom;
  const u = (own ? s : (length.repeatabilityMm ?? step)) / Math.sqrt(n);
  const read = inputs.student(
    `${name}, repeatability`,
    "mm",
    mean,
    u,
    own ? n - 1 : Number.POSITIVE_INFINITY,
  );
  const resolution = inputs.rectangular(`${name}, resolution`, "mm", 0, step / 2);
  return (a, of) => a.plus(a.plus(of(read), of(resolution)), a.times(of(calibration), a.of(length.uMm)));
}
