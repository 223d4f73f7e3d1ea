import { expect, test } from "vitest";
import { findingFor } from "../../../server/conformity/finding.ts";
import { normally } from "./normally.ts";

const at = 0.9545;

test("platinum at 21.45 with a laboratory balance leaves other costly platinum alive and nothing cheap", () => {
  const finding = findingFor(normally(21.45, 0.02), "el-pt", at);
  expect(finding.alive).toContain("el-pt");
  expect(finding.alive).not.toContain("el-w");
  expect(finding.alive.every((id) => id.startsWith("pt-") || id === "el-pt")).toBe(true);
});

test("aluminium has no neighbour on the density axis and agrees alone", () => {
  const finding = findingFor(normally(2.7, 0.005), "el-al", at);
  expect(finding.state).toBe("consistent");
  expect(finding.alive).toEqual(["el-al"]);
});

test("sterling at the OpenStax coin's density agrees, but not alone", () => {
  // OpenStax College Physics 2e, Example 11.10, corrected for air: 10.3677 g/cm³
  const finding = findingFor(normally(10.3677, 0.007), "ag-925", at);
  expect(finding.state).toBe("consistent-not-unique");
  expect(finding.alive).toEqual(expect.arrayContaining(["ag-925", "ag-950", "pb-sn"]));
  expect(finding.alive).not.toContain("el-cu");
});

test("tungsten stays alive beside fine gold however fine the measurement is", () => {
  for (const u of [0.1, 0.01, 0.001, 1e-5]) {
    const finding = findingFor(normally(19.3, u), "au-999", at);
    expect(finding.state, `u = ${u}`).not.toBe("consistent");
    expect(finding.alive).toEqual(expect.arrayContaining(["au-999", "el-w", "w-core-au"]));
  }
});

test("each look-alike of fine gold says why it is alive and which harmless test separates it", () => {
  const { lookAlikes } = findingFor(normally(19.28, 0.02), "au-999", at);
  const tungsten = lookAlikes.find((l) => l.id === "el-w")!;
  expect(tungsten.why).toBe("band");
  expect(tungsten.separatedBy.test).toBe("conductivity");
  expect(lookAlikes.find((l) => l.id === "w-core-au")!.separatedBy.test).toBe("sound");
});

test("brass sold as sterling is excluded, and the procedure is doubted before the metal", () => {
  const finding = findingFor(normally(8.5, 0.01), "ag-925", at);
  expect(finding.state).toBe("excluded");
  expect(finding.because).toMatch(/first a suspicion of the procedure/);
  expect(finding.suspicions[0]).toMatch(/bubbles/);
  expect(finding.alive).toEqual(expect.arrayContaining(["brass-c360", "brass-c260"]));
  expect(finding.alive).not.toContain("ag-925");
});

test("a result above the claim lists the few innocent causes", () => {
  const finding = findingFor(normally(18.9, 0.05), "au-916", at);
  expect(finding.state).toBe("excluded");
  expect(finding.because).toMatch(/few innocent causes/);
  expect(finding.suspicions[0]).toMatch(/not wholly under water/);
});

test("a kitchen scale on one silver round is inconclusive and says what would decide", () => {
  const finding = findingFor(normally(10.4, 0.25), "ag-999", at, { massG: 31.1, readabilityG: 0.1 });
  expect(finding.state).toBe("inconclusive");
  expect(finding.alive).not.toContain("el-cu");
  expect(finding.wouldDecide).toMatch(/readability of 0\.0\d+ g.*like pieces/);
});

test("without a claim the finding is no-claim and still lists what is alive", () => {
  const finding = findingFor(normally(10.47, 0.01), undefined, at);
  expect(finding.state).toBe("no-claim");
  expect(finding).not.toHaveProperty("claim");
  expect(finding.alive).toContain("ag-999");
});

test("an unknown claim is refused with near ids", () => {
  expect(() => findingFor(normally(10, 0.1), "au-751", at)).toThrow(/au-750/);
});

test("bands are brought to the liquid's temperature before they are compared", () => {
  // steel-c 11.7e-6/K: 7.88 at 20 °C is 7.874 at 40 °C; a measurement between the two tells the difference
  const between = normally(7.8775, 0.0005);
  expect(findingFor(between, "steel-c", at, { celsius: 20 }).alive).toContain("steel-c");
  expect(findingFor(between, "steel-c", at, { celsius: 40 }).alive).not.toContain("steel-c");
});

test("a higher confidence never excludes more", () => {
  const measured = normally(10.2, 0.05);
  const loose = new Set(findingFor(measured, undefined, 0.99).alive);
  for (const id of findingFor(measured, undefined, 0.9).alive) expect(loose.has(id)).toBe(true);
});
