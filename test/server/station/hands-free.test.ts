import { afterEach, beforeEach, expect, test } from "vitest";
import { createReadingStream } from "../../../drivers/reading-stream.ts";
import { createSimulatedBalance, type SimulatedBalance } from "../../../drivers/simulated-balance.ts";
import { scaleOf } from "../../../server/station/stream-scale.ts";
import { createHandClock, type HandClock } from "../../drivers/hand-clock.ts";
import { until } from "../../until.ts";
import { buildTestBench, type TestBench } from "../build.ts";
import { openedLot } from "../lots/screened.ts";

let at: TestBench;
let clock: HandClock;
let balance: SimulatedBalance;
beforeEach(async () => {
  at = await buildTestBench();
  clock = createHandClock();
  balance = createSimulatedBalance({ clock, seed: 4, readabilityGrams: 0.01, hangerGrams: 0 });
  at.bench.exchangeScale(scaleOf("invented scale", createReadingStream({ balance, clock })));
  balance.start();
  balance.emptyHanger();
  balance.zero();
  clock.pass(8000);
});
afterEach(() => at.close());

const heard = () => at.bench.handsFree.now?.heard;
const rings = [
  { name: "ring", massGrams: 8.31, densityGPerCm3: 13.1 },
  { name: "band", massGrams: 4.66, densityGPerCm3: 13.3 },
  { name: "chain", massGrams: 12.07, densityGPerCm3: 8.5 },
];

/** A hand moves what lies there; true once the bench told something of this kind about it. Gives the seconds it took. */
async function moved(hand: () => void, kind: string, code: string): Promise<number> {
  const count = heard()?.count ?? 0;
  hand();
  let passed = 0;
  const isTold = () =>
    (heard()?.count ?? 0) > count && heard()?.kind === kind && heard()?.message.code === code;
  while (!isTold() && passed < 30_000) {
    clock.pass(100);
    passed += 100;
    // the clock stands while the bench reads and writes what this line brought about
    for (let turn = 0; turn < 3; turn += 1) await at.ledger.head();
  }
  await until(isTold, `${kind} ${code}, not ${heard()?.kind} ${heard()?.message.code}`);
  return passed / 1000;
}

test("a lot runs through its tickets with one key: dry, immersed, lifted, next, and each record is written", async () => {
  const lot = await openedLot(at, { claim: "au-585", count: "3", gross: "" });
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  await at.post(`${lot}/pieces`, { ticket: "31", claim: "" });
  // the first piece lies there before it is switched on, and has come to rest
  balance.put(rings[0]!);
  clock.pass(6000);
  expect((await at.post(`${lot}/hands-free`, {})).statusCode).toBe(303);
  const seconds: number[] = [];
  for (const [place, ring] of rings.entries()) {
    if (place > 0) seconds.push(await moved(() => balance.put(ring), "taken", "balance.hands-free.taken"));
    else await moved(() => {}, "taken", "balance.hands-free.taken");
    await moved(() => balance.lift(), "lifted", "balance.hands-free.due");
    seconds.push(await moved(() => balance.hang(ring), "taken", "lots.run.recorded"));
    if (place < 2) await moved(() => balance.lift(), "lifted", "lots.run.next");
    else await moved(() => balance.lift(), "refused", "lots.run.full");
    balance.clear();
  }
  const { records } = await at.ledger.records({ filters: { lot: lot.replace("/lots/", "") } });
  expect(records.map(({ ticket }) => ticket)).toEqual(["33", "32", "31"]);
  expect(records[0]?.state).toBe("excluded");
  // from the load laid on until it is taken, the swing of the display included
  expect(Math.max(...seconds)).toBeLessThan(7);
}, 30_000);

test("a load of the wrong role, two loads and an empty balance are refused aloud, and none is taken", async () => {
  await at.post("/bench/piece", { ticket: "H-1", method: "hung", claim: "", key: "H-1" });
  balance.clear();
  balance.zero();
  await at.post("/bench/hands-free", {});
  await moved(() => {}, "refused", "balance.hands-free.empty");
  await moved(() => balance.put(rings[0]!), "taken", "balance.hands-free.taken");
  await moved(() => balance.clear(), "lifted", "balance.hands-free.due");
  await moved(() => balance.put(rings[0]!), "refused", "balance.hands-free.still-dry");
  await moved(() => balance.clear(), "lifted", "balance.hands-free.due");
  await moved(() => balance.put({ ...rings[0]!, massGrams: 15 }), "refused", "balance.hands-free.too-heavy");
  await moved(() => balance.clear(), "lifted", "balance.hands-free.due");
  await moved(
    () => balance.put({ ...rings[0]!, massGrams: 1 }),
    "refused",
    "balance.hands-free.not-this-piece",
  );
  expect(at.bench.item?.captures.map(({ role }) => role)).toEqual(["dry"]);
}, 30_000);

test("between two pieces it stays on: a load waits for its ticket, and counts for it", async () => {
  await at.post("/bench/hands-free", {});
  await moved(() => balance.put(rings[1]!), "refused", "balance.hands-free.no-ticket");
  await at.post("/bench/piece", { ticket: "H-2", method: "hung", claim: "au-585", key: "H-2" });
  await moved(() => {}, "taken", "balance.hands-free.taken");
  expect(at.bench.item?.captures.map(({ role, text }) => `${role} ${text}`)).toEqual(["dry 4.66"]);
  await at.post("/bench/hands-free/end", {});
  expect(at.bench.handsFree.now).toBeUndefined();
}, 30_000);

test("a reading is awaited until it is kept: whenever none is awaited any more, the next may be asked for", async () => {
  await at.post("/bench/piece", { ticket: "9", method: "hung", claim: "" });
  const asks = (role: string) => at.post("/bench/captures", { role });
  expect((await asks("dry")).statusCode).toBe(303);
  const awaited: (number | undefined)[] = [];
  at.bench.onChange(() => {
    if (at.bench.waitingFor === undefined) awaited.push(at.bench.open?.captures.length);
  });
  // lines go on while the entry is written: each of them draws the page
  at.bench.onLine(() => {
    if (at.bench.waitingFor === undefined) awaited.push(at.bench.open?.captures.length);
  });
  balance.put(rings[0]!);
  for (let lines = 0; lines < 200 && at.bench.open?.captures.length !== 1; lines++) {
    clock.pass(200);
    await new Promise(setImmediate);
  }
  await until(() => awaited.length > 0, "a page that awaits none");
  expect(awaited).not.toContain(0);
  balance.lift();
  clock.pass(3000);
  expect((await asks("immersed")).statusCode).toBe(303);
  expect(at.bench.waitingFor).toBe("immersed");
});
