import { z } from "zod";
import { purities } from "../../../calibration/liquid.ts";
import { isTimeZone } from "../../../calibration/local-time.ts";
import { message } from "../../../calibration/message.ts";
import { massUnits } from "../../../calibration/units.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { inLocale } from "../../../views/numbers.ts";
import type { NumberField } from "../../../views/settings/index.tsx";
import { methodNames } from "../../methods/index.ts";
import {
  type BenchSettings,
  guardBandRange,
  instrumentChoices,
  metalGroups,
  ruleChoices,
  secondUnits,
} from "../../station/bench-settings.ts";
import { type Conditions, conditionRanges } from "../../weighing/conditions.ts";
import { type Entries, refuseEntry } from "../forms/form.ts";

type NumberKey = Exclude<keyof Conditions, "purity">;

/** The numbers of a bench in the order they are asked; their words stand with the page. */
const asked = {
  balance: ["repeatabilityGrams", "immersedRepeatabilityGrams", "linearityGrams", "confidencePercent"],
  around: [
    "thermometerHalfWidthCelsius",
    "dissolvedSolidsMgPerL",
    "altitudeMetres",
    "wireMillimetres",
    "bubbleAllowanceMg",
  ],
} as const satisfies Record<string, readonly NumberKey[]>;

/** The numbers as the page shows them: what was typed while it is refused, else what counts. */
export function numberFields(
  conditions: Conditions,
  typed: Record<string, string>,
  locale: Locale,
): { balance: NumberField[]; around: NumberField[] } {
  const t = tellerOf(locale);
  const drawn = (key: NumberKey): NumberField => ({
    name: key,
    label: t(`settings.numbers.${key}.label`),
    unit: conditionRanges[key].unit,
    value: typed[key] ?? inLocale(conditions[key], locale),
    ...(t(`settings.numbers.${key}.hint`) === "" ? {} : { hint: t(`settings.numbers.${key}.hint`) }),
  });
  return { balance: asked.balance.map(drawn), around: asked.around.map(drawn) };
}

/** The form of the bench. What a form from before there was a choice leaves out stays as it is `now`. */
export const benchForm =
  (now: BenchSettings) =>
  ({ decimal, maybeDecimal, choice }: Entries) =>
    z
      .object({
        repeatabilityGrams: maybeDecimal(conditionRanges.repeatabilityGrams),
        immersedRepeatabilityGrams: maybeDecimal(conditionRanges.immersedRepeatabilityGrams),
        linearityGrams: decimal(conditionRanges.linearityGrams),
        confidencePercent: decimal(conditionRanges.confidencePercent),
        thermometerHalfWidthCelsius: decimal(conditionRanges.thermometerHalfWidthCelsius),
        dissolvedSolidsMgPerL: decimal(conditionRanges.dissolvedSolidsMgPerL),
        altitudeMetres: decimal(conditionRanges.altitudeMetres),
        wireMillimetres: decimal(conditionRanges.wireMillimetres),
        bubbleAllowanceMg: decimal(conditionRanges.bubbleAllowanceMg),
        scaleStep: decimal({ aboveZero: true, to: 1000 }),
        scaleStepUnit: choice(massUnits, { first: "g" }),
        method: choice(methodNames),
        metal: choice(metalGroups),
        water: choice(purities),
        secondUnit: choice(secondUnits, { first: now.secondUnit }),
        instruments: choice(instrumentChoices, { first: now.instruments }),
        rule: choice(ruleChoices, { first: now.decisionRule.kind }),
        ruleMultiple: decimal(guardBandRange).prefault(now.decisionRule.multiple),
      })
      .transform(
        ({
          scaleStep: text,
          scaleStepUnit: unit,
          method,
          metal,
          water: purity,
          secondUnit,
          instruments,
          rule: kind,
          ruleMultiple: multiple,
          repeatabilityGrams = "",
          immersedRepeatabilityGrams = "",
          ...numbers
        }): Partial<BenchSettings> => ({
          method,
          metal,
          secondUnit,
          instruments,
          scaleStep: { text, unit },
          decisionRule: { kind, multiple },
          conditions: { ...numbers, repeatabilityGrams, immersedRepeatabilityGrams, purity },
        }),
      );

/** Above which a second person confirms and agrees; empty for never. */
export const secondPersonForm = ({ maybeDecimal }: Entries) =>
  z
    .object({
      secondMassG: maybeDecimal({ unit: "g" }),
      secondWorth: maybeDecimal(),
      secondChange: maybeDecimal(),
    })
    .superRefine((limits, context) => {
      for (const [name, value] of Object.entries(limits))
        if (value !== undefined && !(Number(value) > 0))
          refuseEntry(
            context,
            name,
            message("settings.second-person.no-limit", { value: { decimal: value } }),
          );
    })
    .transform(({ secondMassG: massG = "", secondWorth: worth = "", secondChange: change = "" }) => ({
      massG,
      worth,
      change,
    }));

/** Where the bench stands; empty for the clock of the computer, and for no currency. */
export const placeForm = ({ maybeText }: Entries) =>
  z
    .object({ timeZone: maybeText(), currency: maybeText() })
    .superRefine(({ timeZone, currency }, context) => {
      if (timeZone !== undefined && !isTimeZone(timeZone))
        refuseEntry(context, "timeZone", message("settings.place.no-zone", { zone: timeZone }));
      if (currency !== undefined && !/^[A-Z]{3}$/.test(currency.toUpperCase()))
        refuseEntry(context, "currency", message("price.refused.currency", { currency }));
    })
    .transform(({ timeZone = "", currency = "" }) => ({ timeZone, currency: currency.toUpperCase() }));

/** The organisation as its reports name it. An accreditation has a body and a number, or neither. */
export const organisationForm = ({ maybeText }: Entries) => {
  const line = () => maybeText({ most: 200 }).transform((text = "") => text);
  return z
    .object({
      organisation: line(),
      address: line(),
      contact: line(),
      verifiedScale: line(),
      verifiedUntil: line(),
      accreditedBy: line(),
      accreditation: line(),
    })
    .superRefine(({ accreditedBy, accreditation }, context) => {
      if ((accreditedBy === "") !== (accreditation === ""))
        refuseEntry(context, "accreditation", message("settings.accreditation-half"));
    })
    .transform(({ organisation: name, ...rest }) => ({ name, ...rest }));
};
