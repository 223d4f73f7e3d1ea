import { mkdtempSync, renameSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { reopening } from "../../drivers/cabled-device.ts";
import { createReadingStream } from "../../drivers/reading-stream.ts";
import { createSerialBalance } from "../../drivers/serial-balance.ts";
import { longRun } from "../setup/long-run.ts";
import { createCable } from "./pty.ts";

const cycles = longRun(1000);
// Short pauses, so that a thousand unpluggings fit into a test. With the usual ones a balance is looked for again after
// the longest pause at most; how long opening takes is the machine's.
const pauses = { firstMs: 4, growth: 1.5, longestMs: 12 };

test(`a cable pulled and put in ${cycles} times gives no stale and no torn reading, and each return is noticed`, async () => {
  const folder = mkdtempSync(join(tmpdir(), "port-"));
  const path = join(folder, "balance");
  const balance = createSerialBalance({ path, pauses, presenceMs: 5, patienceMs: 60_000 });
  const stream = createReadingStream({ balance });
  let back: () => void = () => {};
  let lost: () => void = () => {};
  balance.onLine(({ event }) => {
    if (event?.kind === "open" || event?.kind === "back") back();
    if (event?.kind === "lost") lost();
  });
  balance.start();
  let returns = 0;
  let captured = 0;
  let calledOff = 0;

  for (let cycle = 0; cycle < cycles; cycle += 1) {
    // Every cycle weighs something else, so that an old reading is known by its number.
    const digits = (10 + cycle / 1000).toFixed(4);
    const line = `  ${digits} g stable\r\n`;
    const cable = createCable();
    const opened = new Promise<void>((resolve) => {
      back = resolve;
    });
    symlinkSync(cable.path, `${path}.new`);
    renameSync(`${path}.new`, path);
    await opened;
    returns += 1;

    // the very next line is taken as it stands: a stale or torn one would be it
    const capture = stream.capture({ byHand: true });
    // The tail of a line that began before the port was open must not be taken for a line.
    cable.send("9.9999 g stable\r\n");
    const torn = cycle % 3 === 0;
    if (torn) {
      cable.send(line.slice(0, 3 + (cycle % 12)));
      const failed = expect(capture).rejects.toMatchObject({ code: "balance.capture.lost" });
      await pulled(cable.unplug);
      await failed;
      calledOff += 1;
    } else {
      const answered = capture.then(({ reading, lines }) => {
        expect(reading.text).toBe(digits);
        expect(lines.every(({ raw }) => raw.includes(digits))).toBe(true);
        captured += 1;
      });
      const talking = setInterval(() => cable.send(line), 11);
      await answered.finally(() => clearInterval(talking));
      // Half a line is on its way when the cable is pulled.
      cable.send(line.slice(0, 3 + (cycle % 12)));
      await pulled(cable.unplug);
    }
    expect(stream.latest().record).toBeUndefined();
  }
  await balance.stop();
  rmSync(folder, { recursive: true });

  expect({ returns, captured, calledOff }).toEqual({
    returns: cycles,
    captured: Math.floor((2 * cycles) / 3),
    calledOff: Math.ceil(cycles / 3),
  });
  expect(reopening.longestMs).toBeLessThan(2000);

  function pulled(unplug: () => void): Promise<void> {
    const told = new Promise<void>((resolve) => {
      lost = resolve;
    });
    rmSync(path);
    unplug();
    return told;
  }
});
