import type { FastifyInstance, FastifyRequest } from "fastify";

const loopbackNames = new Set(["localhost", "127.0.0.1", "[::1]"]);

function hostNameOf(host: string): string {
  return host.replace(/:\d+$/, "").toLowerCase();
}

/** The sentence that refuses a request, or undefined when the request may pass. */
function refusal(request: FastifyRequest): string | undefined {
  const host = request.headers.host ?? "";
  if (!loopbackNames.has(hostNameOf(host)))
    return `The bench answers only on this machine, and "${host}" is another name. Open http://localhost:${request.socket.localPort}/ instead.`;
  const origin = request.headers.origin;
  if (origin !== undefined && origin !== `http://${host}`)
    return `A page from "${origin}" asked the bench for something; only its own pages at http://${host} may. Nothing was done.`;
  return undefined;
}

/**
 * Refuses foreign Host and Origin headers before anything else runs: a page elsewhere in the browser must not be
 * able to reach a bench that trusts its own machine (DNS rebinding, cross-site posts).
 */
export function guard(app: FastifyInstance): void {
  app.addHook("onRequest", async (request, reply) => {
    const says = refusal(request);
    if (says !== undefined) return reply.code(403).type("text/plain; charset=utf-8").send(says);
  });
}
