import type { FastifyReply, FastifyRequest } from "fastify";

/** True when htmx asked: the answer is then a part of the page. Without scripts the answer is a whole page. */
export function wantsPart(request: FastifyRequest): boolean {
  return request.headers["hx-request"] === "true";
}

/** Sends markup as it is. */
export function html(reply: FastifyReply, markup: string, status = 200): FastifyReply {
  return reply.code(status).type("text/html; charset=utf-8").send(markup);
}

/** What was typed into a posted form, to be shown again in its fields; what it says is read by `readForm`. */
export const asTyped = (request: FastifyRequest): Record<string, string> => textsIn(request.body);

/** What the address asks behind its question mark, as text. */
export const queryOf = (request: FastifyRequest): Record<string, string | undefined> =>
  textsIn(request.query);

/** A part of the address that its route names; "" where it names none so. */
export const paramOf = (request: FastifyRequest, name: string): string => textsIn(request.params)[name] ?? "";

/** The entries of a form that are text. */
export function textsIn(body: unknown): Record<string, string> {
  if (typeof body !== "object" || body === null) return {};
  return Object.fromEntries(Object.entries(body).filter(([, value]) => typeof value === "string"));
}
