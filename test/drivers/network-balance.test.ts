import type { AddressInfo } from "node:net";
import { createServer, type Server, type Socket } from "node:net";
import { afterEach, expect, test, vi } from "vitest";
import {
  createNetworkBalance,
  type NetworkBalanceOptions,
  parseNetworkAddress,
} from "../../drivers/network-balance.ts";
import { createReadingStream } from "../../drivers/reading-stream.ts";

let stop = async () => {};
afterEach(() => stop());

async function bench({
  answers = true,
  ...options
}: Partial<NetworkBalanceOptions> & { answers?: boolean } = {}) {
  const sockets: Socket[] = [];
  const heard: string[] = [];
  const server: Server = createServer((socket) => {
    sockets.push(socket);
    socket.on("error", () => {});
    socket.on("data", (data) => {
      heard.push(data.toString("latin1"));
      if (answers) socket.write("   \u22121.611 g\n");
    });
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  const { port } = server.address() as AddressInfo;
  const balance = createNetworkBalance({
    host: "127.0.0.1",
    port,
    pauses: { firstMs: 10, growth: 1.5, longestMs: 50 },
    ...options,
  });
  const stream = createReadingStream({ balance, sends: options.ask ? "on-request" : "by-itself" });
  balance.start();
  stop = async () => {
    await balance.stop();
    for (const socket of sockets) socket.destroy();
    await new Promise((closed) => server.close(closed));
  };
  await vi.waitFor(() => expect(sockets).toHaveLength(1));
  const until = (kind: string) =>
    vi.waitFor(() => expect(stream.recent().map(({ event }) => event?.kind ?? "reading")).toContain(kind));
  return { stream, sockets, heard, until };
}

test("text over the network is read, minus sign of a text editor and all", async () => {
  const { stream, sockets, until } = await bench();
  sockets[0]?.write("half a line\n   \u22121.611 g\n");
  await until("reading");
  expect(stream.recent().find(({ reading }) => reading)?.reading).toMatchObject({
    text: "-1.611",
    unit: "g",
  });
});

test("a lost connection is told and comes back", async () => {
  const { sockets, until } = await bench();
  sockets[0]?.destroy();
  await until("lost");
  await until("back");
});

test("a balance that must be asked is asked only while a capture waits", async () => {
  const { stream, heard, sockets } = await bench({
    ask: { request: "W?\\r", when: "capture", ownerAgreed: true },
  });
  sockets[0]?.write("\n");
  expect(heard).toEqual([]);
  const capture = stream.capture({ byHand: true });
  expect((await capture).reading.text).toBe("-1.611");
  expect(heard).toEqual(["W?\r"]);
});

test("when nothing comes back the event names the request", async () => {
  const { stream, heard, until } = await bench({
    ask: { request: "\\x05", when: "timer", everyMs: 20, ownerAgreed: true },
    patienceMs: 80,
    answers: false,
  });
  await until("silent");
  expect(heard.join("")).toMatch(/^\x05\x05/);
  expect(stream.error()?.event).toMatchObject({
    code: "line.silent.asked",
    params: { request: "\\x05", seconds: 0 },
  });
});

test("a port where nothing listens is told with its number", async () => {
  const balance = createNetworkBalance({ host: "127.0.0.1", port: 1 });
  stop = () => balance.stop();
  const happened = new Promise((told) => balance.onLine(({ event }) => event && told(event)));
  balance.start();
  expect(await happened).toEqual({
    kind: "refused",
    code: "line.refused.no-listener",
    params: { address: "127.0.0.1:1", number: 1 },
  });
});

test("an address that cannot be read says what would be right", () => {
  expect(parseNetworkAddress("tcp://192.0.2.7:4001")).toEqual({ host: "192.0.2.7", port: 4001 });
  expect(parseNetworkAddress("[::1]:4001")).toEqual({ host: "::1", port: 4001 });
  for (const wrong of ["192.0.2.7", "balance:0", "balance:70000", "http://a:1/x"])
    expect(() => parseNetworkAddress(wrong)).toThrow(
      expect.objectContaining({ code: "port.address.network", params: { address: wrong } }),
    );
});
