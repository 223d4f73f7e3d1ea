import { type Benchmark, medianMs, quantile } from "../bench/benchmark.ts";
import { createCable } from "../drivers/pty.ts";
import { launchBrowser } from "../setup/browser.ts";
import { peers } from "../setup/debian.ts";
import { answerFirstQuestions, startBench } from "./running.ts";

const lines = 200;

/** From a line written at the far end of a cable to the changed page in Chromium, ms each, ten lines a second. */
async function waitsForLines(): Promise<number[]> {
  const cable = createCable();
  const running = await startBench(["--balance", cable.path]);
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    await page.goto(running.url);
    await answerFirstQuestions(page);
    // The first line after opening is dropped as one that may be half.
    cable.send("\r\n    1.0000 g   stable\r\n    1.0000 g   stable\r\n");
    await page.locator("#live-reading .live-reading").waitFor();
    const waits: number[] = [];
    for (let count = 1; count <= lines + 10; count += 1) {
      const text = (10 + count / 10_000).toFixed(4);
      const seen = page.evaluate(
        (shown) =>
          new Promise<void>((resolve) => {
            const part = document.getElementById("live-reading")!;
            // without a name: the browser does not know how the compiler keeps names
            new MutationObserver((_, observer) => {
              if (!part.textContent?.includes(shown)) return;
              observer.disconnect();
              resolve();
            }).observe(part, { childList: true, subtree: true, characterData: true });
          }),
        text,
      );
      // Spaced as a balance of ten lines a second, so that no line waits for the pause after the one before.
      await new Promise((resolve) => setTimeout(resolve, 100));
      const start = performance.now();
      cable.send(`    ${text} g   stable\r\n`);
      await seen;
      if (count > 10) waits.push(performance.now() - start);
    }
    return waits;
  } finally {
    await browser.close();
    await running.stop();
    cable.unplug();
  }
}

async function startedAndAnswered(): Promise<void> {
  const started = await startBench([]);
  await fetch(started.url);
  await started.stop();
}

export default {
  name: "the two waits a person at the bench feels",
  aboutSeconds: 40,
  needs: [peers.chromium],
  async measure() {
    const waits = await waitsForLines();
    return [
      { what: `line to page over ${lines} lines, p50`, value: quantile(waits, 0.5), unit: "ms" },
      { what: `line to page over ${lines} lines, p99`, value: quantile(waits, 0.99), unit: "ms" },
      {
        what: "a started program answers its first page",
        value: await medianMs(startedAndAnswered, 5),
        unit: "ms",
      },
    ];
  },
} satisfies Benchmark;
