import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { Refusal } from "../../../calibration/refusal.ts";
import type { Told } from "../../../views/told.tsx";
import { fieldsOf } from "../page-request.ts";
import { refusedBy } from "../refused.ts";

/** Draws the page a form stands on, with what was wrong. */
export type ShowAgain = (request: FastifyRequest, reply: FastifyReply, problem: Told) => unknown;

/** Adds a form: what it asks is done and leads on to a page, or is refused on its own page. */
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
        if (demo) throw new Refusal("balance.demo");
        return reply.redirect(await does(fieldsOf(request), request), 303);
      } catch (error) {
        const refused = refusedBy(error);
        if (refused === undefined) throw error;
        return show(request, reply, refused.says);
      }
    });
  };
}
