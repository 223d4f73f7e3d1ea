import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readAnyShape, readShape, shapeNamed, shapes } from "../../drivers/shapes/index.ts";
import { meaningOf, sampleFile } from "./sample-lines.ts";

const folder = new URL("./lines/", import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith(".txt"));

test("every shape has a file of sample lines and every file a shape", () => {
  const covered = new Set(files.map((name) => sampleFile(new URL(name, folder)).shape));
  expect([...covered].sort()).toEqual(shapes.map(({ id }) => id).sort());
});

describe.each(files)("%s", (file) => {
  const { shape: id, settings, samples } = sampleFile(new URL(file, folder));
  const shape = shapeNamed(id)!;

  test("each line means what the file says it means", () => {
    const read = readShape(shape, settings);
    for (const { written, expected } of samples)
      expect(`${written} => ${meaningOf(read, written)}`).toBe(`${written} => ${expected}`);
  });

  test("a balance nothing is known about gets the same number or none", () => {
    const read = readAnyShape(settings);
    for (const { written, expected } of samples) {
      const [number, unit] = expected.split(" ");
      const [foundNumber, foundUnit] = meaningOf(read, written).split(" ");
      if (unit !== undefined && foundUnit !== undefined)
        expect(`${written} ${foundNumber} ${foundUnit}`).toBe(`${written} ${number} ${unit}`);
    }
  });
});
