import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, type TestContext, test } from "vitest";
import { tellerOf } from "../../views/messages/tell.ts";
import { inLocale } from "../../views/numbers.ts";
import { type Cable, createCable } from "../drivers/pty.ts";
import { closeContexts, sharedBrowser } from "../setup/browser.ts";
import { longRun } from "../setup/long-run.ts";
import { firstQuestionsAnswered } from "./form-poster.ts";
import { faults, overflow, picture, pictureOfFailure, type RunningBench, startBench } from "./running.ts";

let browser: Browser;
/** The assayer's: no balance named and a folder of its own, so the demonstration with its simulated balance. */
let simulated: RunningBench;
/** The refiner's: a balance on a cable that marks its rest and sends ten lines a second. */
let cabled: RunningBench;
let cable: Cable;
let shown = "0.0000";
let sending: NodeJS.Timeout;
/** The hobbyist's: a kitchen scale, read and typed. */
let typed: RunningBench;
beforeAll(async () => {
  cable = createCable();
  sending = setInterval(() => cable.send(`    ${shown} g   stable\r\n`), 100);
  [browser, simulated, cabled, typed] = await Promise.all([
    sharedBrowser(),
    startBench([]),
    startBench(["--balance", cable.path]),
    startBench(["--typed"]),
  ]);
  for (const { url } of [cabled, typed]) await firstQuestionsAnswered(url);
}, 60_000);
afterAll(async () => {
  clearInterval(sending);
  await closeContexts(browser);
  await Promise.all([simulated, cabled, typed].map((bench) => bench?.stop()));
  cable?.unplug();
});

const phone = { device: "phone", viewport: { width: 390, height: 844 }, hasTouch: true } as const;
const desk = { device: "desk", viewport: { width: 1280, height: 900 }, hasTouch: false } as const;
/** Both themes on both devices, each theme and each device in both languages. */
const looks = [
  { ...phone, colorScheme: "light", locale: "en" },
  { ...desk, colorScheme: "light", locale: "de" },
  { ...phone, colorScheme: "dark", locale: "de" },
  { ...desk, colorScheme: "dark", locale: "en" },
] as const;
type Look = (typeof looks)[number];

/** A user's window; `shows` looks at one state of the path. */
async function opened({ onTestFinished }: TestContext, { device, ...look }: Look, url: string) {
  const context = await browser.newContext(look);
  const page = await context.newPage();
  const name = (state: string) => `${state}-${device}-${look.colorScheme}-${look.locale}`;
  const troubles: string[] = [];
  page.on("pageerror", ({ message }) => troubles.push(message));
  page.on("console", (message) => {
    if (message.type() === "error") troubles.push(message.text());
  });
  onTestFinished(async ({ task }) => {
    if (task.result?.state === "fail") await pictureOfFailure(page, name("failed"));
    await context.close();
  });
  await page.goto(url);
  /** A picture to look at, no fault an automatic check can find, nothing beyond the edge. */
  const shows = async (state: string) => {
    await picture(page, name(state));
    const found = { faults: await faults(page), overflow: await overflow(page), troubles };
    expect(found, state).toEqual({ faults: [], overflow: 0, troubles: [] });
  };
  return {
    page,
    shows,
    t: tellerOf(look.locale),
    button: (name: string) => page.getByRole("button", { name }),
    link: (name: string) => page.getByRole("link", { name }),
    labelled: (name: string) => page.getByLabel(name, { exact: true }),
  };
}

/** From plan and ticket by weighing and finding to record and report. */
async function assayer(task: TestContext, look: Look): Promise<void> {
  const { page, shows, t, button, link } = await opened(task, look, simulated.url);
  await shows("assayer-1-bench");
  await link(t("bench.opening.plan")).click();
  await page.selectOption("#claim", "ag-999");
  await page.fill("#mass", "31.1");
  await page.fill("#readability", "0.0001");
  await button(t("plan.go")).click();
  await page.locator("#answer-heading").waitFor();
  await shows("assayer-2-plan");

  // on a phone the places are in one menu
  if (look.device === "phone") await page.locator(".pages > summary").click();
  await link(t("frame.bench")).last().click();
  await button("MQ-101").click();
  /** The key is pressed once the moved piece is seen to weigh what it should, as a person would. */
  const moved = async (to: "dry" | "wet", shows: RegExp) => {
    await button(t(`bench.simulator.${to}`)).click();
    await page.locator("#live-reading").getByText(shows).waitFor();
  };
  await moved("dry", /^31[.,]/);
  await next(page).click();
  await due(page, "immersed");
  await shows("assayer-3-dry-taken");
  await moved("wet", /^28[.,]/);
  await next(page).click();
  await due(page, "water");
  await page.fill("#celsius", "21,4");
  await page.press("#celsius", "Enter");
  await page.locator("#result").getByText(t("state.consistent-not-unique")).first().waitFor();
  await shows("assayer-4-result");
  await button(t("bench.end.write")).click();
  await link(t("bench.read-record")).click();
  await page.locator("#chain-heading").waitFor();
  await shows("assayer-5-record");
  await plotsTakenOut(page);
  await button(t("record-page.issue")).click();
  await page
    .getByText(new RegExp(t("report.number-and-copy", { number: ".*", copy: 1 })))
    .first()
    .waitFor();
  await shows("assayer-6-report");
}

/** Each plot of the record as a drawing by itself and as a picture, both with its data. */
async function plotsTakenOut(page: Page): Promise<void> {
  for (const figure of await page.locator("figure.plot").all()) {
    await figure.evaluate((drawn) => {
      for (let fold = drawn.closest("details"); fold; fold = fold.parentElement?.closest("details") ?? null)
        fold.open = true;
      for (const fold of drawn.querySelectorAll("details")) fold.open = true;
    });
    const taken = async (form: string) => {
      const saving = page.waitForEvent("download");
      await figure.locator(`[data-form="${form}"]`).click();
      return readFileSync(await (await saving).path());
    };
    const firstCell = (await figure.locator("tbody th").first().textContent()) ?? "";
    expect((await taken("CSV")).toString()).toContain(`"${firstCell}"`);
    const svg = (await taken("SVG")).toString();
    expect(svg).toMatch(/^<svg [^>]*xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
    expect(svg).toContain("<metadata>");
    // nothing in it leans on a style sheet of the page
    expect(svg).not.toMatch(/ class="|var\(/);
    expect((await taken("PNG")).subarray(1, 4).toString()).toBe("PNG");
  }
}

const due = (page: Page, step: string) => page.locator(`.now[data-step="${step}"]`).waitFor();

/** The one filled button of the bench. */
const next = (page: Page) => page.locator(".now .next");

/** A lot with its tickets, screened by keyboard: one key a weighing; then the price, and the closing that freezes both. */
async function refiner(task: TestContext, look: Look): Promise<void> {
  const { page, shows, t, button, link } = await opened(task, look, `${cabled.url}lots`);
  await shows("refiner-1-lots");
  await page.fill("#name", `Quay lot, ${look.device}, ${look.colorScheme}`);
  await page.fill("#count", "3");
  await page.selectOption("#claim", "ag-999");
  await page.press("#name", "Enter");
  await page.locator("#celsius").waitFor();
  await shows("refiner-2-water");
  await page.keyboard.type("21,4", { delay: 60 });
  await page.keyboard.press("Enter");
  /** A load is laid on, and the key pressed only once it is seen: what the balance still shows is no new reading. */
  const onThePan = async (grams: string) => {
    shown = grams;
    await page.locator("#live-reading").getByText(inLocale(grams, look.locale)).waitFor();
  };
  // Fine silver, brass under a silver skin, silver 800: dry and immersed, g
  for (const [ticket, claim, dry, immersed] of [
    ["K-1", "ag-999", "31.1274", "28.1680"],
    ["K-2", "ag-999", "31.1092", "27.4707"],
    ["K-3", "ag-800", "38.4507", "34.6702"],
  ] as const) {
    await page.waitForSelector("#ticket:focus");
    await page.selectOption("#claim", claim);
    await page.focus("#ticket");
    await page.keyboard.insertText(ticket);
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: t("step.dry.title") }).waitFor();
    if (ticket === "K-1") await shows("refiner-3-dry");
    await onThePan(dry);
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: t("step.immersed.title") }).waitFor();
    await onThePan(immersed);
    await page.keyboard.press("F9");
  }
  await page.getByRole("heading", { name: t("lots.step.full", { counted: 3 }) }).waitFor();
  await page.locator("summary", { hasText: t("lots.trays") }).click();
  const excluded = page.getByRole("region", { name: t("state.excluded"), exact: true });
  expect(await excluded.textContent()).toContain("K-2");
  await shows("refiner-4-screened");
  await link(t("lots.list.payout")).first().click();
  await page.selectOption("#payout-metal", "silver");
  await page.fill("#payout-price", "28,50");
  await page.fill("#payout-currency", "EUR");
  await page.fill("#payout-at", "2026-11-25 11:00");
  await page.fill("#payout-source", "agreed with the seller");
  await page.fill("#payout-rate", "95");
  await page.fill("#payout-by", "TM");
  await button(t("payout.lock")).click();
  await page.locator(".sums .total").waitFor();
  await shows("refiner-5-payout");
  await page.locator('a[href^="/lots/"]', { hasText: look.device }).first().click();
  // the lot is full: its one filled button leads to the closing
  await next(page).click();
  for (const answer of await page.locator('input[name^="answer-"]').all()) await answer.fill("seen");
  await page.fill("#closing-by", "TM");
  await button(t("lots.closing.go")).click();
  await page.locator("#closed-heading").waitFor();
  await shows("refiner-6-closed");
}

/** A ring typed from a kitchen scale, its plain sentence, and one page to share. */
async function hobbyist(task: TestContext, look: Look): Promise<void> {
  const { page, shows, t, button, link, labelled } = await opened(task, look, typed.url);
  await labelled(t("bench.opening.ticket")).fill("grandmother's ring");
  await page.selectOption("#claim", "au-750");
  await labelled(t("bench.opening.method")).selectOption("displaced");
  await button(t("bench.opening.go")).click();
  await labelled(t("bench.readings.label", { role: t("bench.roles.dry") })).fill("8,4");
  await shows("hobbyist-1-dry");
  await next(page).click();
  await labelled(t("bench.readings.label", { role: t("bench.roles.rise") })).fill("0,5");
  await next(page).click();
  await page.fill("#celsius", "19");
  await page.press("#celsius", "Enter");
  // A step of 0.1 g on a rise of 0.5 g leaves nearly every metal alive.
  await page.locator("#result").getByText(t("state.inconclusive")).first().waitFor();
  await shows("hobbyist-2-result");
  await button(t("bench.end.write")).click();
  await link(t("bench.read-record")).click();
  await page.locator("#chain-heading").waitFor();
  await shows("hobbyist-3-record");
  await link(t("share.link")).click();
  // An image is decoded only when it is sound XML and needs nothing that the page's policy forbids.
  const decoded = (image: HTMLImageElement) => image.decode().then(() => image.naturalWidth);
  expect(await page.locator("#share-picture").evaluate(decoded)).toBe(860);
  const saving = page.waitForEvent("download");
  await button(t("share.as-png")).click();
  expect((await saving).suggestedFilename()).toBe("density-test.png");
  await shows("hobbyist-4-share");
}

// The three work at once, each at a bench of their own and each with another look; by night each takes every look in turn.
describe.each(Array.from({ length: longRun(looks.length, 1) }, (_, round) => round))(
  "in round %i",
  (round) => {
    const look = (turn: number): Look => looks[(round + turn) % looks.length]!;
    test.concurrent("a refiner goes from the tickets of a lot to its payout", (task) =>
      refiner(task, look(0)));
    test.concurrent("an assayer goes from plan and ticket to record and report", (task) =>
      assayer(task, look(1)));
    test.concurrent("a hobbyist goes from a typed ring to one page to share", (task) =>
      hobbyist(task, look(2)));
  },
);
