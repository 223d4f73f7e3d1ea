import {
  createServer,
  type IncomingMessage,
  type RequestListener,
  type Server,
  type ServerResponse,
} from "node:http";
import { createServer as createTlsServer } from "node:https";
import type { AddressInfo } from "node:net";
import { Refusal } from "../../calibration/refusal.ts";
import type { Certificate } from "../access/certificate.ts";
import type { Room } from "../access/room.ts";
import type { RoomSettings } from "../access/room-settings.ts";
import { arrivedAt } from "./arrival.ts";

/** How long a device may take to greet and to say what it wants, ms: nobody is signed in yet. */
const patienceMs = 15_000;
/** Connections from the room at once. */
const mostConnections = 200;

/**
 * The addresses of the pages. They stay while the bench behind them is exchanged for another: requests that come in
 * between wait for the new one, so that a browser notices a short pause and nothing else.
 */
export class Listener {
  readonly #servers: Server[] = [];
  #behind: Promise<RequestListener>;

  constructor(first: RequestListener) {
    this.#behind = Promise.resolve(first);
  }

  /** Listens on loopback only; 0 takes any free port. Gives the port. */
  open(port: number): Promise<number> {
    return this.#listen(
      createServer((request, response) => this.#answer(request, response)),
      port,
      "127.0.0.1",
    );
  }

  /**
   * Listens for the room as well, over TLS with the certificate; without one, in plain http, for a proxy on this machine.
   * Gives the room that `at` makes of the port. Throws Refusal when the address cannot be had.
   */
  async openRoom(
    { address, port }: RoomSettings,
    certificate: Certificate | undefined,
    at: (port: number) => Room,
  ): Promise<Room> {
    let room: Room | undefined;
    const answer = (request: IncomingMessage, response: ServerResponse) => {
      if (room === undefined) {
        request.destroy();
        return;
      }
      arrivedAt(room, request);
      this.#answer(request, response);
    };
    const limits = { headersTimeout: patienceMs, connectionsCheckingInterval: patienceMs };
    const server = certificate
      ? createTlsServer(
          {
            ...limits,
            cert: certificate.cert,
            key: certificate.key,
            minVersion: "TLSv1.2",
            handshakeTimeout: patienceMs,
          },
          answer,
        )
      : createServer(limits, answer);
    server.maxConnections = mostConnections;
    try {
      room = at(await this.#listen(server, port, address));
      return room;
    } catch (error) {
      throw cannotListen(error, { address, port });
    }
  }

  /** Puts what `next` gives behind the addresses. `next` must not reject: it gives something that can say what is wrong. */
  exchange(next: () => Promise<RequestListener>): Promise<unknown> {
    this.#behind = this.#behind.then(next);
    return this.#behind;
  }

  async close(): Promise<void> {
    await Promise.all(
      this.#servers.map(
        (server) =>
          new Promise<void>((resolve) => {
            server.close(() => resolve());
            server.closeAllConnections();
          }),
      ),
    );
  }

  #answer(request: IncomingMessage, response: ServerResponse): void {
    void this.#behind.then((listener) => listener(request, response));
  }

  async #listen(server: Server, port: number, address: string): Promise<number> {
    await new Promise<void>((resolve, reject) => {
      server.once("error", reject);
      server.listen(port, address, resolve);
    });
    this.#servers.push(server);
    return (server.address() as AddressInfo).port;
  }
}

/** What the system answers when an address cannot be had, as a sentence; an error of the program stays one. */
function cannotListen(error: unknown, { address, port }: { address: string; port: number }): unknown {
  const params = { address, port: String(port) };
  switch ((error as NodeJS.ErrnoException).code) {
    case "EADDRINUSE":
      return new Refusal("access.start.port-taken", params);
    case "EADDRNOTAVAIL":
      return new Refusal("access.start.not-here", params);
    case "EACCES":
      return new Refusal("access.start.not-allowed", params);
    default:
      return error;
  }
}
