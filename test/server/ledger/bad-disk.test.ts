import { execFileSync } from "node:child_process";
import { rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { formPoster, pageAt } from "../form-poster.ts";
import { type RunningBench, startBench } from "../running.ts";
import { wordsOf } from "../web/recorded.ts";
import { testFolder } from "./bench-ledger.ts";

/** A disk of its own, of so many bytes, in memory. Mounting needs root: elsewhere these tests count as not run. */
function smallDisk(bytes: number): string {
  const folder = testFolder();
  execFileSync("mount", ["-t", "tmpfs", "-o", `size=${bytes}`, "tmpfs", folder]);
  onTestFinished(() => {
    execFileSync("umount", ["--lazy", folder]);
  });
  return folder;
}

const root = process.getuid?.() === 0;
const pageOf = async ({ url }: RunningBench, path = "") => wordsOf(await pageAt(url + path));

/** Puts a piece on the bench; gives what sends further forms. */
async function pieceOpened({ url }: RunningBench) {
  const post = await formPoster(url);
  const opened = { ticket: "A-1", description: "bar", method: "hung", claim: "", key: "piece-1" };
  await post("/bench/piece", opened);
  return post;
}

/** Writes to the disk until it takes no more; gives the file that fills it. */
function fill(folder: string): string {
  const file = join(folder, "something-else");
  for (let size = 2 ** 20; size >= 512; size /= 2) {
    try {
      for (let n = 0; n < 100; n += 1) writeFileSync(file, Buffer.alloc(size), { flag: "a" });
    } catch (cause) {
      if ((cause as { code?: string }).code !== "ENOSPC") throw cause;
    }
  }
  return file;
}

test.skipIf(!root)(
  "on a full disk the bench shows and reads on with a large warning, keeps what was typed, and stores again once there is room",
  { timeout: 120_000 },
  async () => {
    const folder = smallDisk(6 * 2 ** 20);
    let running = await startBench(["--typed"], folder);
    onTestFinished(() => running.stop());
    const post = await pieceOpened(running);
    const reading = (value: string) =>
      post("/bench/typed-readings", { role: "dry", reading: value, unit: "g" });
    expect((await reading("31.1035")).status).toBe(303);

    const filler = fill(folder);
    let refused = await reading("31.1001");
    for (let n = 0; refused.status === 303 && n < 5000; n += 1) refused = await reading("31.1001");
    expect(refused.status).toBe(422);
    const message = await refused.text();
    expect(wordsOf(message)).toMatch(
      /Nothing can be stored at present.*The disk is full or failing, and nothing was stored/,
    );
    expect(message).toContain('value="31.1001"');
    expect(await pageOf(running)).toContain("Nothing can be stored at present");
    expect(await pageOf(running, "settings/ledger")).toMatch(/\d+ entries/);

    // the power goes while the disk is full: what was acknowledged is there, and so is the step
    running.process.kill("SIGKILL");
    await new Promise((resolve) => running.process.once("close", resolve));
    rmSync(filler);
    running = await startBench(["--typed"], folder);
    const after = await pageOf(running);
    expect(after).toContain("31.1035 g");
    expect(after).not.toContain("Nothing can be stored at present");
    expect(after).toMatch(/Found when the bench was opened The bench was not closed the last time/);
    const again = await formPoster(running.url);
    expect(
      (await again("/bench/typed-readings", { role: "immersed", reading: "28.1435", unit: "g" })).status,
    ).toBe(303);
    expect(wordsOf(await (await again("/settings/ledger/check", {})).text())).toContain("Good:");
  },
);

test.skipIf(!root)(
  "the warning goes by itself with the first entry that is stored again",
  { timeout: 120_000 },
  async () => {
    const folder = smallDisk(6 * 2 ** 20);
    const running = await startBench(["--typed"], folder);
    onTestFinished(() => running.stop());
    const post = await pieceOpened(running);
    const filler = fill(folder);
    const reading = () => post("/bench/typed-readings", { role: "dry", reading: "31.1035", unit: "g" });
    let status = 303;
    for (let n = 0; status === 303 && n < 5000; n += 1) status = (await reading()).status;
    expect(status).toBe(422);
    rmSync(filler);
    expect((await reading()).status).toBe(303);
    expect(await pageOf(running)).not.toContain("Nothing can be stored at present");
  },
);

test.skipIf(!root)(
  "a disk that is mounted read-only is refused at start in words, and nothing on it changes",
  { timeout: 60_000 },
  async () => {
    const folder = smallDisk(6 * 2 ** 20);
    const running = await startBench(["--typed"], folder);
    await pieceOpened(running);
    await running.stop();
    execFileSync("mount", ["-o", "remount,ro", folder]);
    await expect(startBench(["--typed"], folder)).rejects.toThrow(
      /underhook serve: The ledger .*(its disk cannot be written).*the right to write there/s,
    );
    execFileSync("mount", ["-o", "remount,rw", folder]);
    const later = await startBench(["--typed"], folder);
    expect(await pageOf(later)).toContain("A-1");
    await later.stop();
  },
);
