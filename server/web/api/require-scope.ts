import type { FastifyReply, FastifyRequest } from "fastify";
import { tell } from "../../../views/messages/tell.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { mayWith, type Scope, tokensFrom } from "../../ledger/tokens.ts";
import { documentLanguage, languageOf } from "./language.ts";
import { refusal } from "./shapes.ts";

/** Lets a request pass only with a token that covers the scope at this moment; else 401 or 403 in words. */
export function scopeGuard(ledger: Ledger, now: () => Date) {
  return (scope: Scope) => async (request: FastifyRequest, reply: FastifyReply) => {
    const kept = await ledger.entries({ kind: ["token-issued", "token-revoked"] });
    const answer = mayWith(request.headers.authorization, scope, tokensFrom(kept), now());
    if (answer.may) return;
    // RFC 6750, section 3: the challenge names the scheme, and what was lacking.
    const lacking = answer.status === 403 ? ` error="insufficient_scope", scope="${scope}"` : "";
    return reply
      .code(answer.status)
      .header("www-authenticate", `Bearer realm="underhook"${lacking && `,${lacking}`}`)
      .send({ id: null, error: { at: "authorization", message: tell(answer.says, languageOf(request)) } });
  };
}

export type RequireScope = ReturnType<typeof scopeGuard>;

/** What every guarded route publishes about its refusals. */
export const refusals = { 400: refusal, 401: refusal, 403: refusal };

/** What a guarded route publishes about its token. */
export const needsToken = (scope: Scope) => ({
  security: [{ token: [] }],
  description: tell({ code: "api.document.scope", params: { scope } }, documentLanguage),
});
