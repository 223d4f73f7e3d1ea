import type { Chance } from "./chance.ts";
import type { ClassOf } from "./class-of.ts";
import type { Scenario } from "./scenario.ts";
import type { LoadName, Moment, Trouble } from "./trouble.ts";
import type { Piece } from "./weighing.ts";

type Usual = Pick<Scenario, "method" | "scale" | "repeats">;

const hung = (repeats: number, scale: Scenario["scale"] = "0.1 mg"): Usual => ({
  method: "hung",
  scale,
  repeats,
});
const displaced = (repeats: number, scale: Scenario["scale"] = "0.01 g"): Usual => ({
  method: "displaced",
  scale,
  repeats,
});

/** A class with a note that names its trouble, where every weighing of the kind gets it. */
const noted = (one: ClassOf, code: string, cases: readonly string[]): ClassOf => ({
  ...one,
  told: (check) => check.code === code && cases.includes(String(check.params.case)),
});

/** What no reading can show is not told from readings alone: the class says so, and who could tell. */
const untold = (reason: string, one: ClassOf): ClassOf => ({ ...one, reason });
const oneReading =
  "one reading shows no scatter and no time; a second one does, and the bench watches the display";
const slowWander =
  "a wander slower than the readings moves all six alike: of three times the stated s the likelihood ratio, which no test of the six values betters, sees 34 % at the 3.4 % false alarms the tests together have, and they see 30 %; of the stated s 7 and 6 %. Readings with the piece lifted in between scatter by it";
const notInReadings = "nothing in the readings tells; a claim that the density leaves does, in part";

/** A genuine piece under its true claim; only the weighing lies. */
const wrong = (name: string, usual: Usual, more: Partial<Scenario>): ClassOf => ({
  name,
  scenario: { ...usual, pieces: "genuine", ...more },
});

const wets: ReadonlySet<LoadName> = new Set(["immersed", "rise", "with piece"]);
const isWet = ({ load }: Pick<Moment, "load">) => wets.has(load);
/** Sign with which more lift on the piece shows. */
const lifted = ({ load }: Moment) => (load === "immersed" ? -1 : 1);
const onWet = (grams: (moment: Moment) => number): Trouble => ({
  grams: (moment) => (isWet(moment) ? grams(moment) : 0),
});
/** Bubbles leave with a time constant of 12 s: the whole lift at the first moment, g, the seconds of each reading. */
const leaving = (lift: (m: Moment) => number, seconds: (m: Moment) => number): Trouble =>
  onWet((m) => lifted(m) * lift(m) * Math.exp(-seconds(m) / 12));
/** Readings follow one another on one immersion, so the wanderings of draught hang together: first-order, 0.95 a reading. */
function draught(deviation: number): Trouble {
  const kept = 0.95;
  return {
    grams: ({ load, reading, chance, bench }) => {
      let walked = chance.normal(`${load} draught 0`, 0, 1);
      for (let n = 1; n <= reading; n++)
        walked = kept * walked + Math.sqrt(1 - kept * kept) * chance.normal(`${load} draught ${n}`, 0, 1);
      const scatter = load === "dry" ? bench.dryScatterGrams : bench.wetScatterGrams;
      return walked * deviation * scatter;
    },
  };
}

/** Scatter and drift beyond what is stated. */
const scattering: readonly ClassOf[] = [
  untold(
    oneReading,
    wrong("bubbles leaving, 4 mg, τ 12 s, one reading 0 to 20 s after", hung(1), {
      trouble: leaving(
        () => 0.004,
        ({ chance }) => chance.between("when", 0, 20),
      ),
    }),
  ),
  wrong("bubbles leaving, 4 mg, τ 12 s, read early and late", hung(2), {
    trouble: leaving(
      () => 0.004,
      ({ reading }) => (reading === 0 ? 1 : 60),
    ),
  }),
  wrong("bubbles leaving, 4 mg, τ 12 s, four readings every 5 s", hung(4), {
    trouble: leaving(
      () => 0.004,
      ({ reading }) => 5 * reading,
    ),
  }),
  wrong("two readings, one of them 20 to 200 s off", hung(2), {
    trouble: onWet(({ reading, chance, bench }) =>
      reading === 0 ? chance.between("off", 20, 200) * bench.wetScatterGrams : 0,
    ),
  }),
  wrong("four dry readings, one of them 10 to 100 s off", hung(4), {
    trouble: {
      grams: ({ load, reading, chance, bench }) =>
        load === "dry" && reading === 2 ? chance.between("off", 10, 100) * bench.dryScatterGrams : 0,
    },
  }),
  ...[1, 2, 3, 6].map((n) => ({
    ...wrong(`true s ten times the stated, ${n} ${n === 1 ? "reading" : "readings"}`, hung(n), {
      truly: { dryScatterGrams: 0.001, wetScatterGrams: 0.003 },
    }),
    ...(n === 1 && { reason: oneReading }),
  })),
  wrong("true s three times the stated, 3 readings", displaced(3, "1 mg"), {
    truly: { dryScatterGrams: 0.0021, wetScatterGrams: 0.0036 },
  }),
  untold(
    slowWander,
    wrong("draught of the stated s, 6 readings hang together", hung(6), { trouble: draught(1) }),
  ),
  untold(
    slowWander,
    wrong("draught of three times the stated s, 6 readings", hung(6), { trouble: draught(3) }),
  ),
  wrong("water warming 0.15 °C a reading, 4 readings", hung(4), {
    trouble: { warmer: ({ reading }) => 0.15 * reading },
  }),
  wrong("evaporation of 10 d a reading, unstated, 3 readings", displaced(3, "1 mg"), {
    bench: { evaporatedGrams: 0 },
    trouble: onWet(
      ({ reading, bench, chance }) => -(reading + chance.share("wait")) * 10 * bench.readabilityGrams,
    ),
  }),
  untold(
    oneReading,
    wrong("evaporation of 10 d before the one reading, unstated", displaced(1, "1 mg"), {
      bench: { evaporatedGrams: 0 },
      trouble: onWet(({ bench, chance }) => -chance.share("wait") * 10 * bench.readabilityGrams),
    }),
  ),
  wrong("porous piece drinks 5 mg over four readings", hung(4), {
    trouble: onWet(({ reading }) => 0.005 * (1 - Math.exp(-(reading + 0.3) / 2))),
  }),
];

/** The instruments are not what they are said to be. */
const instruments: readonly ClassOf[] = [
  untold(
    notInReadings,
    wrong("automatic zero tracking swallows 1 to 5 d of the rise", displaced(1), {
      bench: { evaporatedGrams: 0 },
      trouble: onWet(({ bench, chance }) => -chance.between("swallowed", 1, 5) * bench.readabilityGrams),
    }),
  ),
  untold(
    notInReadings,
    wrong("automatic zero tracking, three immersions", displaced(3), {
      bench: { evaporatedGrams: 0 },
      trouble: onWet(
        ({ bench, chance, reading }) =>
          -chance.between(`swallowed ${reading}`, 1, 5) * bench.readabilityGrams,
      ),
    }),
  ),
  untold(
    notInReadings,
    wrong("eccentricity of up to 5 d on the dry reading", hung(1), {
      trouble: {
        grams: ({ load, chance, bench, grams }) =>
          load === "dry"
            ? (chance.between("off centre", -5, 5) * bench.readabilityGrams * grams) /
              (bench.capacityGrams / 3)
            : 0,
      },
    }),
  ),
  untold(
    notInReadings,
    wrong("dry and immersed on two balances, spans 0.05 % apart", hung(1, "1 mg"), {
      trouble: onWet(({ grams, chance }) => chance.normal("second span", 0, 0.0005) * grams),
    }),
  ),
  untold(
    notInReadings,
    wrong("thermometer 1 to 3 °C off", hung(1), {
      trouble: {
        warmer: ({ chance }) => (chance.share("side") < 0.5 ? -1 : 1) * chance.between("off", 1, 3),
      },
    }),
  ),
  wrong("Fahrenheit typed as Celsius", hung(1), {
    trouble: {
      written: (request) => ({
        ...request,
        liquid: {
          ...request.liquid,
          temperature_c: Number(request.liquid?.temperature_c) * 1.8 + 32,
        },
      }),
    },
  }),
  noted(
    wrong(
      "filling of the flask scatters by 10 mg, unstated, once",
      { method: "flask", scale: "0.1 mg", repeats: 1 },
      {
        truly: { wetScatterGrams: 0.01 },
      },
    ),
    "measurement.flask-filling",
    ["once", "both"],
  ),
  wrong(
    "filling of the flask scatters by 10 mg, unstated, 3 times",
    { method: "flask", scale: "0.1 mg", repeats: 3 },
    {
      truly: { wetScatterGrams: 0.01 },
    },
  ),
  noted(
    wrong(
      "flask 0.5 to 2 °C warmer than at the other filling, unstated",
      { method: "flask", scale: "0.1 mg", repeats: 1 },
      {
        bench: { flaskCelsius: 0 },
        trouble: {
          warmer: ({ load, chance }) => (load === "with piece" ? chance.between("warmer", 0.5, 2) : 0),
        },
      },
    ),
    "measurement.flask-filling",
    ["temperature", "both"],
  ),
  noted(
    wrong(
      "flask 0.05 to 0.2 °C warmer, unstated",
      { method: "flask", scale: "0.1 mg", repeats: 1 },
      {
        bench: { flaskCelsius: 0 },
        trouble: {
          warmer: ({ load, chance }) => (load === "with piece" ? chance.between("warmer", 0.05, 0.2) : 0),
        },
      },
    ),
    "measurement.flask-filling",
    ["temperature", "both"],
  ),
  noted(
    wrong("ethanol stated at 20 °C, used at 25 °C, nothing said", hung(1, "1 mg"), {
      bench: { room: [24, 26] },
      pour: () => ({
        densityAt: (celsius) => 789.3 * (1 - 1.08e-3 * (celsius - 20)),
        surfaceTension: 0.022,
        stated: () => ({ kind: "stated", name: "ethanol", density_g_cm3: 0.7893, u_g_cm3: 0.0003 }),
      }),
    }),
    "measurement.liquid-stated-at",
    ["missing"],
  ),
  noted(
    wrong("ethanol of 25 °C, its density stated at 20 °C, no expansion", hung(1, "1 mg"), {
      bench: { room: [24, 26] },
      pour: (_, room) => ({
        densityAt: (celsius) => 789.3 * (1 - 1.08e-3 * (celsius - 20)),
        surfaceTension: 0.022,
        stated: () => ({
          kind: "stated",
          name: "ethanol",
          density_g_cm3: 0.7893,
          u_g_cm3: 0.0003,
          temperature_c: room.celsius,
          stated_at_c: 20,
        }),
      }),
    }),
    "measurement.liquid-stated-at",
    ["expansion"],
  ),
  untold(
    notInReadings,
    wrong("salt water taken for distilled, 5 to 30 g/L", hung(1, "0.01 g"), {
      pour: (bench, room, chance) => {
        const salted = chance.between("salt", 3.5, 21);
        const shown = room.celsius + chance.normal("thermometer", 0, bench.thermometerCelsius);
        return {
          densityAt: () => 998 + salted,
          surfaceTension: 0.073,
          stated: () => ({
            kind: "water",
            temperature_c: shown,
            temperature_u_c: bench.thermometerCelsius,
            purity: "distilled",
          }),
        };
      },
    }),
  ),
];

/** Twenty pieces pooled, so many of them of another alloy. */
function odd(count: number): Partial<Scenario> {
  const share = count / 20;
  const oddGPerCm3 = 0.87; // of the others: 15.5 among 17.8
  return {
    grams: [80, 400],
    whole: ({ grams, gPerCm3 }: Piece) => ({
      grams,
      gPerCm3: 1 / ((1 - share) / gPerCm3 + share / (gPerCm3 * oddGPerCm3)),
    }),
    states: (request, piece) => ({
      ...request,
      pieces: 20,
      odd_density_g_cm3: piece.gPerCm3 * oddGPerCm3,
    }),
  };
}

const changed = (readings: readonly string[], change: (text: string) => string) => ({
  readings: readings.map(change),
});

/** A figure of the reading changed: its point moved one place, or two neighbours exchanged. */
function pointMoved(text: string, left: boolean): string {
  return (Number(text) * (left ? 0.1 : 10)).toFixed(text.split(".")[1]?.length ?? 0);
}
function digitsExchanged(text: string, chance: Chance): string {
  const places = [...text].flatMap((_, i) => {
    const [a, b] = [text[i], text[i + 1]];
    return a !== undefined && b !== undefined && /\d\d/.test(a + b) && a !== b && i < 4 ? [i] : [];
  });
  const at = places[Math.floor(chance.share("which digits") * places.length)];
  if (at === undefined) return text;
  return text.slice(0, at) + text[at + 1] + text[at] + text.slice(at + 2);
}

/** Gross errors of hand and procedure. */
const gross: readonly ClassOf[] = [
  wrong("touches the bottom, 2 to 100 % of its weight, hung", hung(1, "1 mg"), {
    trouble: onWet(({ grams, chance }) => -chance.between("carried", 0.02, 1) * grams),
  }),
  wrong("touches the bottom, 2 to 100 % of its weight, displaced", displaced(1), {
    trouble: onWet(
      ({ pieceGrams, grams, chance }) => chance.between("carried", 0.02, 1) * (pieceGrams - grams),
    ),
  }),
  wrong("touches the bottom after three good readings", hung(4, "1 mg"), {
    trouble: onWet(({ reading, grams, chance }) =>
      reading === 3 ? -chance.between("carried", 0.02, 1) * grams : 0,
    ),
  }),
  wrong("rubs on the wall, 0.2 to 5 % of its weight", hung(1, "1 mg"), {
    trouble: onWet(
      ({ grams, chance }) =>
        (chance.share("side") < 0.5 ? -1 : 1) * chance.between("rubs", 0.002, 0.05) * grams,
    ),
  }),
  wrong("not covered, 2 to 30 % above the water, hung", hung(1, "1 mg"), {
    trouble: onWet((m) => -lifted(m) * m.chance.between("above", 0.02, 0.3) * m.displacedGrams),
  }),
  wrong("not covered, 2 to 30 % above the water, displaced", displaced(1), {
    trouble: onWet((m) => -lifted(m) * m.chance.between("above", 0.02, 0.3) * m.displacedGrams),
  }),
  untold(
    oneReading,
    wrong("one bubble of 2 to 20 mg beyond the allowance, one reading", hung(1), {
      trouble: onWet((m) => lifted(m) * m.chance.between("bubble", 0.002, 0.02)),
    }),
  ),
  wrong("one bubble of 2 to 20 mg in one of three readings", hung(3), {
    trouble: onWet((m) => (m.reading === 1 ? lifted(m) * m.chance.between("bubble", 0.002, 0.02) : 0)),
  }),
  wrong("capsule of plastic about the piece, 5 to 15 % of its mass", hung(1, "1 mg"), {
    whole: ({ grams, gPerCm3 }, chance) => {
      const capsule = chance.between("capsule", 0.05, 0.15) * grams;
      return { grams: grams + capsule, gPerCm3: (grams + capsule) / (grams / gPerCm3 + capsule / 1.19) };
    },
  }),
  wrong("hanger in the dry reading only", hung(1, "1 mg"), {
    trouble: {
      grams: ({ load, chance, pieceGrams }) =>
        load === "dry" ? chance.between("hanger", 0.01, 0.1) * pieceGrams : 0,
    },
  }),
  wrong("hanger in the immersed reading only", hung(1, "1 mg"), {
    trouble: onWet(({ chance, pieceGrams }) => chance.between("hanger", 0.01, 0.1) * pieceGrams),
  }),
  wrong("beaker not zeroed, displaced", displaced(1), {
    trouble: onWet(({ chance }) => chance.between("beaker", 50, 300)),
  }),
  wrong("dry and immersed exchanged, hung", hung(1, "1 mg"), {
    trouble: { written: (r) => ({ ...r, dry: r.immersed!, immersed: r.dry }) },
  }),
  wrong("dry and rise exchanged, displaced", displaced(1), {
    trouble: { written: (r) => ({ ...r, dry: r.rise!, rise: r.dry }) },
  }),
  wrong("rise written as immersed reading", displaced(1), {
    trouble: {
      written: ({ rise, ...r }) => ({ ...r, method: "hung", immersed: { readings: rise!.readings } }),
    },
  }),
  wrong("immersed reading written as rise", hung(1, "1 mg"), {
    trouble: { written: ({ immersed, ...r }) => ({ ...r, method: "displaced", rise: immersed! }) },
  }),
  wrong("one reading in troy ounces, said to be g", hung(1, "1 mg"), {
    trouble: {
      written: (r) => ({
        ...r,
        immersed: changed(r.immersed!.readings, (text) => (Number(text) / 31.1034768).toFixed(5)),
      }),
    },
  }),
  wrong("one reading in carat, said to be g", displaced(1), {
    trouble: {
      written: (r) => ({
        ...r,
        rise: { ...r.rise!, ...changed(r.rise!.readings, (text) => (Number(text) * 5).toFixed(2)) },
      }),
    },
  }),
  wrong("decimal point one place off in one reading", hung(1, "1 mg"), {
    trouble: {
      written: (r, chance) => {
        const left = chance.share("left") < 0.5;
        return chance.share("which") < 0.5
          ? { ...r, dry: changed(r.dry.readings, (text) => pointMoved(text, left)) }
          : { ...r, immersed: changed(r.immersed!.readings, (text) => pointMoved(text, left)) };
      },
    },
  }),
  wrong("two digits exchanged in typing the immersed reading", hung(1, "1 mg"), {
    trouble: {
      written: (r, chance) => ({
        ...r,
        immersed: changed(r.immersed!.readings, (text) => digitsExchanged(text, chance)),
      }),
    },
  }),
  wrong("dry reading without the decimals of the balance", hung(1, "1 mg"), {
    trouble: {
      written: (r) => ({ ...r, dry: changed(r.dry.readings, (text) => Number(text).toFixed(1)) }),
    },
  }),
  wrong("another piece dry than immersed", hung(1, "1 mg"), {
    trouble: {
      grams: ({ load, chance, pieceGrams }) =>
        load === "dry" ? chance.between("other piece", -0.5, 1) * pieceGrams : 0,
    },
  }),
  wrong("water forgotten, hung", hung(1, "1 mg"), {
    trouble: onWet(({ displacedGrams }) => displacedGrams),
  }),
  wrong("water forgotten, displaced", displaced(1), {
    trouble: onWet(({ grams }) => -grams),
  }),
  wrong("empty pan taken for the dry reading", hung(1, "1 mg"), {
    trouble: { grams: ({ load, grams }) => (load === "dry" ? -grams : 0) },
  }),
  wrong("piece floats, hung", hung(1, "1 mg"), {
    whole: ({ grams }, chance) => ({ grams, gPerCm3: chance.between("floats", 0.3, 0.95) }),
    trouble: onWet(({ grams }) => -grams),
  }),
  wrong("piece floats, displaced", displaced(1), {
    whole: ({ grams }, chance) => ({ grams, gPerCm3: chance.between("floats", 0.3, 0.95) }),
    trouble: onWet(({ grams, pieceGrams }) => pieceGrams - grams),
  }),
  wrong("display frozen since the dry reading, hung", hung(1, "1 mg"), {
    trouble: { written: (r) => ({ ...r, immersed: r.dry }) },
  }),
  wrong(
    "display frozen since the full flask",
    { method: "flask", scale: "1 mg", repeats: 1 },
    {
      trouble: { written: (r) => ({ ...r, flask: { ...r.flask!, with_piece: r.flask!.full } }) },
    },
  ),
  untold(
    notInReadings,
    wrong("dry reading with a film of water of 20 to 50 mg", hung(1, "1 mg"), {
      trouble: {
        grams: ({ load, chance }) => (load === "dry" ? chance.between("film", 0.02, 0.05) : 0),
      },
    }),
  ),
  wrong("air of 1190 kg/m³", hung(1, "1 mg"), {
    trouble: {
      written: (r) => ({ ...r, air: { density_kg_m3: 1190, u_kg_m3: 10 } }),
    },
  }),
  ...[1, 3, 5].map(
    (count): ClassOf => ({
      ...wrong(`${count} of 20 pooled pieces of an alloy 13 % lighter`, displaced(1), odd(count)),
      told: ({ code, params }) => code === "measurement.pool" && Number(params.hidden) >= count,
    }),
  ),
];

/** Classes in which reality contradicts what is stated, and nobody says so. */
export const statedFalsely: readonly ClassOf[] = [...scattering, ...instruments, ...gross];
