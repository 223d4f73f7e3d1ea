import { keysOf } from "../../../calibration/keyed.ts";
import { message } from "../../../calibration/message.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf, tellId, tellValue } from "../../../views/messages/tell.ts";
import type { FigureName, FigureView } from "../../../views/metals/figures.tsx";
import type { MetalRow } from "../../../views/metals/index.tsx";
import type { MetalView } from "../../../views/metals/show.tsx";
import { fixed, inLocale } from "../../../views/numbers.ts";
import { satisfies } from "../../conformity/alternative.ts";
import { cautionsAbout } from "../../conformity/cautions.ts";
import { claimRisk } from "../../conformity/claim-risk.ts";
import { repeatedAmong } from "../../conformity/repeated.ts";
import { separation } from "../../conformity/separation.ts";
import { soundThrough } from "../../conformity/sound-through.ts";
import { worthPassingOff, worthPerGram } from "../../conformity/worth.ts";
import { bandByMixture } from "../../metals/band-by-mixture.ts";
import { called } from "../../metals/called.ts";
import type { Library } from "../../metals/library.ts";
import type { DensityBand, Figure, Fraction, Likelihood, Metal } from "../../metals/metal.ts";
import { fromMemory, provenanceMessage } from "../../metals/provenance.ts";

/** A family of the library as a reader calls it. */
export const familyName = (family: string, locale: Locale = "en"): string =>
  tellId("metal-page.families", family, locale);

/** A line of the list of metals. */
export function metalRow(metal: Metal, locale: Locale): MetalRow {
  const { id, family, densityGPerCm3, provenance } = metal;
  return {
    id,
    name: tellValue(called(metal), locale),
    family: familyName(family, locale),
    ...densityGPerCm3,
    from: (provenance.nominal ?? fromMemory).kind,
  };
}

/** How many neighbours on the axis are drawn. */
const drawnNeighbours = 9;

/** Everything the page of one metal shows. */
export function metalView(metal: Metal, library: Library, locale: Locale): MetalView {
  const { id, family, densityGPerCm3: band, notes } = metal;
  const t = tellerOf(locale);
  const sound = soundThrough(metal);
  const conductivity = metal.conductivityIacsPercent;
  return {
    id,
    name: tellValue(called(metal), locale),
    family: familyName(family, locale),
    ...band,
    composition: Object.entries(metal.composition).map(([element, fraction]) => ({
      element,
      nominal: percent(fraction[0], locale),
      range: rangeOf(fraction, locale),
    })),
    mixture: mixtureOf(metal, locale),
    magnetism: t(`metal-page.magnets.${metal.magnetism}`),
    colour: coloursOf(metal, library)
      .map((colour) => t(`metal-page.colours.${colour}`))
      .join(", "),
    ...(conductivity ? { conductivity: conductivityText(conductivity, locale) } : {}),
    ...(sound ? { sound: soundText(sound, locale) } : {}),
    ...(metal.expansionPerMillionK === null
      ? {}
      : { expansion: t("metal-page.per-kelvin", { value: fixed(metal.expansionPerMillionK, 1, locale) }) }),
    likelihood: t(`metal-page.likelihoods.${metOf(metal, library)}`),
    figures: figuresOf(metal, locale),
    fromMemory: Object.values(metal.provenance).filter(({ kind }) => kind === "from-memory").length,
    notes,
    hazards: cautionsAbout([metal]),
    recipes: (metal.recipes ?? [])
      .filter((recipe) => library.has(recipe))
      .map(library.metal)
      .map((recipe) => ({
        id: recipe.id,
        name: tellValue(called(recipe), locale),
        low: recipe.densityGPerCm3.low,
        high: recipe.densityGPerCm3.high,
      })),
    neighbours: neighboursOf(metal, library, locale),
    alternatives: alternativesTo(metal, library).map((other) => ({
      id: other.id,
      name: tellValue(called(other), locale),
      likelihood: t(`metal-page.likelihoods.${metOf(other, library)}`),
      worth: `${figures(100 * (worthPerGram(other, library.worth) / worthPerGram(metal, library.worth)), locale)} %`,
      separatedBy: message(`conformity.way.${separation(metal, other).test}`),
    })),
    risks: widths.map((relative) => riskAt(relative, metal, library, locale)),
  };
}

/** Half-widths of the interval in shares of the density: a fine balance, a good one, a kitchen scale. */
const widths = [0.0005, 0.002, 0.01, 0.05] as const;

/** Two figures, without an exponent. */
const figures = (value: number, locale: Locale) => inLocale(String(+value.toPrecision(2)), locale);

function riskAt(
  relative: number,
  metal: Metal,
  library: Library,
  locale: Locale,
): MetalView["risks"][number] {
  const { nominal, low, high } = metal.densityGPerCm3;
  const expanded = relative * nominal;
  const { consumers, producers, beyondDensity } = claimRisk(metal, library, {
    u: expanded / 2,
    celsius: 20,
    acceptance: { low: low - expanded, high: high + expanded },
  });
  const inThousand = (share: number) => fixed(1000 * share, 1, locale);
  return {
    expanded: `± ${figures(expanded, locale)} g/cm³`,
    wrong: inThousand(consumers + beyondDensity),
    unseen: inThousand(beyondDensity),
    rightly: inThousand(producers),
  };
}

const figureNames = {
  nominal: "nominal",
  low: "low",
  high: "high",
  composition: "composition",
  limits: "limits",
  expansion: "expansion",
  magnetism: "magnetism",
  conductivityLow: "conductivity-low",
  conductivityHigh: "conductivity-high",
  sound: "sound",
  elasticModulus: "elastic-modulus",
  poissonRatio: "poisson-ratio",
  colour: "colour",
  likelihood: "likelihood",
} as const satisfies Record<Figure, FigureName>;

/** Each figure that is known, with its value and where it comes from; other printed densities after them. */
function figuresOf(metal: Metal, locale: Locale): FigureView[] {
  const { provenance, otherDensities } = metal;
  const gPerCm3 = (value: number) => `${decimals(value, locale)} g/cm³`;
  const t = tellerOf(locale);
  const iacs = (end: 0 | 1) => `${decimals(metal.conductivityIacsPercent?.[end] ?? 0, locale)} % IACS`;
  const values: Record<Figure, string | undefined> = {
    nominal: gPerCm3(metal.densityGPerCm3.nominal),
    low: gPerCm3(metal.densityGPerCm3.low),
    high: gPerCm3(metal.densityGPerCm3.high),
    composition: undefined,
    limits: undefined,
    expansion: `${decimals(metal.expansionPerMillionK ?? 0, locale)} · 10⁻⁶/K`,
    magnetism: t(`metal-page.magnets.${metal.magnetism}`),
    conductivityLow: iacs(0),
    conductivityHigh: iacs(1),
    sound: `${decimals(metal.soundMPerS ?? 0, locale)} m/s`,
    elasticModulus: `${decimals(metal.elasticModulusGPa ?? 0, locale)} GPa`,
    poissonRatio: decimals(metal.poissonRatio ?? 0, locale),
    colour: t(`metal-page.colours.${metal.colour}`) ?? metal.colour,
    likelihood: t(`metal-page.likelihoods.${metal.likelihood}`),
  };
  const known = keysOf(figureNames).flatMap((figure) => {
    const from = provenance[figure];
    const value = values[figure];
    return from === undefined
      ? []
      : {
          figure: figureNames[figure],
          ...(value === undefined ? {} : { value }),
          from: provenanceMessage(from),
        };
  });
  const others = otherDensities.map((one) => ({
    figure: "other" as const,
    value: gPerCm3(one.gPerCm3),
    from: provenanceMessage(one.provenance),
  }));
  return [...known, ...others];
}

/** A share as percent with the decimals it was given with: 0.925 is 92.5 %, 0.9999 is 99.99 %. */
const percent = (share: number, locale: Locale) => `${decimals(+(share * 100).toPrecision(6), locale)} %`;

function decimals(value: number, locale: Locale): string {
  const digits = String(value).split(".")[1]?.length ?? 0;
  return fixed(value, Math.min(digits, 4), locale);
}

function rangeOf([, low, high]: Fraction, locale: Locale): string {
  if (low === null && high === null) return tellerOf(locale)("metal-page.not-known");
  const end = (share: number | null) => (share === null ? "?" : percent(share, locale).replace(" %", ""));
  return `${end(low)} – ${end(high)} %`;
}

/** The usual composition by the mixture law, with the ends of the band its limits allow. */
function mixtureOf(metal: Metal, locale: Locale): { ideal: string; withExcess: string } {
  const { plain, corrected } = bandByMixture(metal);
  const text = ({ nominal, low, high }: DensityBand) =>
    low === high
      ? fixed(nominal, 3, locale)
      : `${fixed(nominal, 3, locale)} (${fixed(low, 3, locale)} – ${fixed(high, 3, locale)})`;
  return { ideal: text(plain), withExcess: text(corrected) };
}

function conductivityText([low, high]: readonly [number, number], locale: Locale): string {
  const range = low === high ? decimals(low, locale) : `${decimals(low, locale)} – ${decimals(high, locale)}`;
  return tellerOf(locale)("metal-page.iacs", { range });
}

function soundText({ mPerS, estimated }: { mPerS: number; estimated: boolean }, locale: Locale): string {
  const t = tellerOf(locale);
  const rounded = Math.round(mPerS / 10) * 10;
  return estimated
    ? t("metal-page.sound-computed", { speed: rounded })
    : t("metal-page.sound-printed", { speed: mPerS });
}

function neighboursOf(metal: Metal, { metals }: Library, locale: Locale) {
  const away = (m: Metal) => Math.abs(m.densityGPerCm3.nominal - metal.densityGPerCm3.nominal);
  const near = metals
    .filter(({ id, family }) => id === metal.id || family !== "cored-and-plated")
    .sort((a, b) => away(a) - away(b))
    .slice(0, drawnNeighbours);
  return (near.includes(metal) ? near : [metal, ...near]).map((near) => ({
    id: near.id,
    name: tellValue(called(near), locale),
    low: near.densityGPerCm3.low,
    high: near.densityGPerCm3.high,
  }));
}

const order = { common: 0, possible: 1, rare: 2 } as const;

const recipesIn = ({ has, metal: of }: Library, metal: Metal) =>
  metal.recipes?.filter(has).map(of) ?? [metal];

const coloursOf = (metal: Metal, library: Library) => [
  ...new Set(recipesIn(library, metal).map(({ colour }) => colour)),
];

/** A family is met as often as the commonest of its recipes. */
const metOf = (metal: Metal, library: Library): Likelihood =>
  recipesIn(library, metal)
    .map(({ likelihood }) => likelihood)
    .sort((a, b) => order[a] - order[b])[0] ?? metal.likelihood;

/** Other metals whose band meets this one: those worth less first, of them the likeliest. */
function alternativesTo(metal: Metal, library: Library): Metal[] {
  const { low, high } = metal.densityGPerCm3;
  const pays = (m: Metal) => (worthPassingOff(m, metal, library.worth) ? 0 : 1);
  const rank = (m: Metal) => 10 * pays(m) + order[metOf(m, library)];
  const meeting = library.metals.filter(
    (m) => !satisfies(m, metal) && m.densityGPerCm3.low <= high && m.densityGPerCm3.high >= low,
  );
  const repeated = repeatedAmong(
    meeting.map(({ id }) => id),
    library,
  );
  return meeting.filter(({ id }) => !repeated(id)).sort((a, b) => rank(a) - rank(b));
}
