import { expect, test } from "vitest";
import { claimsTable, tableInReadme } from "./reach.ts";

test("the README tells of each precious claim what is left beside it, as it is decided now", () => {
  const squeezed = (table: string) => table.replaceAll(/[ -]+\|/g, "|").replaceAll(/\| +/g, "|");
  expect(squeezed(tableInReadme())).toBe(squeezed(claimsTable()));
});
