import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bench, describe, expect } from "vitest";

/** A smaller number gives a quick look: UNDERHOOK_WEIGHINGS=20000. */
const weighings = process.env.UNDERHOOK_WEIGHINGS ?? "1000000";
const program = join(import.meta.dirname, "scale-process.mjs");

describe(`a ledger of ${weighings} weighings on disk`, () => {
  bench(
    "lists, filters and searches within 50 ms (p95), appends within 20 ms (p99), verifies within 30 s, in 200 MB",
    () => {
      const folder = mkdtempSync(join(tmpdir(), "underhook-scale-"));
      try {
        const file = join(folder, "ledger.sqlite");
        execFileSync(process.execPath, [program, "make", file, weighings], {
          stdio: ["ignore", "inherit", "inherit"],
        });
        const said = execFileSync(process.execPath, [program, "measure", file], { encoding: "utf8" });
        console.log(`${(statSync(file).size / 2 ** 20).toFixed(0)} MB on disk, ${said}`);
        const found = JSON.parse(said);
        expect(found.good, found.says).toBe(true);
        for (const name of ["listP95", "filterP95", "searchP95"]) expect(found[name], name).toBeLessThan(50);
        expect(found.appendP99).toBeLessThan(20);
        expect(found.verifySeconds).toBeLessThan(30);
        expect(found.memoryMB).toBeLessThan(200);
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    },
    { iterations: 1, warmupIterations: 0, time: 0, warmupTime: 0, throws: true },
  );
});
