import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { Refusal } from "../../../calibration/refusal.ts";
import type { Sentence } from "../../../views/sentence.tsx";
import { type Entries, type Form, formIn } from "../forms/form.ts";
import { refusalOf } from "../refused.ts";

/** Draws the page a form stands on, with what was wrong. */
export type ShowAgain = (request: FastifyRequest, reply: FastifyReply, problem: Sentence) => unknown;

/**
 * Adds a form around the balances: what it asks is done, or refused on its own page. `does` may give the page that it
 * leads on to; else that is the Balances page.
 */
export type AddForm = <T>(
  path: string,
  show: ShowAgain,
  entries: Form<T>,
  does: (values: T, request: FastifyRequest) => unknown,
) => void;

/** In a demonstration no form does anything: its balance is invented. */
export function balanceForms(app: FastifyInstance, demo: boolean): AddForm {
  return (path, show, entries, does) => {
    app.post(path, { preHandler: app.csrfProtection }, async (request, reply) => {
      try {
        if (demo) throw new Refusal("balance.demo");
        const next = await does(formIn(request, entries), request);
        return reply.redirect(typeof next === "string" ? next : "/balances", 303);
      } catch (error) {
        return show(request, reply, refusalOf(error).message);
      }
    });
  };
}

/** A button alone. */
export const noEntries = () => z.object({});

/** The port that a button is about. */
export const portForm = ({ typed }: Entries) => z.object({ port: typed() });
