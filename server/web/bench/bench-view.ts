import { decimalsShown } from "../../../calibration/decimal.ts";
import { nameMessage } from "../../../drivers/balance-name.ts";
import type { BenchView, DetailsView, Problem, RepeatsView } from "../../../views/bench/view.ts";
import { isRefused } from "../../compute/evaluation.ts";
import { demoPieces } from "../../demo/pieces.ts";
import { methods, rolesOf } from "../../methods/index.ts";
import type { Bench } from "../../station/bench.ts";
import { timeZoneOf } from "../../station/bench-settings.ts";
import { metalBands } from "../../station/metal-bands.ts";
import { impossible } from "../../weighing/checks/check.ts";
import { groupsOf, numberFields } from "../../weighing/detail-fields.ts";
import { fieldsOfDetails } from "../../weighing/details-shown.ts";
import type { Item } from "../../weighing/item.ts";
import { stepsOf } from "../../weighing/steps.ts";
import { evaluationStoppedBy, stopping } from "../../weighing/stop-checks.ts";
import { ticketAfter } from "../../weighing/ticket-after.ts";
import { resultViewOf } from "../results/result-view.ts";
import { whenOf } from "../when.ts";
import { checksNow } from "./checks-now.ts";
import { secondPersonView } from "./second-person-view.ts";

/** The bench as its page draws it. */
export function benchView(bench: Bench, csrfToken: string, demo: boolean, problem?: Problem): BenchView {
  const { item, checks } = bench;
  const open = item && !item.closed ? item : undefined;
  const evaluation =
    open && bench.evaluation && !isRefused(bench.evaluation)
      ? evaluationStoppedBy(bench.evaluation, stopping(open, checks))
      : bench.evaluation;
  const secondPerson = open && secondPersonView(bench);
  return {
    csrfToken,
    about: bench.about,
    nextTicket: (item && ticketAfter(item.ticket)) ?? "1",
    item,
    steps: open ? stepsOf(open) : [],
    scaleName: bench.scale && nameMessage(bench.scale.name),
    otherBalances: bench.otherBalances.map(({ address, name }) => ({ address, name: nameMessage(name) })),
    scaleChecks: bench.scale?.checks() ?? [],
    waitingFor: bench.waitingFor,
    handsFree: bench.handsFree.now !== undefined,
    error: bench.error,
    closed: bench.closed && {
      message: bench.closed.says,
      todo: bench.closed.todo,
      since: whenOf(bench.closed.since, timeZoneOf(bench.preferences)),
    },
    ...(bench.adjusted && { adjusted: bench.adjusted.notice }),
    ...(open?.claim === undefined ? {} : { claim: open.claim }),
    ...(open?.claim !== undefined && !bench.library.has(open.claim) ? { claimGone: open.claim } : {}),
    evaluation,
    beforeWetting: bench.beforeWetting,
    ...(secondPerson ? { secondPerson } : {}),
    ...(open ? { details: detailsOf(open) } : {}),
    ...(open?.details.method ? { stated: statedBy(open) } : {}),
    ...(evaluation && !isRefused(evaluation)
      ? { result: resultViewOf(evaluation.statement, bench.library) }
      : {}),
    checks: checksNow(bench).map((check) => ({ ...check, impossible: impossible.has(check.code) })),
    repeats: open && repeatsOf(open),
    bands: metalBands(bench.library, bench.preferences.metal),
    firstMethod: bench.preferences.method,
    found: bench.found,
    ...(bench.notStored === null ? {} : { notStored: bench.notStored }),
    ...(problem ? { problem } : {}),
    ...(demo ? { demo: { items: demoPieces, behind: itemBehind(item) } } : {}),
  };
}

/** A real bench never knows it; a demonstration tells it once the record is written. */
function itemBehind(item: Item | undefined): string | undefined {
  if (item?.closed?.how !== "recorded") return undefined;
  return demoPieces.find(({ ticket }) => ticket === item.ticket)?.id;
}

function repeatsOf(item: Item): RepeatsView | undefined {
  const role = rolesOf(item.method).at(-1);
  const captures = item.captures.filter((capture) => capture.role === role);
  if (captures.length < 2) return undefined;
  return {
    repeats: captures.map(({ grams, excluded }) =>
      excluded
        ? { value: Number(grams), state: "voided", because: excluded.reason }
        : { value: Number(grams), state: "kept" },
    ),
    unit: "g",
    decimals: Math.max(...captures.map(({ grams }) => decimalsShown(grams))),
  };
}

function statedBy({ method, details: { method: kept = {} } }: Item): NonNullable<BenchView["stated"]> {
  const { form } = methods[method];
  return { values: form?.fieldsOf(kept) ?? {}, lines: form?.lines(kept) ?? [] };
}

/** What may be stated about this weighing, by the groups of its method, and what was. */
function detailsOf({ method, details }: Item): DetailsView {
  const units: Readonly<Record<string, { unit: string }>> = numberFields;
  return {
    groups: groupsOf(method).map(({ name, fields }) => ({
      name,
      fields: fields.map((field) => ({ name: field, ...units[field] })),
    })),
    values: fieldsOfDetails(details),
  };
}
