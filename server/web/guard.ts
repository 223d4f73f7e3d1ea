import type { FastifyInstance, FastifyRequest } from "fastify";
import { type Message, message } from "../../calibration/message.ts";
import { localeFrom } from "../../views/messages/language.ts";
import { tell } from "../../views/messages/tell.ts";
import { forwardedIn, isForwarded } from "../access/forwarded.ts";
import type { Room } from "../access/room.ts";
import { isLoopback } from "../access/room-settings.ts";
import { roomOf } from "./arrival.ts";
import { refusedBy } from "./refused.ts";

const loopbackNames = new Set(["localhost", "127.0.0.1", "[::1]"]);

function hostNameOf(host: string): string {
  return host.replace(/:\d+$/, "").toLowerCase();
}

/** Why a request to the machine's own address is refused, or undefined when it may pass. It must come from this machine, straight. */
function refusalHere(request: FastifyRequest): Message | undefined {
  const host = request.headers.host ?? "";
  const port = String(request.socket.localPort ?? "");
  if ("encrypted" in request.socket || !isLoopback(request.socket.remoteAddress ?? ""))
    return message("refusal.other-host", { host, port });
  if (!loopbackNames.has(hostNameOf(host))) return message("refusal.other-host", { host, port });
  if (isForwarded(request.headers)) return message("refusal.forwarded");
  return refusedOrigin(request.headers.origin, `http://${host}`);
}

/** The same at the address for the room: Host and Origin must be exactly one of its own. */
function refusalInRoom(request: FastifyRequest, room: Room): Message | undefined {
  const host = hostAsked(request, room);
  if (host === undefined || !room.hosts.has(host))
    return message("refusal.not-this-address", { host: host ?? "", right: [...room.urls] });
  const { origin, authorization } = request.headers;
  // every browser names the page that a form was sent from; a program with a token has none
  const isProgram = request.url.startsWith("/api/") && authorization !== undefined;
  if (origin === undefined && !["GET", "HEAD"].includes(request.method) && !isProgram)
    return message("refusal.no-origin");
  return refusedOrigin(origin, `https://${host}`);
}

function hostAsked(request: FastifyRequest, { proxied }: Room): string | undefined {
  const own = request.headers.host?.toLowerCase();
  if (!proxied) return own;
  if (!isLoopback(request.socket.remoteAddress ?? "")) return undefined;
  const { host = own, proto = "https" } = forwardedIn(request.headers);
  return proto === "https" ? host : undefined;
}

function refusedOrigin(origin: string | undefined, right: string): Message | undefined {
  if (origin === undefined || origin === right) return undefined;
  return message("refusal.other-origin", { origin, right });
}

/**
 * Refuses foreign Host and Origin headers before anything else runs: a page elsewhere in the browser must not be able
 * to reach a bench that trusts its own machine (DNS rebinding, cross-site posts).
 */
export function guard(app: FastifyInstance): void {
  app.addHook("onRequest", async (request, reply) => {
    const sentence = refusalOf(request);
    if (sentence !== undefined)
      return reply
        .code(403)
        .type("text/plain; charset=utf-8")
        .send(tell(sentence, localeFrom(request.headers["accept-language"])));
  });
}

function refusalOf(request: FastifyRequest): Message | undefined {
  const room = roomOf(request);
  try {
    return room ? refusalInRoom(request, room) : refusalHere(request);
  } catch (error) {
    const refused = refusedBy(error)?.message;
    if (typeof refused !== "object" || !("code" in refused)) throw error;
    return refused;
  }
}
