import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { expect, it } from "vitest";
import { toldIn } from "../../views/words/told.ts";

/** What no page shows: it goes to a terminal, to another program, or names a slip in the program itself. */
const noPage = [
  "server/cli/",
  "server/web/api/",
  "server/compute/complaint.ts",
  "server/compute/compute.ts",
  "server/compute/contract.ts",
  "server/compute/series.ts",
  "server/compute/lines.ts",
  "server/compute/refusal.ts",
  "server/organisation.ts",
  "server/settings.ts",
  "server/reports/fonts.ts",
  "server/ledger/",
  "calibration/decimal.ts",
  "calibration/repeats.ts",
  "calibration/rounding.ts",
  "calibration/convolution.ts",
  "server/conformity/decision-rule.ts",
  "server/conformity/global-risk.ts",
  "server/metals/fineness/melt-split.ts",
  "server/metals/fineness/silver-share.ts",
  // names of metals that are not in the library, and where each density comes from
  "server/metals/",
];

/** Said as a part of another sentence, which is told whole, or put together from words that are told apart. */
const parts = ["server/compute/aside.ts"];

const files = ["calibration", "drivers", "server"]
  .flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: "utf8" }).map((name) => join(folder, name)),
  )
  .filter((name) => /\.tsx?$/.test(name) && !noPage.some((place) => name.startsWith(place)));

/** Every way a text may come out: slots filled with a number or a word, both sides of a choice. Nothing for no text. */
function waysOf(node: ts.Expression): string[] {
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isParenthesizedExpression(node)) return waysOf(node.expression);
  if (ts.isConditionalExpression(node)) return [...waysOf(node.whenTrue), ...waysOf(node.whenFalse)];
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.PlusToken)
    return joined(waysOf(node.left), waysOf(node.right));
  if (!ts.isTemplateExpression(node)) return [];
  return node.templateSpans.reduce(
    (ways, { expression, literal }) => {
      const said = waysOf(expression);
      return joined(ways, said.length > 0 ? said : ["5", "x"]).map((way) => way + literal.text);
    },
    [node.head.text],
  );
}

const joined = (left: string[], right: string[]) =>
  left.flatMap((one) => right.map((other) => one + other)).slice(0, 256);

/** A sentence begins with a capital letter or a quoted word, has three words and ends as sentences do. */
const isSentence = (text: string) => /^["A-Z]\S* \S+ .*[.?]$/s.test(text.trim());

function untoldIn(file: string): string[] {
  const kind = file.endsWith("x") ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  const source = ts.createSourceFile(file, readFileSync(file, "utf8"), ts.ScriptTarget.Latest, true, kind);
  const left: string[] = [];
  const visit = (node: ts.Node): void => {
    const ways = ts.isExpression(node) && !ts.isConditionalExpression(node) ? waysOf(node) : [];
    if (ways.length === 0) {
      ts.forEachChild(node, visit);
      return;
    }
    const sentences = ways.map((way) => way.trim()).filter(isSentence);
    if (sentences.length > 0 && !sentences.some((one) => toldIn(one, "de") !== undefined))
      left.push(`${file}: ${sentences[0]}`);
  };
  visit(source);
  return left;
}

it("every sentence that a page may show is told in German", () => {
  const left = files.filter((file) => !parts.includes(file)).flatMap(untoldIn);
  expect(left).toEqual([]);
});

it("a file is left out only while it says something that is not told by itself", () => {
  const idle = parts.filter((file) => untoldIn(file).length === 0);
  expect(idle).toEqual([]);
});
