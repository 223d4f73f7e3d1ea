import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { shown } from "../../shown.ts";
import { until } from "../../until.ts";
import { checksOn, host, wordsOf } from "../web/recorded.ts";
import { balanceOnTheNetwork, type NetworkedBalance } from "./balance-on-the-network.ts";
import { type Counter, openCounter } from "./counter.ts";

let counter: Counter;
beforeEach(async () => {
  counter = await openCounter();
});
afterEach(() => counter.at.close());

describe("a balance that sends by itself", () => {
  let balance: NetworkedBalance;
  beforeEach(async () => {
    balance = await balanceOnTheNetwork(counter.at);
    await counter.piece();
    await balance.sends("   0.0000 g   stable");
    await counter.at.post("/bench/captures", { role: "dry" });
    await balance.keepsSending(
      "  31.1035 g   stable",
      () => counter.at.bench.item?.captures.length === 1,
      "the dry reading",
    );
  });
  afterEach(() => balance.close());

  const waitForImmersed = () => counter.at.post("/bench/captures", { role: "immersed" });
  const onlyTheDryReading = async () => expect(await counter.kept()).toEqual(["dry 31.1035"]);

  it("is pulled out, another one answers in its place: refused, with digits, unit and step of both", async () => {
    await balance.unplug();
    expect(await counter.page()).toContain("31.1035 g");
    await balance.plugIn();
    const doubted = () =>
      counter.at.bench.scale?.checks().some(({ kind }) => kind === "another-balance") === true;
    await balance.keepsSending("    28.1 g   stable", doubted, "the doubt");
    const page = await counter.page();
    const steps = (step: number) => ({ code: "balance.check.steps", params: { unit: "g", step } }) as const;
    const check = {
      code: "balance.check.other-display",
      params: { before: { anyOf: [steps(0.0001)] }, now: steps(0.1) },
    } as const;
    expect(page).toContain(shown(check.code, check.params));
    const refused = await waitForImmersed();
    expect(refused.statusCode).toBe(422);
    expect(wordsOf(refused.body)).toContain(shown("balance.check.first", { check }));
    expect(counter.at.bench.waitingFor).toBeUndefined();
    await onlyTheDryReading();
    await counter.at.post("/bench/balance-looked-at", { kind: "another-balance" });
    const notes = (await counter.at.ledger.entriesOf("story")).filter(({ kind }) => kind === "note");
    expect(notes[0]?.body).toEqual({ message: { code: "balance.check.looked-at", params: { check } } });
  });

  it("is overloaded by a heavy beaker: what to do is said, and no number is kept", async () => {
    await waitForImmersed();
    await balance.sends("OVERLOAD");
    expect(await counter.page()).toContain(shown("line.overload.word", { word: "OVERLOAD" }));
    await onlyTheDryReading();
  });

  it("was switched to show a density itself: that is no weight, and it is set back to g", async () => {
    await waitForImmersed();
    await balance.sends("  10.4745 g/cm3   stable");
    expect(await counter.page()).toContain(
      shown("line.not-a-weight.quantity", { line: "10.4745 g/cm3", quantity: { code: "quantity.density" } }),
    );
    await onlyTheDryReading();
  });

  it("speaks at another speed: garbage is never taken for a weight", async () => {
    await waitForImmersed();
    for (const noise of ["\u00fe\u00f8\u0080x\u00e6", "~~x\u0000\u00ff3", "\u00f02\u0098.\u00e61"])
      await balance.sends(noise);
    expect(counter.at.bench.waitingFor).toBe("immersed");
    await onlyTheDryReading();
  });

  it("switches itself off while the piece hangs: silence is no reading, and its zero is asked about when it is back", async () => {
    await waitForImmersed();
    await until(() => counter.at.balance.stream?.error()?.event?.kind === "silent", "the silence");
    expect(await counter.page()).toMatch(/Silent for \d+ s/);
    await onlyTheDryReading();
    const doubted = () => counter.at.bench.scale?.checks().some(({ kind }) => kind === "zero-check") === true;
    await balance.keepsSending("   0.0000 g   moving", doubted, "the doubt about the zero");
    expect(await counter.page()).toContain(shown("balance.check.zero-after-silence"));
    await onlyTheDryReading();
  });
});

it("an empty hook reads as a density of 1.0 exactly: the piece fell off, and no metal is named", async () => {
  await counter.piece({ claim: "ag-999" });
  await counter.types(["dry", "31.10"], ["immersed", "0.00"]);
  await counter.water("20");
  expect(await checksOn(counter.at)).toContain("check.nothing-on-hook");
  expect(await counter.kept()).toEqual(["dry 31.10", "immersed 0.00"]);
});

it("a table knocked during the immersion shows in the empty hanger, and the void immersion stays with its reason", async () => {
  await counter.piece({ claim: "ag-999" });
  await counter.types(["dry", "31.1035"], ["zero", "0.0000"], ["immersed", "28.1496"], ["zero", "0.0061"]);
  await counter.water("20");
  expect(await checksOn(counter.at)).toContain("check.zero-moved");
  const immersed = counter.at.bench.item?.captures.find(({ role }) => role === "immersed");
  await counter.at.post(`/bench/captures/${immersed?.id}/voiding`, { reason: "table knocked" });
  expect(await counter.page()).toMatch(/28\.1496 g typed.*table knocked/);
  expect(await counter.kept()).toContain("immersed 28.1496");
});

it("water of 0.0 °C is asked about before anybody believes the density", async () => {
  await counter.piece({ claim: "ag-999" });
  await counter.types(["dry", "31.10"], ["immersed", "28.14"]);
  await counter.water("0.0");
  const page = await counter.page();
  expect(page).toContain("The water is stated at 0 °C, where it freezes");
  expect(page).toMatch(/Is there ice in the beaker, or was the thermometer off/);
  expect(await counter.page("/", "de")).toContain("wo es gefriert");
  expect(await counter.kept()).toEqual(["dry 31.10", "immersed 28.14"]);
});

it("water of 68 is asked about as °F, and the 68 stays in the ledger", async () => {
  await counter.piece();
  await counter.types(["dry", "31.10"], ["immersed", "28.14"]);
  const answer = await counter.at.post("/bench/water", { celsius: "68" });
  expect(answer.statusCode).toBe(422);
  expect(answer.body).toContain('data-code="form.number.fahrenheit"');
  expect((await counter.at.ledger.entriesOf("story")).at(-1)).toMatchObject({
    kind: "note",
    body: { message: { code: "weighing.note.typed-temperature", params: { typed: "68 °C" } } },
  });
});

it("a browser that translates the page leaves readings, units and tickets alone", async () => {
  await counter.piece({ ticket: "Rose-17" });
  await counter.types(["dry", "31.10"]);
  const { body } = await counter.at.app.inject({ url: "/", headers: { host } });
  expect(body).toMatch(/translate="no"[^>]*>Rose-17</);
  expect(body).toMatch(/<span translate="no"[^>]*>31\.10 g</);
  expect(body).toMatch(/<select translate="no"[^>]*name="unit"/);
  await counter.types(["immersed", "28.14"]);
  await counter.water("20");
  await counter.at.post("/bench/record", {});
  const record = await counter.at.app.inject({ url: "/records/story", headers: { host } });
  expect(record.body).toMatch(/translate="no"[^>]*>28\.14 g</);
});

describe("the clock of the machine falls back to 1970", () => {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ["Date"], now: new Date("2026-03-02T09:00:00Z") });
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it("keeps the order of the readings, and the report says that their times are not to be trusted", async () => {
    await counter.piece({ claim: "ag-999" });
    await counter.types(["dry", "31.1035"]);
    vi.setSystemTime(new Date("1970-01-01T00:10:00Z"));
    await counter.types(["immersed", "28.1435"]);
    await counter.water("21.4");
    await counter.at.post("/bench/record", {});
    expect(await counter.kept()).toEqual(["dry 31.1035", "immersed 28.1435"]);
    const issued = (await counter.at.post("/records/story/reports", { step: "1" })).headers.location ?? "";
    const report = await counter.page(issued);
    expect(report).toMatch(
      /The clock of the bench went back between two readings, from 2 Mar 2026, 09:00 to 1 Jan 1970/,
    );
    const jumps = (await counter.at.ledger.entries({})).filter(({ kind }) => kind === "clock-jump");
    expect(jumps.length).toBeGreaterThan(0);
  });
});
