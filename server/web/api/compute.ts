import type { FastifyInstance } from "fastify";
import type { ZodTypeProvider } from "fastify-type-provider-zod";
import { isError } from "../../compute/compute.ts";
import {
  type ComputeError,
  type ComputeResponse,
  computeError,
  computeRequest,
  computeResponse,
} from "../../compute/contract.ts";

/** Answers one request of the contract, in its own thread. */
export type Compute = (request: unknown) => Promise<ComputeResponse | ComputeError>;

/**
 * POST /api/compute answers one weighing with the contract of `underhook compute`. It needs no token: nothing is shown
 * of the ledger and nothing is stored. The body is checked by `compute` itself, so that both doors refuse with the same words.
 */
export function computeOfApi(app: FastifyInstance, compute: Compute): void {
  app.withTypeProvider<ZodTypeProvider>().post(
    "/api/compute",
    {
      validatorCompiler: () => (value: unknown) => ({ value }),
      schema: {
        summary: "Density, uncertainty, budget and finding of one weighing",
        body: computeRequest,
        response: { 200: computeResponse, 422: computeError },
      },
    },
    async (request, reply) => {
      const answer = await compute(request.body);
      return isError(answer) ? reply.code(422).send(answer) : reply.send(answer);
    },
  );
}
