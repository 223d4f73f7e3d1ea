import type { Message } from "../../calibration/message.ts";
import type { ExcludedByTest } from "../conformity/evidence/weighed-evidence.ts";
import { type State, stateNow, type statesBefore } from "../conformity/state.ts";
import type {
  NoReading,
  StatedCheck,
  StatedConformity,
  StatedDecision,
  StatedDensity,
  StatedMeaning,
} from "./statement-shape.ts";

type Always =
  | "density_g_cm3"
  | "u_g_cm3"
  | "k"
  | "expanded_g_cm3"
  | "interval_g_cm3"
  | "interval_from"
  | "mass_g"
  | "u_mass_g"
  | "density_20_g_cm3";

/** A statement as a record holds it. What an earlier version did not state is left out; text is as it wrote it. */
export interface RecordedStatement extends Pick<StatedDensity, Always>, Earlier {
  checks: readonly (StatedCheck | string)[];
  conformity: StatedConformity;
  not_excluded: readonly ({ id: string } & Partial<StatedMeaning["not_excluded"][number]>)[];
  answer: Message | string;
  /** the first statements gave no reasons */
  excluded_by_tests?: (Omit<ExcludedByTest, "says"> & { says?: Message })[];
  fineness?: StatedMeaning["fineness"];
  cautions?: StatedMeaning["cautions"];
  next_tests?: StatedMeaning["next_tests"];
  versions?: StatedMeaning["versions"];
}

/** The statement of a record whose readings are those of no density. */
export type RecordedNoReading = Omit<NoReading, "id" | "versions"> & Partial<Pick<NoReading, "versions">>;

/** True for the statement of a measurement. */
export function isMeasured(statement: RecordedStatement | RecordedNoReading): statement is RecordedStatement {
  return statement.density_g_cm3 !== null;
}

/** Numbers that the first versions did not all state. */
type Earlier = { [K in Exclude<keyof StatedDensity, Always>]?: StatedDensity[K] | undefined };

/** An answer as records of earlier versions hold it. */
interface EarlierAnswer extends Omit<Pick<StatedDensity, Always>, "u_mass_g" | "density_20_g_cm3"> {
  u_mass_g?: number | undefined;
  density_20_g_cm3?: number | null | undefined;
  finding?:
    | {
        claim?: string | null | undefined;
        state: State | (typeof statesBefore)[number];
        because: string;
        conformity?: unknown;
      }
    | null
    | undefined;
  alive?: readonly string[] | undefined;
  warnings?: readonly string[] | undefined;
}

/** What a result entry, or the result of an amendment, says of its measurement. */
export interface RecordedResult {
  statement?: unknown;
  response?: EarlierAnswer | undefined;
}

/** The statement that counts for an entry of a result: made anew after its last test, or that of the entry itself. */
export function statementAfter(
  of: string,
  result: RecordedResult,
  entries: readonly { kind: string; body: unknown }[],
): RecordedStatement | RecordedNoReading {
  const anew = entries.findLast(({ kind, body }) => kind === "statement" && (body as Restated).of === of);
  return statementOf(anew ? (anew.body as Restated) : result);
}

interface Restated extends RecordedResult {
  of: string;
}

/** The statement of a record, read from entries of every version into one shape. */
export function statementOf({ statement, response }: RecordedResult): RecordedStatement | RecordedNoReading {
  if (statement !== undefined) return statement as RecordedStatement | RecordedNoReading;
  // the ledger lets no result in that holds neither
  const { finding, alive = [], warnings = [], ...numbers } = response!;
  const claim = finding?.claim ?? null;
  const decision = finding?.conformity as StatedDecision | undefined;
  return {
    ...numbers,
    u_mass_g: numbers.u_mass_g ?? 0,
    density_20_g_cm3: numbers.density_20_g_cm3 ?? numbers.density_g_cm3,
    checks: warnings,
    conformity: {
      claim,
      state: finding ? stateNow(finding.state, claim !== null) : "no-claim",
      ...(decision && { decision }),
    },
    not_excluded: alive.map((id) => ({ id })),
    answer: finding?.because ?? "",
  };
}
