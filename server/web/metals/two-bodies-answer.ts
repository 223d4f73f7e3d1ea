import { z } from "zod";
import { lastPlace } from "../../../calibration/decimal.ts";
import { type Code, type Message, message } from "../../../calibration/message.ts";
import { roundedPair } from "../../../calibration/rounding.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf, tellId } from "../../../views/messages/tell.ts";
import { fixed, fromTo, plusMinus } from "../../../views/numbers.ts";
import type { TwoBodiesView } from "../../../views/plan/two-bodies.tsx";
import { evidenceRanges } from "../../conformity/evidence/recorded.ts";
import { called } from "../../metals/called.ts";
import { alloySetIn } from "../../metals/composites/alloy-set-in.ts";
import { stoneDensities } from "../../metals/composites/stones.ts";
import {
  type Bounded,
  densityOfRest,
  massesOfTwo,
  type Uncertain,
} from "../../metals/composites/two-bodies.ts";
import type { Library } from "../../metals/library.ts";
import type { Metal } from "../../metals/metal.ts";
import { type Entries, readForm } from "../forms/form.ts";
import { refusedBy } from "../refused.ts";
import { densityRange, uDensityRange } from "./fineness.tsx";

type Values = TwoBodiesView["values"];
type Answered = Pick<TwoBodiesView, "problems" | "answer">;
type Answer = NonNullable<Answered["answer"]>;
interface Whole {
  massG: Uncertain;
  density: Uncertain;
}

/** A piece of two bodies: both of them known by their densities, or one by mass and density, or neither. */
interface Asked {
  whole: Whole;
  two?: { first: Uncertain; second: Uncertain };
  /** the first body is an alloy of a claim */
  alloy?: { of: Metal; second: Uncertain };
  known?: Whole;
}

/** What the typed numbers say of a piece of two bodies, or which of them need another look. */
export function answerTo(
  question: TwoBodiesView["question"],
  values: Values,
  { library, locale }: { library: Library; locale: Locale },
): Answered {
  const known = values.knownMassG + values.knownDensity !== "";
  const both = values.alloy === "" ? massesForm : alloyForm(library);
  const form = question === "masses" ? both : known ? restForm : wholeForm;
  const read = readForm<Asked>(form, values, locale);
  if ("problems" in read) return read;
  const { whole, two, alloy, known: body } = read.values;
  try {
    if (alloy) return { problems: [], answer: alloyMasses(whole, alloy, locale) };
    if (two) return { problems: [], answer: masses(whole, two, locale) };
    if (body) return { problems: [], answer: restOf(whole, body, locale) };
    return { problems: [], answer: lowerBound(whole.density, locale) };
  } catch (error) {
    const refused = refusedBy(error);
    if (!refused) throw error;
    return { problems: [{ fieldId: "density", error: refused.message }] };
  }
}

/** Entries of masses and densities, the densities with their standard uncertainties. */
function bodyEntries({ decimal, number }: Entries) {
  return {
    density: (what: Code) => number({ ...densityRange, what: message(what) }),
    u: (what: Code) => number({ ...uDensityRange, what: message(what) }),
    /** a mass known to its last decimal: rectangular, half a step either way */
    mass: (what: Code) =>
      decimal({ ...evidenceRanges.massG, what: message(what) }).transform((text) => ({
        value: Number(text),
        u: lastPlace(text) / Math.sqrt(12),
      })),
  };
}

const wholeForm = (entry: Entries): z.ZodType<Asked> => {
  const { density, u, mass } = bodyEntries(entry);
  return z
    .object({
      massG: mass("form.field.mass"),
      density: density("form.field.whole-density"),
      uDensity: u("form.field.whole-density-u"),
    })
    .transform(({ massG, density: value, uDensity }) => ({
      whole: { massG, density: { value, u: uDensity } },
    }));
};

const massesForm = (entry: Entries): z.ZodType<Asked> => {
  const { density, u } = bodyEntries(entry);
  const two = z
    .object({
      first: density("form.field.first-density"),
      uFirst: u("form.field.first-density-u"),
      second: density("form.field.second-density"),
      uSecond: u("form.field.second-density-u"),
    })
    .transform((of) => ({
      two: {
        first: { value: of.first, u: of.uFirst },
        second: { value: of.second, u: of.uSecond },
      },
    }));
  return z.intersection(wholeForm(entry), two);
};

const alloyForm =
  (library: Library) =>
  (entry: Entries): z.ZodType<Asked> => {
    const { density, u } = bodyEntries(entry);
    const alloy = z
      .object({
        alloy: entry.choice(
          library.metals.map(({ id }) => id),
          { wrong: (id) => message("metal.refusal.not-in-list", { id }) },
        ),
        second: density("form.field.second-density"),
        uSecond: u("form.field.second-density-u"),
      })
      .transform((of) => ({
        alloy: { of: library.metal(of.alloy), second: { value: of.second, u: of.uSecond } },
      }));
    return z.intersection(wholeForm(entry), alloy);
  };

const restForm = (entry: Entries): z.ZodType<Asked> => {
  const { density, u, mass } = bodyEntries(entry);
  const known = z
    .object({
      knownMassG: mass("form.field.body-mass"),
      knownDensity: density("form.field.body-density"),
      uKnownDensity: u("form.field.body-density-u"),
    })
    .transform((of) => ({
      known: { massG: of.knownMassG, density: { value: of.knownDensity, u: of.uKnownDensity } },
    }));
  return z.intersection(wholeForm(entry), known);
};

function masses(
  whole: Whole,
  { first, second }: { first: Uncertain; second: Uncertain },
  locale: Locale,
): Answer {
  const t = tellerOf(locale);
  const { firstG, secondG, firstShare } = massesOfTwo(whole, first, second);
  const [one, other] = [within(firstG, 1, "g", locale), within(secondG, 1, "g", locale)];
  return {
    message: message("composite.masses-of-two", { first: one, second: other }),
    facts: [
      [t("composite.first-body"), one],
      [t("composite.second-body"), other],
      [t("composite.first-share"), within(firstShare, 100, "%", locale)],
    ],
  };
}

/** Of what a page says without being asked for another. */
const confidence = 0.9545;

/** Over everything the claim allows: its band of densities, and the fineness that it states. */
function alloyMasses(whole: Whole, { of, second }: NonNullable<Asked["alloy"]>, locale: Locale): Answer {
  const t = tellerOf(locale);
  const { alloyG, bodyG, fineness } = alloySetIn(whole, of, second, confidence);
  const grams = ([low, high]: readonly [number, number]) =>
    t("lots.totals.range", { low: fixed(low, 2, locale), high: fixed(high, 2, locale), unit: "g" });
  const { low: low_g_cm3, high: high_g_cm3 } = of.densityGPerCm3;
  return {
    message: message("composite.alloy-in-body", {
      alloy: called(of),
      grams: grams(alloyG),
      low_g_cm3,
      high_g_cm3,
    }),
    facts: [
      [t("composite.first-body"), grams(alloyG)],
      [t("composite.second-body"), grams(bodyG)],
      ...(fineness
        ? [
            [
              t("result.fine-mass", {
                element: tellId("metal", `el-${fineness.element.toLowerCase()}`, locale),
              }),
              grams(fineness.fine_g),
            ] as const,
          ]
        : []),
    ],
  };
}

function restOf(whole: Whole, known: Whole, locale: Locale): Answer {
  const t = tellerOf(locale);
  const rest = densityOfRest(whole, known);
  const value = `${plusMinus(rest.value, 2 * rest.u, locale)} g/cm³`;
  const restG = Number((whole.massG.value - known.massG.value).toPrecision(6));
  return {
    message: message("composite.density-of-rest", { density: value }),
    facts: [
      [t("composite.rest-density"), value],
      [t("composite.rest-mass"), `${restG} g`],
    ],
  };
}

const densestStone = Math.max(...stoneDensities.map(({ high }) => high));

/** What the whole says of the metal while the stone is not known: a stone lighter than the whole only pulls it down. */
function lowerBound({ value, u }: Uncertain, locale: Locale): Answer {
  const least = value - 2 * u;
  if (least <= densestStone)
    return { message: message("composite.no-lower-bound", { stones_g_cm3: densestStone }), facts: [] };
  const { decimals } = roundedPair(value, 2 * u);
  const bound = `${fixed(Math.floor(least * 10 ** decimals) / 10 ** decimals, decimals, locale)} g/cm³`;
  const sentence: Message = message("composite.lower-bound", { bound, stones_g_cm3: densestStone });
  return { message: sentence, facts: [[tellerOf(locale)("composite.metal-at-least"), bound]] };
}

/** ± two standard uncertainties, or what they leave of the possible. */
const within = ({ value, u, range, cut }: Bounded, times: number, unit: string, locale: Locale) =>
  `${cut ? fromTo(times * range[0], times * range[1], locale) : plusMinus(times * value, 2 * times * u, locale)} ${unit}`;
