import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { h } from "preact";
import { expect, test } from "vitest";
import type { LineRecord } from "../drivers/reading.ts";
import { createReadingStream } from "../drivers/reading-stream.ts";
import { createSerialBalance } from "../drivers/serial-balance.ts";
import { openComputeThread } from "../server/compute/compute-thread.ts";
import { isRefused } from "../server/compute/evaluation.ts";
import { openLedger } from "../server/ledger/open-ledger.ts";
import { libraryVersion } from "../server/metals/library.ts";
import { Bench } from "../server/station/bench.ts";
import { scaleOf } from "../server/station/stream-scale.ts";
import { benchView } from "../server/web/bench/bench-view.ts";
import { firstConditions } from "../server/weighing/conditions.ts";
import { ResultPart } from "../views/bench/index.tsx";
import { tell } from "../views/messages/tell.ts";
import { render } from "../views/page.tsx";
import { createCable } from "./drivers/pty.ts";
import { asked } from "./server/page-fields.ts";
import { until } from "./until.ts";

/**
 * The best introduction to the house: one piece of silver goes all the way, through the very parts the program is
 * made of. Read it beside the table at the head of DEVELOPERS.md.
 */
test("bytes become a line, a reading, a settled reading, a weighing, a density, a finding, a page and a ledger entry", async () => {
  // A balance at the far end of a cable: a pseudo-terminal that writes lines by itself.
  const cable = createCable();
  const balance = createSerialBalance({ path: cable.path, line: "9600-8n1" });
  const feed = createReadingStream({ balance });
  const heard: LineRecord[] = [];
  balance.onLine((record) => heard.push(record));
  balance.start();
  await until(() => heard.some((record) => record.event?.kind === "open"), "the port to open");

  // bytes → line → reading: the end of a line that was under way when the port was opened is dropped, a line may
  // come in pieces, and every decimal it shows is kept.
  cable.send("35 g   stable\r\n");
  cable.send("    31.1041 g   moving\r\n    31.10");
  cable.send("35 g   stable\r\n");
  await until(() => heard.some((record) => record.reading?.text === "31.1035"), "the reading");
  expect(heard.filter((record) => record.reading).map((record) => record.reading)).toEqual([
    { text: "31.1041", unit: "g", grams: "31.1041", stability: "moving" },
    { text: "31.1035", unit: "g", grams: "31.1035", stability: "stable" },
  ]);

  // A ledger on disk and the bench that writes into it.
  const file = join(mkdtempSync(join(tmpdir(), "underhook-")), "ledger.sqlite");
  const ledger = await openLedger({ file, now: () => new Date(), bench: "the way" });
  const aside = openComputeThread();
  const bench = new Bench({
    ledger,
    scale: scaleOf(balance.name, feed),
    simulated: false,
    evaluate: aside.evaluate,
    conditions: () => firstConditions,
    versions: { library: libraryVersion },
  });
  const on = asked(bench);
  await on.start({ ticket: "W-1", claim: "ag-999" });

  // reading → settled reading → weighing: only lines that arrive after the request count, and a single line that
  // claims to be at rest is not believed before those that follow agree.
  const take = async (role: "dry" | "immersed", text: string) => {
    await on.take(role);
    const sending = setInterval(() => cable.send(`    ${text} g   stable\r\n`), 100);
    const isKept = () => bench.item?.captures.some((one) => one.role === role) === true;
    await until(isKept, `the ${role} reading to be taken`);
    clearInterval(sending);
  };
  await take("dry", "31.1035");
  await take("immersed", "28.1435");
  await on.temperature("21.4");
  const { item: piece } = bench;
  expect(piece?.captures.map(({ role, text, takenBy }) => ({ role, text, takenBy }))).toEqual([
    { role: "dry", text: "31.1035", takenBy: "mark" },
    { role: "immersed", text: "28.1435", takenBy: "mark" },
  ]);

  // weighing → displaced mass → density. By hand: D = 31.1035 − 28.1435 = 2.9600 g; water at 21.4 °C is
  // 0.997907 g/cm³ (Tanaka et al. 2001), air 0.0012, so ρ = 31.1035/2.96 · (0.997907 − 0.0012) + 0.0012 = 10.4745.
  const { evaluation } = bench;
  if (!evaluation || isRefused(evaluation)) throw new Error(`not evaluated: ${JSON.stringify(evaluation)}`);
  expect(evaluation.displacedGrams).toBeCloseTo(2.96, 6);
  const byHand = (31.1035 / 2.96) * (0.997907 - 0.0012) + 0.0012;
  // The hand calculation rounds the water to six digits: 1e-6 · 10.5 = 1e-5 g/cm³; dissolved air adds 1.3e-6 · 10.5.
  expect(Math.abs(evaluation.statement.density_g_cm3 - byHand)).toBeLessThan(3e-5);

  // density → statement: fine silver is not excluded, copper and brass are.
  const ids = evaluation.statement.not_excluded.map(({ id }) => id);
  expect(ids).toContain("ag-999");
  expect(ids).not.toContain("el-cu");
  expect(ids).not.toContain("brass-c260");

  // statement → page: the same words.
  const page = render(h(ResultPart, { view: benchView(bench, "token", false) }));
  expect(page).toContain(tell(evaluation.statement.answer, "en").slice(0, 40));

  // → ledger: the record, and the lines as they were received, behind a chain that anyone can verify.
  await on.record();
  const entries = await ledger.entriesOf(piece!.id);
  expect(entries.map(({ kind }) => kind)).toEqual([
    "piece-opened",
    "capture",
    "capture",
    "capture",
    "result",
  ]);
  const dry = entries[1];
  const raws = dry?.kind === "capture" ? dry.body.lines.map(({ raw }) => raw) : [];
  expect(raws.length).toBeGreaterThan(3);
  expect(new Set(raws)).toEqual(new Set(["    31.1035 g   stable\\r\\n"]));
  expect(await ledger.verify()).toMatchObject({ good: true });

  await ledger.close();
  await aside.close();
  feed.stop();
  await balance.stop();
  cable.unplug();
});
