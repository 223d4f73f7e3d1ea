import type { TLSSocket } from "node:tls";
import { connect } from "node:tls";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { tellerOf } from "../../views/messages/tell.ts";
import { closeContexts, sharedBrowser } from "../setup/browser.ts";
import { answerFirstQuestions, faults, overflow, picture, type RunningBench, startBench } from "./running.ts";

const t = tellerOf("en");
let browser: Browser;
let bench: RunningBench;
beforeAll(async () => {
  [browser, bench] = await Promise.all([sharedBrowser(), startBench(["--typed", "--listen", "127.0.0.1:0"])]);
}, 60_000);
afterAll(async () => {
  await closeContexts(browser);
  await bench?.stop();
});

/** A phone that goes on past the warning about a certificate that the bench made itself. */
const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, ignoreHTTPSErrors: true };
const passphrase = "four silver spoons in a drawer";

async function shows(page: Page, name: string): Promise<void> {
  await picture(page, name);
  expect([name, await faults(page)]).toEqual([name, []]);
  expect([name, await overflow(page)]).toEqual([name, 0]);
}

/** SHA-256 of the certificate that is really served, as TLS itself shows it. */
async function served(url: string): Promise<string> {
  const socket = await new Promise<TLSSocket>((resolve, reject) => {
    const made = connect({ port: Number(new URL(url).port), rejectUnauthorized: false }, () => resolve(made));
    made.on("error", reject);
  });
  const { fingerprint256 } = socket.getPeerCertificate();
  socket.destroy();
  return fingerprint256.replaceAll(":", "");
}

test("a phone signs in with the code of the machine and takes a ring to its record, while another sees nothing", async () => {
  const machine = await (await browser.newContext({ viewport: { width: 1366, height: 768 } })).newPage();
  await machine.goto(`${bench.url}settings/phone`);
  await shows(machine, "phone-1-machine");
  const url = (await machine.locator("#room-heading ~ .raw").first().textContent()) ?? "";
  const code = (await machine.locator("#first-code").textContent()) ?? "";
  const fingerprint = (await machine.locator("#fingerprint").textContent()) ?? "";
  expect(fingerprint.replaceAll(" ", "")).toBe(await served(url));

  const page = await (await browser.newContext(phone)).newPage();
  const other = await (await browser.newContext(phone)).newPage();
  const begun = Date.now();
  await page.goto(url);
  await shows(page, "phone-2-code");
  await page.fill("#code", code.toLowerCase());
  await page.fill("#name", "Ada Bell");
  await page.fill("#initials", "AB");
  await page.fill("#passphrase", "too short");
  await page.getByRole("button", { name: t("sign-up.do") }).tap();
  await page.locator("#passphrase-problem").waitFor();
  await shows(page, "phone-3-refused");
  await page.fill("#passphrase", passphrase);
  await page.getByRole("button", { name: t("sign-up.do") }).tap();
  await page.waitForURL("**/first-start");
  await answerFirstQuestions(page);
  await shows(page, "phone-4-bench");
  await page.getByLabel(t("bench.opening.ticket"), { exact: true }).fill("ring");
  await page.selectOption("#claim", "au-750");
  await page.selectOption("#method", "displaced");
  await page.getByRole("button", { name: t("bench.opening.go") }).tap();
  const entry = (role: "dry" | "rise") =>
    page.getByLabel(t("bench.readings.label", { role: t(`bench.roles.${role}`) }), { exact: true });
  await entry("dry").fill("8.40");
  await page.locator(".now .next").tap();
  // the machine's own page hears of it at once
  await machine.goto(bench.url);
  await machine.getByText("8.40 g").first().waitFor();
  await entry("rise").fill("0.55");
  await page.locator(".now .next").tap();
  await page.fill("#celsius", "19");
  await page.press("#celsius", "Enter");
  await page.getByRole("button", { name: t("bench.end.write") }).tap();
  await page.getByRole("link", { name: t("bench.read-record") }).tap();
  await page.locator("#chain-heading").waitFor();
  await shows(page, "phone-5-record");
  expect(Date.now() - begun).toBeLessThan(120_000);

  const record = page.url();
  await other.goto(record);
  expect(new URL(other.url()).pathname).toBe("/sign-in");
  await shows(other, "phone-6-another");
  await other.fill("#initials", "AB");
  await other.fill("#passphrase", "four silver spoons in a box");
  await other.getByRole("button", { name: t("sign-in.do") }).tap();
  await other.locator(".problems").waitFor();
  await shows(other, "phone-7-wrong");

  // the page that stays open is deaf once its person is removed at the machine
  await page.goto(url);
  await page.locator("main").waitFor();
  await machine.goto(`${bench.url}settings/phone`);
  await machine.locator("summary", { hasText: t("phone.change") }).click();
  await shows(machine, "phone-8-people");
  await machine.getByRole("button", { name: t("phone.remove") }).click();
  await machine.getByText(t("phone.kept")).waitFor();
  await page.locator("[data-stale-notice]").waitFor({ state: "visible" });
  await page.goto(record);
  expect(new URL(page.url()).pathname).toBe("/sign-in/code");
});
