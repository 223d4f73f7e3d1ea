import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readAnyShape, readShape, shapeNamed, shapes } from "../../drivers/shapes/index.ts";
import { meaningOf, sampleFile } from "./sample-lines.ts";

const folder = new URL("./lines/", import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith(".txt"));

test("every shape has a file of sample lines and every file a shape", () => {
  expect(files.map((name) => name.replace(".txt", "")).sort()).toEqual(shapes.map(({ id }) => id).sort());
});

describe.each(files)("%s", (file) => {
  const { comma, samples } = sampleFile(new URL(file, folder));
  const shape = shapeNamed(file.replace(".txt", ""))!;

  test("each line means what the file says it means", () => {
    const read = readShape(shape, comma);
    for (const { written, expected } of samples)
      expect(`${written} => ${meaningOf(read, written)}`).toBe(`${written} => ${expected}`);
  });

  test("a balance nothing is known about gets the same number or none", () => {
    const read = readAnyShape(comma);
    for (const { written, expected } of samples) {
      const [number, unit] = expected.split(" ");
      const [foundNumber, foundUnit] = meaningOf(read, written).split(" ");
      if (unit !== undefined && foundUnit !== undefined)
        expect(`${written} ${foundNumber} ${foundUnit}`).toBe(`${written} ${number} ${unit}`);
    }
  });
});
