import { once } from "node:events";
import type { AddressInfo } from "node:net";
import { connect, createServer, type Socket } from "node:net";

/** A network between a bench and its database. */
export interface DelayedLine {
  /** the database as it is reached through the line */
  databaseUrl: string;
  /** from now on nothing comes through either way, and nothing is closed */
  silence(): void;
  close(): void;
}

/** A line to a database on which each byte takes so long from one end to the other. */
export async function lineTo(databaseUrl: string, { delayMs = 0 } = {}): Promise<DelayedLine> {
  const there = new URL(databaseUrl);
  const sockets = new Set<Socket>();
  let silent = false;
  const pass = (from: Socket, to: Socket) => {
    from.on("data", (bytes) => {
      const send = () => {
        if (!silent && to.writable) to.write(bytes);
      };
      if (delayMs === 0) send();
      else setTimeout(send, delayMs);
    });
    from.on("close", () => setTimeout(() => to.destroy(), delayMs));
    from.on("error", () => to.destroy());
    sockets.add(from);
  };
  const server = createServer((near) => {
    const far = connect(Number(there.port), there.hostname);
    for (const one of [near, far]) one.setNoDelay(true);
    pass(near, far);
    pass(far, near);
  });
  server.listen(0, "127.0.0.1");
  await once(server, "listening");
  const here = new URL(databaseUrl);
  here.port = String((server.address() as AddressInfo).port);
  return {
    databaseUrl: here.href,
    silence() {
      silent = true;
    },
    close() {
      for (const socket of sockets) socket.destroy();
      server.close();
    },
  };
}
