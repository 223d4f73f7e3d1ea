import type { FastifyReply, FastifyRequest } from "fastify";
import { tell } from "../../../views/messages/tell.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { mayWith, type Scope, tokensFrom } from "../../ledger/tokens.ts";
import { documentLanguage, languageOf } from "./language.ts";
import { refused, sendProblem } from "./problem.ts";

declare module "fastify" {
  interface FastifyRequest {
    /** name of the token that the request came with; empty where none was asked for */
    program: string;
  }
}

/** Lets a request pass only with a token that covers the scope at this moment; else 401 or 403 in words. */
export function scopeGuard(ledger: Ledger, now: () => Date) {
  return (scope: Scope) => async (request: FastifyRequest, reply: FastifyReply) => {
    const kept = await ledger.entries({ kind: ["token-issued", "token-revoked"] });
    const answer = mayWith(request.headers.authorization, scope, tokensFrom(kept), now());
    if (answer.may) {
      request.program = answer.name;
      return;
    }
    // RFC 6750, section 3: the challenge names the scheme, and what was lacking.
    const lacking = answer.status === 403 ? ` error="insufficient_scope", scope="${scope}"` : "";
    reply.header("www-authenticate", `Bearer realm="underhook"${lacking && `,${lacking}`}`);
    return sendProblem(reply, answer.status, languageOf(request), {
      message: answer.message,
      at: "authorization",
    });
  };
}

export type RequireScope = ReturnType<typeof scopeGuard>;

/** What every guarded route publishes about its refusals. */
export const refusals = { 400: refused, 401: refused, 403: refused };

/** What a guarded route publishes about its token. */
export const needsToken = (scope: Scope) => ({
  security: [{ token: [] }],
  description: tell({ code: "api.document.scope", params: { scope } }, documentLanguage),
});
