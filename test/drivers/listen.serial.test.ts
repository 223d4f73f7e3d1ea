import { type ChildProcess, spawn } from "node:child_process";
import { afterEach, expect, test, vi } from "vitest";
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
