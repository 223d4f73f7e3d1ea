import { expect, test } from "vitest";
import { compute } from "../../../server/compute/compute.ts";

/** A piece hung in tap water of 21.4 °C (invented readings). */
function weighed(given: {
  dry: string;
  immersed: string;
  step: number;
  claim?: string;
  evidence?: readonly object[];
}) {
  const { dry, immersed, step, ...rest } = given;
  const answer = compute({
    id: "piece",
    method: "hung",
    dry: { readings: [dry] },
    immersed: { readings: [immersed] },
    liquid: { kind: "water", temperature_c: 21.4, purity: "tap" },
    air: { altitude_m: 0 },
    balance: { readability_g: step, repeatability_g: step },
    ...rest,
  });
  if ("error" in answer) throw new Error(answer.error.at);
  return answer;
}

test("a silver coin on a 0.1 g scale could be silver or lead, is not copper or brass, and calls for a magnet and its ring", () => {
  const { conformity, answer } = weighed({ dry: "24.9", immersed: "22.5", step: 0.1, claim: "ag-900" });
  expect(conformity.state).toBe("inconclusive");
  expect(answer).toMatchObject({
    code: "answer.could-be-not",
    params: {
      could: { anyOf: [{ code: "group.silver" }, { code: "group.lead" }, { code: "group.others" }] },
      not: { anyOf: [{ code: "plan.plain-name.el-cu" }, { code: "plan.plain-name.brass-c260" }] },
      next: {
        code: "answer.next.then",
        params: { first: { code: "answer.next.magnet" }, second: { code: "answer.next.ring" } },
      },
    },
  });
});

test("an interval as wide as the density is too coarse for any question, and says what would do", () => {
  const { conformity, checks, answer } = weighed({
    dry: "4.0",
    immersed: "3.5",
    step: 0.1,
    claim: "ag-925",
  });
  expect(conformity.state).toBe("inconclusive");
  expect(checks.map(({ code }) => code)).toContain("conformity.too-coarse");
  expect(answer.code).toBe("conformity.too-coarse");
  expect(JSON.stringify(answer.params)).toContain("conformity.would.mass");
});

test("fine silver on a 1 mg scale is consistent once its conductivity was measured, and is told so before", () => {
  const piece = { dry: "31.103", immersed: "28.144", step: 0.001, claim: "ag-999" };
  const before = weighed(piece);
  expect(before.conformity.state).toBe("consistent-not-unique");
  expect(before.next_tests.map(({ test }) => test)).toContain("conductivity");
  // CRC: fine silver 105 % IACS
  const coil = { kind: "conductivity", percent_iacs: 105, u_percent_iacs: 1, temperature_c: 20 };
  expect(weighed({ ...piece, evidence: [coil] }).conformity.state).toBe("consistent");
});

test("lead sold as 14 carat is excluded: what it fits is told, and no test to make", () => {
  const { conformity, answer, next_tests, cautions } = weighed({
    dry: "20.00",
    immersed: "18.24",
    step: 0.01,
    claim: "au-585",
  });
  expect(conformity.state).toBe("excluded");
  expect(JSON.stringify(answer)).toContain("group.lead");
  expect(next_tests).toEqual([]);
  expect(cautions).toContain("lead");
});

test("what one thing alone has the density of says so, without advice to weigh more finely", () => {
  // titanium 4.506 and copper-beryllium 8.25 g/cm³ (CRC Handbook; from memory)
  const titanium = weighed({ dry: "45.060", immersed: "35.077", step: 0.001 });
  expect(titanium.answer.code).toBe("answer.could-only-be");
  const beryllium = weighed({ dry: "82.500", immersed: "72.518", step: 0.001 });
  expect(beryllium.cautions).toContain("beryllium");
  // nothing of a bench has 6.2 g/cm³, but powder in a polymer can be given it
  expect(weighed({ dry: "62.000", immersed: "52.018", step: 0.001 }).answer.code).toBe("answer.only-made");
});
