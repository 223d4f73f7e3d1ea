import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, onTestFinished, test } from "vitest";
import { tellerOf } from "../../views/messages/tell.ts";
import { type Cable, createCable } from "../drivers/pty.ts";
import { closeContexts, launchBrowser, sharedBrowser } from "../setup/browser.ts";
import { firstQuestionsAnswered, formPoster } from "./form-poster.ts";
import {
  faults,
  heard,
  overflow,
  picture,
  pictureOfFailure,
  type RunningBench,
  startBench,
} from "./running.ts";

const t = tellerOf("en");

const phone = { width: 360, height: 740 };
const desk = { width: 1280, height: 900 };

let browser: Browser;
let cable: Cable;
/** Benches that tests share, one after the other: typed, at a balance on the cable, and the demonstration. */
let typed: RunningBench;
let cabled: RunningBench;
let demo: RunningBench;
/** The one a test works at; one that it stops or kills is its own. */
let bench: RunningBench;
let troubles: string[] = [];
const empty = (): string | undefined => "0.0000";
let shows = empty;
let sending: NodeJS.Timeout;

beforeAll(async () => {
  cable = createCable();
  sending = setInterval(() => {
    const grams = shows();
    if (grams !== undefined) cable.send(`    ${grams} g   stable\r\n`);
  }, 100);
  [browser, typed, cabled, demo] = await Promise.all([
    sharedBrowser(),
    startBench(["--typed"]),
    startBench(["--balance", cable.path]),
    startBench([]),
  ]);
  for (const { url } of [typed, cabled]) await firstQuestionsAnswered(url);
}, 60_000);
afterAll(async () => {
  clearInterval(sending);
  await Promise.all([typed, cabled, demo].map((one) => one?.stop()));
  cable?.unplug();
});
afterEach(async ({ task }) => {
  if (task.result?.state === "fail")
    for (const page of browser.contexts().flatMap((context) => context.pages())) {
      await pictureOfFailure(page, `failed-${task.name.replace(/\W+/g, "-").slice(0, 60)}`);
      console.log(`${page.url()}: ${troubles.join("; ") || "no trouble on its console"}`);
    }
  await closeContexts(browser);
  // what a test leaves on the bench is called off, so that the next begins with a ticket
  const post = await formPoster(bench.url);
  await post("/bench/call-off", { reason: "the next test" });
}, 60_000);

/** A bench of this test alone, which it may stop, hold or kill. */
async function ownBench(args: string[], dataFolder?: string): Promise<RunningBench> {
  const own = await startBench(args, dataFolder);
  await firstQuestionsAnswered(own.url);
  onTestFinished(() => own.stop());
  return own;
}

async function open(options: BrowserContextOptions): Promise<Page> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  troubles = [];
  page.on("pageerror", (error) => troubles.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") troubles.push(message.text());
  });
  await page.goto(bench.url);
  return page;
}

/** Types at the pace of a person; faster than any hand, the page would take it for a balance that types. */
function typesByHand(page: Page, text: string): Promise<void> {
  return page.keyboard.type(text, { delay: 60 });
}

/** Long enough for a busy machine; what is waited for usually comes at once. */
const soon = { timeout: 15_000 };

/** Breaks no rule, and nothing lies beyond the edge: on a narrow phone, and with letters twice as large. */
async function readsWell(page: Page, state: string): Promise<void> {
  expect([state, await faults(page)]).toEqual([state, []]);
  const before = page.viewportSize()!;
  for (const [width, letters] of [
    [320, 16],
    [390, 32],
    [1366, 32],
  ] as const) {
    await page.setViewportSize({ width, height: 768 });
    await page.evaluate(`document.documentElement.style.fontSize = "${letters}px"`);
    expect([state, width, letters, await overflow(page)]).toEqual([state, width, letters, 0]);
  }
  await page.evaluate(`document.documentElement.style.fontSize = ""`);
  await page.setViewportSize(before);
}

/** That these follow one another to a screen reader, whatever stands between them. Chromium tells it soon after a change. */
async function inThisOrder(page: Page, wanted: readonly string[]): Promise<void> {
  const told = async () => (await heard(page)).order.filter((one) => wanted.includes(one));
  await expect.poll(told, soon).toEqual(wanted);
}

/** Until this is the step that is due. */
const due = (page: Page, step: string, timeout = 15_000) =>
  page.locator(`.now[data-step="${step}"]`).waitFor({ timeout });

/** What the balance on the cable shows; it sends ten lines a second, and none while it shows nothing. */
function sends(grams: () => string | undefined): () => void {
  shows = grams;
  const stop = () => {
    shows = empty;
  };
  onTestFinished(stop);
  return stop;
}

describe("an assayer at a balance on a cable", () => {
  test("weighs a piece by keyboard alone, from ticket to record; a screen reader hears each step and the answer in order, and large letters fit", async () => {
    bench = cabled;
    let shown = "0.0000";
    const stop = sends(() => shown);
    const page = await open({ viewport: desk });
    await page.locator("#live-reading").getByText("0.0000").waitFor();

    await page.keyboard.press("Tab"); // the skip link comes first
    await page.getByLabel("Ticket").focus();
    await typesByHand(page, "A-17");
    await page.keyboard.press("Tab");
    await typesByHand(page, "small bar");
    await page.getByLabel(t("bench.opening.claim")).selectOption("ag-999");
    await page.getByLabel("Ticket").press("Enter");

    await due(page, "dry");
    const next = (words: string) => `button ${words} Enter`;
    const told = (step: "dry" | "immersed") =>
      `heading ${t(`step.${step}.title`)} | ${t(`step.${step}.does`)}`;
    const focused = async () => (await heard(page)).focus;
    await expect.poll(focused, soon).toBe(told("dry"));
    await inThisOrder(page, [
      "heading A-17",
      `heading ${t("step.dry.title")}`,
      next(`${t("bench.next.take")} ${t("bench.roles.dry")}`),
      "heading Silver 999 fine",
    ]);
    expect((await heard(page)).regions).toEqual(["status "]);
    await readsWell(page, "dry");
    shown = "31.1035";
    await page.locator("#live-reading").getByText("31.1035").waitFor();
    await page.keyboard.press("t");
    await page.locator(".done summary").getByText("31.1035 g").waitFor();
    await due(page, "immersed");
    await expect.poll(focused, soon).toBe(told("immersed"));
    await expect.poll(() => page.textContent("#live"), soon).toBe(`${t("step.dry.title")}: 31.1035 g`);
    await readsWell(page, "immersed");
    shown = "28.1435";
    await page.locator("#live-reading").getByText("28.1435").waitFor();
    await page.keyboard.press("t");
    await page.locator(".done summary").getByText("28.1435 g").waitFor();
    await expect
      .poll(focused, soon)
      .toBe(`textbox ${t("bench.readings.temperature")} | ${t("step.water.does")}`);
    await readsWell(page, "water");
    await typesByHand(page, "21.4");
    await page.keyboard.press("Enter");
    await page.locator("#result").getByText(t("state.consistent-not-unique")).waitFor();
    const [answer, value] = await page.locator("#now-answer, #now-value").allTextContents();
    expect(value).toContain("10.474");
    await expect.poll(focused, soon).toBe(`region ${t("state.consistent-not-unique")} ${answer} ${value} | `);
    await inThisOrder(page, ["heading A-17", next(t("bench.end.write")), `heading ${answer}`]);
    await readsWell(page, "answer");
    // focus went with the step: Enter is the next thing
    await page.keyboard.press("Enter");
    await page.getByRole("link", { name: "Read it" }).click();
    await page.getByText("Record of A-17").waitFor();
    stop();
    expect(troubles).toEqual([]);
  });

  test("types the temperature while the immersed reading is still awaited, and loses no digit to its arrival", async () => {
    bench = cabled;
    let shown = "0.0000";
    const stop = sends(() => shown);
    const page = await open({ viewport: desk });
    await page.getByLabel("Ticket").fill("A-20");
    await page.getByRole("button", { name: t("bench.opening.go") }).click();
    await due(page, "dry");
    shown = "31.1035";
    await page.locator("#live-reading").getByText("31.1035").waitFor();
    await page.locator(".now .next").click();
    await due(page, "immersed");
    await page.locator(".now").getByText(t("bench.readings.type-instead")).click();

    const field = page.locator("#typed-immersed");
    await field.fill("28.1");
    // A second dry reading, asked for in another window, redraws the piece while the person is typing.
    const other = await open({ viewport: desk });
    shown = "31.1036";
    await other.locator(".done summary").first().click();
    await other
      .getByRole("button", { name: t("bench.readings.take-again", { role: t("bench.roles.dry") }) })
      .click();
    await page.locator(".done summary").getByText("31.1036 g").waitFor();
    expect(await field.inputValue()).toBe("28.1");
    await typesByHand(page, "435");
    expect(await field.inputValue()).toBe("28.1435");
    stop();
  });

  test("sees a silent balance as silent, and its old weight cannot be taken", async () => {
    bench = cabled;
    sends(() => "31.1035");
    const page = await open({ viewport: desk });
    await page.locator("#live-reading").getByText("31.1035").waitFor();
    await page.getByLabel("Ticket").fill("A-18");
    await page.getByRole("button", { name: t("bench.opening.go") }).click();
    await due(page, "dry");
    sends(() => undefined);
    await page
      .locator("#live-reading")
      .getByText(/Silent for \d+ s/)
      .waitFor();
    await picture(page, "bench-silent-desk");
    await page.locator(".now .next").click();
    await page.getByText(t("bench.readings.waiting")).waitFor();
    // Lines that came before the request do not count, however long they are waited for.
    await page.waitForTimeout(1500);
    expect(await page.locator(".readings li").count()).toBe(0);
    await page.getByRole("button", { name: "Do not take it" }).click();
    await due(page, "dry");
  });

  test("finds the weighing where it was after a reload, and after the bench was killed and started again", async () => {
    bench = await ownBench(["--typed"]);
    const page = await open({ viewport: desk });
    await page.getByLabel("Ticket").fill("A-19");
    await page.getByRole("button", { name: t("bench.opening.go") }).click();
    await page.getByLabel("The dry reading").fill("31.10");
    await page.locator(".now .next").click();
    await page.locator(".done summary").getByText("31.10 g").waitFor();
    await page.reload();
    await page.locator(".done summary").getByText("31.10 g").waitFor();
    const { dataFolder } = bench;
    bench.process.kill("SIGKILL");
    await bench.stop();
    bench = await ownBench(["--typed"], dataFolder);
    const again = await open({ viewport: desk });
    await again.locator(".done summary").getByText("31.10 g").waitFor();
    await again.getByLabel("The immersed reading").waitFor();
  });
});

test("with two windows open, one capture serves both; a press in the other window is refused with what changed there", async () => {
  bench = demo;
  const one = await open({ viewport: desk });
  const two = await open({ viewport: desk });
  await one.getByRole("button", { name: /MQ-101/ }).click();
  await due(two, "dry");
  await one.locator(".now .next").click();
  await due(two, "immersed", 30_000);
  await due(one, "immersed");
  expect(await two.locator(".readings li").count()).toBe(1);
  // whoever stands at the second window has not looked at the step that came there by itself
  const refused = two.locator('#piece .problems [data-code="weighing.stale"]');
  await two.locator(".now .next").click();
  await refused.waitFor();
  // nothing lay on the pan: the press that is meant for it excludes that reading
  await two.locator(".now .next").click();
  await due(two, "dry");
  await refused.waitFor({ state: "detached" });
});

test("a hobbyist types one piece from start to record with scripts off", async () => {
  bench = typed;
  const page = await open({ viewport: phone, javaScriptEnabled: false });
  await page.getByLabel("Ticket").fill("grandmother's ring");
  await page.getByLabel(t("bench.opening.claim")).selectOption("au-750");
  await page.getByLabel(t("bench.opening.method")).selectOption("displaced");
  await page.getByRole("button", { name: t("bench.opening.go") }).click();
  await page.getByLabel("The dry reading").fill("8,41");
  await page.locator(".now .next").click();
  await page.locator(".done summary").getByText("8.41 g").waitFor();
  await page.getByLabel("The rise of the beaker reading").fill("0,54");
  await page.locator(".now .next").click();
  await page.getByLabel("Water temperature in °C").fill("19");
  await page.locator(".now .next").click();
  await page.locator("#result .value").waitFor();
  await page.getByRole("button", { name: t("bench.end.write") }).click();
  await page.getByRole("link", { name: "Read it" }).click();
  await page.getByText("Record of grandmother's ring").waitFor();
});

test("keeps what was sent back and what is half typed, whatever another window does meanwhile", async () => {
  bench = typed;
  const page = await open({ viewport: phone, hasTouch: true });
  await page.getByLabel("Ticket").fill("A-21");
  await page.getByRole("button", { name: t("bench.opening.go") }).click();
  await page.getByLabel("The dry reading").fill("31.10");
  await page.locator(".now .next").click();
  await page.locator(".done summary").getByText("31.10 g").waitFor();
  const other = await open({ viewport: desk });

  await page.getByLabel("The immersed reading").fill("28.l4");
  await page.locator(".now .next").click();
  const sentBack = page.locator("#piece .problems").getByText("28.l4");
  await sentBack.waitFor();
  await other.locator(".done summary").first().click();
  await other.getByText("type another").first().click();
  await other.locator("#again-dry").fill("31.11");
  await other.locator("#again-dry").press("Enter");
  await page.locator(".done summary").getByText("31.11 g").waitFor();
  await sentBack.waitFor();
  expect(await page.getByLabel("The immersed reading").inputValue()).toBe("28.l4");

  await page.getByLabel("The immersed reading").fill("28.14");
  await page.locator(".now .next").click();
  await page.locator(".done summary").getByText("28.14 g").waitFor();
  await sentBack.waitFor({ state: "detached" });
  // half of a repeat is typed when the temperature is sent and its answer arrives
  await page.locator(".done > li > details > summary").nth(1).click();
  await page.locator(".done > li > details").nth(1).getByText("type another").click();
  const repeat = page.locator("#again-immersed");
  expect(await repeat.inputValue()).toBe("");
  await repeat.fill("28.1");
  await page.getByLabel("Water temperature in °C").fill("21.4");
  await page.getByLabel("Water temperature in °C").press("Enter");
  await page.locator("#result").getByText("g/cm³").first().waitFor();
  expect(await repeat.inputValue()).toBe("28.1");
  expect(await page.getByLabel("Water temperature in °C").inputValue()).toBe("21.4");
  expect(troubles.filter((one) => !one.includes("422"))).toEqual([]);
});

test("a line from the balance reaches the page whole, and a page left open goes grey when the bench is gone and catches up when it is back", async () => {
  bench = await ownBench([]);
  const page = await open({ viewport: desk });
  await page.locator("#live-reading .live-reading").waitFor();
  const { dataFolder, url } = bench;
  await bench.stop();
  await page.locator("html.stale").waitFor({ timeout: 20_000 });
  await page.getByText(t("frame.stale")).first().waitFor();
  bench = await ownBench(["--port", new URL(url).port], dataFolder);
  // Another window goes on while this one still looks for the bench: it then shows what happened meanwhile.
  const other = await open({ viewport: desk });
  await other.getByRole("button", { name: /MQ-101/ }).click();
  await page.locator("#piece-line h1").getByText("MQ-101").waitFor({ timeout: 20_000 });
  await page.locator("html:not(.stale)").waitFor();
});

test("a device that slept while another one went on shows what happened when it wakes", async () => {
  bench = typed;
  const page = await open({ viewport: phone });
  await page.getByLabel("Ticket").fill("A-22");
  await page.getByRole("button", { name: t("bench.opening.go") }).click();
  await page.getByLabel("The dry reading").fill("31.1");
  await page.evaluate(() => {
    let last = performance.now();
    setInterval(() => {
      const { dataset } = document.documentElement;
      const gap = performance.now() - last;
      last += gap;
      dataset.longestSleep = String(Math.max(gap, Number(dataset.longestSleep ?? 0)));
    }, 100);
  });
  const devices = await browser.newBrowserCDPSession();
  const { processInfo } = await devices.send("SystemInfo.getProcessInfo");
  const everyProcess = (signal: NodeJS.Signals) => {
    for (const { id } of processInfo) process.kill(id, signal);
  };
  // The whole browser stands still, as on a device whose lid is shut; the other device is a browser of its own.
  everyProcess("SIGSTOP");
  const asleep = new Promise((resolve) => setTimeout(resolve, 6_000));
  const elsewhere = await launchBrowser();
  try {
    const other = await elsewhere.newPage();
    await other.goto(bench.url);
    await other.getByLabel("The dry reading").fill("31.10");
    await other.getByLabel("The dry reading").press("Enter");
    await other.locator(".done summary").getByText("31.10 g").waitFor();
    await asleep;
  } finally {
    await elsewhere.close();
    everyProcess("SIGCONT");
  }
  await page.locator(".done summary").getByText("31.10 g").waitFor();
  await page.getByLabel("The immersed reading").waitFor();
  await page.locator("html:not(.stale)").waitFor();
  expect(Number(await page.locator("html").getAttribute("data-longest-sleep"))).toBeGreaterThan(5_000);
});

test("a page turns grey when heartbeats stay out although its line is open, and clears when they come again", async () => {
  bench = typed;
  const page = await open({ viewport: phone });
  await page.locator("#heartbeat:not(:empty)").waitFor({ state: "attached" });
  // The stream stays open, but nothing comes: the machine of the bench hangs.
  bench.process.kill("SIGSTOP");
  onTestFinished(() => {
    bench.process.kill("SIGCONT");
  });
  await page.locator("html.stale").waitFor({ timeout: 20_000 });
  await picture(page, "bench-grey-phone");
  bench.process.kill("SIGCONT");
  await page.locator("html:not(.stale)").waitFor();
  expect(troubles).toEqual([]);
});

test("a piece measured with a calliper: what is wrong is told at its field, and what is right gives its density", async () => {
  bench = demo;
  const page = await open({ viewport: desk });
  await page.goto(bench.url);
  await page.getByLabel("Ticket").fill("D-7");
  await page.getByLabel(t("bench.opening.method")).selectOption("dimensions");
  await page.getByLabel("Ticket").press("Enter");
  await page.locator("#typed-dry").waitFor({ state: "attached" });
  await page.locator("details:has(#typed-dry) > summary").last().click();
  await page.locator("#typed-dry").fill("1000.00");
  await page.locator("#typed-dry").press("Enter");
  const typed = {
    "box-length": "80.00; 80.01",
    "box-width": "40.00",
    "box-height": "abc",
    u: "0.02",
    "form-half-width": "0.5",
  };
  const field = (name: string) => page.locator(`input[name="${name}"]`);
  for (const [name, value] of Object.entries(typed)) await field(name).fill(value);
  await field("u").press("Enter");
  await page.locator('[data-code="form.number.not-a-number"]').first().waitFor();
  expect(await field("box-height").getAttribute("aria-invalid")).toBe("true");
  expect(await field("box-length").inputValue()).toBe(typed["box-length"]);
  await field("box-height").fill("16.20");
  await field("u").press("Enter");
  // 1000 g in 8.0005 · 4 · 1.62 cm³
  await page.locator("#result").getByText("19.29").first().waitFor();
  expect(troubles.filter((one) => !one.includes("422"))).toEqual([]);
});

test("a record whose button is hit twice is written once", async () => {
  bench = typed;
  const page = await open({ viewport: phone });
  await page.getByLabel("Ticket").fill("A-31");
  await page.getByRole("button", { name: t("bench.opening.go") }).click();
  await page.getByLabel("The dry reading").fill("31.10");
  await page.locator(".now .next").click();
  await page.getByLabel("The immersed reading").fill("28.14");
  await page.locator(".now .next").click();
  await page.getByLabel("Water temperature in °C").fill("21.4");
  await page.getByLabel("Water temperature in °C").press("Enter");
  const write = page.getByRole("button", { name: t("bench.end.write") });
  await write.waitFor();
  await write.evaluate((button: HTMLButtonElement) => {
    button.click();
    button.click();
  });
  await page.getByText("The record of A-31 is written").waitFor();
  const listed = await (await fetch(`${bench.url}records.csv`)).text();
  expect(listed.split("A-31").length - 1).toBe(1);
});
