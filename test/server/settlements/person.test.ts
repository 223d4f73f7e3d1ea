import { expect, test } from "vitest";
import { secondTo } from "../../../server/settlements/person.ts";
import { refusalOf } from "../../refusal-of.ts";

const people = [
  { id: "1", name: "Karin Roth", initials: "KR" },
  { id: "2", name: "Mats Thal", initials: "MT" },
];

test.each([
  ["KR", "", "settlement.second-missing"],
  ["KR", "k. r.", "settlement.second-same"],
  ["KR", "PL", "settlement.person-unknown"],
  ["PL", "MT", "settlement.person-unknown"],
  // other letters, one person
  ["KR", "Karin Roth", "settlement.second-same"],
])("where people sign in, %s with %j is %s", (by, second, code) => {
  expect(refusalOf(() => secondTo(by, second, { people })).code).toBe(code);
});

test("two people who sign in here may be written by name or initials; elsewhere only the initials must differ", () => {
  expect(secondTo("kr", "Mats Thal", { people })).toBe("Mats Thal");
  expect(secondTo("KR", "PL")).toBe("PL");
});
