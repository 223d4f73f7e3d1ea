import { expect, test } from "vitest";
import type { CableEar } from "../../drivers/cable.ts";
import { createCabledDevice } from "../../drivers/cabled-device.ts";
import type { Profile } from "../../drivers/learning/profile.ts";
import { profiledLines } from "../../drivers/profiled-lines.ts";
import { createReadingStream } from "../../drivers/reading-stream.ts";
import { createHandClock } from "./hand-clock.ts";
import { profile } from "./invented-profile.ts";

async function bench(ending: Profile["ending"]) {
  const clock = createHandClock();
  let ear: CableEar | null = null;
  const balance = createCabledDevice({
    name: "invented balance",
    clock,
    open(here) {
      ear = here;
      return Promise.resolve({ send() {}, close: () => Promise.resolve() });
    },
    ...profiledLines(profile(ending), clock),
  });
  const stream = createReadingStream({ balance, clock });
  balance.start();
  await new Promise((resolve) => setImmediate(resolve));
  const send = (text: string) => {
    ear?.bytes(Buffer.from(text));
    clock.pass(200);
  };
  const kinds = () =>
    stream
      .recent()
      .map(({ reading, event }) => (reading ? `${reading.text} ${reading.stability}` : event?.kind));
  return { stream, send, kinds };
}

test("lines are cut and read as they were learned, marks and all", async () => {
  const { send, kinds } = await bench({ kind: "characters", hex: "0d0a" });
  for (const line of ["rest\r\n", "w?     31.12g\r\n", "w.     31.10g\r\n", "w.    31.10g\r\n"]) send(line);
  expect(kinds()).toEqual(["open", "31.12 moving", "31.10 stable", "unknown-line"]);
});

test("a line that only silence ends is a line after that silence", async () => {
  const { send, kinds } = await bench({ kind: "silence", ms: 60 });
  for (const line of ["rest", "w.     31.10g", "w.     31.11g"]) send(line);
  expect(kinds()).toEqual(["open", "31.10 stable", "31.11 stable"]);
});

test("learned lines between the readings do not keep them from settling", async () => {
  const { stream, send } = await bench({ kind: "characters", hex: "0d0a" });
  send("rest\r\n");
  const capture = stream.capture();
  for (let i = 0; i < 16; i += 1) {
    send("w.     31.10g\r\n");
    send("====\r\n");
  }
  expect((await capture).settledBy).toBe("mark");
});
