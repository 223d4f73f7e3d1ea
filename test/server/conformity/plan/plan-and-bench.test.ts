import { expect, test } from "vitest";
import { compute } from "../../../../server/compute/compute.ts";
import { planFor } from "../../../../server/conformity/plan/plan.ts";
import { builtIn } from "../../../../server/metals/library.ts";
import { readForm } from "../../../../server/web/forms/form.ts";
import { planForm } from "../../../../server/web/plan/plan-form.ts";
import { firstConditions } from "../../../../server/weighing/conditions.ts";
import { begun, type Capture, type Item } from "../../../../server/weighing/item.ts";
import { requestFor } from "../../../../server/weighing/request.ts";

const conditions = {
  ...firstConditions,
  altitudeMetres: "400",
  bubbleAllowanceMg: "1",
  wireMillimetres: "0.1",
};

function reading(role: Capture["role"], text: string): Capture {
  const at = "2026-03-02T09:00:00.000Z";
  return { id: role, at, role, text, unit: "g", grams: text, takenBy: "typed", balance: "typed", lines: [] };
}

test.each([
  ["hung", "0.1", "311.035"],
  ["hung", "0.01", "31.10"],
  ["hung", "0.001", "31.103"],
  ["hung", "0.0001", "31.1035"],
  ["displaced", "0.01", "31.10"],
] as const)(
  "%s on a scale of %s g: the bench states the width that the plan foresaw",
  (method, readability, mass) => {
    const form = {
      claim: "ag-999",
      method,
      mass,
      massUnit: "g",
      readability,
      readabilityUnit: "g",
      repeatability: "",
      pieces: "1",
    };
    const read = readForm(planForm(form, { conditions, library: builtIn }), form, "en");
    if ("problems" in read) throw new Error(JSON.stringify(read.problems));
    const plan = planFor(read.values);
    const decimals = readability.length - 2;
    const { dryG, immersedG, displacedG } = plan.expected;
    const wet =
      method === "hung"
        ? reading("immersed", immersedG.toFixed(decimals))
        : reading("rise", displacedG.toFixed(decimals));
    const item: Item = {
      ...begun({
        id: "p",
        openedAt: "2026-03-02T09:00:00.000Z",
        ticket: "P-1",
        description: "",
        method,
        claim: "ag-999",
      }),
      captures: [reading("dry", dryG.toFixed(decimals)), wet],
      waterCelsius: "20",
    };
    const answer = compute(requestFor(item, conditions));
    if ("error" in answer || answer.expanded_g_cm3 === null) throw new Error(JSON.stringify(answer));
    // the bench's readings are rounded to the display, which moves the displaced mass by up to a step
    const rounding = (2 * Number(readability)) / displacedG;
    const foreseen = plan.expandedGPerCm3 / plan.expected.gPerCm3;
    const stated = answer.expanded_g_cm3 / (answer.density_g_cm3 ?? Number.NaN);
    expect(Math.abs(stated / foreseen - 1)).toBeLessThan(0.01 + rounding);
  },
);
