import { mkdtempSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { Clock } from "../../../drivers/clock.ts";
import { baudRates } from "../../../drivers/line-settings.ts";
import { profile } from "../../drivers/invented-profile.ts";
import { type Cable, createCable } from "../../drivers/pty.ts";
import { whole } from "../../setup/long-run.ts";
import { shown } from "../../shown.ts";
import { until } from "../../until.ts";
import { buildTestBench, type TestBench } from "../build.ts";

/** The clock of the bench goes this many times faster than on the wall; by night as it does for people. */
const faster = whole ? 1 : 10;
const fastClock: Clock = {
  wallMs: () => Date.now(),
  monotonicMs: () => performance.now() * faster,
  after(ms, run) {
    const timer = setTimeout(run, ms / faster);
    return () => clearTimeout(timer);
  },
};

let at: TestBench;
let cable: Cable;
let sending: NodeJS.Timeout | undefined;
beforeEach(async () => {
  cable = createCable();
  at = await buildTestBench(undefined, { listening: { clock: fastClock, findingMs: 400 } });
});
afterEach(async () => {
  clearInterval(sending);
  await at.close();
  cable.unplug();
});

const get = async (url: string) => (await at.app.inject({ url, headers: { host: "localhost:1" } })).body;

/** How a touched pan moves the number, g; the same in every run. */
const jitter = [0.013, -0.171, 0.094, 0.152, -0.038, -0.119, 0.187, 0.006, -0.083];
let sent = 0;

/** An invented balance: a mark of its own before the number, "?" while it moves and "." at rest. */
function line(grams: number, moving: boolean): string {
  const shown = (moving ? grams + jitter[sent++ % jitter.length]! : grams).toFixed(3);
  return `k${moving ? "?" : "."}${shown.padStart(11)} g;\r\n`;
}

/** Sends lines of what lies on the pan, as a balance does that sends by itself. */
function pan(load: { grams: number; moving: boolean }): void {
  clearInterval(sending);
  sending = setInterval(() => cable.send(line(load.grams, load.moving)), whole ? 20 : 12);
}

const stable = { unit: "g", stability: { code: "balance.stability.stable" } } as const;
const name = (port: string) => ({ code: "balance.name.serial", params: { port } }) as const;

/** What lies on the pan in each step of the set-up, and whether a hand is at it. */
const doings = [
  { grams: 0, moving: false },
  { grams: 128.415, moving: true },
  { grams: 128.415, moving: false, shows: "128.415" },
  { grams: 128.415, moving: true },
  { grams: 128.415, moving: false, shows: "128.415" },
  { grams: 0, moving: true },
  { grams: 0, moving: false },
  { grams: -64.207, moving: false, shows: "-64.207" },
];

/** Does what the page says, step by step, and types what the display shows. */
async function followThePage(load: { grams: number; moving: boolean }): Promise<string> {
  for (const [i, { grams, moving, shows = "" }] of doings.entries()) {
    const page = await get("/balances/learning");
    expect(page).toContain(shown("balances.step", { step: i + 1, of: doings.length }));
    expect(page.includes('name="displayed"')).toBe(shows !== "");
    Object.assign(load, { grams, moving });
    await new Promise((resolve) => setTimeout(resolve, 600));
    await at.post("/balances/learning", { go: "on", displayed: shows, unit: shows === "" ? "" : "g" });
  }
  const end = await get("/balances/learning");
  // On a busy machine the lines come at no even pace: the page asks, and a person who watched them answers.
  if (!end.includes('name="sends"')) return end;
  await at.post("/balances/learning/answers", { sends: "by-itself" });
  return get("/balances/learning");
}

test("a balance is chosen, learned and confirmed on its page, kept as a profile with its own test, and then weighed with", async () => {
  const load = { grams: 0, moving: false };
  pan(load);
  expect((await at.post("/balances/choice", { port: cable.path, line: "9600-8n1" })).statusCode).toBe(303);
  await until(() => (at.balance.stream?.recent().length ?? 0) > 3, "the first lines");
  // The lines are shown as they came, with line ends and marks.
  expect(await get("/balances")).toMatch(/k\.\s+0\.000 g;\\r\\n/);

  await at.post("/balances/learning", { go: "begin" });
  // Nothing runs on a clock: what the display shows is asked for, and typed values that no line shows are refused.
  const learned = await followThePage(load);
  expect(learned).toContain(shown("balances.was-learned"));
  expect(learned).toContain(shown("learn.line-end.characters", { end: "CR LF" }));

  const unconfirmed = await at.post("/balances/profiles", { name: "window balance" });
  expect(unconfirmed.statusCode).toBe(422);
  expect(at.profiles.all).toHaveLength(0);
  const kept = await at.post("/balances/profiles", { name: "window balance", confirmed: "yes" });
  expect(kept.headers.location).toBe("/balances/profiles/window%20balance");
  expect(await get("/balances/profiles/window%20balance")).toContain(
    shown("profile.test.passed", { lines: at.profiles.named("window balance")!.profile.samples.length }),
  );

  // From now on the lines are read by the profile, and the record of a reading says so.
  await at.post("/bench/piece", { ticket: "L-1", method: "hung", claim: "ag-999", key: "L-1" });
  Object.assign(load, { grams: 31.103, moving: false });
  await until(
    () => at.balance.stream?.latest().record?.reading.text === "31.103",
    "the learned lines to be read",
  );
  expect((await at.post("/bench/captures", { role: "dry" })).statusCode).toBe(303);
  const second = await at.post("/bench/captures", { role: "dry" });
  // Two operators pressed: one capture waits or was taken; the other is told, and nothing is taken twice unasked.
  if (second.statusCode === 422) expect(second.body).toContain('data-code="weighing.request.waits-already"');
  // the next one may be asked for before this one is kept
  const isKept = () => at.bench.waitingFor === undefined && at.bench.item?.captures.length !== 0;
  await until(isKept, "the reading");
  const captures = at.bench.item?.captures ?? [];
  expect(captures[0]).toMatchObject({ text: "31.103", takenBy: "mark" });
  const entry = (await at.ledger.entriesOf("L-1")).find(({ kind }) => kind === "capture");
  expect(entry?.body).toMatchObject({ profile: "window balance, version 1" });

  // The choice and the profile outlive the program: they are in the ledger.
  expect(await at.balance.kept()).toMatchObject({
    choice: { address: cable.path, profile: "window balance" },
  });
  const exported = await get("/balances/profiles/window%20balance/export");
  await at.post("/balances/profiles/import", { text: exported });
  expect(at.profiles.named("window balance")?.version).toBe(2);
}, 120_000);

test("of two operators one wins and the other reads why; a balance exchanged meanwhile loses no piece and asks for its zero", async () => {
  await at.post("/balances/choice", { port: cable.path, line: "9600-8n1" });
  await at.post("/bench/piece", { ticket: "T-1", method: "hung", claim: "", key: "T-1" });
  expect((await at.post("/bench/captures", { role: "dry" })).statusCode).toBe(303);
  const other = await at.post("/bench/captures", { role: "dry" });
  expect(other.statusCode).toBe(422);
  expect(other.body).toContain('data-code="weighing.request.waits-already"');

  const elsewhere = createCable();
  await at.post("/balances/choice", { port: elsewhere.path, line: "9600-8n1" });
  expect(at.bench.waitingFor).toBeUndefined();
  expect(at.bench.error).toEqual({ code: "balance.capture.exchanged" });
  expect(at.bench.item?.ticket).toBe("T-1");
  const page = await get("/");
  expect(page).toContain(shown("balance.check.exchanged"));
  await at.post("/balances/looked-at", { kind: "exchanged" });
  expect(await get("/")).not.toContain(shown("balance.check.exchanged"));
  elsewhere.unplug();
}, 30_000);

test("a weighing in progress survives a pulled cable, and nothing is taken before the zero was looked at", async () => {
  const folder = mkdtempSync(join(tmpdir(), "port-"));
  const path = join(folder, "balance");
  symlinkSync(cable.path, path);
  sending = setInterval(() => cable.send("     31.1035 g   stable\r\n"), 30);
  await at.post("/balances/choice", { port: path, line: "9600-8n1" });
  await at.post("/bench/piece", { ticket: "P-1", method: "hung", claim: "", key: "P-1" });
  await at.post("/bench/captures", { role: "dry" });
  await until(() => at.bench.item?.captures.length === 1, "the dry reading");
  await at.post("/bench/captures", { role: "immersed" });
  cable.unplug();
  await until(() => at.balance.stream?.error()?.event?.kind === "lost", "the loss to be seen");
  expect(at.bench.item?.captures).toHaveLength(1);
  cable = createCable();
  rmSync(path);
  symlinkSync(cable.path, path);
  await until(() => at.balance.stream?.latest().record !== undefined, "the lines again");
  const refused = await at.post("/bench/captures", { role: "immersed" });
  expect(refused.statusCode).toBe(422);
  expect(refused.body).toContain(
    shown("balance.check.first", { check: { code: "balance.check.zero-after-loss" } }),
  );
  expect((await at.post("/bench/hands-free", {})).statusCode).toBe(422);
  await at.post("/bench/balance-looked-at", { kind: "zero-check" });
  await at.post("/bench/captures", { role: "immersed" });
  await until(() => at.bench.item?.captures.length === 2, "the immersed reading");
  const notes = (await at.ledger.entriesOf("P-1")).filter(({ kind }) => kind === "note");
  expect(notes[0]?.body).toEqual({
    message: {
      code: "balance.check.looked-at",
      params: { check: { code: "balance.check.zero-after-loss" } },
    },
  });
}, 30_000);

test("a balance that adjusts itself asks for the reference piece, over a restart, until a named person looked or it was weighed", async () => {
  sending = setInterval(() => cable.send("     31.1035 g   stable\r\n"), 30);
  await at.post("/balances/choice", { port: cable.path, line: "9600-8n1" });
  await until(() => at.balance.stream?.latest().record !== undefined, "the lines");
  const due = shown("bench.reference-due");
  expect(await get("/")).not.toContain(due);
  cable.send("adjusting\r\n");
  await until(() => at.bench.adjusted !== undefined, "the adjustment");
  await at.post("/balances/looked-at", { kind: "zero-check" });
  expect(await get("/")).toContain(due);
  clearInterval(sending);
  const { file } = at;
  await at.close();
  at = await buildTestBench(file);
  expect(await get("/checks")).toContain(shown("checks-page.adjusted-weigh"));
  expect((await at.post("/checks/adjusted", { adjusted: "" })).statusCode).toBe(422);
  expect((await at.post("/checks/adjusted", { adjusted: "A. Berg" })).statusCode).toBe(303);
  expect(await get("/")).not.toContain(due);
  const kept = await at.ledger.entries({ kind: "adjustment" });
  expect(kept.map(({ body }) => body)).toMatchObject([
    { notice: { code: "line.notice.adjusted" } },
    { lookedAtBy: "A. Berg" },
  ]);
}, 30_000);

test("several balances are heard at once; the bench changes over without reopening, and each reading names its own", async () => {
  const other = createCable();
  sending = setInterval(() => {
    cable.send("     31.1035 g   stable\r\n");
    other.send("       28.143 g   stable\r\n");
  }, 30);
  await at.post("/balances/choice", { port: cable.path, line: "9600-8n1" });
  expect((await at.post("/balances/beside", { port: other.path })).statusCode).toBe(303);
  // One port is never opened twice.
  const twice = await at.post("/balances/beside", { port: cable.path });
  expect(twice.body).toContain(shown("balance.heard-already", { address: cable.path }));
  await until(
    () => at.balance.beside[0]?.stream.latest().record?.reading.text === "28.143",
    "the other balance",
  );
  await until(() => at.balance.stream?.latest().record?.reading.text === "31.1035", "the first balance");
  const page = await get("/balances");
  const reading = { code: "balance.reading", params: { ...stable, reading: { decimal: "28.143" } } } as const;
  expect(page.slice(page.indexOf('id="beside-now"'))).toContain(
    shown("balance.now.arrived", { reading, time: "|" }).split("|")[0]!,
  );

  await at.post("/bench/piece", { ticket: "B-1", method: "hung", claim: "", key: "B-1" });
  await at.post("/bench/captures", { role: "dry" });
  await until(() => at.bench.item?.captures.length === 1, "the dry reading");
  expect(await get("/")).toContain(shown("beside.take", { balance: name(other.path) }));
  const openedBefore = at.balance.beside[0]?.stream.recent()[0]?.monotonicMs;
  await at.post("/bench/balance", { address: other.path });
  expect(at.balance.stream?.recent()[0]?.monotonicMs).toBe(openedBefore);
  expect(at.balance.stream?.recent().filter(({ event }) => event?.kind === "open")).toHaveLength(1);
  expect(await get("/")).toContain(shown("balance.check.other-readings"));
  await at.post("/bench/balance-looked-at", { kind: "exchanged" });
  await at.post("/bench/captures", { role: "immersed" });
  await until(() => at.bench.item?.captures.length === 2, "the immersed reading");
  expect(at.bench.item?.captures.map(({ text, balance }) => [text, balance])).toEqual([
    ["31.1035", `balance on ${cable.path}`],
    ["28.143", `balance on ${other.path}`],
  ]);

  // One that is only heard beside tells of its adjustment too, and is asked for by its own name.
  cable.send("adjusting\r\n");
  const due = shown("checks-page.adjusted-other", { balance: name(cable.path) });
  await vi.waitFor(async () => expect(await get("/checks")).toContain(due), { timeout: 10_000 });
  expect(await get("/")).not.toContain(shown("bench.reference-due"));
  const looked = { adjusted: "A. Berg", of: `balance on ${cable.path}` };
  expect((await at.post("/checks/adjusted", { ...looked, adjusted: "" })).statusCode).toBe(422);
  expect((await at.post("/checks/adjusted", looked)).statusCode).toBe(303);
  expect(await get("/checks")).not.toContain(due);

  // A restart hears both again and takes from the same one.
  const { file } = at;
  await at.close();
  at = await buildTestBench(file);
  expect(at.balance.choice?.address).toBe(other.path);
  expect(at.balance.others.map(({ address }) => address)).toEqual([cable.path]);
  await until(() => at.balance.beside[0]?.stream.latest().record !== undefined, "the first balance again");
  await at.post("/balances/beside/end", { port: cable.path });
  expect(at.balance.others).toEqual([]);
  expect((await at.balance.kept()).beside).toEqual([]);
  other.unplug();
}, 30_000);

test("finding lists what was tried and what came back, and hands the cable back to the bench", async () => {
  await at.post("/balances/choice", { port: cable.path, line: "9600-8n1" });
  sending = setInterval(() => cable.send("     31.10 g\r\n"), 20);
  await at.post("/balances/finding", { port: cable.path });
  const during = await get("/balances");
  expect(during).toContain('id="finding-heading"');
  let page = "";
  await until(() => {
    void get("/balances").then((shown) => {
      page = shown;
    });
    return page.includes("What was tried");
  }, "the outcome");
  const format = { code: "line-format.number-with-unit" } as const;
  expect(page).toContain(shown("port.search.outcome.weights", { format }));
  await until(
    () => at.balance.stream?.latest().record?.reading.text === "31.10",
    "the bench's own lines again",
  );
}, 30_000);

test("while settings are looked for, the page says what is listened at and what came back so far", async () => {
  sending = setInterval(() => cable.send("\x00\xff\xfe\x00"), 20);
  await at.post("/balances/finding", { port: cable.path });
  let page = "";
  await until(() => {
    void get("/balances").then((shown) => {
      page = shown;
    });
    return baudRates.some(
      (rate, tried) =>
        tried >= 2 && page.includes(shown("beside.listening-at", { line: `${rate}-8n1`, tried })),
    );
  }, "the third setting");
  expect(page).toContain(shown("port.search.outcome.unreadable"));
  await at.post("/balances/finding/stop", {});
  await until(() => {
    void get("/balances").then((shown) => {
      page = shown;
    });
    return page.includes(shown("port.search.stopped"));
  }, "the end");
}, 30_000);

test("1,234 is asked about once, the answer is kept for this balance and used again when it is chosen again", async () => {
  await at.post("/balances/choice", { port: cable.path, line: "9600-8n1" });
  sending = setInterval(() => cable.send("     1,234 g\r\n"), 50);
  await until(() => at.balance.stream?.error()?.event?.kind === "unclear", "the unclear line");
  expect(await get("/balances")).toContain("what does the comma stand for?");
  await at.post("/balances/comma", { comma: "decimal" });
  await until(() => at.balance.stream?.latest().record?.reading.text === "1.234", "the reading");
  await at.post("/balances/typed", {});
  await at.post("/balances/choice", { port: cable.path });
  expect(at.balance.choice?.comma).toBe("decimal");
}, 30_000);

test("a balance that must be asked is sent its owner's request only after consent, and answers are read", async () => {
  const heard: string[] = [];
  cable.onData((data) => {
    heard.push(data.toString("latin1"));
    cable.send("     12.34 g\r\n");
  });
  await at.post("/balances/choice", { port: cable.path, line: "9600-8n1" });
  const request = "read now\\r\\n";
  const refused = await at.post("/balances/asking", { request, when: "timer", every: "0,1" });
  expect(refused.statusCode).toBe(422);
  expect(refused.body).toContain(shown("balance.request.consent"));
  const zeroing = await at.post("/balances/asking", { request: "TARE\\r\\n", when: "timer", consent: "yes" });
  expect(zeroing.body).toContain(shown("balance.request.changing", { request: "TARE\\r\\n" }));
  expect(heard).toEqual([]);
  await at.post("/balances/asking", { request, when: "timer", every: "0,1", consent: "yes" });
  await until(() => at.balance.stream?.latest().record?.reading.text === "12.34", "the answer");
  expect(heard[0]).toContain("read now\r\n");
}, 30_000);

test("a balance that is asked on capture hears its request only while a capture waits", async () => {
  const heard: string[] = [];
  cable.onData((data) => {
    heard.push(data.toString("latin1"));
    cable.send("     12.34 g   stable\r\n");
  });
  await at.post("/balances/choice", { port: cable.path, line: "9600-8n1" });
  await at.post("/balances/asking", { request: "read now\\r\\n", when: "capture", consent: "yes" });
  await at.post("/bench/piece", { ticket: "Q-1", method: "hung", claim: "", key: "Q-1" });
  await until(
    () => at.balance.stream?.recent().some(({ event }) => event?.kind === "open") ?? false,
    "the port",
  );
  expect(heard).toEqual([]);
  expect((await at.post("/bench/captures", { role: "dry" })).statusCode).toBe(303);
  await until(() => at.bench.item?.captures.length === 1, "the asked reading");
  expect(at.bench.item?.captures[0]).toMatchObject({ text: "12.34", takenBy: "mark" });
  const asked = heard.join("");
  expect(asked).toMatch(/^(read now\r\n)+$/);
  // Nothing is sent once it is taken, and silence in between is no fault.
  await new Promise((resolve) => setTimeout(resolve, 5000 / faster));
  expect(heard.join("")).toBe(asked);
  expect(at.balance.scale?.checks()).toEqual([]);
}, 30_000);

test("a balance that was learned to send on its key and marks nothing is read when a second press agrees, not at one", async () => {
  const learned = profile({ kind: "characters", hex: "0d0a" });
  await at.profiles.keep({
    ...learned,
    name: "key balance",
    cadence: { byItself: false, linesPerSecond: null },
    weight: learned.weight.filter(({ is }) => is !== "mark"),
    samples: [
      { raw: "w     31.10g\\r\\n", reading: { text: "31.10", unit: "g", steady: "not-told" }, event: null },
    ],
  });
  await at.post("/balances/choice", { port: cable.path, line: "9600-8n1" });
  await at.post("/balances/profiles/use", { name: "key balance" });
  await at.post("/bench/piece", { ticket: "K-1", method: "hung", claim: "", key: "K-1" });
  await until(
    () => at.balance.stream?.recent().some(({ event }) => event?.kind === "open") ?? false,
    "the port",
  );
  // Whatever came before the request is not it, however recent.
  cable.send("\r\nw     99.99g\r\n");
  await until(() => at.balance.stream?.latest().record !== undefined, "the line of an earlier press");
  await at.post("/bench/captures", { role: "dry" });
  // a hand on the pan, then the piece alone, twice
  cable.send("w     38.44g\r\n");
  await until(
    () => at.bench.scale?.waitsBecause?.()?.code === "balance.capture.press-again",
    "the question for another press",
  );
  for (let press = 0; press < 2; press += 1) {
    await new Promise((pressed) => setTimeout(pressed, 600));
    cable.send("w     31.10g\r\n");
  }
  await until(() => at.bench.item?.captures.length === 1, "the second line that agrees");
  expect(at.bench.item?.captures[0]).toMatchObject({ text: "31.10", takenBy: "own-criterion" });
}, 30_000);

test("a USB scale is chosen by its raw device, and its absence is told", async () => {
  await at.post("/balances/choice", { port: "/dev/hidraw63" });
  await until(() => at.balance.stream?.error()?.event?.kind === "refused", "the refusal");
  expect(await get("/balances")).toContain(shown("line.refused.missing-usb", { port: "/dev/hidraw63" }));
  expect(await get("/balances")).toContain(shown("balance.kept-for.usb"));
  const asking = await at.post("/balances/asking", { request: "x", when: "timer", consent: "yes" });
  expect(asking.body).toContain(shown("balance.request.usb", { port: "/dev/hidraw63" }));
}, 30_000);

test("hands in water: each settled load is taken once by itself, and again only after it was lifted", async () => {
  const load = { grams: 0, moving: false };
  sending = setInterval(() => cable.send(`${load.grams.toFixed(3).padStart(9)} g\r\n`), whole ? 100 : 30);
  await at.post("/balances/choice", { port: cable.path, line: "9600-8n1" });
  await at.post("/bench/piece", { ticket: "H-1", method: "hung", claim: "", key: "H-1" });
  await at.post("/bench/typed-readings", { role: "dry", reading: "31.103", unit: "g" });
  expect((await at.post("/bench/hands-free", {})).statusCode).toBe(303);
  const message = () => at.bench.handsFree.now?.message.code;
  const heard = () => at.bench.handsFree.now?.heard?.kind;
  const immersed = () => at.bench.item?.captures.filter(({ role }) => role === "immersed") ?? [];
  await until(() => message() === "balance.hands-free.ready", "the empty hanger to be seen");
  load.grams = 28.143;
  await until(() => immersed().length === 1, "the first load");
  expect(message()).toMatch(/^balance\.hands-free\.(taken|lift)$/);
  expect(await get("/")).toContain('data-heard="taken"');
  load.grams = 0;
  await until(() => heard() === "lifted", "the lift");
  load.grams = 28.144;
  await until(() => immersed().length === 2, "the second load");
  expect(immersed().map(({ text, takenBy }) => `${text} ${takenBy}`)).toEqual([
    "28.143 own-criterion",
    "28.144 own-criterion",
  ]);
  await at.post("/bench/hands-free/end", {});
  expect(at.bench.handsFree.now).toBeUndefined();
}, 60_000);
