import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { tellerOf } from "../../views/messages/tell.ts";
import { closeContexts, sharedBrowser } from "../setup/browser.ts";
import { looksAt } from "../setup/long-run.ts";
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
  ["statistics", "real", "records/statistics"],
  ["ledger", "real", "settings/ledger"],
  ["tokens", "real", "settings/tokens"],
  ["retention", "real", "settings/retention"],
  ["imports", "real", "imports"],
  ["tickets", "real", "tickets"],
];

const openAll = `for (const one of document.querySelectorAll("details")) one.open = true`;

// 320 px are 1280 px at 400 % (WCAG 2.2, 1.4.10), and so more than is asked at 200 %
const looks = [
  { width: 320, colorScheme: "light", locale: "de" },
  { width: 1280, colorScheme: "dark", locale: "en" },
] as const;
type Look = (typeof looks)[number];

/** One window for each look: what every page needs is loaded into it once. */
const windows = new Map<Look, Page>();

async function windowOf(look: Look): Promise<Page> {
  const { width, colorScheme, locale } = look;
  const open = windows.get(look);
  if (open) return open;
  const context = await browser.newContext({ viewport: { width, height: 800 }, colorScheme, locale });
  const page = await context.newPage();
  windows.set(look, page);
  return page;
}

describe.each(pages.map((one, place) => [one[0], place, one] as const))(
  "the page %s",
  (_, place, [name, where, path]) => {
    test.each(looksAt(looks, place))(
      "breaks no rule and no policy at $width px, $colorScheme, $locale, and keeps every width, also in forced colours",
      async (look) => {
        const { width } = look;
        const page = await windowOf(look);
        const troubles: string[] = [];
        page.on("pageerror", (error) => troubles.push(error.message));
        page.on("console", (message) => {
          if (/content security policy/i.test(message.text())) troubles.push(message.text());
        });
        await page.goto((where === "demo" ? demo : real).url + path);
        await picture(page, `pages-${name}-${width}`);
        await page.evaluate(openAll);
        expect(await faults(page)).toEqual([]);
        for (const { width } of looks) {
          await page.setViewportSize({ width, height: 800 });
          expect([width, await overflow(page)]).toEqual([width, 0]);
        }
        await page.emulateMedia({ forcedColors: "active", reducedMotion: "reduce" });
        await page.setViewportSize({ width: 3840, height: 2160 });
        await picture(page, `pages-${name}-3840-forced`);
        expect([3840, await overflow(page)]).toEqual([3840, 0]);
        await page.emulateMedia({ forcedColors: "none", reducedMotion: "no-preference" });
        await page.setViewportSize({ width, height: 800 });
        page.removeAllListeners();
        expect(troubles).toEqual([]);
      },
    );
  },
);

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
    await page.getByRole("button", { name: "On the pan" }).waitFor();
    await page.getByRole("button", { name: t("frame.demo-end") }).click();
    await page.getByRole("heading", { name: "Welcome" }).waitFor({ timeout: 30_000 });
    expect(page.url()).toBe(`${bench.url}first-start`);
    await page.getByText("On the scale", { exact: true }).click();
    await page.locator("summary", { hasText: "Mostly one metal" }).click();
    await page.getByText("Gold", { exact: true }).click();
    await page.getByRole("button", { name: "Set up the bench" }).click();
    await page.getByLabel("Ticket").waitFor();
    expect(await page.getByText("Demonstration").count()).toBe(0);
    expect(await page.locator("#method").inputValue()).toBe("displaced");
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
