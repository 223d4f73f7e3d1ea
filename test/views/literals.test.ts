import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { expect, it } from "vitest";

const sourcesIn = (...folders: string[]) =>
  folders
    .flatMap((folder) =>
      readdirSync(folder, { recursive: true, encoding: "utf8" }).map((name) => join(folder, name)),
    )
    .filter((name) => /\.tsx?$/.test(name))
    .map(sourceOf);
const sourceOf = (name: string) =>
  ts.createSourceFile(name, readFileSync(name, "utf8"), ts.ScriptTarget.ES2023, true);

const sources = sourcesIn("views", "server/web");

/** Attributes whose value a person reads or hears. */
const read = new Set([
  "after",
  "alt",
  "aria-description",
  "aria-label",
  "caption",
  "empty",
  "heading",
  "hint",
  "label",
  "legend",
  "placeholder",
  "says",
  "text",
  "title",
]);

/** The same in every language: units, symbols of quantities, formats, the product's name. */
const everywhere =
  /^(Underhook|CSV|JSON|JSON Lines|API|OpenAPI|PDF|SVG|PNG|GUM|DIN|ISO( \d+)?|MS\/m|% ?IACS|m\/s|g\/cm³|kg\/m³|mg\/[lL]|cm³|mm|mg|kg|µs|hPa|°C|°F|ozt|dwt|ct|oz|gn|[gukUsRDndm])$/;

/** Text of an expression that does not come from anywhere else: literals, both sides of a choice, parts of a template. */
function literalsIn(node: ts.Expression): string[] {
  if (ts.isStringLiteralLike(node)) return [node.text];
  if (ts.isTemplateExpression(node))
    return [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)];
  if (ts.isParenthesizedExpression(node)) return literalsIn(node.expression);
  if (ts.isConditionalExpression(node)) return [...literalsIn(node.whenTrue), ...literalsIn(node.whenFalse)];
  if (ts.isBinaryExpression(node)) {
    const { kind } = node.operatorToken;
    if (kind === ts.SyntaxKind.PlusToken || kind === ts.SyntaxKind.QuestionQuestionToken)
      return [...literalsIn(node.left), ...literalsIn(node.right)];
    if (kind === ts.SyntaxKind.AmpersandAmpersandToken) return literalsIn(node.right);
  }
  return [];
}

/** Commands, codes and bytes are the same in every language. */
function insideCode(node: ts.Node): boolean {
  for (let at = node.parent; at; at = at.parent)
    if (ts.isJsxElement(at) && /^(code|kbd|samp|pre)$/.test(at.openingElement.tagName.getText())) return true;
  return false;
}

function shownIn(source: ts.SourceFile): string[] {
  const found: string[] = [];
  const add = (node: ts.Node, texts: readonly string[]) => {
    if (insideCode(node)) return;
    for (const text of texts) {
      const words = text
        .split(/[\s(),.:;·=±–—-]+/)
        .filter((word) => /\p{L}/u.test(word) && !everywhere.test(word));
      if (words.length === 0 || everywhere.test(text.trim())) continue;
      const { line } = source.getLineAndCharacterOfPosition(node.getStart());
      found.push(`${source.fileName}:${line + 1}: ${text.trim()}`);
    }
  };
  const visit = (node: ts.Node): void => {
    if (ts.isJsxText(node)) add(node, [node.text.replaceAll(/&\w+;/g, "")]);
    if (ts.isJsxExpression(node) && node.expression && !ts.isJsxAttribute(node.parent))
      add(node, literalsIn(node.expression));
    if (ts.isJsxAttribute(node) && read.has(node.name.getText()) && node.initializer) {
      const { initializer } = node;
      if (ts.isStringLiteral(initializer)) add(node, [initializer.text]);
      else if (ts.isJsxExpression(initializer) && initializer.expression)
        add(node, literalsIn(initializer.expression));
    }
    node.forEachChild(visit);
  };
  visit(source);
  return found;
}

it("a person reads nothing on a page that does not come from a catalogue or is a value", () => {
  expect(sources.flatMap(shownIn)).toEqual([]);
});

/** Two words of letters in a row: text that somebody reads, and no name, option, format or path. */
const prose = /(?<![-/.\w])\p{L}{2,}[,.:;]? \p{L}{2,}(?![-/\w])/u;

/** Literals that read as text, without those of imports and types. */
function proseIn(source: ts.SourceFile): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isLiteralTypeNode(node)) return;
    const isText =
      ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node);
    if (isText && prose.test(node.text)) {
      const { line } = source.getLineAndCharacterOfPosition(node.getStart());
      found.push(`${source.fileName}:${line + 1}: ${node.text.trim().slice(0, 60)}`);
    }
    node.forEachChild(visit);
  };
  visit(source);
  return found;
}

it("a person reads nothing on the command line that does not come from a catalogue or is a value", () => {
  // files for the system are written for its administrator, in the language of their comments
  const others = [/^server\/cli\/doctor\/system-files\.ts:/];
  const said = [
    ...sourcesIn("server/cli"),
    sourceOf("server/settings.ts"),
    sourceOf("server/start.ts"),
    sourceOf("server/underhook.ts"),
  ].flatMap(proseIn);
  expect(said.filter((one) => !others.some((other) => other.test(one)))).toEqual([]);
});

it("a page's file names no language to choose words by", () => {
  const files = sources.filter(({ fileName }) => !/^views\/(messages|words)\//.test(fileName));
  const named = files.flatMap((source) => {
    const found: string[] = [];
    const visit = (node: ts.Node): void => {
      if (
        ts.isConditionalExpression(node) &&
        /===? "(en|de|es)"/.test(node.condition.getText()) &&
        [...literalsIn(node.whenTrue), ...literalsIn(node.whenFalse)].some((text) => /\p{L}{2}/u.test(text))
      )
        found.push(`${source.fileName}: ${node.getText()}`);
      node.forEachChild(visit);
    };
    visit(source);
    return found;
  });
  expect(named).toEqual([]);
});
