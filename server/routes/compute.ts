import swagger from "@fastify/swagger";
import type { FastifyInstance } from "fastify";
import { jsonSchemaTransform, serializerCompiler, type ZodTypeProvider } from "fastify-type-provider-zod";
import { isError } from "../compute/compute.ts";
import {
  type ComputeError,
  type ComputeResponse,
  computeError,
  computeRequest,
  computeResponse,
} from "../compute/contract.ts";

/** Answers one request of the contract, in its own thread. */
export type Compute = (request: unknown) => Promise<ComputeResponse | ComputeError>;

/**
 * POST /api/compute answers one weighing with the contract of `underhook compute`; GET /api/openapi.json publishes
 * its schema. The body is checked by `compute` itself, so that both doors refuse with the same words.
 */
export async function computeRoutes(app: FastifyInstance, compute: Compute): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: "3.1.0",
      info: {
        title: "Underhook",
        version: "1",
        description: "Densities from two weighings and a thermometer, with their uncertainty and a finding.",
      },
    },
    transform: jsonSchemaTransform,
  });
  const typed = app.withTypeProvider<ZodTypeProvider>();
  typed.setValidatorCompiler(() => (value: unknown) => ({ value }));
  typed.setSerializerCompiler(serializerCompiler);
  typed.post(
    "/api/compute",
    {
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
  app.get("/api/openapi.json", async () => app.swagger());
}
