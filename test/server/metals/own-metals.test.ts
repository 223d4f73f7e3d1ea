import { expect, test } from "vitest";
import { compute } from "../../../server/compute/compute.ts";
import { canLookLike } from "../../../server/conformity/worth.ts";
import { candidates } from "../../../server/metals/composites/candidates.ts";
import { compositeById } from "../../../server/metals/composites/composite-by-id.ts";
import { builtIn } from "../../../server/metals/library.ts";
import { readOwnMetals, warningsAbout, withOwn, writeOwnMetals } from "../../../server/metals/own-metals.ts";
import { refusalOf } from "../../refusal-of.ts";
import { normally } from "../conformity/normally.ts";
import { left, stands } from "../conformity/stands.ts";

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
  expect(library.version).toBe(`${builtIn.version}+own.3`);
  expect(left(stands(normally(8.6, 0.01), "own-harbour-bell", { library }))).toContain("own-harbour-bell");
});

test("the owner's worth of a gram decides what would be passed off as what, and survives export", () => {
  const own = readOwnMetals(
    JSON.stringify({ underhook_metals: 1, version: 1, metals: [], worth: { Au: 1 } }),
  );
  expect(readOwnMetals(writeOwnMetals(own))).toEqual(own);
  const passes = ({ metal, worth }: typeof builtIn) => canLookLike(metal("au-8y"), metal("ag-925"), worth);
  // yellow 8 ct gold is dearer than silver, unless its owner says that gold is worth no more than copper
  expect(passes(builtIn)).toBe(false);
  expect(passes(withOwn(builtIn, own))).toBe(true);
  const none = JSON.stringify({ underhook_metals: 1, version: 1, metals: [], worth: { Au: 0.5 } });
  expect(refusalOf(() => readOwnMetals(none)).code).toBe("metal.own.refused");
});

test("every fault of a file is listed with its place, and nothing is taken over", () => {
  const bad = {
    ...harbourBell,
    id: "bell",
    density_g_cm3: { nominal: 8.6, low: 8.7, high: 8.7 },
    composition: { Cu: [0.5, 0.5, 0.5] },
  };
  const faults = (one: object) => {
    const refused = refusalOf(() => readOwnMetals(file(1, [one])));
    expect(refused.code).toBe("metal.own.refused");
    return refused.params.faults;
  };
  const fault = (place: string, message: object) => ({
    code: "metal.file.fault",
    params: { place, message },
  });
  expect(faults(bad)).toContainEqual(fault("metals.0.id", { code: "metal.own.id" }));
  expect(faults({ ...bad, id: "own-bell" })).toEqual([
    fault("metals.0.density_g_cm3", { code: "metal.own.band" }),
    fault("metals.0.composition", { code: "metal.own.sum" }),
  ]);
  expect(faults({ ...harbourBell, colour: "gold", shade: 1 })).toContainEqual(
    fault("metals.0", { code: "metal.file.unknown-key", params: { keys: ["shade"] } }),
  );
  expect(refusalOf(() => readOwnMetals("{")).code).toBe("metal.file.not-json");
});

test("two metals under one id are refused", () => {
  const own = readOwnMetals(file(1, [harbourBell, harbourBell]));
  expect(refusalOf(() => withOwn(builtIn, own))).toMatchObject({
    code: "metal.refusal.id-twice",
    params: { id: "own-harbour-bell" },
  });
});

test("a changed file must carry a higher version than the one held", () => {
  const held = readOwnMetals(file(2));
  const changed = [{ ...harbourBell, name: "Harbour bell metal, old" }];
  expect(refusalOf(() => readOwnMetals(file(2, changed), held))).toMatchObject({
    code: "metal.file.version",
    params: { version: 2, held: 2 },
  });
  expect(readOwnMetals(file(3, changed), held).version).toBe(3);
  expect(readOwnMetals(file(2), held)).toEqual(held);
});

test("a density far from its composition is doubted but not refused", () => {
  const odd = { ...harbourBell, density_g_cm3: { nominal: 7.5, low: 7.4, high: 7.6 } };
  const [doubt] = warningsAbout(readOwnMetals(file(1, [odd])));
  expect(doubt).toMatchObject({ code: "metal.own.far-from-mixture", params: { given_g_cm3: 7.5 } });
  // 78 copper 22 tin: 8.6 in handbooks (from memory); plainly added volumes give 8.51
  expect(doubt?.params?.law_g_cm3).toBeCloseTo(8.6, 1);
  expect(warningsAbout(readOwnMetals(file()))).toEqual([]);
});

/** An invented casting alloy, as dense as lead and antimony are. */
const ballast = {
  ...harbourBell,
  id: "own-ballast",
  name: "Ballast metal",
  composition: { Pb: [0.94, 0.93, 0.95], Sb: [0.06, 0.05, 0.07] },
  density_g_cm3: { nominal: 10.9, low: 10.88, high: 10.92 },
  colour: "grey",
};

test("an own metal is a core, a skin and a part of mixtures, each with its page", () => {
  const library = withOwn(builtIn, readOwnMetals(file(1, [ballast])));
  const all = candidates([10.55, 10.6], library.metal("ag-999"), undefined, library);
  const core = all.find(({ id }) => id === "core-own-ballast-skin-el-ag");
  // volumes add: s·10.50 + (1 − s)·10.90 = 10.55 … 10.60 gives 0.75 … 0.875; both bands widen it
  const [thin, thick] = core?.detail?.kind === "core-and-skin" ? core.detail.skinShare : [0, 0];
  expect(thin).toBeLessThan(0.75);
  expect(thick).toBeGreaterThan(0.875);
  expect(core?.likelihood).toBe("common");
  expect(all.map(({ id }) => id)).toContain("core-el-cu-skin-own-ballast");
  const mixture = all.find(({ id }) => id === "mix-own-ballast-cu");
  const [low, high] = mixture?.detail?.kind === "mixture" ? mixture.detail.share : [0, 0];
  // volumes add: w = (1/ρ − 1/ρ_Cu) / (1/10.9 − 1/ρ_Cu), about 0.85 and 0.87
  const copper = builtIn.metal("el-cu").densityGPerCm3.nominal;
  const share = (density: number) => (1 / density - 1 / copper) / (1 / 10.9 - 1 / copper);
  expect([low, high]).toEqual([expect.closeTo(share(10.55), 9), expect.closeTo(share(10.6), 9)]);
  expect(mixture?.as.composition.Pb?.[0]).toBeCloseTo((0.94 * (low + high)) / 2, 9);
  for (const id of ["core-own-ballast-skin-el-ag", "mix-own-ballast-cu"])
    expect(JSON.stringify(compositeById(id, library)?.called)).toMatch(/Ballast metal/);
  expect(compositeById("mix-own-ballast-cu", builtIn)).toBeUndefined();
});

test("a result names the core that its owner knows of, and without it does not", () => {
  const library = withOwn(builtIn, readOwnMetals(file(1, [ballast])));
  const within = (one: typeof builtIn) => left(stands(normally(10.5, 0.01), "ag-999", { library: one }));
  expect(within(library)).toContain("core-own-ballast-skin-el-ag");
  expect(within(builtIn)).not.toContain("core-own-ballast-skin-el-ag");
});

test("compute knows own metals where the library in force is given, and the built-in ones alone without", () => {
  const library = withOwn(builtIn, readOwnMetals(file(1, [ballast])));
  const request = {
    id: "a1",
    method: "hung",
    dry: { readings: ["109.00"] },
    immersed: { readings: ["99.02"] },
    liquid: { kind: "water", temperature_c: 20 },
    air: { altitude_m: 0 },
    balance: { readability_g: 0.01, repeatability_g: 0.01 },
    claim: "own-ballast",
  };
  expect(compute(request, library)).toMatchObject({ conformity: { claim: "own-ballast" } });
  expect(compute(request)).toMatchObject({ error: { at: "claim" } });
});
