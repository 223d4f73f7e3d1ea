import { afterEach, expect, test } from "vitest";
import { balanceAt } from "../../drivers/balance-at.ts";
import type { Balance } from "../../drivers/device.ts";
import type { LineRecord } from "../../drivers/reading.ts";
import { until } from "../until.ts";
import { type Cable, createCable } from "./pty.ts";

const stops: (() => unknown)[] = [];
afterEach(async () => {
  for (const stop of stops.splice(0)) await stop();
});

/** Balances of an invented bus: each answers a request that ends in its own number, as long as it is switched on. */
function invented(
  cable: Cable,
  weights: Record<string, { grams: string; on: boolean; alsoAnswers?: string }>,
) {
  let heard = "";
  cable.onData((data) => {
    heard += data.toString("latin1");
    for (let end = heard.indexOf("\r"); end >= 0; end = heard.indexOf("\r")) {
      const place = /w(\d+)$/.exec(heard.slice(0, end))?.[1] ?? "";
      heard = heard.slice(end + 1);
      for (const [name, { grams, on, alsoAnswers }] of Object.entries(weights))
        if (on && (name === place || alsoAnswers === place)) cable.send(`${grams} g\r\n`);
    }
  });
}

function listenTo(address: string, request: string) {
  const records: LineRecord[] = [];
  const balance: Balance = balanceAt(address, { ask: { request, when: "timer", ownerAgreed: true } });
  balance.onLine((record) => records.push(record));
  balance.start();
  stops.push(() => balance.stop());
  return {
    records,
    texts: () => records.flatMap(({ reading }) => (reading ? [reading.text] : [])),
    codes: () => records.flatMap(({ event }) => (event ? [event.code] : [])),
  };
}

test("two balances on one pair of wires are asked in turn, and each gets its own weight only", async () => {
  const cable = createCable();
  stops.push(cable.unplug);
  const weights = { 1: { grams: "31.1035", on: true }, 2: { grams: "7.9881", on: true } };
  invented(cable, weights);
  const one = listenTo(`${cable.path}#1`, "w1\\r");
  const two = listenTo(`${cable.path}#2`, "w2\\r");
  await until(() => one.texts().length >= 3 && two.texts().length >= 3, "three readings of each");
  expect(new Set(one.texts())).toEqual(new Set(["31.1035"]));
  expect(new Set(two.texts())).toEqual(new Set(["7.9881"]));

  weights[2].on = false;
  await until(() => two.codes().includes("line.silent.asked"), "the silence of the second", 20_000);
  expect(new Set(two.texts())).toEqual(new Set(["7.9881"]));
  const before = one.texts().length;
  await until(() => one.texts().length > before, "the first goes on");
}, 60_000);

test("two that answer one request are refused, neither is taken for the other", async () => {
  const cable = createCable();
  stops.push(cable.unplug);
  invented(cable, { 1: { grams: "31.1035", on: true }, 2: { grams: "7.9881", on: true, alsoAnswers: "1" } });
  const one = listenTo(`${cable.path}#1`, "w1\\r");
  await until(() => one.codes().includes("line.damaged.bus"), "the refusal");
  expect(one.texts()).toEqual([]);
});
