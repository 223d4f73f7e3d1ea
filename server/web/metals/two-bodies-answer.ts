import { type Code, type Message, message } from "../../../calibration/message.ts";
import { roundedPair } from "../../../calibration/rounding.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { fixed, plusMinus } from "../../../views/numbers.ts";
import type { TwoBodiesView } from "../../../views/plan/two-bodies.tsx";
import { evidenceRanges } from "../../conformity/evidence/recorded.ts";
import { stoneDensities } from "../../metals/composites/stones.ts";
import { densityOfRest, massesOfTwo, type Uncertain } from "../../metals/composites/two-bodies.ts";
import { NumberEntries } from "../evidence/evidence-form.ts";
import { refusedBy } from "../refused.ts";
import { densityRange, uDensityRange } from "./fineness.tsx";

type Values = TwoBodiesView["values"];
type Answered = Pick<TwoBodiesView, "problems" | "answer">;
type Answer = NonNullable<Answered["answer"]>;
interface Whole {
  massG: Uncertain;
  density: Uncertain;
}

/** What the typed numbers say of a piece of two bodies, or which of them need another look. */
export function answerTo(question: TwoBodiesView["question"], values: Values, locale: Locale): Answered {
  const typed = new TypedBodies(values, locale);
  const whole = {
    massG: typed.mass("massG", "form.field.mass"),
    density: typed.density("density", "uDensity", "form.field.whole-density", "form.field.whole-density-u"),
  };
  try {
    const answer =
      question === "masses" ? masses(whole, typed, locale) : restOf(whole, values, typed, locale);
    return typed.problems.length > 0 ? { problems: typed.problems } : { problems: [], answer: answer() };
  } catch (error) {
    const refused = refusedBy(error);
    if (!refused) throw error;
    return { problems: [{ fieldId: "density", error: refused.says }] };
  }
}

/** Reads masses and densities with their uncertainties. */
class TypedBodies {
  readonly #numbers: NumberEntries;
  constructor(values: Values, locale: Locale) {
    this.#numbers = new NumberEntries(values, locale);
  }
  get problems() {
    return this.#numbers.problems;
  }
  density(name: keyof Values, u: keyof Values, what: Code, ofU: Code): Uncertain {
    return {
      value: this.#numbers.number(name, what, densityRange),
      u: this.#numbers.number(u, ofU, uDensityRange),
    };
  }
  /** a mass known to its last decimal: rectangular, half a step either way */
  mass(name: keyof Values, what: Code): Uncertain {
    const text = this.#numbers.text(name, what, evidenceRanges.massG);
    const decimals = /\.(\d*)$/.exec(text)?.[1]?.length ?? 0;
    return { value: Number(text), u: (0.5 * 10 ** -decimals) / Math.sqrt(3) };
  }
}

function masses(whole: Whole, typed: TypedBodies, locale: Locale): () => Answer {
  const t = tellerOf(locale);
  const first = typed.density("first", "uFirst", "form.field.first-density", "form.field.first-density-u");
  const second = typed.density(
    "second",
    "uSecond",
    "form.field.second-density",
    "form.field.second-density-u",
  );
  return () => {
    const { firstG, secondG, firstShare } = massesOfTwo(whole, first, second);
    const [one, other] = [grams(firstG, locale), grams(secondG, locale)];
    return {
      says: message("composite.masses-of-two", { first: one, second: other }),
      facts: [
        [t("composite.first-body"), one],
        [t("composite.second-body"), other],
        [t("composite.first-share"), `${plusMinus(100 * firstShare.value, 200 * firstShare.u, locale)} %`],
      ],
    };
  };
}

function restOf(whole: Whole, values: Values, typed: TypedBodies, locale: Locale): () => Answer {
  if (values.knownMassG + values.knownDensity === "") return () => lowerBound(whole.density, locale);
  const t = tellerOf(locale);
  const massG = typed.mass("knownMassG", "form.field.body-mass");
  const density = typed.density(
    "knownDensity",
    "uKnownDensity",
    "form.field.body-density",
    "form.field.body-density-u",
  );
  return () => {
    const rest = densityOfRest(whole, { massG, density });
    const value = `${plusMinus(rest.value, 2 * rest.u, locale)} g/cm³`;
    const restG = Number((whole.massG.value - massG.value).toPrecision(6));
    return {
      says: message("composite.density-of-rest", { density: value }),
      facts: [
        [t("composite.rest-density"), value],
        [t("composite.rest-mass"), `${restG} g`],
      ],
    };
  };
}

const densestStone = Math.max(...stoneDensities.map(({ high }) => high));

/** What the whole says of the metal while the stone is not known: a stone lighter than the whole only pulls it down. */
function lowerBound({ value, u }: Uncertain, locale: Locale): Answer {
  const least = value - 2 * u;
  if (least <= densestStone)
    return { says: message("composite.no-lower-bound", { stones_g_cm3: densestStone }), facts: [] };
  const { decimals } = roundedPair(value, 2 * u);
  const bound = `${fixed(Math.floor(least * 10 ** decimals) / 10 ** decimals, decimals, locale)} g/cm³`;
  const says: Message = message("composite.lower-bound", { bound, stones_g_cm3: densestStone });
  return { says, facts: [[tellerOf(locale)("composite.metal-at-least"), bound]] };
}

/** ± two standard uncertainties. */
const grams = ({ value, u }: Uncertain, locale: Locale) => `${plusMinus(value, 2 * u, locale)} g`;
