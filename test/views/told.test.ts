import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { builtIn } from "../../server/metals/library.ts";
import { germanBook } from "../../views/words/de/told/index.ts";
import { told, toldIn, toldValue } from "../../views/words/told.ts";

/** Everything the bench can say stands in these folders, the English catalogue among them. */
const source = ["calibration", "drivers", "server", "views"]
  .flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: "utf8" }).map((name) => join(folder, name)),
  )
  .filter((name) => /\.tsx?$/.test(name) && !name.startsWith("views/words/de"))
  .map((name) => readFileSync(name, "utf8"))
  // names that stand inside sentences not yet told by code
  .concat(readFileSync("views/messages/en.json", "utf8"))
  .join("\n")
  // a sentence broken over two lines of the source is one sentence
  .replace(/["`]\s*\+\s*["`]/g, "")
  .replaceAll('\\"', '"')
  .replaceAll("’", "'");

/** Every run of three words of the source; the rest is looked for as it stands. */
const words = source.split(/\s+/);
const triples = new Set(words.slice(2).map((_, place) => words.slice(place, place + 3).join(" ")));
const stands = (run: string) => triples.has(run) || source.includes(run);

/** Runs of three words outside the slots, and shorter pieces whole: a reworded sentence loses its runs. */
function runsOf(english: string): string[] {
  return english.split(/\{\w+\}/).flatMap((piece) => {
    const all = piece.trim().split(/\s+/);
    if (all.length < 3) return [all.join(" ")];
    return all.slice(2).map((_, place) => all.slice(place, place + 3).join(" "));
  });
}

describe("the sentences of the bench in German", () => {
  const all = [...germanBook.sentences, ...germanBook.names];

  it("translate what the bench still says: a sentence reworded in the source is reworded here", () => {
    const drifted = all.filter(([english]) => {
      const runs = runsOf(english);
      const gone = runs.filter((run) => !stands(run));
      // a sentence that chooses a word by itself ("rises"/"falls", "one"/"ones") has runs that stand nowhere as a whole
      return gone.length > runs.length / 2;
    });
    expect(drifted.map(([english]) => english)).toEqual([]);
  });

  it("stand in the book once", () => {
    const english = all.map(([text]) => text);
    expect(english.filter((text, place) => english.indexOf(text) !== place)).toEqual([]);
  });

  it("keep every value: the same slots on both sides", () => {
    const slots = (text: string) => text.match(/\{\w+\}/g) ?? [];
    const invented = all.filter(([english, other]) => slots(other).some((slot) => !english.includes(slot)));
    expect(invented.map(([english]) => english)).toEqual([]);
    const dropped = all.filter(([english, other]) => slots(english).some((slot) => !other.includes(slot)));
    expect(dropped.map(([english]) => english)).toEqual([]);
  });

  it("fill in values with their decimals and names in German, and leave alone what somebody typed", () => {});

  it("tell several sentences in a row, and say so when one is missing", () => {
    const [first, second] = germanBook.sentences.filter(([english]) => /^[^{.]+\.$/.test(english));
    expect(told(`${first![0]} ${second![0]}`, "de")).toBe(`${first![1]} ${second![1]}`);
    expect(toldIn(`${first![0]} Nobody ever wrote this.`, "de")).toBeUndefined();
    expect(told("Nobody ever wrote this.", "de")).toBe("Nobody ever wrote this.");
    expect(told("Keep still.", "en")).toBe("Keep still.");
  });

  it("name every metal of the library", () => {
    const lines = new Set(germanBook.names.map(([english]) => english));
    const unnamed = builtIn.metals.filter(
      ({ name }) => toldValue(name, "de") === name && !lines.has(name) && !/^(Palladium|Bronze) /.test(name),
    );
    expect(unnamed.map(({ name }) => name)).toEqual([]);
  });
});
