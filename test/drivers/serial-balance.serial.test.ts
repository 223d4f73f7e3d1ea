import { mkdtempSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test, vi } from "vitest";
import type { Balance } from "../../drivers/device.ts";
import type { LineRecord } from "../../drivers/reading.ts";
import { createSerialBalance, type SerialBalanceOptions } from "../../drivers/serial-balance.ts";
import { createCable } from "./pty.ts";

const stops: (() => void | Promise<void>)[] = [];
afterEach(async () => {
  for (const stop of stops.splice(0)) await stop();
});

function listenTo(options: SerialBalanceOptions) {
  const records: LineRecord[] = [];
  const balance: Balance = createSerialBalance(options);
  balance.onLine((record) => records.push(record));
  balance.start();
  stops.push(() => balance.stop());
  const kinds = () => records.map(({ event }) => event?.kind ?? "reading");
  return {
    records,
    kinds,
    until: (kind: string) =>
      vi.waitFor(() => expect(kinds()).toContain(kind), { timeout: 5000, interval: 5 }),
  };
}

test("a line written on the cable becomes a reading, its bytes and time kept, the first partial line dropped", async () => {
  const cable = createCable();
  stops.push(cable.unplug);
  const { records, until } = listenTo({ path: cable.path });
  await until("open");
  cable.send("1034 g  \r\n+   31.1034 g  \r\n");
  await until("reading");
  const readings = records.filter(({ reading }) => reading);
  expect(readings).toHaveLength(1);
  expect(readings[0]).toMatchObject({
    raw: "+   31.1034 g  \\r\\n",
    reading: { text: "31.1034", unit: "g", grams: "31.1034", stability: "unknown" },
  });
  expect(readings[0]!.at).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/);
});

test.each(["8e1", "8o1"])(
  "the system is told to check the parity of %s, and a marked character stops its line",
  async (bits) => {
    const cable = createCable();
    stops.push(cable.unplug);
    const { records, until } = listenTo({ path: cable.path, line: `9600-${bits}` });
    await until("open");
    // a pseudo-terminal has no parity bit; what the system was asked to do with one stands in its settings
    expect(cable.settings().split(/\s+/)).toEqual(expect.arrayContaining(["inpck", "parmrk", "-ignpar"]));
    cable.send("\r\n\xff\x00-   31.1034 g  \r\n");
    await until("unknown-line");
    cable.send("+   31.1034 g  \r\n");
    await until("reading");
    expect(records.filter(({ reading }) => reading).map(({ raw }) => raw)).toEqual(["+   31.1034 g  \\r\\n"]);
  },
);

test("a balance that is switched off with its cable in is told to be silent", async () => {
  const cable = createCable();
  stops.push(cable.unplug);
  const { records, until } = listenTo({ path: cable.path, patienceMs: 100 });
  await until("silent");
  expect(records.at(-1)?.event).toMatchObject({
    code: "line.silent",
    params: { balance: { params: { port: cable.path } }, seconds: 0 },
  });
});

test("a pulled cable is told, and the balance is back under the same name when it is put in again", async () => {
  const folder = mkdtempSync(join(tmpdir(), "port-"));
  const path = join(folder, "balance");
  stops.push(() => rmSync(folder, { recursive: true }));
  const first = createCable();
  symlinkSync(first.path, path);
  const { kinds, until } = listenTo({ path, pauses: { firstMs: 20, growth: 1.5, longestMs: 100 } });
  await until("open");
  first.send("\r\n   31.10 g\r\n");
  await until("reading");
  rmSync(path);
  first.unplug();
  await until("lost");
  await until("refused");
  const second = createCable();
  stops.push(second.unplug);
  symlinkSync(second.path, path);
  await until("back");
  second.send("1.11 g\r\n   31.11 g\r\n");
  await vi.waitFor(() => expect(kinds().filter((kind) => kind === "reading")).toHaveLength(2));
});

test("a port in use is told as such, and so is one that is missing", async () => {
  const cable = createCable();
  stops.push(cable.unplug);
  const holder = listenTo({ path: cable.path });
  await holder.until("open");
  const second = listenTo({ path: cable.path });
  await second.until("refused");
  expect(second.records[0]?.event).toMatchObject({ code: "line.refused.busy", params: { port: cable.path } });
  const missing = listenTo({ path: "/dev/no-such-port" });
  await missing.until("refused");
  expect(missing.records[0]?.event).toMatchObject({
    code: "line.refused.missing",
    params: { port: "/dev/no-such-port" },
  });
});

test("the owner's request goes out on the cable, its echo is no line of the balance, and the answer is read", async () => {
  const cable = createCable();
  stops.push(cable.unplug);
  const sent: string[] = [];
  cable.onData((data) => {
    sent.push(data.toString("latin1"));
    cable.send(`${data.toString("latin1")}\n   31.10 g\r\n`);
  });
  const { records, until } = listenTo({
    path: cable.path,
    ask: { request: "W?\\r", when: "timer", everyMs: 30, ownerAgreed: true },
  });
  await until("housekeeping");
  await until("reading");
  expect(sent[0]).toBe("W?\r");
  expect(records.filter(({ event }) => event?.kind === "unknown-line")).toEqual([]);
});

test("a balance that comes back under another number is found by its stable name", async () => {
  const folder = mkdtempSync(join(tmpdir(), "port-"));
  stops.push(() => rmSync(folder, { recursive: true }));
  const [before, after, stable] = ["ttyUSB0", "ttyUSB1", "usb-adapter_A113"].map((name) =>
    join(folder, name),
  );
  const first = createCable();
  symlinkSync(first.path, before!);
  symlinkSync(first.path, stable!);
  const { until, kinds } = listenTo({
    path: before!,
    pauses: { firstMs: 20, growth: 1.5, longestMs: 100 },
    names: { stable: () => stable!, identity: () => "USB 1a2b:0003 #A113" },
  });
  await until("open");
  rmSync(before!);
  rmSync(stable!);
  first.unplug();
  await until("refused");
  const second = createCable();
  stops.push(second.unplug);
  symlinkSync(second.path, after!);
  symlinkSync(second.path, stable!);
  await until("back");
  second.send("rest\r\n   31.10 g\r\n");
  await until("reading");
  expect(kinds()).toEqual(["open", "lost", "refused", "back", "reading"]);
});
