import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { LedgerTrouble } from "../../ledger/trouble.ts";
import { Refusal } from "../../weighing/refusal.ts";
import { fieldsOf } from "../page-request.ts";

/** Draws the page a form stands on, with what was wrong. */
export type ShowAgain = (request: FastifyRequest, reply: FastifyReply, problem: string) => unknown;

/** Adds a form: what it asks is done and leads on to a page, or is refused in words on its own page. */
export type BalanceForm = (
  path: string,
  show: ShowAgain,
  does: (fields: Record<string, string>, request: FastifyRequest) => Promise<string>,
) => void;

/** The forms around the balances. In a demonstration none of them does anything: its balance is invented. */
export function balanceForms(app: FastifyInstance, demo: boolean): BalanceForm {
  return (path, show, does) => {
    app.post(path, { preHandler: app.csrfProtection }, async (request, reply) => {
      try {
        if (demo)
          throw new Refusal(
            "In the demonstration the balance is simulated, and invented pieces never share a ledger with measured ones. End the demonstration first; nothing was changed.",
          );
        return reply.redirect(await does(fieldsOf(request), request), 303);
      } catch (error) {
        if (error instanceof Refusal || error instanceof LedgerTrouble || error instanceof RangeError)
          return show(request, reply, error.message);
        throw error;
      }
    });
  };
}
