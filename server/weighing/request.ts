import {
  assumedImmersedPerDry,
  assumedRepeatabilityPerReadability,
  type BalanceProfile,
} from "../checks/balance-profile.ts";
import type { ProfileNumber } from "../checks/current-number.ts";
import { methods, type NeededRole } from "../methods/index.ts";
import type { Conditions } from "./conditions.ts";
import type { Details } from "./details.ts";
import { type Capture, type Item, standing } from "./item.ts";
import { readabilityGrams } from "./readability.ts";
import { liquidTemperature } from "./sensed.ts";
import { seriesAsked } from "./series-asked.ts";
import { airAsked, hangerAsked, liquidAsked, loadAsked } from "./surroundings-asked.ts";

/** The readings of a piece under the keys of their method, or undefined while one is missing; with those after the dry ones. */
function weighings(item: Item) {
  const method = methods[item.method];
  const roles = method.loads.map(({ role }) => role);
  if (roles.some((role) => standing(item, role).length === 0)) return undefined;
  if (method.form && item.details.method === undefined) return undefined;
  const load = (role: NeededRole) => seriesAsked(item, standing(item, role));
  return {
    asked: { method: method.name, dry: load("dry"), ...method.asked({ load, details: item.details }) },
    wet: roles.slice(1).flatMap((role) => standing(item, role)),
  };
}

/** Gives the profile of a balance, by its name and readability, as its passed checks make it. */
export type ProfileOf = (balance: string, readabilityGrams: number) => BalanceProfile;

/**
 * What a check found, undefined where the profile only assumes it. A failed check may make a number worse than the one
 * that is known without it, never better.
 */
function measured(number: ProfileNumber | undefined, known: number): ProfileNumber | undefined {
  if (number === undefined || !("check" in number.origin)) return undefined;
  return number.origin.passed || number.value > known ? number : undefined;
}

/**
 * The balance as the readings, its checks and the conditions describe it. Decimals of the readings say the
 * readability, unless the steps of the display were stated; a number that a check found counts before one of the
 * conditions, and without either the bench takes two thirds of d dry and twice that immersed (common practice).
 */
export function balanceFor(
  { dry, wet, steps }: { dry: readonly Capture[]; wet: readonly Capture[]; steps: Details["steps"] },
  conditions: Conditions,
  profileOf?: ProfileOf,
) {
  const d = steps?.dry_g === undefined ? readabilityGrams(dry) : Number(steps.dry_g);
  const shownWet = wet.length === 0 ? d : readabilityGrams(wet);
  const dImmersed = steps?.wet_g === undefined ? shownWet : Number(steps.wet_g);
  const profile = profileOf?.(dry[0]?.balance ?? "typed", d);
  // Dry may have been weighed on one balance and immersed on another: each brings its own checks.
  const wetProfile = wet[0] ? profileOf?.(wet[0].balance, dImmersed) : profile;
  const statedDry = Number(conditions.repeatabilityGrams || d * assumedRepeatabilityPerReadability);
  const checkedDry = measured(profile?.repeatability, statedDry);
  const repeatability = checkedDry?.value ?? statedDry;
  const dryAssumed = !checkedDry && !conditions.repeatabilityGrams;
  const statedImmersed = Number(
    conditions.immersedRepeatabilityGrams ||
      Math.max(dImmersed * assumedRepeatabilityPerReadability, repeatability) * assumedImmersedPerDry,
  );
  const checkedImmersed = measured(wetProfile?.immersedRepeatability, statedImmersed);
  const statedLinearity = Number(conditions.linearityGrams);
  return {
    readability_g: d,
    immersed_readability_g: dImmersed,
    repeatability_g: repeatability,
    ...(checkedDry?.dof ? { repeatability_dof: checkedDry.dof } : {}),
    ...(dryAssumed ? { repeatability_assumed: true } : {}),
    immersed_repeatability_g: checkedImmersed?.value ?? statedImmersed,
    ...(checkedImmersed?.dof ? { immersed_repeatability_dof: checkedImmersed.dof } : {}),
    ...(checkedImmersed || conditions.immersedRepeatabilityGrams
      ? {}
      : { immersed_repeatability_assumed: true }),
    ...eccentricityOf(profile),
    ...(profile?.span && { span_u_relative: profile.span.value }),
    linearity_g: Math.max(
      ...[profile, wetProfile].map(
        (one) => measured(one?.linearity, statedLinearity)?.value ?? statedLinearity,
      ),
    ),
  };
}

function eccentricityOf(profile: BalanceProfile | undefined) {
  const found = measured(profile?.eccentricityPerGram, 0);
  return found ? { eccentricity_u_per_g: found.value } : {};
}

/**
 * What the bench asks `compute` for this piece, in the published form, or undefined while a reading or the water
 * temperature is missing. Readings go in as exact decimal text in g.
 */
export function requestFor(item: Item, conditions: Conditions, profileOf?: ProfileOf) {
  const weighed = weighings(item);
  if (weighed === undefined) return undefined;
  const inLiquid = inLiquidAsked(item, conditions, profileOf);
  if (inLiquid === undefined) return undefined;
  const { details } = item;
  const dry = standing(item, "dry");
  return {
    id: item.id,
    ...weighed.asked,
    ...onSecondBalance(item, weighed.asked, conditions, profileOf),
    ...inLiquid,
    air: airAsked(item, conditions),
    balance: balanceFor({ dry, wet: weighed.wet, steps: details.steps }, conditions, profileOf),
    ...loadAsked(details),
    ...(details.paired ? { paired: true } : {}),
    ...(item.claim === undefined ? {} : { claim: item.claim, ...ruleOf(item) }),
    confidence: Number(item.agreed?.confidence_percent ?? conditions.confidencePercent) / 100,
  };
}

/** The readings in the liquid with their own balance, where the dry ones were taken on another: their spans do not cancel. */
function onSecondBalance(item: Item, asked: object, conditions: Conditions, profileOf?: ProfileOf) {
  const load = methods[item.method].loads.at(-1);
  const [dry] = standing(item, "dry");
  const wet = load ? standing(item, load.role) : [];
  if (!load || load.key.length > 1 || wet[0] === undefined || wet[0].balance === dry?.balance) return {};
  const steps = item.details.steps?.wet_g === undefined ? undefined : { dry_g: item.details.steps.wet_g };
  const balance = balanceFor({ dry: wet, wet: [], steps }, conditions, profileOf);
  return { [load.key[0]]: { ...Object(Reflect.get(asked, load.key[0])), balance } };
}

/** The liquid and what hangs in it; nothing for a method without, undefined while the water temperature is missing. */
function inLiquidAsked(item: Item, conditions: Conditions, profileOf?: ProfileOf) {
  if (methods[item.method].pieceTemperature) return {};
  const dry = standing(item, "dry");
  const profile = profileOf?.(dry[0]?.balance ?? "typed", readabilityGrams(dry));
  const temperature = liquidTemperature(item, profile?.sensors);
  if (temperature === undefined) return undefined;
  return {
    liquid: liquidAsked(item, temperature, conditions, profile),
    hanger: hangerAsked(item.details, conditions),
    bubble_allowance_mg: Number(conditions.bubbleAllowanceMg),
  };
}

/** The rule agreed when the piece was opened: what the settings say by now would be chosen after the value is known. */
function ruleOf({ agreed }: Item) {
  if (agreed === undefined || agreed.kind === "none") return {};
  return { decision_rule: { kind: agreed.kind, multiple: Number(agreed.multiple) } };
}
