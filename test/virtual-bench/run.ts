// npm run coverage [-- --part=N] [--examples=N] [PART-OF-A-NAME …]: weighs every class on the virtual bench, through the
// command line, and prints the table. --part=N makes an Nth of the weighings; --examples=N prints the first N requests of
// each class that were silently wrong (or, where all that is stated is true, stopped), with the truth; --write keeps what
// was found in found.json and writes the table into the README.
import { mkdirSync, writeFileSync } from "node:fs";
import build from "../setup/build.ts";
import type { Row } from "./class-of.ts";
import { rows } from "./classes.ts";
import { figuresOf, type Outcome, outcomesOf } from "./outcome.ts";
import { keep, recordedRows, writeReadme } from "./record.ts";
import { coverageTable, type Found, reaches } from "./table.ts";
import { startUnderhook } from "./underhook.ts";

const asked = process.argv.slice(2);
const option = (name: string, otherwise: number) =>
  Number(asked.find((one) => one.startsWith(`--${name}=`))?.split("=")[1] ?? otherwise);
const part = option("part", 1);
const examples = option("examples", 0);
const write = asked.includes("--write");
const names = asked.filter((one) => !one.startsWith("--"));
const chosen = rows.filter(({ name }) => names.length === 0 || names.some((one) => name.includes(one)));

build();
const underhook = startUnderhook();
const found: Found[] = [];
for (const row of chosen) {
  const whole = row.group === "truly" ? 4000 : 1000;
  const outcomes = await outcomesOf(underhook, row, Math.ceil(whole / part));
  const figures = figuresOf(outcomes);
  found.push({ row, figures });
  const { covered, stopped, safe } = figures;
  console.error(
    `${reaches({ row, figures }) ? "      " : "MISSES"} ${row.name}: covered ${(covered * 100).toFixed(1)} %, stopped ${(stopped * 100).toFixed(1)} %, safe ${(safe * 100).toFixed(1)} %`,
  );
  // kept as they come: a long run that is broken off has not been for nothing
  if (write) keep([{ row, figures }]);
  for (const { asked, answer } of outcomes.filter((one) => isExample(row, one)).slice(0, examples))
    console.error(JSON.stringify({ truth: asked.truth, request: asked.request, answer }));
}
if (write) writeReadme(coverageTable(recordedRows()));
const table = coverageTable(found);
underhook.close();
const output = new URL("../output/", import.meta.url);
mkdirSync(output, { recursive: true });
writeFileSync(new URL("coverage.md", output), table);
console.log(table);

function isExample({ group }: Row, { covered, warned, stopped }: Outcome): boolean {
  return group === "truly" ? stopped : !(covered || warned || stopped);
}
