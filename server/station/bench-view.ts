import { decimalsShown } from "../../calibration/decimal.ts";
import { isRefused } from "../compute/evaluation.ts";
import { toldApartHere } from "../conformity/plan/plain-answer.ts";
import { demoCounter, demoPieces } from "../demo/pieces.ts";
import { methods, rolesOf } from "../methods/index.ts";
import type { Check } from "../weighing/checks/check.ts";
import { checksOf } from "../weighing/checks/index.ts";
import { type Piece, standing } from "../weighing/piece.ts";
import { balanceFor } from "../weighing/request.ts";
import { situationOf } from "../weighing/situation.ts";
import { stepsOf } from "../weighing/steps.ts";
import type { Bench } from "./bench.ts";
import { metalBands } from "./metal-bands.ts";
import { secondPersonView } from "./second-person-view.ts";
import type { BenchView, Problem, RepeatsView } from "./view.ts";

/** The bench as its page draws it. */
export function benchView(bench: Bench, csrfToken: string, demo: boolean, problem?: Problem): BenchView {
  const { piece, evaluation } = bench;
  const open = piece && !piece.closed ? piece : undefined;
  const secondPerson = open && secondPersonView(bench);
  return {
    csrfToken,
    key: open ? `${open.id}-${open.captures.length}-${open.waterCelsius ?? ""}` : bench.nextPiece,
    piece,
    steps: open ? stepsOf(open) : [],
    scaleName: bench.scale?.name,
    otherBalances: bench.otherBalances,
    scaleChecks: bench.scale?.checks() ?? [],
    waitingFor: bench.waitingFor,
    eachLoad: bench.eachLoad,
    trouble: bench.trouble,
    closed: bench.closed,
    evaluation,
    beforeWetting: bench.beforeWetting,
    plainly:
      evaluation && !isRefused(evaluation)
        ? toldApartHere(evaluation.finding.claim, evaluation.finding.alive, bench.library)
        : undefined,
    ...(secondPerson ? { secondPerson } : {}),
    ...(open?.details.method ? { stated: statedBy(open) } : {}),
    checks: open ? checksAbout(bench, open) : [],
    repeats: open && repeatsOf(open),
    bands: metalBands(bench.library, bench.preferences.metal),
    firstMethod: bench.preferences.method,
    found: bench.found,
    ...(bench.notStored === null ? {} : { notStored: bench.notStored }),
    ...(problem ? { problem } : {}),
    ...(demo ? { demo: { counter: demoCounter, pieces: demoPieces, truth: truthBehind(piece) } } : {}),
  };
}

/** A real bench never knows it; a demonstration tells it once the record is written. */
function truthBehind(piece: Piece | undefined): string | undefined {
  if (piece?.closed?.how !== "recorded") return undefined;
  return demoPieces.find(({ ticket }) => ticket === piece.ticket)?.truth;
}

/** What looks wrong about the piece so far, and about the immersion that is going on. */
export function checksAbout(bench: Bench, piece: Piece): Check[] {
  const dry = standing(piece, "dry");
  if (dry.length === 0) return [];
  const wet = rolesOf(piece.method)
    .filter((role) => role !== "dry")
    .flatMap((role) => standing(piece, role));
  const balance = balanceFor({ dry, wet, steps: piece.details.steps }, bench.conditions, bench.profileOf);
  const situation = situationOf(piece, balance, bench.evaluation, bench.library);
  return checksOf({ ...situation, live: bench.liveLooks });
}

/** The questions about the piece on the bench that are answered before its record is written. */
export function questionsBeforeRecord(bench: Bench): Check[] {
  const { piece } = bench;
  return piece && !piece.closed
    ? checksAbout(bench, piece).filter(({ severity }) => severity === "stop")
    : [];
}

function repeatsOf(piece: Piece): RepeatsView | undefined {
  const role = rolesOf(piece.method).at(-1);
  const captures = piece.captures.filter((capture) => capture.role === role);
  if (captures.length < 2) return undefined;
  return {
    repeats: captures.map(({ grams, setAside }) =>
      setAside
        ? { value: Number(grams), state: "voided", because: setAside.reason }
        : { value: Number(grams), state: "kept" },
    ),
    unit: "g",
    decimals: Math.max(...captures.map(({ grams }) => decimalsShown(grams))),
  };
}

function statedBy({ method, details: { method: kept = {} } }: Piece): NonNullable<BenchView["stated"]> {
  const { form } = methods[method];
  return { values: form?.fieldsOf(kept) ?? {}, lines: form?.lines(kept) ?? [] };
}
