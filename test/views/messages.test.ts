import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import type { Message, Param } from "../../calibration/message.ts";
import { codes, isCode, textOf } from "../../views/messages/catalogue.ts";
import { BadCatalogue, type CatalogueFiles, checkCatalogues } from "../../views/messages/catalogue-check.ts";
import { locales } from "../../views/messages/language.ts";
import { tell, tellValue } from "../../views/messages/tell.ts";

const sourceFiles = ["calibration", "drivers", "server", "views"]
  .flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: "utf8" }).map((name) => join(folder, name)),
  )
  .filter((name) => /\.tsx?$/.test(name));
const sources = sourceFiles.map((name) =>
  ts.createSourceFile(name, readFileSync(name, "utf8"), ts.ScriptTarget.ES2023, true),
);

/** A code that stands in the source as a literal, with the parameters that stand beside it as a literal object. */
interface Given {
  place: string;
  code: string;
  /** undefined where the parameters are put together elsewhere */
  params: readonly string[] | undefined;
}

function givenIn(source: ts.SourceFile): Given[] {
  const found: Given[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) || ts.isNewExpression(node)) {
      const [first, second] = node.arguments ?? [];
      if (first && ts.isStringLiteralLike(first) && isCode(first.text)) {
        const { line } = source.getLineAndCharacterOfPosition(first.getStart());
        const place = `${source.fileName}:${line + 1}`;
        found.push({ place, code: first.text, params: second === undefined ? [] : namesIn(second) });
      }
    }
    node.forEachChild(visit);
  };
  visit(source);
  return found;
}

function namesIn(node: ts.Expression): string[] | undefined {
  if (!ts.isObjectLiteralExpression(node)) return undefined;
  const names = node.properties.map((one) =>
    one.name && "text" in one.name ? String(one.name.text) : undefined,
  );
  return names.every((name) => name !== undefined) ? names : undefined;
}

const files = Object.fromEntries(
  locales.map((locale) => [locale, readFileSync(`views/messages/${locale}.json`, "utf8")]),
) as CatalogueFiles;

describe("the catalogues", () => {
  it("have the same codes with the same parameters in each language", () => {
    expect(() => checkCatalogues(files)).not.toThrow();
  });

  it("stand in the order of their codes, so that each is found and added at one place", () => {
    for (const locale of locales) {
      const keys = Object.keys(JSON.parse(readFileSync(`views/messages/${locale}.json`, "utf8")));
      expect(keys, locale).toEqual([...keys].sort());
    }
  });

  it("get each parameter that they show", () => {
    const wrong = sources.flatMap(givenIn).flatMap(({ place, code, params }) => {
      if (params === undefined) return [];
      const takes = [...textOf(code, "en")!.uses.keys()];
      const missing = takes.filter((name) => !params.includes(name));
      return missing.length > 0 ? [`${place} ${code}: without ${missing.join(", ")}`] : [];
    });
    expect(wrong).toEqual([]);
  });

  it("hold no code that nothing tells", () => {
    // data files name codes as well
    const data = readdirSync("server/metals/data").map((name) =>
      readFileSync(`server/metals/data/${name}`, "utf8"),
    );
    const text = [...sources.map((source) => source.text), ...data].join("\n");
    // a code put together from a stem and an id: `metal.${id}`
    const stems = [...text.matchAll(/`([a-z][\w.-]*\.)\$\{|tellId\(\s*"([\w.-]+)"/g)].map(
      ([, stem, named]) => stem ?? `${named}.`,
    );
    // one put together from another code: `${code}.ask`
    const ends = [...text.matchAll(/`\$\{\w+\}(\.[a-z-]+)`/g)].map(([, end]) => end!);
    const told = (code: string) => text.includes(`"${code}"`) || stems.some((stem) => code.startsWith(stem));
    const unused = codes.filter(
      (code) => !told(code) && !ends.some((end) => code.endsWith(end) && told(code.slice(0, -end.length))),
    );
    expect(unused).toEqual([]);
  });
});

describe("a catalogue that cannot be used is refused with its file, line and key", () => {
  const written = (texts: Record<string, unknown>) => JSON.stringify(texts, null, 2);
  const english = written({
    "a.count": "{count, plural, one {# piece} other {# pieces}}",
    "a.name": "{name}",
  });
  const good = { "a.count": "{count, plural, one {# Stück} other {# Stücke}}", "a.name": "{name}" };
  const refusal = (de: string): string => {
    try {
      checkCatalogues({ ...files, en: english, es: english, de });
    } catch (error) {
      if (error instanceof BadCatalogue) return error.message;
      throw error;
    }
    return "";
  };

  it("and only then", () => {
    expect(refusal(written(good))).toBe("");
  });

  it.each([
    ["a text that does not parse", written({ ...good, "a.name": "{name" }), "line 3", "a.name"],
    ["a parameter missing", written({ ...good, "a.name": "Name" }), "line 3", "a.name", "{name}"],
    ["a parameter too many", written({ ...good, "a.name": "{name} {other}" }), "line 3", "a.name", "{other}"],
    ["a key that English does not have", written({ ...good, "a.x": "x" }), "line 4", "a.x"],
    ["a text that is no text", written({ ...good, "a.name": 3 }), "line 3", "a.name"],
    ["a key twice", `{\n"a.count": "",\n"a.name": "",\n"a.name": "{name}"}`, "line 4", "a.name"],
    ["a comma missing", written(good).replace(",\n", "\n"), "line 3", "a.count"],
  ])("%s", (_, de, ...parts) => {
    const said = refusal(de);
    for (const part of ["de.json", ...parts]) expect(said).toContain(part);
  });

  it("a key missing is shown where English has it", () => {
    const said = refusal(written({ "a.name": "{name}" }));
    for (const part of ["de.json", "en.json, line 2", "a.count"]) expect(said).toContain(part);
  });
});

describe("a message", () => {
  it("shows what a person typed as it was typed, in every language", () => {
    const typed = "…:14.0-usb-0:1.2 <b>Window and counter</b> {x} 'q'";
    for (const locale of locales) {
      expect(tellValue(typed, locale)).toBe(typed);
      for (const code of codes) {
        const { uses } = textOf(code, locale)!;
        const params = Object.fromEntries(
          [...uses].map(([name, use]) => [name, use === "number" ? 2 : typed]),
        );
        const shown = [...uses.values()].filter((use) => use === "shown").length;
        // what stands in one branch only is shown in that branch only
        const chosen = [...uses.values()].includes("select");
        if (shown > 0 && !chosen)
          expect(tell({ code, params }, locale), `${locale} ${code}`).toContain(typed);
      }
    }
  });

  it("writes numbers and lists in the manner of its language, and keeps decimals as they are", () => {
    expect(tellValue({ decimal: "31.10" }, "de")).toBe("31,10");
    expect(tellValue(0.25, "es")).toBe("0,25");
    expect(tellValue(["a", "b", { decimal: "1.5" }], "de")).toBe("a, b und 1,5");
    expect(tellValue({ anyOf: ["a", "b"] }, "en")).toBe("a or b");
  });
});

describe("the name of a metal", () => {
  const fits = (claim: Param): Message => ({ code: "answer.consistent", params: { claim } });

  it("is small inside a sentence and large where it begins one, as each language writes nouns", () => {
    const claim = { metal: "ag-999" };
    for (const locale of ["en", "es"] as const) {
      const name = tellValue(claim, locale);
      expect(tell(fits(claim), locale)).toContain(name[0]!.toLowerCase() + name.slice(1));
    }
    expect(tell(fits(claim), "de")).toContain(tellValue(claim, "de"));
  });

  it("stays as its owner typed it", () => {
    expect(tell(fits({ metal: "own-1", name: "House gold" }), "en")).toContain("House gold");
  });
});
