import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test, vi } from "vitest";
import { type Message, message } from "../../calibration/message.ts";
import { exportProfile } from "../../drivers/learning/samples.ts";
import { baudRates } from "../../drivers/line-settings.ts";
import { tell } from "../../views/messages/tell.ts";
import { profile } from "./invented-profile.ts";
import { createCable } from "./pty.ts";

const speeds = baudRates.toSorted((a, b) => a - b);
const ends = { anyOf: ["crlf", "cr", "lf"] };

let child: ChildProcess | undefined;
afterEach(() => {
  child?.kill("SIGKILL");
});

function listen(...args: string[]) {
  const started = spawn(process.execPath, ["dist/server/underhook.js", "listen", ...args]);
  child = started;
  let out = "";
  let err = "";
  started.stdout.on("data", (data) => {
    out += data;
  });
  started.stderr.on("data", (data) => {
    err += data;
  });
  const status = new Promise<number | null>((done) => started.once("exit", (code) => done(code)));
  const lines = () =>
    out
      .split("\n")
      .filter((line) => line !== "")
      .map((line) => JSON.parse(line) as Record<string, unknown>);
  return { lines, status, err: () => err, interrupt: () => started.kill("SIGINT") };
}

test("underhook listen prints readings and events as JSON Lines until it is interrupted", async () => {
  const cable = createCable();
  const { lines, status, interrupt } = listen(cable.path);
  await vi.waitFor(() => expect(lines()).toHaveLength(1), { timeout: 10_000 });
  cable.send("partial\r\n     31.1035 g   stable\r\n   OVER  \r\n");
  await vi.waitFor(() => expect(lines()).toHaveLength(3), { timeout: 5000 });
  const [open, reading, over] = lines();
  expect(open).toMatchObject({
    raw: "",
    event: { code: "open", params: { balance: { params: { port: cable.path } }, settings: "9600-8n1" } },
  });
  expect(reading).toEqual({
    at: expect.stringMatching(/Z$/),
    raw: "     31.1035 g   stable\\r\\n",
    reading: { text: "31.1035", unit: "g", grams: "31.1035", stability: "stable" },
  });
  expect(over).toMatchObject({
    raw: "   OVER  \\r\\n",
    event: { code: "overload", params: { word: "OVER" } },
  });
  interrupt();
  expect(await status).toBe(0);
  cable.unplug();
});

test("with --take times count from the first byte, not from the first whole line", async () => {
  const cable = createCable();
  const { lines, interrupt, status } = listen(cable.path, "--take", "--patience", "30");
  await vi.waitFor(() => expect(lines()).toHaveLength(1), { timeout: 10_000 });
  cable.send("the end of a line");
  await new Promise((done) => setTimeout(done, 700));
  cable.send("\r\nbeyond all words\r\n");
  await vi.waitFor(() => expect(lines()).toHaveLength(2), { timeout: 5000 });
  expect(lines()[0]).toMatchObject({ at_ms: 0, event: { code: "open" } });
  expect(lines()[1]).toMatchObject({ event: { code: "unknown-line" } });
  // Counted from the first whole line it would be 0; how late a busy machine reads the first byte is its own affair.
  expect(lines()[1]?.at_ms).toBeGreaterThan(0);
  interrupt();
  expect(await status).toBe(0);
  cable.unplug();
});

const wrongUse = (sentence: Message) =>
  [
    message("cli.failed", { command: "listen", message: sentence }),
    message("cli.hint", { command: "listen" }),
  ]
    .map((one) => `${tell(one, "en")}\n`)
    .join("");

test.each([
  [["/dev/ttyUSB0", "--line", "fast"], "port.settings", { settings: "fast", speeds }],
  [["/dev/ttyUSB0", "--give-up", "abc"], "listen.seconds", { option: "--give-up", value: "abc" }],
  [["/dev/ttyUSB0", "--end", "nul"], "listen.option", { option: "--end", value: "nul", right: ends }],
  [["/dev/ttyUSB0", "--ask", "TARE"], "balance.request.changing", { request: "TARE" }],
  [["tcp://192.0.2.7"], "port.address.network", { address: "tcp://192.0.2.7" }],
] as const)(
  "wrong arguments end with status 2, one sentence and where to read on: %j",
  async (args, code, params) => {
    const { status, err, lines } = listen(...args);
    expect(await status).toBe(2);
    expect(err()).toBe(wrongUse({ code, params }));
    expect(lines()).toEqual([]);
  },
);

test.each(["de", "es"] as const)("a port and a request pass through unchanged in %s", async (locale) => {
  const folder = mkdtempSync(join(tmpdir(), "port-"));
  const path = join(folder, "pci-0000:00:14.0-usb-0:1.2");
  const request = "W 1.5 and counter?\\r";
  const { lines, status, interrupt } = listen(path, "--ask", request, "--patience", "0.2", "--lang", locale);
  await vi.waitFor(() => expect(lines()).toHaveLength(1), { timeout: 10_000 });
  const cable = createCable();
  symlinkSync(cable.path, path);
  await vi.waitFor(() => expect(lines()).toHaveLength(3), { timeout: 10_000 });
  const events = lines().map(({ event }) => event as { code: string; params: object; message: string });
  expect(events.map(({ code }) => code)).toEqual(["refused", "open", "silent"]);
  for (const { message } of events) expect(message).toContain(path);
  expect(events[2]).toMatchObject({ params: { request } });
  expect(events[2]!.message).toContain(request);
  interrupt();
  expect(await status).toBe(0);
  cable.unplug();
  rmSync(folder, { recursive: true });
});

test("with --raw the lines are printed as received and not read", async () => {
  const cable = createCable();
  const { lines, status, interrupt } = listen(cable.path, "--raw");
  await vi.waitFor(() => expect(lines()).toHaveLength(1), { timeout: 10_000 });
  cable.send("part\r\n\x02odd\x80 text\r\n");
  await vi.waitFor(() => expect(lines()).toHaveLength(2), { timeout: 5000 });
  expect(lines()[1]).toEqual({ at: expect.any(String), raw: "\\x02odd\\x80 text\\r\\n" });
  interrupt();
  expect(await status).toBe(0);
  cable.unplug();
});

test("it starts without a port, and ends with status 1 when the port is gone for good", async () => {
  const folder = mkdtempSync(join(tmpdir(), "port-"));
  const path = join(folder, "balance");
  const { lines, status, err } = listen(path, "--give-up", "3");
  const kinds = () => lines().map(({ event }) => (event as { code: string }).code);
  await vi.waitFor(() => expect(kinds()).toEqual(["refused"]), { timeout: 10_000 });
  // Made only now: a child process would inherit the far end and keep it alive.
  const cable = createCable();
  symlinkSync(cable.path, path);
  await vi.waitFor(() => expect(kinds()).toEqual(["refused", "open"]), { timeout: 10_000 });
  rmSync(folder, { recursive: true });
  cable.unplug();
  expect(await status).toBe(1);
  expect(kinds().filter((kind) => kind !== "silent")).toEqual(["refused", "open", "lost", "refused"]);
  expect(err()).toContain(path);
});

test("speed, parity and shape are found on a cable by listening", async () => {
  const cable = createCable();
  const { lines, status, interrupt, err } = listen(cable.path, "--line", "find");
  // "  31.10 g" with seven bits and even parity.
  const line = "\xa0\xa0\x33\xb1\x2e\xb1\x30\xa0\xe7\x8d\x0a";
  const talking = setInterval(() => cable.send(line), 40);
  await vi.waitFor(() => expect(lines().some(({ reading }) => reading)).toBe(true), { timeout: 15_000 });
  clearInterval(talking);
  const format = { code: "line-format.number-with-unit" } as const;
  expect(err()).toContain(
    tell({ code: "port.search.found", params: { settings: "9600-7e1", format } }, "en"),
  );
  interrupt();
  expect(await status).toBe(0);
  cable.unplug();
});

test("learned lines are read by their profile, and a file that is none is refused", async () => {
  const folder = mkdtempSync(join(tmpdir(), "profile-"));
  const file = join(folder, "profile.json");
  writeFileSync(file, exportProfile(profile({ kind: "characters", hex: "0d0a" })));
  const cable = createCable();
  const { lines, status, interrupt } = listen(cable.path, "--profile", file);
  await vi.waitFor(() => expect(lines()).toHaveLength(1), { timeout: 10_000 });
  cable.send("x\r\nw?     31.12g\r\n");
  await vi.waitFor(() => expect(lines()[1]?.reading).toMatchObject({ text: "31.12", stability: "moving" }), {
    timeout: 5000,
  });
  interrupt();
  expect(await status).toBe(0);
  cable.unplug();
  writeFileSync(file, "{}");
  const refused = listen(cable.path, "--profile", file);
  expect(await refused.status).toBe(2);
  const because = { code: "profile.format", params: { format: "–" } } as const;
  expect(refused.err()).toBe(wrongUse({ code: "profile.file", params: { path: file, because } }));
  rmSync(folder, { recursive: true });
});
