import { readFileSync } from "node:fs";
import { createServer, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { page } from "../../views/page.tsx";
import { messageText } from "../message-text.ts";
import { closeContexts, sharedBrowser } from "../setup/browser.ts";
import { livePage } from "./gallery/live-page.tsx";

/** Long enough for a busy machine; what is waited for usually comes at once. */
const soon = { timeout: 15_000 };

let browser: Browser;
let server: Server;
let streams: ServerResponse[] = [];
let keys = true;
let tab: Page;

const types: Record<string, string> = { css: "text/css", js: "text/javascript", svg: "image/svg+xml" };
const folders: Record<string, string> = {
  "htmx.min.js": "node_modules/htmx.org/dist/",
  "hx-sse.min.js": "node_modules/htmx.org/dist/ext/",
};

beforeAll(async () => {
  server = createServer((request, response) => {
    const path = (request.url ?? "/").split("?")[0] ?? "/";
    if (path === "/live") {
      response.writeHead(200, { "content-type": "text/event-stream", "cache-control": "no-cache" });
      response.write("retry: 50\n\n");
      streams.push(response);
    } else if (path.startsWith("/assets/")) {
      const name = path.slice(8);
      response.setHeader("content-type", types[name.split(".").at(-1) ?? ""] ?? "text/plain");
      response.end(
        readFileSync(new URL(`../../${folders[name] ?? "views/assets/"}${name}`, import.meta.url)),
      );
    } else {
      response.setHeader("content-type", "text/html; charset=utf-8");
      response.setHeader("content-security-policy", "default-src 'self'");
      response.end(page({ title: "Bench", path: "/", csrfToken: "x", demo: false, keys, main: livePage }));
    }
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  browser = await sharedBrowser();
});
afterAll(async () => {
  await closeContexts(browser);
  server?.closeAllConnections();
  server?.close();
});

beforeEach(async () => {
  streams = [];
  keys = true;
  tab = await browser.newPage();
  await load();
});
afterEach(() => tab.close());

async function load() {
  await tab.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
  await expect.poll(() => streams.length, soon).toBeGreaterThan(0);
  await tab.evaluate(
    `window.clicks = []; for (const b of document.querySelectorAll("button,a")) b.addEventListener("click", () => clicks.push(b.id))`,
  );
}

const send = (text: string) => streams.at(-1)?.write(`data: <span>${text}</span>\n\n`);
const isStale = () => tab.evaluate(`document.documentElement.classList.contains("stale")`);
const clicks = () => tab.evaluate("clicks");

describe("a page that hears nothing", () => {
  it("turns grey after two missed heartbeats, says so, and takes no reading; the next word clears it", async () => {
    send("31.1030 g");
    await expect.poll(() => tab.textContent("#reading"), soon).toBe("31.1030 g");
    expect(await isStale()).toBe(false);
    await expect.poll(isStale, soon).toBe(true);
    expect(await tab.isVisible("[data-stale-notice]")).toBe(true);
    expect(await tab.getAttribute("#take", "aria-disabled")).toBe("true");
    await tab.click("#take", { force: true });
    await tab.keyboard.press("F9");
    expect(await clicks()).toEqual([]);
    await expect.poll(() => tab.textContent("#live"), soon).toContain(messageText("frame.stale"));

    send("31.1035 g");
    await expect.poll(isStale, soon).toBe(false);
    expect(await tab.isVisible("[data-stale-notice]")).toBe(false);
    await tab.click("#take");
    expect(await clicks()).toEqual(["take"]);
  });

  it("opens its stream anew when it was cut, and takes what that begins with", async () => {
    send("31.1030 g");
    await expect.poll(() => tab.textContent("#reading"), soon).toBe("31.1030 g");
    streams.at(-1)?.end();
    await expect.poll(() => streams.length, soon).toBe(2);
    send("31.1035 g");
    await expect.poll(() => tab.textContent("#reading"), soon).toBe("31.1035 g");
    await expect.poll(isStale, soon).toBe(false);
  });

  it("lets a screen reader hear at most one sentence in two seconds, however often the reading changes", async () => {
    await tab.evaluate(
      `window.heard = []; new MutationObserver(() => heard.push([Date.now(), document.getElementById("live").textContent])).observe(document.getElementById("live"), { childList: true, characterData: true, subtree: true })`,
    );
    const sending = setInterval(() => {
      const message = `step ${Date.now()}`;
      streams.at(-1)?.write(`data: <span data-say="${message}">${message}</span>\n\n`);
    }, 100);
    await expect.poll(() => tab.evaluate("heard.length"), soon).toBeGreaterThan(2);
    clearInterval(sending);
    const times = (await tab.evaluate("heard.map(([at]) => at)")) as number[];
    // the timer of the page counts from when it spoke last; a busy machine only makes the pauses longer
    for (const [place, at] of times.slice(1).entries()) expect(at - times[place]!).toBeGreaterThan(1900);
  });
});

it("draws the trace anew at every line, and once a second for who asks for less motion", async () => {
  const trace = (points: string) =>
    streams
      .at(-1)
      ?.write(
        `data: <hx-partial hx-target="#reading" hx-swap="innerMorph"><svg class="trace"><polyline points="${points}"/></svg><b>${points}</b></hx-partial>\n\n`,
      );
  const drawn = () => tab.getAttribute(".trace polyline", "points");
  const comes = async (points: string) => {
    trace(points);
    await expect.poll(() => tab.textContent("#reading b"), soon).toBe(points);
    return drawn();
  };
  const now = Date.parse("2026-01-01T00:00:00Z");
  await tab.clock.setFixedTime(now);
  for (const points of ["0,0", "0,1"]) expect(await comes(points)).toBe(points);
  await tab.emulateMedia({ reducedMotion: "reduce" });
  expect(await comes("0,2")).toBe("0,2");
  expect(await comes("0,3")).toBe("0,2");
  await tab.clock.setFixedTime(now + 1000);
  expect(await comes("0,4")).toBe("0,4");
});

describe("one-key shortcuts", () => {
  it("press the button they name, also a key of a foot switch", async () => {
    send("1 g");
    await expect.poll(isStale, soon).toBe(false);
    await tab.keyboard.press("F9");
    expect(await clicks()).toEqual(["take"]);
    await tab.keyboard.press("t");
    await expect.poll(clicks, soon).toEqual(["take", "take"]);
  });

  it("leave letters alone while something is typed", async () => {
    await tab.focus("#entry");
    await tab.keyboard.type("t");
    expect(await tab.inputValue("#entry")).toBe("t");
    expect(await clicks()).toEqual([]);
  });

  it("leave Enter to the link it stands on", async () => {
    await tab.focus("#link");
    await tab.keyboard.press("Enter");
    expect(await clicks()).toEqual(["link"]);
  });

  it("are silent when they are switched off", async () => {
    keys = false;
    await load();
    await tab.keyboard.press("t");
    await tab.keyboard.press("F9");
    expect(await clicks()).toEqual([]);
  });
});
