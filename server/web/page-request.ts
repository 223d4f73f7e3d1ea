import type { FastifyReply, FastifyRequest } from "fastify";

/** True when htmx asked: the answer is then a part of the page. Without scripts the answer is a whole page. */
export function wantsPart(request: FastifyRequest): boolean {
  return request.headers["hx-request"] === "true";
}

/** Sends markup as it is. */
export function html(reply: FastifyReply, markup: string, status = 200): FastifyReply {
  return reply.code(status).type("text/html; charset=utf-8").send(markup);
}

/** The fields of a posted form as text; anything else than text is left out. */
export function fieldsOf(request: FastifyRequest): Record<string, string> {
  const body = request.body;
  if (typeof body !== "object" || body === null) return {};
  return Object.fromEntries(Object.entries(body).filter(([, value]) => typeof value === "string"));
}
