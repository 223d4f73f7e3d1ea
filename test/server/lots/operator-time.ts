import { demoPieces } from "../../../server/demo/pieces.ts";
import { handMs } from "../../../server/demo/simulator.ts";
import { launchBrowser } from "../../setup/browser.ts";
import { startBench } from "../running.ts";

/** Seconds for one press of a key or of the trigger of a scanner: the mean of Card, Moran and Newell (CACM 23, 1980). */
export const secondsPerPress = 0.28;

/** What one piece asked of its operator: presses counted, seconds the page held them, by step. */
export interface PieceTime {
  presses: number;
  ticketS: number;
  dryS: number;
  immersedS: number;
}

/**
 * Screens so many pieces in the real page on the simulated balance at its normal settling: the ticket comes from a
 * scanner (its Enter is its last key), each weighing is one press of the foot switch (F9). Hands that lay, hang and take
 * off are the page's own buttons and are not counted: no machine can say how long hands take.
 */
export async function screenedLot(pieces: number): Promise<PieceTime[]> {
  const bench = await startBench([]);
  const browser = await launchBrowser();
  const times: PieceTime[] = [];
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    const tickets = demoPieces.filter(({ method }) => method === "hung").map(({ ticket }) => ticket);
    const held = async (press: () => Promise<unknown>, until: string) => {
      const before = performance.now();
      await press();
      await page.waitForSelector(until, { state: "attached" });
      return (performance.now() - before) / 1000;
    };
    /** The piece is laid or hung by the page's own button; the hand between pan and water is no wait. */
    const moves = async (to: "dry" | "wet") => {
      const weight = () => page.locator("#live-reading .live-reading").textContent();
      const before = (await weight())?.split(".")[0];
      await page.click(`button[name="action"][value="${to}"]`);
      if (to === "wet") await page.waitForTimeout(handMs);
      while ((await weight())?.split(".")[0] === before) await page.waitForTimeout(20);
    };
    for (let lot = 1; times.length < pieces; lot++) {
      await page.goto(`${bench.url}lots`);
      await page.fill("#name", `Lot ${lot}`);
      await page.selectOption("#claim", "ag-925");
      await page.click("main form button[type=submit]");
      await page.fill("#celsius", "21.4");
      await page.keyboard.press("Enter");
      await page.waitForSelector("#ticket:focus");
      for (const ticket of tickets.slice(0, pieces - times.length)) {
        await page.keyboard.type(ticket);
        const ticketS = await held(() => page.keyboard.press("Enter"), 'input[name="take"][value="dry"]');
        await moves("dry");
        const dryS = await held(() => page.keyboard.press("F9"), 'input[name="take"][value="immersed"]');
        await moves("wet");
        const immersedS = await held(() => page.keyboard.press("F9"), "#ticket:focus");
        times.push({ presses: 3, ticketS, dryS, immersedS });
      }
    }
  } finally {
    await browser.close();
    await bench.stop();
  }
  return times;
}
