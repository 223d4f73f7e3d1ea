import { createServer, type RequestListener, type Server } from "node:http";
import type { AddressInfo } from "node:net";

/**
 * The address of the pages. It stays while the bench behind it is exchanged for another: requests that come in
 * between wait for the new one, so that a browser notices a short pause and nothing else.
 */
export class Listener {
  #server: Server;
  #behind: Promise<RequestListener>;

  constructor(first: RequestListener) {
    this.#behind = Promise.resolve(first);
    this.#server = createServer((request, response) => {
      void this.#behind.then((listener) => listener(request, response));
    });
  }

  /** Listens on loopback only; 0 takes any free port. Gives the port. */
  async open(port: number): Promise<number> {
    await new Promise<void>((resolve, reject) => {
      this.#server.once("error", reject);
      this.#server.listen(port, "127.0.0.1", resolve);
    });
    return (this.#server.address() as AddressInfo).port;
  }

  /** Puts what `next` gives behind the door. `next` must not reject: it gives something that can say what is wrong. */
  exchange(next: () => Promise<RequestListener>): Promise<unknown> {
    this.#behind = this.#behind.then(next);
    return this.#behind;
  }

  close(): Promise<void> {
    return new Promise((resolve) => {
      this.#server.close(() => resolve());
      this.#server.closeAllConnections();
    });
  }
}
