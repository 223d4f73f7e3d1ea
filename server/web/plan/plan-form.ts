import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { isMassUnit, massUnits, toGrams } from "../../../calibration/units.ts";
import type { PlanForm } from "../../../views/plan/index.tsx";
import type { PlannedWeighing } from "../../conformity/plan/planned-weighing.ts";
import type { Library } from "../../metals/library.ts";
import { plannedMethods } from "../../methods/index.ts";
import type { Conditions } from "../../weighing/conditions.ts";
import { plannedOn } from "../../weighing/planned-on.ts";
import { balanceFor } from "../../weighing/request.ts";
import type { Entries } from "../forms/form.ts";

/** The weighing that the form describes, with what the bench knows of itself. */
export const planForm =
  (typed: PlanForm, { conditions, library }: { conditions: Conditions; library: Library }) =>
  ({ choice, decimal, maybeDecimal, number }: Entries) => {
    const unitOf = (unit: string) => (isMassUnit(unit) ? unit : "g");
    const unit = () => choice(massUnits, { wrong: (unit) => message("plan.refusal.unit", { unit }) });
    const mass = { unit: unitOf(typed.massUnit), unitChosen: true, aboveZero: true } as const;
    const step = { ...mass, unit: unitOf(typed.readabilityUnit) };
    return z
      .object({
        method: choice(plannedMethods),
        claim: choice(
          library.metals.map(({ id }) => id),
          { wrong: (id) => message("metal.refusal.not-in-list", { id }) },
        ),
        mass: decimal(mass),
        massUnit: unit(),
        readability: decimal(step),
        readabilityUnit: unit(),
        repeatability: maybeDecimal(step),
        pieces: number({ from: 1, to: 1000, whole: true }),
      })
      .transform(({ method, claim, pieces, ...of }): PlannedWeighing => {
        const repeatabilityGrams =
          of.repeatability === undefined ? undefined : toGrams(of.repeatability, of.readabilityUnit);
        const balance = balanceFor(
          { dry: [], wet: [], steps: { dry_g: toGrams(of.readability, of.readabilityUnit) } },
          repeatabilityGrams === undefined ? conditions : { ...conditions, repeatabilityGrams },
        );
        const massG = Number(toGrams(of.mass, of.massUnit));
        return { claim, method, massG, pieces, ...plannedOn(balance, conditions) };
      });
  };
