import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Browser, BrowserContext } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeContexts, sharedBrowser } from "../setup/browser.ts";
import { looksAt, someByDay } from "../setup/long-run.ts";
import { gallery } from "./gallery/index.tsx";
import { serveGallery } from "./gallery/serve.ts";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

let browser: Browser;
let context: BrowserContext | undefined;
let gallerySite: Awaited<ReturnType<typeof serveGallery>>;

beforeAll(async () => {
  gallerySite = await serveGallery();
  browser = await sharedBrowser();
});
afterAll(async () => {
  await closeContexts(browser);
  await gallerySite?.close();
});

async function open(name: string, width: number, theme: "light" | "dark") {
  // one context for all, so that style and script are loaded once
  context ??= await browser.newContext();
  const tab = await context.newPage();
  await tab.setViewportSize({ width, height: 800 });
  const refused: string[] = [];
  tab.on("console", (message) => {
    if (/content security policy/i.test(message.text())) refused.push(message.text());
  });
  tab.on("pageerror", (error) => refused.push(error.message));
  await tab.goto(`${gallerySite.address}/${name}?theme=${theme}`);
  return { tab, refused };
}

/** Rules of WCAG 2.2 A and AA as axe knows them. */
const rules = { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] };

const openAll = `for (const one of document.querySelectorAll("details")) one.open = true`;
const overflow = "document.documentElement.scrollWidth - document.documentElement.clientWidth";
// Nothing jumps ahead of the reading order.
const jumps = `document.querySelectorAll("[tabindex]:not([tabindex='0'],[tabindex='-1'])").length`;

const looks = [
  [320, "light"],
  [1280, "dark"],
] as const;

// every page of the bench itself is looked at by day too, in pages.browser.test.ts
describe.each(someByDay(gallery.map(({ name }, place) => [name, place] as const)))(
  "the page %s in Chromium",
  (name, place) => {
    it.each(looksAt(looks, place))(
      "breaks no accessibility rule and no policy at %i px, %s, with every part opened, and fits 320 px, also 640 px with letters twice as large",
      async (width, theme) => {
        const { tab, refused } = await open(name, width, theme);
        await tab.evaluate(openAll);
        await tab.evaluate(axe);
        const found = (await tab.evaluate(`axe.run(document, ${JSON.stringify(rules)})`)) as {
          violations: { id: string; nodes: { html: string; failureSummary?: string }[] }[];
          passes: unknown[];
        };
        await tab.setViewportSize({ width: 320, height: 800 });
        const atOnce = await tab.evaluate(overflow);
        await tab.setViewportSize({ width: 640, height: 800 });
        await tab.evaluate(`document.documentElement.style.setProperty("font-size", "200%")`);
        const enlarged = await tab.evaluate(overflow);
        const jumping = await tab.evaluate(jumps);
        await tab.close();
        expect(found.passes.length).toBeGreaterThan(10);
        expect(
          found.violations.map(
            ({ id, nodes }) =>
              `${id}: ${nodes.map((node) => `${node.html} ${node.failureSummary}`).join(" | ")}`,
          ),
        ).toEqual([]);
        expect(refused).toEqual([]);
        expect({ atOnce, enlarged, jumping }).toEqual({ atOnce: 0, enlarged: 0, jumping: 0 });
      },
    );
  },
);

describe("the keyboard", () => {
  it("reaches the skip link first, then the places, and the skip link leads past them", async () => {
    const { tab } = await open("records", 1280, "light");
    await tab.keyboard.press("Tab");
    expect(await tab.evaluate("document.activeElement.className")).toBe("skip");
    await tab.keyboard.press("Tab");
    await tab.keyboard.press("Tab");
    expect(await tab.evaluate("document.activeElement.getAttribute('href')")).toBe("/");
    await tab.evaluate(`document.querySelector(".skip").focus()`);
    await tab.keyboard.press("Enter");
    await tab.keyboard.press("Tab");
    expect(await tab.evaluate("document.activeElement.id")).toBe("q");
    await tab.close();
  });
});

describe("paper", () => {
  it("shows result and plots but no navigation and no buttons", async () => {
    const { tab } = await open("record", 1280, "dark");
    await tab.emulateMedia({ media: "print" });
    const visible = (selector: string) =>
      tab.evaluate(
        `[...document.querySelectorAll(${JSON.stringify(selector)})].filter((e) => e.getClientRects().length).length`,
      );
    expect(await visible("nav, button, .skip")).toBe(0);
    expect(await visible("svg.wide")).toBeGreaterThan(0);
    expect(await tab.evaluate("getComputedStyle(document.body).backgroundColor")).toBe("rgb(255, 255, 255)");
    await tab.close();
  });
});
