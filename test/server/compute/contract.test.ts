import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it, test } from "vitest";
import { compute } from "../../../server/compute/compute.ts";
import { printedAnswer } from "../../../server/compute/printed.ts";
import { type Locale, locales } from "../../../views/messages/language.ts";
import { tell } from "../../../views/messages/tell.ts";
import schema from "./answer-v2.schema.json" with { type: "json" };
import { ounce } from "./answers.ts";

const valid = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(schema);

function answer(request: unknown, locale: Locale = "en") {
  const printed = JSON.parse(
    JSON.stringify(printedAnswer(compute(request), (message) => tell(message, locale))),
  );
  expect(valid(printed), JSON.stringify(valid.errors)).toBe(true);
  return printed;
}

const codes = (printed: { checks: { code: string; severity: string }[] }) =>
  printed.checks.map(({ code }) => code);

describe("the answer of the contract", () => {
  it("is valid for the published example, word for word in each language and with the same numbers", () => {
    const said = locales.map((locale) => answer(ounce, locale));
    expect(new Set(said.map(({ answer: text }) => text)).size).toBe(locales.length);
    for (const { answer: _, conformity, checks, ...rest } of said) {
      const { answer: __, conformity: first, checks: others, ...numbers } = said[0];
      expect(rest).toEqual(numbers);
      expect({ ...conformity, message: "" }).toEqual({ ...first, message: "" });
      expect(checks.map(({ code }: { code: string }) => code)).toEqual(codes({ checks: others }));
    }
  });

  it("is valid for a refusal, which names the key", () => {
    expect(answer({ ...ounce, air: { density_kg_m3: 1190, u_kg_m3: 17 } }).error.at).toBe(
      "air.density_kg_m3",
    );
    expect(answer({ ...ounce, colour: "yellow" }).error.at).toBe("colour");
  });

  it("names tungsten beside fine gold whatever the numbers, and its harmless test", () => {
    // 31.1035 g of 19.30 g/cm³ displace 1.6062 g in water of 21.4 °C (by hand, as above)
    const gold = answer({ ...ounce, immersed: { readings: ["29.4955"] }, claim: "au-999" });
    expect(gold.conformity.state).toBe("consistent-not-unique");
    expect(gold.not_excluded.map(({ id }: { id: string }) => id)).toContain("w-pure");
    expect(gold.next_tests[0].separates.length).toBeGreaterThan(0);
  });

  it("has one count of alternatives: none twice, none that is the claim under another name", () => {
    const ids = answer(ounce).not_excluded.map(({ id }: { id: string }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).not.toContain("el-ag");
    expect(ids[0]).toBe("ag-999");
  });

  it("excludes a claim by a magnet, and says which test did", () => {
    const pulled = answer({ ...ounce, evidence: [{ kind: "magnet", shows: "none" }] });
    expect(pulled.conformity.state).not.toBe("excluded");
    // 66.0 MS/m would be 113.8 % IACS; 31 % IACS is far below silver's 100 to 106 (programmed-instruction tables 9.1)
    const coil = { kind: "conductivity", percent_iacs: 31, u_percent_iacs: 0.5 };
    const struck = answer({ ...ounce, evidence: [coil] });
    expect(struck.conformity.state).toBe("excluded");
    expect(struck.excluded_by_tests).toContainEqual({ id: "ag-999", by: "conductivity" });
    expect(struck.not_excluded.map(({ id }: { id: string }) => id)).not.toContain("ag-999");
  });

  it("warns of the hazards of what is not excluded", () => {
    // lead at 11.34 g/cm³ without a claim: 31.1035 g displace 2.7345 g in water of 21.4 °C
    const { claim: _, ...unclaimed } = ounce;
    const lead = answer({ ...unclaimed, immersed: { readings: ["28.3690"] } });
    expect(lead.not_excluded.map(({ id }: { id: string }) => id)).toContain("el-pb");
    expect(lead.cautions).toContain("lead");
  });
});

describe("readings that cannot be true get no verdict", () => {
  test.each([
    ["floats", "check.floats", { dry: { readings: ["3.1200"] }, immersed: { readings: ["-8.4000"] } }],
    ["nothing displaced", "check.displacement-negative", { immersed: { readings: ["31.1036"] } }],
    ["denser than osmium", "check.not-covered", { immersed: { readings: ["29.9035"] } }],
    [
      "exchanged",
      "check.boxes-swapped",
      { dry: { readings: ["28.1435"] }, immersed: { readings: ["31.1035"] } },
    ],
    [
      "repeats against the stated scatter",
      "check.scatter-contradicts",
      { immersed: { readings: ["28.1435", "28.1475", "28.1450"] } },
    ],
    [
      "a trend",
      "check.still-climbing",
      { immersed: { readings: ["28.1400", "28.1412", "28.1424", "28.1436", "28.1448"] } },
    ],
  ])("%s", (_, code, change) => {
    const printed = answer({ ...ounce, ...change });
    expect(codes(printed)).toContain(code);
    expect(printed.checks.find((one: { code: string }) => one.code === code).severity).toBe("stop");
    expect(printed.conformity).toMatchObject({ claim: "ag-999", state: "no-valid-reading" });
    expect(printed.not_excluded).toEqual([]);
    expect(printed.fineness).toBeNull();
  });
});
