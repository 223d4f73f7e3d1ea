import type { Browser, Page } from "playwright-core";
import { bench, describe } from "vitest";
import { type Cable, createCable } from "../drivers/pty.ts";
import { answerFirstQuestions, launchBrowser, type RunningBench, startBench } from "./running.ts";

/**
 * From a line written at the far end of a cable to the changed page in Chromium, and from a started process to the
 * first answered page: the two waits a person at the bench feels.
 */
describe("what a person at the bench waits for", () => {
  let browser: Browser;
  let running: RunningBench;
  let cable: Cable;
  let page: Page;
  let count = 0;
  const waits: number[] = [];

  bench(
    "a line on the cable changes the page, the 100 ms before it counted in",
    async () => {
      count += 1;
      const text = (10 + count / 10_000).toFixed(4);
      const seen = page.evaluate(
        (shown) =>
          new Promise<void>((resolve) => {
            const part = document.getElementById("live-reading")!;
            const look = () => {
              if (!part.textContent?.includes(shown)) return;
              watch.disconnect();
              resolve();
            };
            const watch = new MutationObserver(look);
            watch.observe(part, { childList: true, subtree: true, characterData: true });
          }),
        text,
      );
      // Spaced as a balance of ten lines a second, so that no line waits for the pause after the one before.
      await new Promise((resolve) => setTimeout(resolve, 100));
      const start = performance.now();
      cable.send(`    ${text} g   stable\r\n`);
      await seen;
      waits.push(performance.now() - start);
    },
    {
      iterations: 300,
      time: 0,
      warmupIterations: 10,
      async setup(task) {
        if (task.name.includes("warmup") || running) return;
        cable = createCable();
        running = await startBench(["--balance", cable.path]);
        browser = await launchBrowser();
        page = await browser.newPage();
        await page.goto(running.url);
        await answerFirstQuestions(page);
        // The first line after opening is dropped as one that may be half.
        cable.send("\r\n    1.0000 g   stable\r\n    1.0000 g   stable\r\n");
        await page.locator("#live-reading .live-reading").waitFor();
      },
      async teardown() {
        if (waits.length < 300) return;
        const sorted = [...waits].sort((a, b) => a - b);
        const at = (share: number) =>
          sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!.toFixed(1);
        console.log(
          `line to page over ${waits.length} lines: p50 ${at(0.5)} ms, p99 ${at(0.99)} ms, most ${at(1)} ms`,
        );
        await browser.close();
        await running.stop();
        cable.unplug();
      },
    },
  );

  bench(
    "a started program answers its first page",
    async () => {
      const started = await startBench([]);
      await fetch(started.url);
      await started.stop();
    },
    { iterations: 5, time: 0, warmupIterations: 0 },
  );
});
