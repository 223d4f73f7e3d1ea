import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { tellerOf } from "../../../views/messages/tell.ts";
import { closeContexts, sharedBrowser } from "../../setup/browser.ts";
import { firstQuestionsAnswered } from "../form-poster.ts";
import { type RunningBench, startBench } from "../running.ts";

const t = tellerOf("en");
let browser: Browser;
let bench: RunningBench;
beforeAll(async () => {
  [browser, bench] = await Promise.all([sharedBrowser(), startBench(["--typed"])]);
}, 60_000);
afterAll(async () => {
  await closeContexts(browser);
  await bench?.stop();
});

test("typed without a connection, kept through a reload, sent once when the bench answers, and written once", async () => {
  const context = await browser.newContext({ locale: "en", viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  await firstQuestionsAnswered(bench.url);
  await page.goto(bench.url);
  await page.evaluate(() => navigator.serviceWorker.ready);
  const manifest = await (await fetch(new URL("/manifest.webmanifest", bench.url))).json();
  expect(manifest).toMatchObject({ display: "standalone", start_url: "/" });

  await context.setOffline(true);
  await page.goto(new URL("/records", bench.url).href);
  expect(await page.textContent("h1")).toBe(t("offline.title"));
  // invented: a spoon of about 10.3 g/cm³
  const typed = { ticket: "PH-1", celsius: "21.4", dry: "24.512", immersed: "22.140" };
  for (const [name, value] of Object.entries(typed)) await page.fill(`[name=${name}]`, value);
  await page.reload();
  expect(await page.inputValue("[name=dry]")).toBe("24.512");
  await page.click("form[class=sheet] button[type=submit]");
  await page.fill("[name=ticket]", "PH-2");
  await page.fill("[name=celsius]", "21,4 °F");
  await page.fill("[name=dry]", "10.000");
  await page.fill("[name=immersed]", "8.826");
  await page.click("form[class=sheet] button[type=submit]");
  await page.reload();
  await expect.poll(() => page.locator("[data-kept] li").count()).toBe(2);
  expect(await page.textContent("[data-kept]")).toContain(t("offline.state.kept"));

  await context.setOffline(false);
  await page.goto(new URL("/offline", bench.url).href);
  const list = () => page.textContent("[data-kept]");
  await expect.poll(list, { timeout: 20_000 }).toContain(t("offline.state.recorded"));
  await expect.poll(list, { timeout: 20_000 }).toContain(t("offline.state.refused"));
  const entries = async () =>
    (await (await fetch(new URL("/records.jsonl", bench.url))).text()).trim().split("\n");
  const kinds = (await entries())
    .map((line) => JSON.parse(line))
    .filter(({ subject }) => /^[0-9a-f-]{36}$/.test(subject));
  expect(kinds.map(({ kind }) => kind)).toEqual([
    "piece-opened",
    "note",
    "capture",
    "capture",
    "capture",
    "result",
  ]);
  expect(kinds[0]?.body).toMatchObject({ ticket: "PH-1", method: "hung" });

  // the device forgot that it was sent, as when the answer is lost on the way
  await page.evaluate(() => {
    const place = "underhook-kept-weighings";
    const list = JSON.parse(localStorage.getItem(place) ?? "[]");
    localStorage.setItem(place, JSON.stringify(list.map((one: object) => ({ ...one, state: "kept" }))));
  });
  const before = (await entries()).length;
  await page.reload();
  await expect.poll(list, { timeout: 20_000 }).toContain(t("offline.state.recorded"));
  expect(await entries()).toHaveLength(before);
  await context.close();
}, 120_000);
