import { expect, test } from "vitest";
import type { Message } from "../../../../calibration/message.ts";
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

// the displaced mass of each falls on a step of its scale, so that rounding does not move the value
test.each([
  ["ag-999", "hung", "0.1", 31.1],
  ["ag-999", "displaced", "0.1", 31.6],
  ["ag-925", "hung", "0.01", 5],
  ["ag-999", "displaced", "0.01", 4.21],
] as const)(
  "%s %s on a scale of %s g, %s g: plan and bench name the same that would decide, in one order",
  (claim, method, step, massG) => {
    const readabilityG = Number(step);
    const plan = planFor({ claim, massG, method, pieces: 1, readabilityG, confidence: 0.9545 });
    const shown = (grams: number) => ({ readings: [grams.toFixed(step.length - 2)] });
    const { dryG, immersedG, displacedG } = plan.expected;
    const answer = compute({
      id: "p",
      method,
      dry: shown(dryG),
      ...(method === "hung" ? { immersed: shown(immersedG) } : { rise: shown(displacedG) }),
      liquid: { kind: "water", temperature_c: 20, temperature_u_c: 0.5 },
      air: { density_kg_m3: 1.2, u_kg_m3: 0.03 },
      balance: { readability_g: readabilityG, repeatability_g: readabilityG / 2 },
      claim,
    });
    if ("error" in answer) throw new Error(JSON.stringify(answer.error));
    const ways = (answer.conformity.says?.params?.ways ?? { anyOf: [] }) as { anyOf: Message[] };
    const foreseen = plan.remedies.map(({ message }) => message);
    expect(plan.remedies.length).toBeGreaterThan(2);
    expect(ways.anyOf.map(({ code }) => code)).toEqual(foreseen.map(({ code }) => code));
    // the plan tries a ladder of masses, the bench solves for one, and its readings are rounded
    const mass = (all: readonly Message[]) =>
      Number(all.find(({ code }) => code === "conformity.would.mass")?.params?.mass_g);
    expect(mass(foreseen) / mass(ways.anyOf)).toBeGreaterThan(0.5);
    expect(mass(foreseen) / mass(ways.anyOf)).toBeLessThan(2);
  },
);
