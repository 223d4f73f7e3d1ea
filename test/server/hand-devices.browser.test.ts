import { execFileSync } from "node:child_process";
import { closeSync, mkdtempSync, openSync, writeSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { createCable } from "../drivers/pty.ts";
import { closeContexts, sharedBrowser } from "../setup/browser.ts";
import { answerFirstQuestions, picture, startBench } from "./running.ts";

const stops: (() => unknown)[] = [];
afterEach(async () => {
  await closeContexts(await sharedBrowser());
  for (const stop of stops.splice(0).reverse()) await stop();
});

test("a code from a barcode reader stands in the field of the ticket, and the foot switch does what Enter does", async () => {
  const reader = createCable();
  stops.push(reader.unplug);
  // a pipe takes the place of the raw device: the same reads, the same reports
  const device = join(mkdtempSync(join(tmpdir(), "switch-")), "hidraw0");
  execFileSync("mkfifo", [device]);
  const end = openSync(device, "r+");
  stops.push(() => closeSync(end));
  const bench = await startBench(["--typed"]);
  stops.push(bench.stop);
  const page = await (
    await (await sharedBrowser()).newContext({ viewport: { width: 390, height: 844 } })
  ).newPage();
  await page.goto(bench.url);
  await answerFirstQuestions(page);
  await page.goto(`${bench.url}settings/sensors`);
  await page.locator("input[name=scanner]").fill(reader.path);
  await page.locator("input[name=footSwitch]").fill(device);
  await page.locator('form[action="/settings/hand-devices"] button').click();
  await picture(page, "sensors-phone");

  await page.goto(bench.url);
  const ticket = page.locator("#ticket");
  await expect
    .poll(
      () => {
        reader.send("T-0042\r\n");
        return ticket.inputValue();
      },
      { timeout: 10_000 },
    )
    .toBe("T-0042");
  const before = await page.locator("#piece [data-key~=Enter]").count();
  expect(before).toBeGreaterThan(0);
  await expect
    .poll(
      async () => {
        writeSync(end, Uint8Array.of(1, 0));
        // a pipe joins what is written at once; a raw device gives report by report
        await page.waitForTimeout(100);
        writeSync(end, Uint8Array.of(1, 2));
        return page.locator("#ticket").count();
      },
      { timeout: 10_000, interval: 300 },
    )
    .toBe(0);
});
