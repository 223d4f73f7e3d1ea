// npm run provenance: prints every figure of the data files by kind and where it comes from; fails on a figure of no kind.
import { readdirSync, readFileSync } from "node:fs";
import { figuresOf } from "../../server/metals/list-provenance.ts";

const folder = new URL("../../server/metals/data/", import.meta.url);
const all = readdirSync(folder)
  .filter((file) => file !== "sources.json")
  .flatMap((file) => figuresOf(file, JSON.parse(readFileSync(new URL(file, folder), "utf8"))));
for (const kind of ["seen", "computed", "from-memory", null] as const) {
  const of = all.filter((one) => one.kind === kind);
  console.log(`\n${kind ?? "of no kind"}: ${of.length} figures`);
  for (const { file, place, value, from } of of)
    console.log(`  ${file} ${place} = ${value}${from === "" ? "" : `: ${from}`}`);
}
if (all.some(({ kind }) => kind === null)) process.exitCode = 1;
