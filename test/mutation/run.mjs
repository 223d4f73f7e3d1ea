// npm run mutation [-- sample [FOLDER …]]: changes one thing of the code at a time and sees whether a test fails. Whole, it
// takes more than a day; `sample` looks at a seeded part of the changes, about a quarter of an hour for each folder.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Stryker } from "@stryker-mutator/core";
import { seed } from "../setup/long-run.ts";
import { binomialInterval } from "../virtual-bench/binomial.ts";

const web = (...names) => names.map((name) => `test/server/web/${name}.test.ts`);
const compute = ["compute", "contract", "gross-errors", "optional-keys", "set-in", "laboratory-results"].map(
  (name) => `test/server/compute/${name}.test.ts`,
);

/** What is changed, and the tests that have to notice: those that start no program and no browser. */
const folders = {
  calibration: ["test/calibration/*.test.ts"],
  "server/weighing": [
    ...["test/server/weighing/**/*.test.ts", "test/server/station/*.test.ts", ...compute],
    ...web("amendments", "nothing-altered", "one-number", "one-statement", "other-piece", "plain-answer"),
    ...web("procedure-watch", "questions-before-record", "second-person", "weighing-details", "live-checks"),
  ],
  "server/conformity": [
    ...["test/server/conformity/**/*.test.ts", ...compute],
    ...web("decision-rule", "evidence", "plan", "plain-answer"),
  ],
  "server/ledger": [
    ...["ledger", "list-check", "verification", "forgeries", "tree", "tokens", "retention", "backup"],
    ...["customer-names", "old", "witness", "export", "imports/imports"],
  ]
    .map((name) => `test/server/ledger/${name}.test.ts`)
    .concat(web("imports", "tokens", "ledger")),
};

const [how, ...named] = process.argv.slice(2);
const sample = how === "sample";
/** Of the changes in a sample: some hundred of each folder. */
const share = sample ? 0.025 : 1;
const output = join(import.meta.dirname, "..", "output", "mutation");
mkdirSync(output, { recursive: true });

const lines = ["folder  killed of changed  share (95 % interval)  without a test"];
for (const folder of named.length > 0 ? named : Object.keys(folders)) {
  process.env.MUTATION_TESTS = (folders[folder] ?? []).join(" ");
  process.env.MUTATION_SHARE = String(share);
  process.env.MUTATION_SEED = String(seed);
  const results = await new Stryker({
    mutate: [`${folder}/**/*.ts`],
    plugins: ["@stryker-mutator/vitest-runner", join(import.meta.dirname, "sampled.mjs")],
    testRunner: "vitest",
    vitest: { configFile: "test/mutation/vitest.config.ts", related: false },
    checkers: ["sample"],
    // constants of a module are looked at in a whole run only: each needs every test anew
    ignoreStatic: sample,
    concurrency: 1,
    dryRunTimeoutMinutes: 30,
    timeoutMS: 5_000,
    timeoutFactor: 1.25,
    disableTypeChecks: false,
    tempDirName: "dist/mutation",
    ignorePatterns: ["dist", "test/output"],
    reporters: ["progress-append-only"],
  }).runMutationTest();
  const of = (...states) => results.filter(({ status }) => states.includes(status));
  const killed = of("Killed", "Timeout").length;
  const left = of("Survived", "NoCoverage");
  const changed = killed + left.length;
  const [low, high] = binomialInterval(killed, changed);
  const percent = (part) => (part * 100).toFixed(1);
  lines.push(
    `${folder}  ${killed} of ${changed}  ${percent(killed / changed)} % (${percent(low)} to ${percent(high)})  ${of("NoCoverage").length}`,
  );
  writeFileSync(
    join(output, `${folder.replaceAll("/", "-")}.txt`),
    left
      .map(
        ({ fileName, location: { start }, mutatorName, replacement, status }) =>
          `${fileName.replace(/.*(?=calibration\/|server\/)/, "")}:${start.line}:${start.column} ${status} ${mutatorName}: ${replacement?.replace(/\s+/g, " ").slice(0, 120)}\n`,
      )
      .sort()
      .join(""),
  );
}
console.log(
  `\n${lines.join("\n")}\n\nWhat no test noticed is listed in test/output/mutation, from seed ${seed}.`,
);
