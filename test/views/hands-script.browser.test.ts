import { readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { words } from "../../views/words/index.ts";
import { chromiumPath } from "../setup/chromium-path.ts";

let browser: Browser;
let server: Server;
let tab: Page;

/** A weight field, a field of words, and a shortcut that a burst must not press. */
const sentences = JSON.stringify(words("en").typedByBalance).replaceAll('"', "&quot;");
const markup = (
  weights: number,
) => `<!doctype html><html lang="en"><body data-typed-by-balance="${sentences}"><main><h1>Bench</h1>
<input id="words" value="a ring">
<form id="form">${Array.from({ length: weights }, (_, place) => `<input id="w${place}" data-weight>`).join("")}
<select name="unit"><option>g</option><option>ct</option></select></form>
<button data-key="g" id="pressed">key</button></main><div id="live"></div>
<script src="/bench.js"></script><script src="/hands.js"></script></body></html>`;

beforeAll(async () => {
  server = createServer((request, response) => {
    const path = request.url ?? "/";
    const script = /^\/(bench|hands)\.js$/.exec(path);
    response.setHeader("content-type", script ? "text/javascript" : "text/html; charset=utf-8");
    response.setHeader("content-security-policy", "default-src 'self'");
    response.end(
      script
        ? readFileSync(new URL(`../../views/assets${path}`, import.meta.url))
        : markup(Number(path.slice(1))),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  browser = await chromium.launch({ executablePath: chromiumPath, args: ["--no-sandbox", "--disable-gpu"] });
});
afterAll(async () => {
  await browser?.close();
  server?.close();
});
beforeEach(async () => {
  tab = await browser.newPage();
});
afterEach(() => tab.close());

const open = (weights: number) =>
  tab.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/${weights}`);

/** Keys as a balance sends them: all in one go, with times that a busy machine cannot stretch. */
async function burst(text: string): Promise<void> {
  await tab.evaluate(
    (keys) => {
      const field = document.activeElement as HTMLInputElement;
      for (const key of keys) {
        const event = new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true });
        field.dispatchEvent(event);
        if (key.length === 1 && "value" in field) field.value += key;
      }
    },
    [...text].map((key) => (key === "\n" ? "Enter" : key)),
  );
}

const value = (id: string) => tab.inputValue(`#${id}`);
const notice = () => tab.textContent("#typed-by-balance");

describe("a balance that types like a keyboard", () => {
  it("is put into the one field that waits for a weight, and the field with the focus is as before", async () => {
    await open(1);
    await tab.focus("#words");
    await burst("+ 31.10 ct\n");
    expect(await value("w0")).toBe("31.10");
    expect(await value("words")).toBe("a ring");
    expect(await tab.inputValue("select")).toBe("ct");
  });

  it("is refused in words when several fields wait, and nothing is entered", async () => {
    await open(2);
    await tab.focus("#words");
    await burst("31.10\n");
    expect(await notice()).toContain("several fields wait");
    expect(await value("w0")).toBe("");
    expect(await value("words")).toBe("a ring");
  });

  it("is refused when it is no weight, and its letters press no shortcut", async () => {
    await open(1);
    await tab.evaluate(() => {
      document.getElementById("pressed")?.addEventListener("click", () => {
        document.title = "pressed";
      });
    });
    await burst("12:30 g\n");
    expect(await notice()).toContain("is no weight");
    expect(await value("w0")).toBe("");
    expect(await tab.title()).not.toBe("pressed");
  });

  it("that begins with the letter of a shortcut does not press it; the letter alone does", async () => {
    await open(1);
    const presses = () => tab.evaluate(() => document.getElementById("pressed")?.dataset.presses ?? "0");
    await tab.evaluate(() => {
      const button = document.getElementById("pressed")!;
      button.addEventListener("click", () => {
        button.dataset.presses = String(Number(button.dataset.presses ?? 0) + 1);
      });
    });
    await burst("g   31.10\n");
    await tab.keyboard.press("F2");
    // Longer than a letter waits for the next key of a burst.
    await tab.waitForTimeout(400);
    expect(await presses()).toBe("0");
    await tab.locator("h1").click();
    await tab.keyboard.press("g");
    await expect.poll(presses, { timeout: 15_000 }).toBe("1");
  });

  it("leaves alone what a person types", async () => {
    await open(1);
    await tab.focus("#words");
    await tab.keyboard.press("End");
    await tab.keyboard.type(" 2024", { delay: 120 });
    expect(await value("words")).toBe("a ring 2024");
    expect(await value("w0")).toBe("");
  });
});
