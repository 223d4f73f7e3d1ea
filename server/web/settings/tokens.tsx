import { randomBytes, randomUUID } from "node:crypto";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { keyed } from "../../../calibration/keyed.ts";
import { dayRange } from "../../../calibration/local-time.ts";
import { message } from "../../../calibration/message.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { TokensPage, type TokensView } from "../../../views/settings/tokens.tsx";
import { omitUndefined } from "../../compute/omit-undefined.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { newToken, scopes, type TokenStanding, tokensFrom } from "../../ledger/tokens.ts";
import { type Entries, postedForm, refuse, refuseEntry } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html, queryOf } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import { dayOf } from "../when.ts";

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
      tokens: (await standing()).map((token) => viewOf(token, now(), frame.zone)),
      revoked: "revoked" in queryOf(request),
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
    const typed = asTyped(request);
    const read = postedForm(request, tokenForm(now(), app.zone()));
    if ("problems" in read) return show(request, reply, { problems: read.problems, typed });
    const { step, ...issued } = read.values;
    const { token, tokenHash } = newToken(randomBytes(32));
    try {
      await ledger.append(
        "token-issued",
        "tokens",
        { ...issued, tokenHash },
        step === undefined ? {} : { key: `token-${step}` },
      );
      return show(request, reply, { made: token });
    } catch (error) {
      const { message: sentence } = refusalOf(error);
      return show(request, reply, { problems: [{ fieldId: "name", error: sentence }], typed });
    }
  });

  app.post<{ Params: { tokenHash: string } }>(
    "/settings/tokens/:tokenHash/revocation",
    { preHandler: app.csrfProtection },
    async (request, reply) => {
      const { tokenHash } = request.params;
      const read = postedForm(request, revocationForm);
      if ("problems" in read)
        return show(request, reply, {
          problems: read.problems.map(({ error }) => ({ fieldId: "tokens-heading", error })),
        });
      const { reason } = read.values;
      if ((await standing()).some((token) => token.tokenHash === tokenHash && !token.revoked))
        await ledger.append("token-revoked", "tokens", { tokenHash, reason });
      return reply.redirect("/settings/tokens?revoked", 303);
    },
  );
}

/** A token is good through the whole of its last day at the place. */
function endOf(day: string, zone: string): Date {
  return new Date(dayRange(day, zone)?.until ?? Number.NaN);
}

/** What a new token opens, for whom and how long; `step` keeps a form sent twice from making two. */
const tokenForm =
  (now: Date, zone: string) =>
  ({ text, maybeText, maybeDay, box }: Entries) => {
    const until = maybeDay().transform((day, context) => {
      if (day === undefined) return undefined;
      if (endOf(day, zone) <= now) refuse(context, message("tokens.until-wrong", { typed: day }));
      return endOf(day, zone).toISOString();
    });
    const said = z.object({
      name: text({ missing: message("tokens.name-missing") }),
      until,
      by: maybeText(),
      step: maybeText(),
    });
    const ticked = z.object(keyed(scopes, () => box())).transform((ticked, context) => {
      const covered = scopes.filter((scope) => ticked[scope]);
      if (covered.length === 0) refuseEntry(context, "scopes", message("tokens.nothing-ticked"));
      return { scopes: covered };
    });
    return z.intersection(said, ticked).transform(omitUndefined);
  };

const revocationForm = ({ text }: Entries) =>
  z.object({ reason: text({ missing: message("tokens.why-missing") }) });

function viewOf(token: TokenStanding, now: Date, zone: string): TokensView["tokens"][number] {
  const { tokenHash, name, scopes: opens, issuedAt, until, revoked } = token;
  const over = until !== null && now.getTime() >= Date.parse(until);
  return {
    tokenHash,
    name,
    scopes: opens,
    made: dayOf(issuedAt, zone),
    until: until === null ? null : dayOf(until, zone),
    standing: revoked ? "revoked" : over ? "over" : "good",
  };
}
