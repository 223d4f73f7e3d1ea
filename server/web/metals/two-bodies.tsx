import type { FastifyInstance } from "fastify";
import type { Code } from "../../../calibration/message.ts";
import { roundedPair } from "../../../calibration/rounding.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { fixed, plusMinus } from "../../../views/numbers.ts";
import { page } from "../../../views/page.tsx";
import { TwoBodies, type TwoBodiesView } from "../../../views/plan/two-bodies.tsx";
import { evidenceRanges } from "../../conformity/evidence/recorded.ts";
import { stoneDensities } from "../../metals/composites/stones.ts";
import { densityOfRest, massesOfTwo, type Uncertain } from "../../metals/composites/two-bodies.ts";
import { NumberEntries } from "../evidence/evidence-form.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";
import { densityRange, uDensityRange } from "./fineness.tsx";

const names = [
  "massG",
  "density",
  "uDensity",
  "knownMassG",
  "knownDensity",
  "uKnownDensity",
  "first",
  "uFirst",
  "second",
  "uSecond",
] as const;

type Values = TwoBodiesView["values"];
type Answered = Pick<TwoBodiesView, "problems" | "answer">;

/** A piece of two bodies: a stone in its setting, gold in quartz. Asked by typing, or from a record with its numbers. */
export function twoBodiesRoutes(app: FastifyInstance, demo: boolean): void {
  app.get<{ Querystring: Record<string, string | undefined> }>("/plan/two-bodies", async (request, reply) => {
    const frame = frameOf(request, reply, { path: "/plan", demo });
    const question = request.query.question === "masses" ? "masses" : "rest";
    const values = Object.fromEntries(names.map((name) => [name, request.query[name] ?? ""])) as Values;
    const own =
      question === "masses"
        ? values.first + values.second
        : values.knownMassG + values.knownDensity + values.density;
    const answered: Answered = own === "" ? { problems: [] } : answerTo(question, values, frame.locale);
    const view = { question, values, stones: stoneDensities, ...answered } as const;
    const status = view.problems.length > 0 ? 422 : 200;
    return html(
      reply,
      page({
        ...frame,
        title: tellerOf(frame.locale)("plan-pages.two-bodies-title"),
        main: <TwoBodies {...view} />,
      }),
      status,
    );
  });
}

function answerTo(question: TwoBodiesView["question"], values: Values, locale: Locale): Answered {
  const numbers = new NumberEntries(values, locale);
  const density = (name: keyof Values, u: keyof Values, [what, ofU]: readonly [Code, Code]): Uncertain => ({
    value: numbers.number(name, what, densityRange),
    u: numbers.number(u, ofU, uDensityRange),
  });
  const whole = {
    massG: exact(numbers.text("massG", "form.field.mass", evidenceRanges.massG)),
    density: density("density", "uDensity", ["form.field.whole-density", "form.field.whole-density-u"]),
  };
  try {
    if (question === "masses") {
      const first = density("first", "uFirst", ["form.field.first-density", "form.field.first-density-u"]);
      const second = density("second", "uSecond", [
        "form.field.second-density",
        "form.field.second-density-u",
      ]);
      if (numbers.problems.length > 0) return { problems: numbers.problems };
      const { firstG, secondG, firstShare } = massesOfTwo(whole, first, second);
      return {
        problems: [],
        answer: {
          says: `${grams(firstG, locale)} of the first body in ${grams(secondG, locale)} of the second.`,
          facts: [
            ["First body", grams(firstG, locale)],
            ["Second body", grams(secondG, locale)],
            [
              "Share of the first by mass",
              `${plusMinus(100 * firstShare.value, 200 * firstShare.u, locale)} %`,
            ],
          ],
        },
      };
    }
    if (values.knownMassG + values.knownDensity === "") {
      if (numbers.problems.length > 0) return { problems: numbers.problems };
      return { problems: [], answer: lowerBound(whole.density, locale) };
    }
    const knownMass = exact(numbers.text("knownMassG", "form.field.body-mass", evidenceRanges.massG));
    const known = density("knownDensity", "uKnownDensity", [
      "form.field.body-density",
      "form.field.body-density-u",
    ]);
    if (numbers.problems.length > 0) return { problems: numbers.problems };
    const rest = densityOfRest(whole, { massG: knownMass, density: known });
    const value = `${plusMinus(rest.value, 2 * rest.u, locale)} g/cm³`;
    return {
      problems: [],
      answer: {
        says: `The other body has a density of ${value}.`,
        facts: [
          ["Density of the other body", value],
          ["Its mass", `${Number((whole.massG.value - knownMass.value).toPrecision(6))} g`],
        ],
      },
    };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { problems: [{ fieldId: "density", error: error.message }] };
  }
}

const densestStone = Math.max(...stoneDensities.map(({ high }) => high));

/** What the whole says of the metal while the stone is not known: a stone lighter than the whole only pulls it down. */
function lowerBound({ value, u }: Uncertain, locale: Locale): NonNullable<Answered["answer"]> {
  const least = value - 2 * u;
  const stones = fixed(densestStone, 1, locale);
  if (least <= densestStone)
    return {
      says: `No lower bound: stones of the list reach ${stones} g/cm³, so one of them may be denser than the whole. Give the stone's mass and density.`,
      facts: [],
    };
  const { decimals } = roundedPair(value, 2 * u);
  const bound = `${fixed(Math.floor(least * 10 ** decimals) / 10 ** decimals, decimals, locale)} g/cm³`;
  return {
    says: `The metal alone has at least ${bound}: no stone of the list is denser than ${stones} g/cm³, so a stone only pulls the whole down. Its mass and density give the metal itself.`,
    facts: [["Density of the metal, at least", bound]],
  };
}

/** ± two standard uncertainties. */
const grams = ({ value, u }: Uncertain, locale: Locale) => `${plusMinus(value, 2 * u, locale)} g`;

/** A mass known to its last decimal: rectangular, half a step either way. */
function exact(text: string): Uncertain {
  const decimals = /\.(\d*)$/.exec(text)?.[1]?.length ?? 0;
  return { value: Number(text), u: (0.5 * 10 ** -decimals) / Math.sqrt(3) };
}
