import { expect, test } from "vitest";
import type { CableEar } from "../../drivers/cable.ts";
import { createCabledBalance } from "../../drivers/cabled-balance.ts";
import { createFeed } from "../../drivers/feed.ts";
import { createHandClock } from "./hand-clock.ts";

/** A cable in the hand: what comes out of it and who sits at its end is up to the test. */
async function bench() {
  const clock = createHandClock();
  let ear: CableEar | null = null;
  let identity: string | null = "USB device 1a2b:0003, serial number A113";
  let plugged = true;
  const balance = createCabledBalance({
    name: "balance on the bench",
    openSays: "open",
    lostSoonSays: "Another program may have taken it.",
    clock,
    identity: () => identity,
    open: (here) => {
      if (!plugged) return Promise.reject(new Error("There is no port."));
      ear = here;
      return Promise.resolve({ send() {}, close: () => Promise.resolve() });
    },
  });
  const feed = createFeed({ balance, clock });
  balance.start();
  await settled();
  return {
    clock,
    feed,
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

test("after a lost cable the zero is doubted until somebody looked", async () => {
  const { feed, lines, replug } = await bench();
  await lines("   31.1035 g stable");
  await replug();
  await lines("   31.1035 g stable");
  expect(feed.doubts().map(({ kind }) => kind)).toEqual(["zero-check"]);
  feed.settleDoubt("zero-check");
  expect(feed.doubts()).toEqual([]);
});

test("after a silence the zero is doubted, since a balance that was switched off has a new one", async () => {
  const { feed, lines, clock } = await bench();
  await lines("   31.1035 g stable");
  expect(feed.doubts()).toEqual([]);
  clock.pass(10_000);
  await lines("    0.0000 g stable");
  expect(feed.doubts()[0]).toMatchObject({
    kind: "zero-check",
    says: expect.stringMatching(/was silent and speaks again/),
  });
});

test("a balance that sends every ten seconds is asked about once and not with every line", async () => {
  const { feed, clock, lines } = await bench();
  const seldom = async () => {
    clock.pass(10_000);
    await lines("   31.1035 g stable", 1);
  };
  // The first line after opening may be half and is dropped, and one gap is no habit yet.
  for (let line = 0; line < 3; line += 1) await seldom();
  expect(feed.doubts()).toHaveLength(1);
  feed.settleDoubt("zero-check");
  for (let line = 0; line < 5; line += 1) await seldom();
  expect(feed.doubts()).toEqual([]);
  clock.pass(60_000);
  await lines("   31.1035 g stable", 1);
  expect(feed.doubts().map(({ kind }) => kind)).toEqual(["zero-check"]);
});

test("another device on the same port is refused, and both are shown", async () => {
  const { feed, lines, replug } = await bench();
  await lines("   31.1035 g stable");
  await replug("USB device 9c9d:0001, serial number B7");
  await lines("   31.1035 g stable");
  await expect(feed.capture()).rejects.toThrow(/A113.*B7.*Is it the same balance/);
  feed.settleDoubt("another-balance");
  const capture = feed.capture();
  await lines("   31.1035 g stable");
  expect((await capture).reading.text).toBe("31.1035");
});

test("other decimals or another unit after a lost cable are refused, and both are shown", async () => {
  for (const [other, shows] of [
    ["   31.10 g stable", "g in steps of 0.01"],
    [" 155.5175 ct stable", "ct in steps of 0.0001"],
  ] as const) {
    const { feed, lines, replug } = await bench();
    await lines("   31.1035 g stable");
    await replug();
    await lines(other);
    await expect(feed.capture({ byHand: true })).rejects.toThrow(
      `showed g in steps of 0.0001; what answers now shows ${shows}`,
    );
  }
});

test("a port that is lost within seconds names what may have taken it", async () => {
  const { feed, replug } = await bench();
  await replug();
  expect(
    feed
      .recent()
      .map(({ event }) => event?.says)
      .join(" "),
  ).toMatch(/is gone.*Another program may have taken it/);
});

test("a clock that is moved is told, and the readings keep their order", async () => {
  const { feed, clock, lines } = await bench();
  await lines("   31.1035 g stable", 2);
  clock.jumpWall(-3_600_000);
  await lines("   31.1035 g stable", 2);
  expect(feed.recent().find(({ event }) => event?.kind === "clock-jumped")?.event?.says).toMatch(
    /back by 3600 s/,
  );
  const times = feed.recent().map(({ monotonicMs }) => monotonicMs);
  expect(times).toEqual([...times].sort((a, b) => a - b));
});

test("a line that lost its first characters is known by its length", async () => {
  const { feed, lines } = await bench();
  await lines("   31.1035 g");
  await lines("1035 g", 1);
  expect(feed.recent().at(-1)?.event?.kind).toBe("damaged");
  await lines("131.1035 g stable", 3);
  expect(feed.recent().at(-1)?.reading?.text).toBe("131.1035");
});
