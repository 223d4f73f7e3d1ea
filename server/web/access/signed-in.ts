import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { h } from "preact";
import { type Message, message } from "../../../calibration/message.ts";
import { ProblemNote } from "../../../views/bench/parts.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page, render } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import type { Access } from "../../access/access.ts";
import type { Person } from "../../access/person.ts";
import { covers, type Right, rightFor } from "../../access/role.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { isToken, tokensFrom } from "../../ledger/tokens.ts";
import { sendProblem } from "../api/problem.ts";
import { roomOf } from "../arrival.ts";
import { frameOf, lookOf } from "../look.ts";
import { html, wantsPart } from "../page-request.ts";
import { sentBy } from "../person.ts";

/** Browsers send a cookie of this prefix over TLS alone, to this host alone, and take it from nobody else (RFC 6265bis). */
export const sessionCookie = "__Host-underhook-session";

/** A route of the application and what it asks for. */
export interface RouteRight {
  method: string;
  path: string;
  right: Right | undefined;
}

declare module "fastify" {
  interface FastifyInstance {
    /** every route with its right, as registered */
    routeRights: RouteRight[];
  }
}

interface Parts {
  access: Access | undefined;
  ledger: Ledger;
  demo: boolean;
  now: () => Date;
}

/**
 * Lets nothing through from the room but the sign-in, unless the session of the request covers the right of its route.
 * Right and route are looked up by what the router found, never by the address as it was typed; a route without a right
 * is opened to nobody.
 */
export function onlySignedIn(app: FastifyInstance, { access, ledger, demo, now }: Parts): void {
  app.decorate("routeRights", []);
  app.addHook("onRoute", ({ method, url }) => {
    for (const one of [method].flat())
      app.routeRights.push({ method: one, path: url, right: rightFor(one, url) });
  });

  app.addHook("onRequest", async (request, reply) => {
    if (!roomOf(request)) return;
    const { url } = request.routeOptions;
    const right = url === undefined ? "signed-in" : rightFor(request.method, url);
    const person = access && signedIn(access, request, reply);
    if (person) sentBy(person, request);
    if (right === "anyone") return;
    if (right === "programs" && request.headers.authorization !== undefined) {
      const tokens = tokensFrom(await ledger.entries({ kind: ["token-issued", "token-revoked"] }));
      if (isToken(request.headers.authorization, tokens, now())) return;
      return refuse(request, reply, 401, message("ledger.token.unknown"));
    }
    if (!person) return toSignIn(request, reply);
    const needed = right === "programs" ? (request.method === "POST" ? "weigh" : "see") : right;
    if (needed !== undefined && covers(person.role, needed)) return;
    if (person.role === "customer-display" && request.method === "GET" && url === "/")
      return reply.redirect("/customer", 303);
    const role = message(`access.role.${person.role}`);
    return refuse(request, reply, 403, message("access.not-your-role", { initials: person.initials, role }));
  });

  app.addHook("onSend", async (request, reply) => {
    const room = roomOf(request);
    if (!room) return;
    if (!reply.hasHeader("cache-control")) reply.header("cache-control", "no-store");
    if (room.certificate?.own === false) reply.header("strict-transport-security", "max-age=15552000");
    const cookies = [reply.getHeader("set-cookie") ?? []].flat().map(String);
    if (cookies.length > 0) {
      reply.removeHeader("set-cookie");
      for (const one of cookies) reply.header("set-cookie", /;\s*secure/i.test(one) ? one : `${one}; Secure`);
    }
  });

  function refuse(request: FastifyRequest, reply: FastifyReply, status: number, sentence: Message) {
    const { locale } = lookOf(request);
    if (request.url.startsWith("/api/"))
      return sendProblem(reply.header("www-authenticate", 'Bearer realm="underhook"'), status, locale, {
        message: sentence,
        at: "authorization",
      });
    if (wantsPart(request))
      return html(reply, render(h(ProblemNote, { problem: { message: sentence } }), locale), status);
    const frame = frameOf(request, reply, { path: "", demo });
    const title = tellerOf(locale)("frame.not-done");
    return html(
      reply,
      page({ ...frame, title, kind: "plain", main: h(Problem, { message: sentence }) }),
      status,
    );
  }

  function toSignIn(request: FastifyRequest, reply: FastifyReply) {
    const isPage = request.method === "GET" && !wantsPart(request) && !isStream(request);
    if (isPage && !request.url.startsWith("/api/")) return reply.redirect("/sign-in", 303);
    if (wantsPart(request)) reply.header("hx-redirect", "/sign-in");
    return refuse(request, reply, 401, message("access.sign-in-first"));
  }
}

/** The person of the session that the cookie names; its answers are cut when the session ends. */
function signedIn(access: Access, request: FastifyRequest, reply: FastifyReply): Person | undefined {
  const session = access.sessions.find(request.cookies[sessionCookie] ?? "", !isStream(request));
  if (!session) return undefined;
  session.open.add(reply.raw);
  reply.raw.once("close", () => session.open.delete(reply.raw));
  return access.people.byId(session.personId);
}

/** A page that only listens does not keep the session from ending. */
const isStream = ({ headers, routeOptions }: FastifyRequest): boolean =>
  headers.accept?.includes("text/event-stream") === true || routeOptions.url?.endsWith("/live") === true;
