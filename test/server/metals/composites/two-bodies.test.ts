import { expect, test } from "vitest";
import { densityOfRest, massesOfTwo } from "../../../../server/metals/composites/two-bodies.ts";
import { refusalOf } from "../../../refusal-of.ts";

const exact = (value: number) => ({ value, u: 0 });

test("a 3 g ring of 15.5 with a half-carat diamond reads 13.9, and gives its metal back", () => {
  // 0.1 g of 3.52 in 3 g: a standing example of the trade (computed)
  const read = 3 / (2.9 / 15.5 + 0.1 / 3.52);
  expect(read).toBeCloseTo(13.92, 2);
  const metal = densityOfRest(
    { massG: exact(3), density: exact(read) },
    { massG: exact(0.1), density: exact(3.52) },
  );
  expect(metal.value).toBeCloseTo(15.5, 9);
});

test("the metal's uncertainty grows with the uncertainty of the stone's mass", () => {
  const metal = densityOfRest(
    { massG: exact(3), density: exact(13.92) },
    { massG: { value: 0.1, u: 0.005 }, density: { value: 3.52, u: 0.01 } },
  );
  // by hand: dρ/dm_s = ρ/m·(ρ/ρ_s − 1) = 15.5/2.9·(15.5/3.52 − 1) = 18.2 g/cm³ per g
  expect(metal.u).toBeCloseTo(0.005 * 18.2, 2);
});

test("gold in quartz is solved by the miners' formula", () => {
  // m_gold = ρ_g (ρ − ρ_q) / (ρ (ρ_g − ρ_q)) · m: common practice, written out here for 100 g of 4.00
  const byHand = ((19.3 * (4 - 2.65)) / (4 * (19.3 - 2.65))) * 100;
  const { firstG, secondG, firstShare } = massesOfTwo(
    { massG: exact(100), density: { value: 4, u: 0.01 } },
    { value: 19.3, u: 0 },
    { value: 2.65, u: 0.01 },
  );
  expect(firstG.value).toBeCloseTo(byHand, 9);
  expect(firstG.value + secondG.value).toBeCloseTo(100, 9);
  expect(firstShare.value).toBeCloseTo(byHand / 100, 9);
  expect(firstG.u).toBeGreaterThan(0.3);
});

test("native gold of unknown fineness widens the answer", () => {
  const whole = { massG: exact(100), density: { value: 4, u: 0.01 } };
  const fine = massesOfTwo(whole, { value: 19.3, u: 0.02 }, { value: 2.65, u: 0.01 });
  const native = massesOfTwo(whole, { value: 17.5, u: 0.8 }, { value: 2.65, u: 0.01 });
  expect(native.firstG.u).toBeGreaterThan(fine.firstG.u);
});

test("two bodies that cannot make up the whole are refused", () => {
  const rest = (massG: number) =>
    refusalOf(() =>
      densityOfRest({ massG: exact(3), density: exact(14) }, { massG: exact(massG), density: exact(3.5) }),
    );
  expect(rest(3.5)).toMatchObject({
    code: "composite.refusal.known-heavier",
    params: { known_g: 3.5, whole_g: 3 },
  });
  expect(rest(1).code).toBe("composite.refusal.known-larger");
  expect(
    refusalOf(() => massesOfTwo({ massG: exact(10), density: exact(21) }, exact(19.3), exact(2.65))),
  ).toMatchObject({ code: "composite.refusal.whole-outside", params: { low_g_cm3: 2.65, high_g_cm3: 19.3 } });
});

test("what is left of a piece is a metal, or refused: none denser than osmium, none whose volume is not known", () => {
  const whole = { massG: exact(12.344), density: { value: 13.15, u: 0.02 } };
  const left = (massG: number, u: number) => () =>
    densityOfRest(whole, { massG: { value: massG, u }, density: { value: 3.52, u: 0.01 } });
  // 11.844 g in 12.344/13.15 − 0.5/3.52 = 0.7966 cm³ (by hand)
  expect(left(0.5, 0.005)().value).toBeCloseTo(11.844 / 0.7966, 2);
  expect(refusalOf(left(2.5, 0.005)).code).toBe("composite.refusal.rest-denser");
  expect(refusalOf(left(0.5, 0.6)).code).toBe("composite.refusal.rest-open");
});

test("no body weighs less than nothing or more than the whole", () => {
  const whole = (value: number) => ({ massG: exact(10), density: { value, u: 0.05 } });
  const gold = { value: 19.3, u: 0.02 };
  const quartz = { value: 2.65, u: 0.01 };
  // two standard uncertainties of the whole reach beyond gold alone
  const pure = massesOfTwo(whole(19.35), gold, quartz);
  expect(pure.firstG).toMatchObject({ cut: true, range: [expect.any(Number), 10] });
  expect(pure.secondG.range[0]).toBe(0);
  expect(pure.firstG.range[0]).toBeGreaterThan(9.9);
  expect(refusalOf(() => massesOfTwo(whole(19.6), gold, quartz)).code).toBe(
    "composite.refusal.whole-outside",
  );
  // silver 925 and 999 as good as of one density
  const alike = [
    { value: 10.36, u: 0.1 },
    { value: 10.49, u: 0.1 },
  ] as const;
  expect(refusalOf(() => massesOfTwo(whole(10.42), ...alike)).code).toBe("composite.refusal.masses-open");
});
