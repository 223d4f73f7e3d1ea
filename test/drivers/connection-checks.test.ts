import { expect, test } from "vitest";
import type { CableEar } from "../../drivers/cable.ts";
import { createCabledDevice } from "../../drivers/cabled-device.ts";
import { createReadingStream } from "../../drivers/reading-stream.ts";
import { readAnyShape } from "../../drivers/shapes/index.ts";
import { createHandClock } from "./hand-clock.ts";

/** A cable in the hand: what comes out of it and who sits at its end is up to the test. */
async function bench() {
  const clock = createHandClock();
  let ear: CableEar | null = null;
  let identity: string | null = "USB 1a2b:0003 #A113";
  let plugged = true;
  const balance = createCabledDevice({
    read: () => readAnyShape(),
    name: "balance on the bench",
    lostSoon: "line.lost.serial-soon",
    clock,
    identity: () => identity,
    open: (here) => {
      if (!plugged) return Promise.reject(new Error("There is no port."));
      ear = here;
      return Promise.resolve({ send() {}, close: () => Promise.resolve() });
    },
  });
  const stream = createReadingStream({ balance, clock });
  balance.start();
  await settled();
  return {
    clock,
    stream,
    async lines(text: string, times = 12) {
      for (let i = 0; i < times; i += 1) {
        ear?.bytes(Buffer.from(`${text}\r\n`));
        clock.pass(200);
      }
    },
    async replug(as: string | null = identity) {
      plugged = false;
      ear?.lost();
      clock.pass(3000);
      await settled();
      plugged = true;
      identity = as;
      clock.pass(1500);
      await settled();
    },
  };
}
const settled = () => new Promise((resolve) => setImmediate(resolve));

test("after a lost cable the zero is to be checked until somebody looked", async () => {
  const { stream, lines, replug } = await bench();
  await lines("   31.1035 g stable");
  await replug();
  await lines("   31.1035 g stable");
  expect(stream.checks().map(({ kind }) => kind)).toEqual(["zero-check"]);
  stream.answerCheck("zero-check");
  expect(stream.checks()).toEqual([]);
});

test("after a silence the zero is to be checked, since a balance that was switched off has a new one", async () => {
  const { stream, lines, clock } = await bench();
  await lines("   31.1035 g stable");
  expect(stream.checks()).toEqual([]);
  clock.pass(10_000);
  await lines("    0.0000 g stable");
  expect(stream.checks()[0]).toMatchObject({
    kind: "zero-check",
    message: { code: "balance.check.zero-after-silence" },
  });
});

test.each([
  ["adjusting", "line.notice.adjusted"],
  ["Justierung", "line.notice.adjusted"],
  ["TARE", "line.notice.tared"],
  ["zero", "line.notice.zeroed"],
])("a notice %s between readings asks for the zero, and ends the number", async (notice, code) => {
  const { stream, lines } = await bench();
  await lines("   31.1035 g stable");
  await lines(notice, 1);
  expect(stream.latest().record).toBeUndefined();
  expect(stream.checks()).toMatchObject([
    { kind: "zero-check", message: { code: "balance.check.after-notice", params: { notice: { code } } } },
  ]);
});

test("a balance that sends every ten seconds is asked about once and not with every line", async () => {
  const { stream, clock, lines } = await bench();
  const seldom = async () => {
    clock.pass(10_000);
    await lines("   31.1035 g stable", 1);
  };
  // The first line after opening may be half and is dropped, and one gap is no habit yet.
  for (let line = 0; line < 3; line += 1) await seldom();
  expect(stream.checks()).toHaveLength(1);
  stream.answerCheck("zero-check");
  for (let line = 0; line < 5; line += 1) await seldom();
  expect(stream.checks()).toEqual([]);
  clock.pass(60_000);
  await lines("   31.1035 g stable", 1);
  expect(stream.checks().map(({ kind }) => kind)).toEqual(["zero-check"]);
});

test("another device on the same port is refused, and both are shown", async () => {
  const { stream, lines, replug } = await bench();
  await lines("   31.1035 g stable");
  await replug("USB 9c9d:0001 #B7");
  await lines("   31.1035 g stable");
  await expect(stream.capture()).rejects.toMatchObject({
    code: "balance.check.other-device",
    params: { before: "USB 1a2b:0003 #A113", now: "USB 9c9d:0001 #B7" },
  });
  stream.answerCheck("another-balance");
  const capture = stream.capture();
  await lines("   31.1035 g stable", 60);
  expect((await capture).reading.text).toBe("31.1035");
});

test("other decimals or another unit after a lost cable are refused, and both are shown", async () => {
  for (const [other, shows] of [
    ["   31.10 g stable", { unit: "g", step: 0.01 }],
    [" 155.5175 ct stable", { unit: "ct", step: 0.0001 }],
  ] as const) {
    const { stream, lines, replug } = await bench();
    await lines("   31.1035 g stable");
    await replug();
    await lines(other);
    await expect(stream.capture({ byHand: true })).rejects.toMatchObject({
      code: "balance.check.other-display",
      params: { before: { anyOf: [{ params: { unit: "g", step: 0.0001 } }] }, now: { params: shows } },
    });
  }
});

test("a port that is lost within seconds names what may have taken it", async () => {
  const { stream, replug } = await bench();
  await replug();
  expect(stream.recent().map(({ event }) => event?.code)).toContain("line.lost.serial-soon");
});

test("a clock that is moved is told, and the readings keep their order", async () => {
  const { stream, clock, lines } = await bench();
  await lines("   31.1035 g stable", 2);
  clock.jumpWall(-3_600_000);
  await lines("   31.1035 g stable", 2);
  expect(stream.recent().find(({ event }) => event?.kind === "clock-jumped")?.event?.params).toEqual({
    direction: "back",
    seconds: 3600,
  });
  const times = stream.recent().map(({ monotonicMs }) => monotonicMs);
  expect(times).toEqual([...times].sort((a, b) => a - b));
});

test("a line that lost its first characters is known by its length", async () => {
  const { stream, lines } = await bench();
  await lines("   31.1035 g");
  await lines("1035 g", 1);
  expect(stream.recent().at(-1)?.event?.kind).toBe("damaged");
  await lines("131.1035 g stable", 3);
  expect(stream.recent().at(-1)?.reading?.text).toBe("131.1035");
});
