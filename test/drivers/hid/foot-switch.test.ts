import { execFileSync } from "node:child_process";
import { closeSync, mkdtempSync, openSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { footSwitchAt } from "../../../drivers/hid/foot-switch.ts";
import { createHandClock } from "../hand-clock.ts";

const stops: (() => void)[] = [];
afterEach(() => {
  for (const stop of stops.splice(0).reverse()) stop();
});

/** A pipe in the place of a raw device; each report is looked at before the next is sent. */
function bench() {
  const path = join(mkdtempSync(join(tmpdir(), "switch-")), "hidraw0");
  const clock = createHandClock();
  let presses = 0;
  execFileSync("mkfifo", [path]);
  const end = openSync(path, "r+");
  stops.push(() => closeSync(end));
  const pedal = footSwitchAt(
    path,
    () => {
      presses += 1;
    },
    clock,
  );
  stops.push(() => pedal.stop());
  return {
    clock,
    pedal,
    presses: () => presses,
    report(...bytes: number[]) {
      writeSync(end, Uint8Array.from(bytes));
      clock.pass(20);
    },
  };
}

test.each([
  ["numbered reports", [1, 0], [1, 2]],
  ["reports of one byte", [0], [4]],
  ["reports whose first byte is the switch", [0, 0], [1, 0]],
])("%s: a press counts once, at its beginning", (_, up, down) => {
  const { pedal, report, presses } = bench();
  pedal.start();
  report(...up);
  expect(presses()).toBe(0);
  report(...down);
  report(...down);
  expect(presses()).toBe(1);
  report(...up);
  report(...down);
  expect(presses()).toBe(2);
});

test("what is held while it is opened is no press", () => {
  const { pedal, report, presses } = bench();
  pedal.start();
  report(1, 2);
  expect(presses()).toBe(0);
  report(1, 0);
  report(1, 2);
  expect(presses()).toBe(1);
});

test("after it was stopped nothing is looked at any more", () => {
  const { pedal, report, presses, clock } = bench();
  pedal.start();
  report(1, 0);
  pedal.stop();
  report(1, 2);
  clock.pass(5000);
  expect(presses()).toBe(0);
  pedal.start();
  report(1, 0);
  report(1, 2);
  expect(presses()).toBe(1);
});
