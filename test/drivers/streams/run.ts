// npm run settling [-- --loads=N --hours=N --write]: plays loads through the line reader of the bench, prints what became
// of them, and with --write writes the tables into the README.
import { readFileSync, writeFileSync } from "node:fs";
import { benches, clean } from "./benches.ts";
import {
  at,
  covered,
  creepPossible,
  falseAlarms,
  loadsOf,
  type Row,
  rows,
  share,
  toldWithin,
  unflagged,
  waits,
  watched,
  wrong,
} from "./settling.ts";

const asked = process.argv.slice(2);
const option = (name: string, otherwise: number) =>
  Number(asked.find((one) => one.startsWith(`--${name}=`))?.split("=")[1] ?? otherwise);
const count = option("loads", 300);
const hours = option("hours", 10);
const seed = option("seed", 20261129);

const readme = new URL("../../../README.md", import.meta.url);
const marks = [
  "<!-- settling: written by npm run settling -- --write -->",
  "<!-- end of settling -->",
] as const;

const percent = (part: number) => (Number.isNaN(part) ? "" : (100 * part).toFixed(1));
const seconds = (value: number) => (Number.isFinite(value) ? value.toFixed(1) : "never");

function stillCells({ name, bench, ...row }: Row): string[] {
  const loads = loadsOf({ name, bench, ...row }, count, seed);
  const wait = waits(loads);
  const watch = watched(loads);
  const cells = [at(wait, 0.5), at(wait, 0.95), at(watch, 0.5), at(watch, 0.95)];
  return [name, ...cells.map(seconds), percent(share(loads, covered))];
}

function movingCells({ name, bench, ...row }: Row): string[] {
  const loads = loadsOf({ name, bench, ...row }, count, seed);
  const watching = loads.filter(creepPossible);
  const held = loads.filter((load) => !creepPossible(load) && !unflagged(load));
  return [
    name,
    percent(held.length / count),
    percent(share(held, ({ driftingAfterSeconds = 99 }) => driftingAfterSeconds <= 8)),
    percent(watching.length / count),
    percent(
      share(
        watching.filter((load) => wrong(load, bench.stepMg)),
        toldWithin(25),
      ),
    ),
    percent(share(loads, unflagged)),
  ];
}

function table(head: readonly string[], of: readonly Row[], cells: (row: Row) => string[]): string {
  const body = of.map((row) => {
    const line = cells(row);
    console.error(line.join(" | "));
    return line;
  });
  const widths = head.map((_, i) => Math.max(...[head, ...body].map((line) => line[i]!.length)));
  const written = (line: readonly string[]) =>
    `| ${line.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join(" | ")} |`;
  const rule = widths.map((width, i) => (i === 0 ? "-".repeat(width) : `${"-".repeat(width - 1)}:`));
  return [written(head), written(rule), ...body.map(written)].join("\n");
}

const text = [
  `Loads that lie still, ${count} a row: seconds from rest until the reading is taken, seconds after that until the watch excludes a creep of 1 mg and lifts the flag “creep-possible”, and the share within 2 u of the truth.`,
  "",
  table(
    ["load", "taken, median s", "95 % within s", "flag lifted, median s", "95 % within s", "covered %"],
    rows.still,
    stillCells,
  ),
  "",
  `Loads that move on (0.1 mg, noise of 0.4 d, five lines a second), ${count} a row: held back or taken with the flag “creep”, and of how many of these “drifting” is said within 8 s from rest; taken with the flag “creep-possible”, and how many of these that are off by more than d and 2 u the watch tells within 25 s; taken without a flag.`,
  "",
  table(
    ["load", "held or “creep” %", "drifting said %", "“creep-possible” %", "wrong ones told %", "no flag %"],
    rows.moving,
    movingCells,
  ),
  "",
  `A load that lies still for an hour was told as changed ${falseAlarms(clean, hours, seed)} times in ${hours} h, and ${falseAlarms(benches.draught, hours, seed)} times in ${hours} h of a draught of one step.`,
].join("\n");
console.log(text);
if (asked.includes("--write")) {
  const old = readFileSync(readme, "utf8");
  const [from, to] = [old.indexOf(marks[0]), old.indexOf(marks[1])];
  if (from < 0 || to < 0) throw new Error(`README.md has no ${marks.join(" … ")}`);
  writeFileSync(readme, `${old.slice(0, from + marks[0].length)}\n\n${text}\n\n${old.slice(to)}`);
}
