import { randomUUID } from "node:crypto";
import { Refusal } from "../../../calibration/refusal.ts";
import { balanceName } from "../../../drivers/balance-name.ts";
import type { CheckKind } from "../../../views/checks/guides.ts";
import { ownScatter } from "../../checks/charts/epoch.ts";
import type { CheckResult } from "../../checks/check.ts";
import { checkWeight } from "../../checks/check-weight.ts";
import { eccentricity, panPlaces } from "../../checks/eccentricity.ts";
import { linearity } from "../../checks/linearity.ts";
import { referencePiece } from "../../checks/reference-piece.ts";
import { repeatability } from "../../checks/repeatability.ts";
import { icePoint, thermometerComparison } from "../../checks/thermometer.ts";
import { trainee } from "../../checks/trainee.ts";
import { zeroReturn } from "../../checks/zero-return.ts";
import { type Evaluate, isRefused } from "../../compute/evaluation.ts";
import { type NeededRole, rolesOf } from "../../methods/index.ts";
import type { Bench } from "../../station/bench.ts";
import { chartsOf } from "../../station/check-charts.ts";
import { type CheckRepository, thermometerName } from "../../station/check-repository.ts";
import { begun, type Capture, type Item } from "../../weighing/item.ts";
import { requestFor } from "../../weighing/request.ts";
import type { TypedCheck } from "./checks-form.ts";

export interface CheckedOn {
  bench: Bench;
  checks: CheckRepository;
  evaluate: Evaluate;
  at: string;
}

/** The balance whose checks are made and shown: the one in use, or the one whose readings are typed. */
export function balanceChecked(bench: Bench): string {
  return bench.scale?.name ?? "typed";
}

/** What a check was asked, as its function takes it, with what came of it. Throws Refusal. */
export async function checkMade(
  kind: CheckKind,
  typed: TypedCheck & { sensor: string },
  on: CheckedOn,
): Promise<{ result: CheckResult; asked: unknown }> {
  const { rows, readabilityGrams, resolutionCelsius, once, weight } = typed;
  const balance = balanceChecked(on.bench);
  const checked = { at: on.at, by: typed.by, of: balance };
  const { sensor } = typed;
  const ofThermometer = { ...checked, of: sensor === "" ? thermometerName : balanceName.sensor(sensor) };
  const all = (name: string) => rows.map((row) => row[name] ?? "");
  const known = on.checks.passedProfileOf(balance, readabilityGrams);
  const repeatabilityGrams = known.repeatability.value;
  function made<Test extends object>(
    test: Test,
    check: (test: Test, by: typeof checked) => CheckResult,
    by = checked,
  ) {
    return { result: check(test, by), asked: { ...test, typed: once } };
  }
  switch (kind) {
    case "check-weight":
      return made(
        {
          weight: weight(once.stated ?? ""),
          reading: all("reading")[0] ?? "",
          readabilityGrams,
          repeatabilityGrams,
        },
        checkWeight,
      );
    case "zero-return":
      return made(
        {
          zeros: rows.map(({ before = "", after = "" }) => ({ before, after })),
          readabilityGrams,
        },
        zeroReturn,
      );
    case "repeatability":
      return made({ condition: "dry" as const, readings: all("reading"), readabilityGrams }, repeatability);
    case "immersed-repeatability":
      return made(
        { condition: "immersed" as const, readings: all("reading"), readabilityGrams },
        repeatability,
      );
    case "linearity":
      return made(
        {
          // the same weight in several rows is one load weighed several times
          loads: [...new Set(all("stated"))].map((stated) => ({
            weights: [weight(stated)],
            readings: rows.flatMap((row) => (row.stated === stated ? [row.reading ?? ""] : [])),
          })),
          readabilityGrams,
          repeatabilityGrams,
        },
        linearity,
      );
    case "eccentricity": {
      const [centre = "", ...away] = all("reading");
      const places = away.map((reading, place) => ({ place: panPlaces[place] ?? `${place + 1}`, reading }));
      return made({ loadGrams: Number(centre), centre, places, readabilityGrams }, eccentricity);
    }
    case "ice-point":
      return made(
        { readingsCelsius: all("reading").map(Number), resolutionCelsius },
        icePoint,
        ofThermometer,
      );
    case "thermometer":
      return made(
        {
          pairs: rows.map(({ stated, reading }) => ({
            ownCelsius: Number(reading),
            referenceCelsius: Number(stated),
          })),
          resolutionCelsius,
          referenceUCelsius: Number(once.referenceU),
        },
        thermometerComparison,
        ofThermometer,
      );
    case "reference":
      return made(
        {
          piece: once.piece ?? "",
          stated: { gPerCm3: Number(once.stated), expandedGPerCm3: Number(once.expanded), at: on.at },
          measured: await throughTheProcedure(rows, once, balance, on),
        },
        referencePiece,
      );
    case "trainee": {
      const { piece = "", trainee: name = "" } = once;
      const chart = chartsOf(on.checks).find(({ kind, of }) => kind === "reference-density" && of === piece);
      if (chart === undefined) throw new Refusal("bench-check.trainee.no-piece", { piece }, "piece");
      const { s: sGPerCm3, dof } = ownScatter(chart);
      const runs = [];
      for (const row of rows) runs.push(await throughTheProcedure([row], once, balance, on));
      return made(
        {
          trainee: name,
          piece,
          runsGPerCm3: runs.map(({ gPerCm3 }) => gPerCm3),
          own: { sGPerCm3, dof },
        },
        trainee,
      );
    }
  }
}

/** The column of a check that holds the readings of a load: dry first, in the liquid last. */
const columnOf = (place: number, of: number) => (place === 0 ? "dry" : place === of - 1 ? "wet" : "full");

/** The reference piece computed exactly as a customer's piece is, at 20 °C. Throws Refusal. */
async function throughTheProcedure(
  rows: TypedCheck["rows"],
  once: TypedCheck["once"],
  balance: string,
  on: CheckedOn,
) {
  const { method } = on.bench.preferences;
  const roles = rolesOf(method);
  const captures = (role: NeededRole, name: string): Capture[] =>
    rows
      .filter((row) => row[name])
      .map((row, place) => ({
        id: `${role}-${place}`,
        at: on.at,
        role,
        text: row[name] ?? "",
        unit: "g",
        grams: row[name] ?? "",
        takenBy: "typed",
        balance,
        lines: [],
      }));
  const ticket = { ticket: once.piece ?? "", description: "reference piece", method };
  const item: Item = {
    ...begun({ id: randomUUID(), openedAt: on.at, ...ticket }),
    waterCelsius: once.celsius ?? "",
    captures: roles.flatMap((role, place) => captures(role, columnOf(place, roles.length))),
  };
  const request = requestFor(item, on.bench.conditions, on.bench.profileOf);
  if (request === undefined) throw new Refusal("check.reference.reading-missing", { count: roles.length });
  const evaluation = await on.evaluate(request);
  if (isRefused(evaluation)) throw new Refusal(evaluation.refused.code, evaluation.refused.params);
  const { density_20_g_cm3, expanded_g_cm3, volume_cm3, mass_g, liquid_density_g_cm3 } = evaluation.statement;
  const shownG = liquid_density_g_cm3 === null ? mass_g : volume_cm3 * liquid_density_g_cm3;
  return {
    gPerCm3: density_20_g_cm3,
    expandedGPerCm3: expanded_g_cm3,
    // one last place of the displaced mass, as the density shows it; of the dry mass where nothing is displaced
    resolutionGPerCm3: (density_20_g_cm3 * request.balance.immersed_readability_g) / shownG,
  };
}
