// npm run claims [-- --write]: how far each precious claim can be told apart by harmless tests; --write puts it into the README.
import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { conformityFor } from "../../../server/conformity/conformity.ts";
import type { Evidence } from "../../../server/conformity/evidence/evidence.ts";
import { soundThrough } from "../../../server/conformity/sound-through.ts";
import { builtIn } from "../../../server/metals/library.ts";
import type { Metal } from "../../../server/metals/metal.ts";
import { isPrecious } from "../../../server/metals/precious-metal.ts";
import { normally } from "./normally.ts";

const readme = new URL("../../../README.md", import.meta.url);
const marks = ["<!-- claims: written by npm run claims -- --write -->", "<!-- end of claims -->"] as const;

/** A fine metal that no family holds, or a family: what a stamp can name. */
const isStamp = ({ id, recipes, family }: Metal) =>
  isPrecious(family) && (recipes !== undefined || !builtIn.metals.some((one) => one.recipes?.includes(id)));

/** The state of a claim at its usual density, good to 0.03 %, without and with tests that found what it shows. */
function rowOf(claim: Metal): string {
  const { id, magnetism, colour, densityGPerCm3, conductivityIacsPercent: iacs } = claim;
  const { nominal } = densityGPerCm3;
  const sound = soundThrough(claim);
  const eye: Evidence[] = [
    ...(magnetism === "none" ? [{ kind: "magnet", shows: "none" } as const] : []),
    { kind: "worn", colour },
    { kind: "ring", heard: "clear" },
  ];
  const owned: Evidence[] = [
    ...(iacs
      ? [
          {
            kind: "conductivity",
            percentIacs: (iacs[0] + iacs[1]) / 2,
            uPercentIacs: 0.5,
            celsius: 20,
          } as const,
        ]
      : []),
    ...(sound ? [{ kind: "sound", mPerS: sound.mPerS, uMPerS: 20 } as const] : []),
  ];
  const after = (evidence: Evidence[]) =>
    conformityFor(normally(nominal, 0.0003 * nominal), {
      ...{ library: builtIn, confidence: 0.9545, celsius: 20, claim: id, evidence },
    });
  const [alone, seen, all] = [after([]), after(eye), after([...eye, ...owned])];
  const way = alone.consistentAfter;
  const path = way?.tests ? way.tests.join(", ") : "";
  const stays = way?.tests === null ? way.stays.map(({ metal }) => metal.id).join(", ") : "";
  return `| ${[id, alone.state, seen.state, all.state, path, stays].join(" | ")} |`;
}

/** The table that stands in the README. */
export function claimsTable(): string {
  const heads = [
    "claim",
    "density alone",
    "and eye, magnet, ring",
    "and conductivity, sound",
    "fewest tests",
    "what stays",
  ];
  return [
    `| ${heads.join(" | ")} |`,
    `|${heads.map(() => "---").join("|")}|`,
    ...builtIn.metals.filter(isStamp).map(rowOf),
  ].join("\n");
}

/** The same as the README holds it. */
export function tableInReadme(): string {
  const text = readFileSync(readme, "utf8");
  return text.slice(text.indexOf(marks[0]) + marks[0].length, text.indexOf(marks[1])).trim();
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const table = claimsTable();
  const text = readFileSync(readme, "utf8");
  const [before = "", behind = ""] = [text.split(marks[0])[0], text.split(marks[1])[1]];
  if (process.argv.includes("--write"))
    writeFileSync(readme, `${before}${marks[0]}\n\n${table}\n\n${marks[1]}${behind}`);
  console.log(table);
}
