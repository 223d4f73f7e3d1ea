import { randomBytes, randomUUID } from "node:crypto";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { message } from "../../../calibration/message.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { TokensPage, type TokensView } from "../../../views/settings/tokens.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import { newToken, type Scope, scopes, type TokenStanding, tokensFrom } from "../../ledger/tokens.ts";
import { frameOf } from "../look.ts";
import { fieldsOf, html } from "../page-request.ts";
import { refusalOf } from "../refused.ts";

interface Parts {
  ledger: Ledger;
  demo: boolean;
  now: () => Date;
}

type Shown = Partial<Pick<TokensView, "made" | "problems" | "typed">>;

/** Tokens of the API are made and revoked here; the ledger keeps their hashes and who made them. */
export function tokenRoutes(app: FastifyInstance, { ledger, demo, now }: Parts): void {
  const standing = async () =>
    tokensFrom(await ledger.entries({ kind: ["token-issued", "token-revoked"] })).reverse();

  async function show(request: FastifyRequest, reply: FastifyReply, shown: Shown = {}) {
    const frame = frameOf(request, reply, { path: "/settings", demo });
    const { problems = [], typed = {}, made } = shown;
    const view: TokensView = {
      tokens: (await standing()).map((token) => viewOf(token, now())),
      revoked: "revoked" in (request.query as object),
      problems,
      typed,
      csrfToken: frame.csrfToken,
      stepKey: randomUUID(),
      ...(made === undefined ? {} : { made }),
    };
    const title = tellerOf(frame.locale)("tokens.title");
    return html(
      reply.header("cache-control", "no-store"),
      page({ ...frame, title, main: <TokensPage {...view} /> }),
      problems.length > 0 ? 422 : 200,
    );
  }

  app.get("/settings/tokens", (request, reply) => show(request, reply));

  app.post("/settings/tokens", { preHandler: app.csrfProtection }, async (request, reply) => {
    const typed = fieldsOf(request);
    const { name = "", until = "", by = "", step } = typed;
    const covered = scopes.filter((scope) => typed[scope] === "yes");
    const problems = refusedIn(typed, covered, now());
    if (problems.length > 0) return show(request, reply, { problems, typed });
    const { token, tokenHash } = newToken(randomBytes(32));
    try {
      await ledger.append(
        "token-issued",
        "tokens",
        {
          name: name.trim(),
          tokenHash,
          scopes: covered,
          ...(until === "" ? {} : { until: endOf(until).toISOString() }),
          ...(by.trim() === "" ? {} : { by: by.trim() }),
        },
        step ? { key: `token-${step}` } : {},
      );
      return show(request, reply, { made: token });
    } catch (error) {
      const { says } = refusalOf(error);
      return show(request, reply, { problems: [{ fieldId: "name", error: says }], typed });
    }
  });

  app.post<{ Params: { tokenHash: string } }>(
    "/settings/tokens/:tokenHash/revocation",
    { preHandler: app.csrfProtection },
    async (request, reply) => {
      const { tokenHash } = request.params;
      const reason = (fieldsOf(request).reason ?? "").trim();
      if (reason === "")
        return show(request, reply, {
          problems: [{ fieldId: "tokens-heading", error: message("tokens.why-missing") }],
        });
      if ((await standing()).some((token) => token.tokenHash === tokenHash && !token.revoked))
        await ledger.append("token-revoked", "tokens", { tokenHash, reason });
      return reply.redirect("/settings/tokens?revoked", 303);
    },
  );
}

/** A token is good through the whole of its last day, UTC. */
function endOf(day: string): Date {
  return new Date(`${day}T23:59:59.999Z`);
}

function refusedIn({ name = "", until = "" }: Record<string, string>, covered: readonly Scope[], now: Date) {
  const day = /^\d{4}-\d{2}-\d{2}$/.test(until) ? endOf(until).getTime() : Number.NaN;
  return [
    ...(name.trim() === "" ? [{ fieldId: "name", error: message("tokens.name-missing") }] : []),
    ...(covered.length === 0 ? [{ fieldId: "scopes", error: message("tokens.nothing-ticked") }] : []),
    ...(until !== "" && !(day > now.getTime())
      ? [{ fieldId: "until", error: message("tokens.until-wrong", { typed: until }) }]
      : []),
  ];
}

function viewOf(token: TokenStanding, now: Date): TokensView["tokens"][number] {
  const { tokenHash, name, scopes: opens, issuedAt, until, revoked } = token;
  const over = until !== null && now.getTime() >= Date.parse(until);
  return {
    tokenHash,
    name,
    scopes: opens,
    made: issuedAt.slice(0, 10),
    until: until?.slice(0, 10) ?? null,
    standing: revoked ? "revoked" : over ? "over" : "good",
  };
}
