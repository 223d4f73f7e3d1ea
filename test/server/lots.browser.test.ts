import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launchBrowser, picture, type RunningBench, startBench } from "./running.ts";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

let browser: Browser;
let bench: RunningBench;
beforeAll(async () => {
  browser = await launchBrowser();
  // a folder of its own and no balance named: the demonstration
  bench = await startBench([]);
});
afterAll(async () => {
  await browser.close();
  await bench.stop();
});

test("a refiner screens a piece with one key per weighing, and the next ticket waits with the cursor in it", async () => {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  const troubles: string[] = [];
  page.on("pageerror", (error) => troubles.push(error.message));
  await page.goto(`${bench.url}lots`);
  await page.fill("#name", "Quay lot 3");
  await page.click("text=Open the lot");
  await page.fill("#celsius", "21.4");
  await page.keyboard.press("Enter");
  await page.fill("#ticket", "MQ-102");
  await page.selectOption("#claim", "ag-999");
  await page.focus("#ticket");
  await page.keyboard.press("Enter");
  await page.waitForSelector("text=Take dry");
  await page.click("text=Lay it on the pan");
  await page.keyboard.press("F9");
  await page.waitForSelector("text=Take immersed");
  await page.click("text=Hang it in the water");
  await page.keyboard.press("F9");
  await page.waitForSelector("#ticket:focus");
  // MQ-102 is the invented brass bar under a silver skin: 8.531 g/cm³, so it lands with those that disagree
  expect(await page.textContent("#trays")).toMatch(/disagrees1.*MQ-102/);
  await page.evaluate(axe);
  const { violations } = await page.evaluate<AxeResults>("axe.run()");
  expect(violations.map(({ id }) => id)).toEqual([]);
  await picture(page, "lot-screened");
  expect(troubles).toEqual([]);
});
