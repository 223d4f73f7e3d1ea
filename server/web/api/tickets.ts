import { hash } from "node:crypto";
import type { FastifyInstance } from "fastify";
import type { ZodTypeProvider } from "fastify-type-provider-zod";
import { message } from "../../../calibration/message.ts";
import { omitUndefined } from "../../compute/omit-undefined.ts";
import { LedgerError } from "../../ledger/error.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Library } from "../../metals/library.ts";
import { languageOf } from "./language.ts";
import { refused, sendProblem } from "./problem.ts";
import { needsToken, type RequireScope, refusals } from "./require-scope.ts";
import { announcement, announcementKey, ticketAnnounced } from "./shapes.ts";

/**
 * A trade system announces a piece that is to be weighed, as a list of tickets does. The key makes it safe to send
 * again: the same key and piece give the ticket that stands, the same key with another piece is refused.
 */
export function ticketsOfApi(
  app: FastifyInstance,
  ledger: Ledger,
  library: () => Library,
  requireScope: RequireScope,
): void {
  app.withTypeProvider<ZodTypeProvider>().post(
    "/api/tickets",
    {
      onRequest: requireScope("tickets:write"),
      schema: {
        operationId: "announceTicket",
        summary: "A piece that is to be weighed",
        ...needsToken("tickets:write"),
        headers: announcementKey,
        body: announcement,
        response: { 201: ticketAnnounced, ...refusals, 409: refused, 422: refused },
      },
    },
    async (request, reply) => {
      const { body, headers } = request;
      if (body.claim !== undefined) library().metal(body.claim);
      const key = `announced-${hash("sha256", headers["idempotency-key"], "hex")}`;
      try {
        const { id, seq, at } = await ledger.append(
          "ticket-announced",
          "tickets",
          { ...omitUndefined(body), from: request.program },
          { key },
        );
        return reply.code(201).send({ id, seq, at, ticket: body.ticket });
      } catch (error) {
        if (!(error instanceof LedgerError) || error.code !== "ledger.entry.stands") throw error;
        return sendProblem(reply, 409, languageOf(request), {
          message: message("api.refused.key-used"),
          at: "idempotency-key",
        });
      }
    },
  );
}
