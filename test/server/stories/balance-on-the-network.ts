import { createServer, type Server, type Socket } from "node:net";
import { until } from "../../until.ts";
import type { TestBench } from "../build.ts";

/** A balance that sends text over the network, which a test can pull out and put in again. */
export interface NetworkedBalance {
  /** sends a line and waits until the bench has heard it */
  sends(line: string): Promise<void>;
  /** sends the line again and again until something holds, as a balance that sends by itself does */
  keepsSending(line: string, holds: () => boolean, what: string): Promise<void>;
  /** the line breaks off, and nothing answers at its port until `plugIn` */
  unplug(): Promise<void>;
  plugIn(): Promise<void>;
  close(): Promise<void>;
}

/** Chosen on the page of the balances and heard. */
export async function balanceOnTheNetwork(at: TestBench): Promise<NetworkedBalance> {
  let sockets: Socket[] = [];
  let server: Server;
  let port = 0;
  const listen = async () => {
    server = createServer((socket) => {
      socket.on("error", () => {});
      sockets.push(socket);
    });
    await new Promise<void>((listening) => server.listen(port, "127.0.0.1", listening));
    port = (server.address() as { port: number }).port;
  };
  const write = (line: string) => sockets.at(-1)?.write(`${line}\r\n`);
  const connected = async () => {
    await until(() => sockets.length > 0, "the connection");
    write(""); // what comes before the first line end may be half a line, and is dropped
  };
  const close = async () => {
    for (const socket of sockets) socket.destroy();
    sockets = [];
    await new Promise((closed) => server.close(closed));
  };
  await listen();
  await at.post("/balances/choice", { port: `127.0.0.1:${port}` });
  await connected();
  return {
    async sends(line) {
      const before = at.balance.stream?.recent().at(-1);
      write(line);
      await until(() => at.balance.stream?.recent().at(-1) !== before, `the line ${line}`);
    },
    async keepsSending(line, holds, what) {
      const sending = setInterval(() => write(line), 50);
      await until(holds, what).finally(() => clearInterval(sending));
    },
    async unplug() {
      await close();
      await until(() => at.balance.stream?.error()?.event?.kind === "lost", "the loss");
    },
    async plugIn() {
      await listen();
      await connected();
    },
    close,
  };
}
