import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { tellerOf } from "../../views/messages/tell.ts";
import { closeContexts, sharedBrowser } from "../setup/browser.ts";
import { faults, overflow, picture, type RunningBench, startBench } from "./running.ts";

const t = tellerOf("en");

let browser: Browser;
let demo: RunningBench;
let real: RunningBench;
beforeAll(async () => {
  browser = await sharedBrowser();
  [demo, real] = await Promise.all([startBench([]), startBench(["--typed"])]);
}, 60_000);
afterAll(async () => {
  await closeContexts(browser);
  await Promise.all([demo?.stop(), real?.stop()]);
});
afterEach(async () => {
  await closeContexts(browser);
});

const plan = "plan?method=displaced&claim=ag-999&mass=31.1&massUnit=g&readability=0.1&readabilityUnit=g";

/** Every page of this part of the house, by the name of its picture. */
const pages: readonly [name: string, where: "demo" | "real", path: string][] = [
  ["settings", "demo", "settings"],
  ["first-start", "real", "first-start"],
  ["metals", "real", "metals"],
  ["metal", "real", "metals/au-999"],
  ["metal-of-two", "real", "metals/core-w-pure-skin-el-au"],
  ["metals-own", "real", "metals/own"],
  ["plan", "real", "plan"],
  ["plan-answer", "real", plan],
  ["fineness", "real", "plan/fineness?density=15.5&uDensity=0.05&metal=gold&colour=any"],
  ["density-matches", "real", "plan/density-matches"],
  ["two-bodies", "real", "plan/two-bodies"],
  ["specifications", "real", "specifications"],
  ["balances", "demo", "balances"],
  ["checks", "real", "checks"],
  ["plan-refused", "real", "plan?mass=heavy&readability=0&method=hung&claim=ag-999"],
  ["customer", "demo", "customer"],
  ["ledger", "real", "settings/ledger"],
  ["tokens", "real", "settings/tokens"],
  ["retention", "real", "settings/retention"],
  ["imports", "real", "imports"],
  ["tickets", "real", "tickets"],
];

const openAll = `for (const one of document.querySelectorAll("details")) one.open = true`;

describe.each(pages)("the page %s", (name, where, path) => {
  // 320 px are 1280 px at 400 % (WCAG 2.2, 1.4.10), and so more than is asked at 200 %
  test.each([
    [320, "light", "de"],
    [1280, "dark", "en"],
  ] as const)(
    "breaks no rule, no policy and no width at %i px, %s, %s",
    async (width, colorScheme, locale) => {
      const context = await browser.newContext({ viewport: { width, height: 800 }, colorScheme, locale });
      const page = await context.newPage();
      const troubles: string[] = [];
      page.on("pageerror", (error) => troubles.push(error.message));
      page.on("console", (message) => {
        if (/content security policy/i.test(message.text())) troubles.push(message.text());
      });
      await page.goto((where === "demo" ? demo : real).url + path);
      await picture(page, `pages-${name}-${width}`);
      await page.evaluate(openAll);
      expect(await faults(page)).toEqual([]);
      expect(await overflow(page)).toBe(0);
      expect(troubles).toEqual([]);
    },
  );
});

test("at 3840 px in forced colours, with less motion, every page keeps its width", async () => {
  const page = await browser.newPage({
    viewport: { width: 3840, height: 2160 },
    forcedColors: "active",
    reducedMotion: "reduce",
  });
  for (const [name, where, path] of pages) {
    await page.goto((where === "demo" ? demo : real).url + path);
    await picture(page, `pages-${name}-3840-forced`);
    expect(await overflow(page), name).toBe(0);
  }
});

test("the window to the customer follows the balance digit for digit", async () => {
  const page = await (await browser.newContext()).newPage();
  await page.goto(`${demo.url}customer`);
  await page
    .locator("#indication .live-reading", { hasText: /^-?\d+\.\d{4} g$/ })
    .waitFor({ timeout: 15_000 });
  await page
    .locator("#indication")
    .getByText(t("balance.stability.stable"), { exact: true })
    .waitFor({ timeout: 30_000 });
});

test("a demonstration ends in one action, and a real bench begins at the same address", async () => {
  const bench = await startBench([]);
  try {
    const page = await (await browser.newContext()).newPage();
    await page.goto(bench.url);
    await page.getByRole("button", { name: /MQ-101/ }).click();
    await page.getByRole("button", { name: "Lay the piece on the pan" }).waitFor();
    await page.getByRole("button", { name: "Clear the demonstration" }).click();
    await page.getByRole("heading", { name: "Welcome" }).waitFor({ timeout: 30_000 });
    expect(page.url()).toBe(`${bench.url}first-start`);
    await page.getByText("On the scale", { exact: true }).click();
    await page.getByText("Gold", { exact: true }).click();
    await page.getByRole("button", { name: "Set up the bench" }).click();
    await page.getByLabel("Ticket").waitFor();
    expect(await page.getByText("Demonstration").count()).toBe(0);
    expect(await page.getByRole("radio", { name: /beaker on the pan/ }).isChecked()).toBe(true);
    const kept = readdirSync(bench.dataFolder).filter((name) => name.startsWith("demo-set-aside-"));
    expect(kept).toHaveLength(1);
    expect(existsSync(join(bench.dataFolder, kept[0] ?? "", "ledger.sqlite"))).toBe(true);

    // Started again without a word it goes on as the real bench it has become.
    await bench.stop();
    const again = await startBench([], bench.dataFolder);
    await page.goto(again.url);
    await page.getByLabel("Ticket").waitFor();
    expect(await page.getByText("Demonstration").count()).toBe(0);
    await again.stop();
  } finally {
    await bench.stop();
  }
});
