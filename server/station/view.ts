import type { Message } from "../../calibration/message.ts";
import type { FindingView } from "../../views/finding.tsx";
import type { PhotoView } from "../../views/photos.tsx";
import type { Told } from "../../views/told.tsx";
import type { BenchClosed } from "../checks/bench-closed.ts";
import type { Evaluation } from "../compute/evaluation.ts";
import type { DemoPiece } from "../demo/pieces.ts";
import type { MethodName, Role } from "../methods/index.ts";
import type { BeforeWetting } from "../weighing/before-wetting.ts";
import type { Check } from "../weighing/checks/check.ts";
import type { Item } from "../weighing/item.ts";
import type { Step } from "../weighing/steps.ts";
import type { Live, ScaleCheck } from "./scale.ts";

/** What went wrong with a form: the sentence, and the field it belongs to. */
export interface Problem {
  says: Told;
  field?: string | undefined;
  /** address of the form it was typed into */
  from?: string;
  /** what was typed, so that nothing typed is lost */
  typed?: Record<string, string>;
}

/** The band of a metal, g/cm³ at 20 °C, and whether people bring pieces said to be it. */
export interface MetalBand {
  id: string;
  name: string;
  low: number;
  high: number;
  claimable: boolean;
}

/** The repeats of the wet reading in the order they were made. */
export interface RepeatsView {
  repeats: { value: number; state: "kept" | "voided"; because?: string }[];
  unit: string;
  decimals: number;
}

/** A dry mass that is not the announced one; masses as they were written. */
export interface OtherItemView {
  ticket: string;
  from: "told" | "earlier";
  announced: string;
  weighed: string;
  apartG: number;
  withinG: number;
  /** with which the difference is written */
  decimals: number;
  ask?: Message;
  photos: readonly PhotoView[];
}

/** What a second person read, beside what was typed first; masses as they were typed. */
export interface SecondReadingView {
  by: string;
  typedBy: string;
  when: string;
  agrees: boolean;
  /** the limit that asked for it: "50 g" */
  above: string;
  readings: readonly {
    role: Role;
    first: string;
    second: string;
    withinG: number;
    agrees: boolean;
  }[];
}

/** How the piece stands with its second person. */
export interface SecondPersonView {
  /** the limit that asks for one who has not confirmed yet */
  due?: string;
  /** the newest word on just these readings */
  last?: SecondReadingView;
}

/** Everything the Bench page draws. Plain data, no ledger and no cable behind it. */
export interface BenchView {
  csrfToken: string;
  /** what the forms of this page are about, and how much of it the page shows */
  about: { subject: string; seen: number };
  item: Item | undefined;
  steps: Step[];
  /** undefined when readings are typed */
  scaleName: Told | undefined;
  /** balances that are heard already, to change over to */
  otherBalances: readonly { address: string; name: Told }[];
  /** what a person must look at on the balance before weighing on */
  scaleChecks: readonly ScaleCheck[];
  waitingFor: Role | undefined;
  /** set while each settled load of a role is taken by itself */
  eachLoad: { role: Role } | undefined;
  error: Told | undefined;
  /** why the bench is closed by its checks: what failed, since when, what to do; weighing goes on */
  closed: BenchClosed | undefined;
  /** what the form of the method states, by field and line by line; empty before it was filled in */
  stated?: { values: Readonly<Record<string, string>>; lines: readonly { label: Message; value: Message }[] };
  /** id of the metal that is claimed, while the library does not have it any more */
  claimGone?: string;
  evaluation: Evaluation | undefined;
  /** set while it must be said whether this is the piece of the ticket */
  otherItem?: OtherItemView;
  /** a second person who reads typed readings again; undefined when none is asked for */
  secondPerson?: SecondPersonView;
  /** what a piece weighed dry will show, while nothing is wet */
  beforeWetting: BeforeWetting | undefined;
  /** what this scale can tell the claim from, as the evaluation leaves it */
  plainly: Message | undefined;
  checks: readonly Check[];
  /** what the readings mean so far; left out while they cannot be evaluated */
  result?: FindingView;
  repeats: RepeatsView | undefined;
  bands: readonly MetalBand[];
  /** the way to weigh that a new piece begins with */
  firstMethod: MethodName;
  /** what the ledger found when it was opened, */
  found: readonly Told[];
  /** why nothing can be stored at present; the reading on the balance is shown all the same */
  notStored?: Told;
  problem?: Problem;
  /** `truth`: what the invented piece that was just recorded really is */
  demo?: { counter: string; items: readonly DemoPiece[]; truth: string | undefined };
}

export interface LiveView {
  live: Live | undefined;
  waitingFor: Role | undefined;
  /** why nothing was taken yet */
  waitsBecause?: Told | undefined;
  /** what to do now while each settled load is taken by itself */
  eachLoad?: { role: Role; says: Told; taken: number } | undefined;
}
