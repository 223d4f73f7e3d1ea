import { expect, test } from "vitest";
import { builtIn } from "../../../server/alloys/library.ts";
import { doubtsAbout, readOwnMetals, withOwn, writeOwnMetals } from "../../../server/alloys/own-metals.ts";
import { findingFor } from "../../../server/findings/finding.ts";
import { normally } from "../findings/normally.ts";

const harbourBell = {
  id: "own-harbour-bell",
  name: "Harbour bell metal",
  composition: { Cu: [0.78, 0.76, 0.8], Sn: [0.22, 0.2, 0.24] },
  density_g_cm3: { nominal: 8.6, low: 8.5, high: 8.7 },
  magnetism: "none",
  colour: "yellow",
  source: "weighed here on five bells",
};
const file = (version = 1, metals: unknown[] = [harbourBell]) =>
  JSON.stringify({ underhook_metals: 1, version, metals });

test("own metals survive export and import unchanged", () => {
  const own = readOwnMetals(file());
  expect(readOwnMetals(writeOwnMetals(own))).toEqual(own);
});

test("a library with own metals finds them and carries both versions", () => {
  const library = withOwn(builtIn, readOwnMetals(file(3)));
  const finding = findingFor(normally(8.6, 0.01), "own-harbour-bell", 0.9545, { library });
  expect(finding.libraryVersion).toBe("1+own.3");
  expect(finding.alive).toContain("own-harbour-bell");
});

test("every fault of a file is listed with its place, and nothing is taken over", () => {
  const bad = {
    ...harbourBell,
    id: "bell",
    density_g_cm3: { nominal: 8.6, low: 8.7, high: 8.7 },
    composition: { Cu: [0.5, 0.5, 0.5] },
  };
  expect(() => readOwnMetals(file(1, [bad]))).toThrow(/metals\.0\.id: right is own-/);
  expect(() => readOwnMetals(file(1, [{ ...bad, id: "own-bell" }]))).toThrow(
    /low ≤ nominal ≤ high.*must add up to 1/,
  );
  expect(() => readOwnMetals(file(1, [{ ...harbourBell, colour: "gold", shade: 1 }]))).toThrow(/shade/);
  expect(() => readOwnMetals("{")).toThrow(/not JSON/);
});

test("two metals under one id are refused", () => {
  const own = readOwnMetals(file(1, [harbourBell, harbourBell]));
  expect(() => withOwn(builtIn, own)).toThrow(/Two metals have the id "own-harbour-bell"/);
});

test("a changed file must carry a higher version than the one held", () => {
  const held = readOwnMetals(file(2));
  const changed = [{ ...harbourBell, name: "Harbour bell metal, old" }];
  expect(() => readOwnMetals(file(2, changed), held)).toThrow(/higher version/);
  expect(readOwnMetals(file(3, changed), held).version).toBe(3);
  expect(readOwnMetals(file(2), held)).toEqual(held);
});

test("a density far from its composition is doubted but not refused", () => {
  const odd = { ...harbourBell, density_g_cm3: { nominal: 7.5, low: 7.4, high: 7.6 } };
  expect(doubtsAbout(readOwnMetals(file(1, [odd])))[0]).toMatch(/% from the 8\.5/);
  expect(doubtsAbout(readOwnMetals(file()))).toEqual([]);
});
