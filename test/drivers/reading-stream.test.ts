import { expect, test } from "vitest";
import { createLoadsTaken } from "../../drivers/loads-taken.ts";
import type { Stability } from "../../drivers/reading.ts";
import { createReadingStream } from "../../drivers/reading-stream.ts";
import { createSimulatedBalance } from "../../drivers/simulated-balance.ts";
import { createHandClock } from "./hand-clock.ts";

const piece = { name: "invented bar", massGrams: 31.1035, densityGPerCm3: 10.49 };

function bench(options: Parameters<typeof createSimulatedBalance>[0] = {}) {
  const clock = createHandClock();
  const balance = createSimulatedBalance({ clock, seed: 7, ...options });
  const stream = createReadingStream({ balance, clock });
  balance.start();
  clock.pass(3000);
  return { clock, balance, stream };
}

test("a capture takes only lines that arrive after it was asked for, once they have settled", async () => {
  const { clock, balance, stream } = bench();
  balance.put(piece);
  const askedMs = clock.monotonicMs();
  const capture = stream.capture();
  clock.pass(10_000);
  const { reading, settledBy, lines, atRest } = await capture;
  expect(settledBy).toBe("mark");
  expect(atRest?.flags).toEqual(["creep-possible"]);
  // The display's text is the one that shows the estimate best.
  expect(Math.abs(Number(reading.grams) - atRest!.grams)).toBeLessThan(0.00006);
  expect(atRest?.uGrams).toBeLessThan(0.00006);
  expect(lines.every(({ monotonicMs }) => monotonicMs > askedMs)).toBe(true);
  // 31.1035 g less the air it displaces against weights of 8000 kg/m³, and 0.4 mg for noise of 0.04 mg and drift.
  expect(Math.abs(Number(reading.grams) - 31.1035 * (1 - 1.19 / 10490 + 1.19 / 8000))).toBeLessThan(0.0004);
});

test("a load is watched after the take until a creep of 1 mg is excluded; a reading after that has no flag", async () => {
  const { clock, balance, stream } = bench();
  let excluded = 0;
  stream.onCreepExcluded(() => excluded++);
  balance.put(piece);
  const capture = stream.capture();
  while (!stream.isAtRest()) clock.pass(200);
  clock.pass(200);
  expect((await capture).atRest).toMatchObject({ flags: ["creep-possible"] });
  expect(stream.watchesFor()).toBeGreaterThan(0);
  expect(excluded).toBe(0);
  clock.pass(12_000);
  expect(excluded).toBe(1);
  expect(stream.watchesFor()).toBeUndefined();
  const again = stream.capture();
  clock.pass(3000);
  expect((await again).atRest).toMatchObject({ flags: [], possibleGrams: 0 });
});

test("a balance that does not tell when it is steady is judged by where its display is going", async () => {
  const { clock, balance, stream } = bench({ writes: ({ digits, unit }) => `${digits} ${unit}\r\n` });
  balance.put(piece);
  const capture = stream.capture();
  clock.pass(1000);
  expect(stream.waitsBecause()?.code).toBe("balance.rest.watching");
  clock.pass(10_000);
  expect((await capture).settledBy).toBe("own-criterion");
});

test("by hand, the very next line is taken and the record says so", async () => {
  const { clock, balance, stream } = bench();
  balance.put(piece);
  const capture = stream.capture({ byHand: true });
  clock.pass(250);
  const { settledBy, lines } = await capture;
  expect(settledBy).toBe("by-hand");
  expect(lines).toHaveLength(1);
});

test("a silent balance has no reading, only an age", () => {
  const { clock, balance, stream } = bench();
  expect(stream.latest().record?.reading.text).toMatch(/^-?0\.000\d$/);
  balance.freeze();
  clock.pass(12_000);
  const latest = stream.latest();
  expect(latest.record).toBeUndefined();
  expect(latest.silentForSeconds).toBeGreaterThan(11.7);
  expect(stream.error()?.event).toMatchObject({ code: "line.silent", params: { seconds: 2 } });
});

test("silence shows within a second of the pace, and the age is that of the last reading", () => {
  const { clock, balance, stream } = bench({ linesPerSecond: 5 });
  balance.freeze();
  clock.pass(1000);
  expect(stream.latest().record).toBeDefined();
  clock.pass(400);
  expect(stream.latest().silentForSeconds).toBeCloseTo(1.4, 0);
});

test("what stands in the place of a number ends the number, and its age counts from the last number", () => {
  for (const said of ["  -----  \r\n", "nobody knows this\r\n", "   OVER  \r\n", "hold 31.10 g\r\n"]) {
    const { clock, balance, stream } = bench();
    balance.freeze();
    clock.pass(500);
    balance.thaw();
    balance.powerOff();
    balance.powerOn();
    balance.say(said);
    expect(stream.latest().record, said).toBeUndefined();
    expect(stream.latest().silentForSeconds, said).toBeLessThan(1);
  }
});

test("while one capture waits, another is refused", async () => {
  const { stream, clock } = bench();
  const first = stream.capture();
  await expect(stream.capture()).rejects.toMatchObject({ code: "balance.capture.under-way" });
  clock.pass(10_000);
  await first;
});

test("a capture is refused with the event when the cable is pulled", async () => {
  const { stream, balance, clock } = bench();
  const capture = stream.capture();
  const failed = expect(capture).rejects.toMatchObject({
    code: "balance.capture.lost",
    params: { because: { code: "line.lost" } },
  });
  clock.pass(100);
  balance.unplug();
  await failed;
  expect(stream.latest().silentForSeconds).toBeDefined();
});

test("a capture that never settles gives up and says why it waited", async () => {
  const { stream, clock } = bench({ noiseGrams: 0.05 });
  const capture = stream.capture({ patienceMs: 20_000 });
  const failed = expect(capture).rejects.toMatchObject({
    code: "balance.capture.timed-out",
    params: { seconds: 20, because: { code: "balance.rest.moving" } },
  });
  clock.pass(21_000);
  await failed;
});

test("readings in two units are not mixed", async () => {
  const { stream, clock, balance } = bench();
  balance.put(piece);
  clock.pass(5000);
  const capture = stream.capture();
  clock.pass(250);
  balance.unitChange("ct");
  clock.pass(8000);
  const { lines } = await capture;
  expect(new Set(lines.map(({ reading }) => reading.unit)).size).toBe(1);
});

test("a line that arrives twice at once does not confirm itself", async () => {
  const { stream, clock, balance } = bench();
  balance.put(piece);
  clock.pass(5000);
  const capture = stream.capture();
  balance.double(1);
  clock.pass(250);
  const [once, again] = stream.recent().slice(-2);
  expect(once?.reading?.stability).toBe("stable");
  expect(again?.raw).toBe(once?.raw);
  expect(stream.waitsBecause()).not.toBeNull();
  clock.pass(5000);
  expect((await capture).lines.length).toBeGreaterThan(3);
});

test("a capture says when the display has not stirred since the one before", async () => {
  const { stream, clock, balance } = bench();
  const take = () => {
    const capture = stream.capture();
    clock.pass(3000);
    return capture;
  };
  balance.put(piece);
  clock.pass(9000);
  expect((await take()).stirred).toBe(true);
  balance.stick();
  await take();
  balance.hang(piece);
  expect((await take()).stirred).toBe(false);
  balance.thaw();
  clock.pass(9000);
  expect((await take()).stirred).toBe(true);
});

test("a balance that sends unmarked lines on its key is taken at two that agree, not at one", async () => {
  const clock = createHandClock();
  const balance = createSimulatedBalance({
    clock,
    linesPerSecond: 0.1,
    writes: ({ digits, unit }) => `${digits} ${unit}\r\n`,
  });
  const stream = createReadingStream({ balance, clock, sends: "on-key" });
  balance.start();
  clock.pass(1000);
  const capture = stream.capture();
  clock.pass(10_000);
  expect(stream.waitsBecause()?.code).toBe("balance.capture.press-again");
  clock.pass(10_000);
  expect((await capture).settledBy).toBe("own-criterion");
  expect((await capture).lines).toHaveLength(2);
});

test("on a key, a line without a mark is not taken while a hand is on the pan, nor one that says it moves", () => {
  const hear = createLoadsTaken({ onKey: true });
  let monotonicMs = 0;
  const pressed = (text: string, stability: Stability) => {
    monotonicMs += 1500;
    const reading = { text, unit: "g" as const, grams: text, stability };
    return hear({ at: new Date(monotonicMs).toISOString(), monotonicMs, raw: text, reading }).map((event) =>
      event.kind === "taken" ? event.taken.reading.text : event.message.code,
    );
  };
  expect(pressed("70.063", "unknown")).toEqual(["balance.capture.press-again"]);
  expect(pressed("61.244", "unknown")).toEqual(["balance.capture.press-again"]);
  expect(pressed("61.245", "unknown")).toEqual(["61.245"]);
  expect(pressed("61.245", "unknown")).toEqual(["balance.capture.press-again"]);
  expect(pressed("70.063", "moving")).toEqual(["balance.rest.moving"]);
  expect(pressed("61.244", "stable")).toEqual(["61.244"]);
});

test("two balances are read apart", async () => {
  const clock = createHandClock();
  const [here, there] = [1, 2].map((seed) => createSimulatedBalance({ clock, seed }));
  const streams = [here!, there!].map((balance) => createReadingStream({ balance, clock }));
  here!.start();
  there!.start();
  here!.put(piece);
  there!.unplug();
  clock.pass(5000);
  expect(streams.map((stream) => stream.latest().record?.reading.text.slice(0, 4))).toEqual([
    "31.1",
    undefined,
  ]);
});

test("a balance that must be asked and answers nothing: the request is repeated, and that is why nothing was taken", async () => {
  const clock = createHandClock();
  let asked = 0;
  const balance = {
    name: "balance that must be asked",
    start() {},
    stop: () => Promise.resolve(),
    onLine: () => () => {},
    ask() {
      asked += 1;
    },
  };
  const stream = createReadingStream({ balance, clock, sends: "on-request" });
  const capture = stream.capture({ patienceMs: 5000 });
  expect(stream.waitsBecause()?.code).toBe("balance.capture.no-answer");
  const refused = expect(capture).rejects.toMatchObject({
    code: "balance.capture.timed-out.asked",
    params: { seconds: 5, because: { code: "balance.capture.no-answer" } },
  });
  clock.pass(5000);
  await refused;
  // At once, and again every second until the capture is over.
  expect(asked).toBe(5);
  clock.pass(5000);
  expect(asked).toBe(5);
});
