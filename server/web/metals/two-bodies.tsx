import type { FastifyInstance } from "fastify";
import { keyed } from "../../../calibration/keyed.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { TwoBodies, type TwoBodiesView } from "../../../views/plan/two-bodies.tsx";
import { stoneDensities } from "../../metals/composites/stones.ts";
import type { Library } from "../../metals/library.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";
import { claimOptions } from "./claim-options.ts";
import { answerTo } from "./two-bodies-answer.ts";

const names = [
  "massG",
  "density",
  "uDensity",
  "knownMassG",
  "knownDensity",
  "uKnownDensity",
  "alloy",
  "first",
  "uFirst",
  "second",
  "uSecond",
] as const;

type Answered = Pick<TwoBodiesView, "problems" | "answer">;

/** A piece of two bodies: a stone in its setting, gold in quartz. Asked by typing, or from a record with its numbers. */
export function twoBodiesRoutes(app: FastifyInstance, library: () => Library, demo: boolean): void {
  app.get<{ Querystring: Record<string, string | undefined> }>("/plan/two-bodies", async (request, reply) => {
    const frame = frameOf(request, reply, { path: "/plan", demo });
    const question = request.query.question === "masses" ? "masses" : "rest";
    const values = keyed(names, (name) => request.query[name] ?? "");
    const own =
      question === "masses"
        ? values.alloy + values.first + values.second
        : values.knownMassG + values.knownDensity + values.density;
    const answered: Answered =
      own === ""
        ? { problems: [] }
        : answerTo(question, values, { library: library(), locale: frame.locale });
    const view = {
      question,
      values,
      stones: stoneDensities,
      claims: claimOptions(library(), frame.locale),
      ...answered,
    } as const;
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
