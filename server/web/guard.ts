import type { FastifyInstance, FastifyRequest } from "fastify";
import { type Message, message } from "../../calibration/message.ts";
import { localeFrom } from "../../views/messages/language.ts";
import { tell } from "../../views/messages/tell.ts";

const loopbackNames = new Set(["localhost", "127.0.0.1", "[::1]"]);

function hostNameOf(host: string): string {
  return host.replace(/:\d+$/, "").toLowerCase();
}

/** Why a request is refused, or undefined when it may pass. */
function refusal(request: FastifyRequest): Message | undefined {
  const host = request.headers.host ?? "";
  if (!loopbackNames.has(hostNameOf(host)))
    return message("refusal.other-host", { host, port: String(request.socket.localPort ?? "") });
  const origin = request.headers.origin;
  if (origin !== undefined && origin !== `http://${host}`)
    return message("refusal.other-origin", { origin, host });
  return undefined;
}

/**
 * Refuses foreign Host and Origin headers before anything else runs: a page elsewhere in the browser must not be
 * able to reach a bench that trusts its own machine (DNS rebinding, cross-site posts).
 */
export function guard(app: FastifyInstance): void {
  app.addHook("onRequest", async (request, reply) => {
    const says = refusal(request);
    if (says !== undefined)
      return reply
        .code(403)
        .type("text/plain; charset=utf-8")
        .send(tell(says, localeFrom(request.headers["accept-language"])));
  });
}
