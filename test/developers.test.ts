import { existsSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";

test("every file that the guide for developers names is there", () => {
  const named = readFileSync("DEVELOPERS.md", "utf8").matchAll(/`((?:\w[\w-]*\/)+[\w.-]+\.\w+)`/g);
  const files = [...named]
    .map(([, file = ""]) => file)
    .filter((file) => !/^(dist|test\/output)\/|\/(NAME|YOUR-\w+)\./.test(file));
  expect(files.length).toBeGreaterThan(50);
  expect(files.filter((file) => !existsSync(file))).toEqual([]);
});
