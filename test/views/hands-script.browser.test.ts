import { readFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { tellerOf } from "../../views/messages/tell.ts";
import { typedByBalance } from "../../views/page.tsx";
import { closeContexts, sharedBrowser } from "../setup/browser.ts";

let browser: Browser;
let server: Server;
let tab: Page;

/** A weight field, a field of words, and a shortcut that a burst must not press. */
const sentences = JSON.stringify(typedByBalance(tellerOf("en"))).replaceAll('"', "&quot;");
const markup = (
  weights: number,
) => `<!doctype html><html lang="en"><body data-typed-by-balance="${sentences}"><main><h1>Bench</h1>
<input id="words" value="a ring"><input id="ticket" data-scan>
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
  browser = await sharedBrowser();
});
afterAll(async () => {
  await closeContexts(browser);
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

/** What the page asked the browser to sound and to say, noted at the browser's own doors before any script runs. */
interface Heard {
  contexts: number;
  tones: number[];
  said: { text: string; lang: string }[];
}
const listenIn = () => {
  const heard: Heard = { contexts: 0, tones: [], said: [] };
  Object.assign(globalThis, { heard });
  const Context = globalThis.AudioContext;
  globalThis.AudioContext = class extends Context {
    constructor() {
      super();
      heard.contexts += 1;
    }
  };
  const start = OscillatorNode.prototype.start;
  OscillatorNode.prototype.start = function (when) {
    heard.tones.push(this.frequency.value);
    return start.call(this, when);
  };
  SpeechSynthesis.prototype.speak = ({ text, lang }) => void heard.said.push({ text, lang });
};
const heard = () => tab.evaluate(() => (globalThis as unknown as { heard: Heard }).heard);

/** The live part after hands-free told something more, as the stream brings it. */
const told = (times: number, kind: string, message: string) =>
  tab.evaluate(
    ([count, heard, sentence]) => {
      document.querySelector("[data-heard]")?.remove();
      const part = document.createElement("p");
      Object.assign(part.dataset, { heard, count, says: sentence, say: sentence });
      part.textContent = sentence!;
      document.querySelector("main")?.append(part);
      document.dispatchEvent(new CustomEvent("htmx:sse:after:message"));
    },
    [String(times), kind, message],
  );

describe("a scanner at the field of a ticket", () => {
  it("types as fast as a balance and what it typed stays; a weight typed there still finds its own field", async () => {
    await open(1);
    await tab.locator("#ticket").focus();
    await burst("MQ-101\n");
    expect(await value("ticket")).toBe("MQ-101");
    await tab.locator("#ticket").fill("");
    await burst("4006381\n");
    expect(await value("ticket")).toBe("4006381");
    await tab.locator("#ticket").fill("");
    await burst("+ 31.103 g\n");
    expect(await value("w0")).toBe("31.103");
    expect(await value("ticket")).toBe("");
  });
});

describe("a load that is taken by itself", () => {
  it("sounds a tone and is spoken in the page's language, and the sentence is shown to whoever hears neither", async () => {
    await tab.addInitScript(listenIn);
    await open(1);
    await told(0, "none", "Ready. Hang the piece.");
    await tab.locator("h1").click();
    await expect.poll(async () => (await heard()).contexts, { timeout: 15_000 }).toBe(1);
    expect((await heard()).tones).toEqual([]);
    await told(1, "taken", "Taken: 28.143 g. Lift the piece out.");
    await expect.poll(async () => (await heard()).tones, { timeout: 15_000 }).toEqual([880]);
    expect((await heard()).said).toEqual([{ text: "Taken: 28.143 g. Lift the piece out.", lang: "en" }]);
    expect(await tab.getByText("Taken: 28.143 g").isVisible()).toBe(true);
    await expect.poll(() => tab.textContent("#live"), { timeout: 15_000 }).toContain("Taken: 28.143 g");
    // The same line drawn again is no second reading.
    await told(1, "taken", "Lift the piece out.");
    expect((await heard()).tones).toHaveLength(1);
    // a refusal sounds otherwise; without a voice it sounds all the same
    await tab.evaluate(() => localStorage.setItem("voice", "off"));
    await told(2, "refused", "Two pieces?");
    await expect.poll(async () => (await heard()).tones, { timeout: 15_000 }).toEqual([880, 220]);
    expect((await heard()).said).toHaveLength(1);
  });

  it("is off until somebody asks for it: no sound is prepared, nothing is said", async () => {
    await tab.addInitScript(listenIn);
    await open(1);
    await tab.locator("h1").click();
    await tab.keyboard.press("F2");
    await tab.evaluate(() => document.dispatchEvent(new CustomEvent("htmx:sse:after:message")));
    expect(await heard()).toEqual({ contexts: 0, tones: [], said: [] });
  });
});

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
