import type { FastifyInstance } from "fastify";
import type { ZodTypeProvider } from "fastify-type-provider-zod";
import { validatorCompiler } from "fastify-type-provider-zod";
import { z } from "zod";
import { locales } from "../../../views/messages/language.ts";
import { tell } from "../../../views/messages/tell.ts";
import { isError } from "../../compute/compute.ts";
import type { Computed } from "../../compute/compute-thread.ts";
import { computeRequest, computeResponse } from "../../compute/contract.ts";
import { printed } from "../../compute/printed.ts";
import { refused, sendProblem } from "./problem.ts";

const asked = z.strictObject({ lang: z.enum(locales).default("en").describe("language of the messages") });

/** Answers one request of the contract, in its own thread. */
export type Compute = (request: unknown) => Promise<Computed>;

/**
 * POST /api/compute answers one weighing with the contract of `underhook compute`. It needs no token: nothing is shown
 * of the ledger and nothing is stored. The body is checked by `compute` itself, so that both doors refuse with the same words.
 */
export function computeOfApi(app: FastifyInstance, compute: Compute): void {
  app.withTypeProvider<ZodTypeProvider>().post(
    "/api/compute",
    {
      // the body is checked by `compute` itself
      validatorCompiler: (route) =>
        route.httpPart === "body" ? (value: unknown) => ({ value }) : validatorCompiler(route as never),
      schema: {
        operationId: "computeStatement",
        summary:
          "The statement of one weighing: density, uncertainty, budget, checks and what it means for a claim",
        querystring: asked,
        body: computeRequest,
        response: { 200: computeResponse, 422: refused },
      },
    },
    async (request, reply) => {
      const answer = await compute(request.body);
      const { lang } = request.query;
      if (!isError(answer)) return printed(answer, (message) => tell(message, lang));
      const { at, message: sentence } = answer.error;
      return sendProblem(reply, 422, lang, { message: sentence, at, id: answer.id });
    },
  );
}
