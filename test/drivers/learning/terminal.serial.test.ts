import * as pty from "@lydell/node-pty";
import { afterEach, expect, test, vi } from "vitest";
import type { Code, Params } from "../../../calibration/message.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { createCable } from "../pty.ts";

const cable = createCable();
let sending: NodeJS.Timeout | undefined;
let terminal: pty.IPty | undefined;
afterEach(() => {
  clearInterval(sending);
  terminal?.kill("SIGKILL");
  cable.unplug();
});

const jitter = [0.013, -0.171, 0.094, 0.152, -0.038, -0.119, 0.187, 0.006, -0.083];

/** Starts the command in a terminal of its own. `says` waits for a message after what was seen before; `type` answers. */
function seated(...args: string[]) {
  let seen = "";
  let from = 0;
  const started = pty.spawn(process.execPath, ["dist/server/underhook.js", ...args], {
    cols: 2000,
    rows: 60,
    cwd: process.cwd(),
  });
  terminal = started;
  started.onData((data) => {
    seen += data.replaceAll("\r", "");
  });
  const status = new Promise<number>((done) => started.onExit(({ exitCode }) => done(exitCode)));
  return {
    status,
    async says(code: Code, params: Params = {}) {
      const text = tellerOf("en")(code, params);
      await vi.waitFor(() => expect(seen.slice(from)).toContain(text), { timeout: 20_000, interval: 10 });
      from = seen.indexOf(text, from) + text.length;
    },
    type: (text: string) => started.write(`${text}\n`),
    printed: () => JSON.parse(seen.split("\n").find((line) => line.startsWith('{"')) ?? "null"),
  };
}

test("learn asks at the terminal: it waits at each step, says what is missing, and asks what no line shows", async () => {
  const load = { grams: 0, moving: false };
  let sent = 0;
  sending = setInterval(() => {
    const grams = load.moving ? load.grams + jitter[sent++ % jitter.length]! : load.grams;
    cable.send(`k${load.moving ? "?" : "."}${grams.toFixed(3).padStart(11)} g;\r\n`);
  }, 25);
  const { says: message, type, status, printed } = seated("learn", cable.path);
  const steps: { code: Code; grams: number; moving: boolean; types: string[] }[] = [
    { code: "learn.step.empty", grams: 0, moving: false, types: [""] },
    { code: "learn.step.putting-on", grams: 128.415, moving: true, types: [""] },
    { code: "learn.step.loaded", grams: 128.415, moving: false, types: ["", "128.415", "128.415 g"] },
    { code: "learn.step.touched", grams: 128.415, moving: true, types: [""] },
    { code: "learn.step.at-rest", grams: 128.415, moving: false, types: ["128.415 g"] },
    { code: "learn.step.taking-off", grams: 0, moving: true, types: [""] },
    { code: "learn.step.empty", grams: 0, moving: false, types: [""] },
    { code: "learn.step.below-zero", grams: 0, moving: false, types: ["-"] },
  ];
  for (const { code, grams, moving, types } of steps) {
    await message(code);
    Object.assign(load, { grams: code === "learn.step.taking-off" ? 0.3 : grams, moving });
    await new Promise((resolve) => setTimeout(resolve, 350));
    for (const [i, text] of types.entries()) {
      type(text);
      if (i + 1 < types.length)
        await message(text === "" ? "learn.display-not-typed" : "learn.unit-not-typed");
    }
  }
  await message("learn.answer.minus-before");
  type("perhaps");
  await message("learn.answer.not-offered", {
    answer: "perhaps",
    right: { anyOf: [{ code: "learn.answer.minus-unknown" }, { code: "learn.answer.minus-before" }] },
  });
  await message("learn.answer.minus-before");
  type("minus-before");
  expect(await status).toBe(0);
  expect(printed().reads).toContainEqual(
    expect.objectContaining({
      reading: { text: "128.415", unit: "g", grams: "128.415", stability: "stable" },
    }),
  );
}, 60_000);
