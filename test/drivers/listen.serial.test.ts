import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test, vi } from "vitest";
import { exportProfile } from "../../drivers/learning/stored.ts";
import { profile } from "./invented-profile.ts";
import { createCable } from "./pty.ts";

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
  expect(open).toMatchObject({ raw: "", event: { kind: "open" } });
  expect(reading).toEqual({
    at: expect.stringMatching(/Z$/),
    raw: "     31.1035 g   stable\\r\\n",
    reading: { text: "31.1035", unit: "g", grams: "31.1035", steady: "steady" },
  });
  expect(over).toMatchObject({ raw: "   OVER  \\r\\n", event: { kind: "overload" } });
  interrupt();
  expect(await status).toBe(0);
  cable.unplug();
});

test("wrong arguments end with status 2 and a sentence", async () => {
  const { status, err } = listen("/dev/ttyUSB0", "--line", "fast");
  expect(await status).toBe(2);
  expect(err()).toMatch(/"fast" are not understood\. Right:/);
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
  const kinds = () => lines().map(({ event }) => (event as { kind: string }).kind);
  await vi.waitFor(() => expect(kinds()).toEqual(["refused"]), { timeout: 10_000 });
  // Made only now: a child process would inherit the far end and keep it alive.
  const cable = createCable();
  symlinkSync(cable.path, path);
  await vi.waitFor(() => expect(kinds()).toEqual(["refused", "open"]), { timeout: 10_000 });
  rmSync(folder, { recursive: true });
  cable.unplug();
  expect(await status).toBe(1);
  expect(kinds().filter((kind) => kind !== "silent")).toEqual(["refused", "open", "lost", "refused"]);
  expect(err()).toMatch(/has been gone for 3 s: gone for good/);
});

test("speed, parity and shape are found on a cable by listening", async () => {
  const cable = createCable();
  const { lines, status, interrupt, err } = listen(cable.path, "--line", "find");
  // "  31.10 g" with seven bits and even parity.
  const line = "\xa0\xa0\x33\xb1\x2e\xb1\x30\xa0\xe7\x8d\x0a";
  const talking = setInterval(() => cable.send(line), 40);
  await vi.waitFor(() => expect(lines().some(({ reading }) => reading)).toBe(true), { timeout: 15_000 });
  clearInterval(talking);
  expect(err()).toMatch(/The line is 9600-7e1; its lines are a number with its sign directly before it/);
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
  await vi.waitFor(() => expect(lines()[1]?.reading).toMatchObject({ text: "31.12", steady: "moving" }), {
    timeout: 5000,
  });
  interrupt();
  expect(await status).toBe(0);
  cable.unplug();
  writeFileSync(file, "{}");
  const refused = listen(cable.path, "--profile", file);
  expect(await refused.status).toBe(2);
  expect(refused.err()).toMatch(/This profile says format/);
  rmSync(folder, { recursive: true });
});
