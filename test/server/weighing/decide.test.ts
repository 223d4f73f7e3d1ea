import { copyFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";
import { Refusal } from "../../../calibration/refusal.ts";
import type { Entry } from "../../../server/ledger/entry.ts";
import type { Happened } from "../../../server/ledger/ledger.ts";
import { lotOf } from "../../../server/lots/evolve.ts";
import type { WeighingCommand, WeighingCommandContent } from "../../../server/weighing/commands.ts";
import { decide } from "../../../server/weighing/decide.ts";
import { evolve, weighingOf } from "../../../server/weighing/evolve.ts";
import type { Known } from "../../../server/weighing/known.ts";
import { result, testFolder, testLedger } from "../ledger/bench-ledger.ts";

/** An entry of what happened, at its place. */
function entryOf({ kind, body, key }: Happened, seq: number): Entry {
  const at = new Date(Date.UTC(2026, 2, 2, 9, 0, seq)).toISOString();
  const id = key ?? `e-${seq}`;
  return { seq, id, bench: "test", at, kind, subject: "n8", body, prevHash: "", hash: "" } as Entry;
}

const text = fc.constantFrom("", " ", "31.10", "28.14", "0.00", "bubble on the edge", "KR");
const role = fc.constantFrom("dry", "immersed", "zero", "dry-after", "rise", "flask-full");
const entry = fc.integer({ min: 1, max: 30 }).map((seq) => `e-${seq}`);
const exclusion = { entry, reason: text, by: text };
const reading = fc.constantFrom("31.10", "28.14", "12.90", "0.97", "0.00").map((shown) => ({
  ...{ text: shown, unit: "g", takenBy: "typed", balance: "typed", lines: [] },
}));

const deed = fc.oneof(
  fc.record({
    do: fc.constant("start-weighing"),
    ticket: fc.record({ ticket: text, description: text, method: fc.constant("hung") }),
  }),
  fc.record({ do: fc.constant("take-reading"), role, reading }),
  fc.record({ do: fc.constant("state-temperature"), celsius: fc.constantFrom("21.4", "4") }),
  fc.record({ do: fc.constant("state-details"), details: fc.constant({}) }),
  fc.record({ do: fc.constantFrom("exclude-reading", "exclude-test", "exclude-photo"), ...exclusion }),
  fc.record({ do: fc.constant("exclude-assay"), ...exclusion }),
  fc.record({
    do: fc.constantFrom(
      "swap-readings",
      "call-off-other-item",
      "accept-unstable",
      "cancel-request",
      "auto-capture",
    ),
  }),
  fc.record({ do: fc.constant("request-reading"), role }),
  fc.record({ do: fc.constant("add-test"), test: fc.constant({ test: "ring", outcome: "clear" }) }),
  fc.record({ do: fc.constant("confirm-item"), reason: text, by: text }),
  fc.record({ do: fc.constant("answer-check"), found: text, stands: fc.boolean(), by: text }),
  fc.record({ do: fc.constantFrom("call-off", "void"), reason: text, by: text }),
  fc.record({ do: fc.constant("write-record"), found: text, stands: fc.boolean() }),
  fc.record({ do: fc.constant("weigh-again"), reading }),
  fc.record({
    ...{ do: fc.constant("amend"), by: text, reason: text, ticket: text, description: text, customer: text },
    ...{ celsius: fc.constant(""), readings: fc.constant({}), note: text },
  }),
) as fc.Arbitrary<WeighingCommandContent>;

const known = fc.record({
  simulated: fc.boolean(),
  rule: fc.constant({ kind: "none" as const, multiple: "1", confidence_percent: "95.45" }),
  checks: fc.constantFrom(
    [],
    [{ code: "check.still-climbing" as const, severity: "stop" as const, params: {}, remedies: [] }],
    [{ code: "check.floats" as const, severity: "stop" as const, params: {}, remedies: [] }],
  ),
  result: fc.constantFrom(result, undefined, { refused: "too little" }),
}) as fc.Arbitrary<Known>;

test("whatever is asked in whatever order is done or refused by a code, and what happened always folds; void is final", () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(deed, known), { maxLength: 30 }), (asked) => {
      const entries: Entry[] = [];
      for (const [one, given] of asked) {
        const weighing = weighingOf(entries);
        const command = { subject: "n8", seen: entries.length, ...one } as WeighingCommand;
        let happened: Happened[] = [];
        try {
          happened = decide(weighing, command, given);
        } catch (error) {
          if (!(error instanceof Refusal)) throw error;
        }
        if (weighing?.voided) expect(happened).toEqual([]);
        const impossible = given.checks?.some(({ code }) => code === "check.floats") ?? false;
        if (one.do === "write-record" && impossible) expect(happened).toEqual([]);
        for (const event of happened) entries.push(entryOf(event, entries.length + 1));
        // folded one by one or all at once, it is the same weighing
        expect(entries.reduce(evolve, undefined as ReturnType<typeof weighingOf>)).toEqual(
          weighingOf(entries),
        );
      }
    }),
    { numRuns: 300 },
  );
});

const old = join(import.meta.dirname, "../ledger/old");
const files = readdirSync(old).filter((name) => name.endsWith(".sqlite"));

test.each(files)("entries written by earlier versions fold into weighings and lots: %s", async (name) => {
  const file = join(testFolder(), "ledger.sqlite");
  copyFileSync(join(old, name), file);
  const ledger = await testLedger({ file });
  const entries = await ledger.entries();
  const subjects = new Set(entries.map(({ subject }) => subject));
  let weighings = 0;
  for (const subject of subjects) {
    const about = await ledger.entriesOf(subject);
    const weighing = weighingOf(about);
    lotOf(about);
    if (!weighing) continue;
    weighings += 1;
    const recorded = about.some(({ kind }) => kind === "result");
    expect(weighing.closed?.how === "recorded", subject).toBe(recorded);
  }
  expect(weighings).toBe(name === "schema-4.sqlite" ? 41 : 40);
});
