import { spawn } from "node:child_process";
import {
  chmodSync,
  copyFileSync,
  existsSync,
  readdirSync,
  readFileSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { dirname, join, resolve } from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";
import { openLedger } from "../../../server/ledger/open-ledger.ts";
import { walTail } from "../../../server/ledger/wal-recovery.ts";
import { longRun, seed } from "../../setup/long-run.ts";
import { clock, dry, testFolder, testLedger } from "./bench-ledger.ts";

const program = resolve("dist", "test", "bench-process.js");

/** How often the bench is killed, and when: at moments drawn from the seed of the run. */
const kills = longRun(500, 10);
const moments = fc.sample(fc.nat({ max: 60 }), { numRuns: kills, seed });

interface Bench {
  saved: { seq: number; id: string }[];
  trouble: string | undefined;
  said: string;
  status: number | null;
}

/** Runs a bench; with `killAfter`, kills it hard so many ms after its first acknowledged capture. */
function bench(
  file: string,
  how: string,
  { killAfter, shell, acknowledged }: { killAfter?: number; shell?: string; acknowledged?: string } = {},
) {
  const args = [program, file, how, ...(acknowledged === undefined ? [] : [acknowledged])];
  return new Promise<Bench>((resolve) => {
    const child = shell
      ? spawn("bash", ["-c", `${shell}; exec "$0" "$@"`, process.execPath, ...args])
      : spawn(process.execPath, args);
    let said = "";
    let armed = false;
    child.stdout.setEncoding("utf8").on("data", (text: string) => {
      said += text;
      if (armed || killAfter === undefined || !said.includes("saved ")) return;
      armed = true;
      setTimeout(() => child.kill("SIGKILL"), killAfter);
    });
    child.stderr.on("data", (text) => {
      said += text;
    });
    child.on("close", (status) => {
      const saved = [...said.matchAll(/^saved (\d+) (\S+)$/gm)].map(([, seq, id]) => ({
        seq: Number(seq),
        id: id ?? "",
      }));
      resolve({ saved, trouble: /^trouble .*$/m.exec(said)?.[0], said, status });
    });
  });
}

/** Opens what a bench left behind and checks that all it acknowledged is there, in place, in a good chain. */
async function checkAfter(file: string, { saved }: Bench): Promise<{ found: string[] }> {
  const { said } = await bench(file, "check", { acknowledged: JSON.stringify(saved) });
  const [, told = "{}"] = /^checked (.*)$/m.exec(said) ?? [];
  const { found, missing, chain, last } = JSON.parse(told);
  expect({ missing, chain }, said).toMatchObject({ missing: [], chain: { good: true } });
  // the step the operator was in: the last capture acknowledged, or the one that was being acknowledged
  expect(last).toBeGreaterThanOrEqual(saved.at(-1)?.seq ?? 0);
  return { found };
}

test(`a bench killed hard at ${kills} random moments while capturing loses nothing it acknowledged`, {
  // a start, a kill and a check of the whole chain take a second or two each on a busy machine
  timeout: 60_000 + kills * 10_000,
}, async () => {
  const file = join(testFolder(), "ledger.sqlite");
  let told = 0;
  for (const killAfter of moments) {
    const killed = await bench(file, "capture", { killAfter });
    expect(killed.saved.length, killed.said).toBeGreaterThan(0);
    const { found } = await checkAfter(file, killed);
    if (found.length > 0) told += 1;
  }
  expect(told).toBe(kills);
});

/** A ledger as a power cut leaves it: the files as they are while a bench has it open. */
async function cutOff(captures: number): Promise<string> {
  const ledger = await testLedger();
  for (let i = 0; i < captures; i += 1) await ledger.append("capture", "piece:1", dry);
  const file = join(testFolder(), "ledger.sqlite");
  copyFileSync(ledger.place, file);
  copyFileSync(`${ledger.place}-wal`, `${file}-wal`);
  copyFileSync(join(dirname(ledger.place), "signing-key.pem"), join(dirname(file), "signing-key.pem"));
  chmodSync(join(dirname(file), "signing-key.pem"), 0o600);
  return file;
}

test("a write that was torn anywhere leaves the entries before it, is kept aside and is told", async () => {
  const whole = await cutOff(12);
  const wal = readFileSync(`${whole}-wal`);
  expect(walTail(wal)).toEqual({ committed: wal.length, torn: 0 });
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 33, max: wal.length - 1 }), fc.boolean(), async (at, garbled) => {
      const file = join(testFolder(), "ledger.sqlite");
      copyFileSync(whole, file);
      copyFileSync(join(dirname(whole), "signing-key.pem"), join(dirname(file), "signing-key.pem"));
      const torn = Buffer.from(wal);
      if (garbled) torn[at] = (torn[at] ?? 0) ^ 0x5a;
      writeFileSync(`${file}-wal`, torn);
      if (!garbled) truncateSync(`${file}-wal`, at);
      const expected = walTail(garbled ? torn : torn.subarray(0, at));
      const ledger = await openLedger({ file, now: clock(), bench: "window bench" });
      expect(await ledger.verify()).toMatchObject({ good: true });
      const kept = readdirSync(dirname(file)).some((name) => name.includes("-wal-torn-"));
      expect(kept).toBe(expected.torn > 0);
      if (expected.torn > 0)
        expect(ledger.found).toMatchObject([
          { code: "ledger.recovery.not-closed" },
          { code: "ledger.recovery.cut-off" },
        ]);
      await ledger.append("capture", "piece:1", dry);
      expect(await ledger.verify()).toMatchObject({ good: true });
      await ledger.close();
    }),
    { numRuns: longRun(300, 10) },
  );
});

test("a full disk refuses the entry in words, keeps every earlier one, and lets the ledger be read", async () => {
  const file = join(testFolder(), "ledger.sqlite");
  // bash counts in 1024 bytes; the signal is ignored so that the write fails, as it does on a full disk
  const full = await bench(file, "capture", { shell: "trap '' XFSZ; ulimit -f 800" });
  expect(full.saved.length).toBeGreaterThan(10);
  expect(full.trouble).toMatch(/trouble disk-full ledger\.error\.disk-full/);
  expect(full.said).toMatch(new RegExp(`still readable up to ${full.saved.at(-1)?.seq}`));
  await checkAfter(file, full);
});

test("a folder that cannot be written is refused at start in words, and nothing is made in it", async () => {
  const folder = testFolder();
  chmodSync(folder, 0o555);
  const refused = await bench(join(folder, "ledger.sqlite"), "nobody");
  expect(refused.status).toBe(4);
  expect(refused.trouble).toMatch(/^trouble (read-only|missing) ledger\.error\.(read-only|missing)/);
  expect(readdirSync(folder)).toEqual([]);
  chmodSync(folder, 0o755);
});

test("a second process on the same file is refused and told which process holds it", async () => {
  const ledger = await testLedger();
  const second = await bench(ledger.place, "open");
  expect(second.status).toBe(4);
  expect(second.trouble).toMatch(new RegExp(`trouble in-use .*process ${process.pid}, since`));
  await ledger.append("capture", "piece:1", dry);
  await ledger.close();
  expect((await bench(ledger.place, "open")).status).toBe(0);
  expect(existsSync(ledger.place)).toBe(true);
});

test("a file that is no ledger, or has damaged pages, is refused and left as it is", async () => {
  const folder = testFolder();
  const file = join(folder, "ledger.sqlite");
  writeFileSync(file, "these are no pages of a ledger".repeat(400));
  const before = readFileSync(file);
  await expect(openLedger({ file, now: clock(), bench: "window bench" })).rejects.toMatchObject({
    kind: "damaged",
  });
  expect(readFileSync(file).equals(before)).toBe(true);
});

test("a page of the file that was wiped is found at start, and nothing is written behind it", async () => {
  const ledger = await testLedger();
  for (let i = 0; i < 40; i += 1) await ledger.append("capture", "piece:1", dry);
  await ledger.close();
  const whole = readFileSync(ledger.place);
  for (const page of [1, 5, 9, 12]) {
    const file = join(testFolder(), "ledger.sqlite");
    writeFileSync(
      file,
      Buffer.concat([whole.subarray(0, page * 4096), Buffer.alloc(4096), whole.subarray((page + 1) * 4096)]),
    );
    await expect(
      openLedger({ file, now: clock(), bench: "window bench" }),
      `page ${page}`,
    ).rejects.toMatchObject({
      kind: "damaged",
      code: expect.stringMatching(/^ledger\.(start|error)\.damaged$/),
    });
  }
});
