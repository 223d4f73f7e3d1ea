import type { IncomingMessage } from "node:http";
import type { FastifyRequest } from "fastify";
import { forwardedIn } from "../access/forwarded.ts";
import type { Room } from "../access/room.ts";

const rooms = new WeakMap<IncomingMessage, Room>();

/** Marks a request as one that came in at the address for the room; only the listener of that address does it. */
export function arrivedAt(room: Room, request: IncomingMessage): void {
  rooms.set(request, room);
}

/** The address for the room, when the request came in there; undefined: it came from the machine itself. */
export const roomOf = (request: FastifyRequest): Room | undefined => rooms.get(request.raw);

/** The address that asked; behind a proxy the one that the proxy tells. Throws Refusal when it tells none. */
export function addressOf(request: FastifyRequest): string {
  if (roomOf(request)?.proxied) return forwardedIn(request.headers).from;
  return (request.socket.remoteAddress ?? "").replace(/^::ffff:/i, "");
}
