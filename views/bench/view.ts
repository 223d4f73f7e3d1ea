import type { CurvePoint } from "../../calibration/distribution.ts";
import type { Code, Message, Params } from "../../calibration/message.ts";
import type { MethodName, Role } from "../methods/view.ts";
import type { PhotoView } from "../photos.tsx";
import type { ResultView, StateName } from "../result.tsx";
import type { BudgetRow, MetalBand } from "../result-parts.ts";
import type { Sentence } from "../sentence.tsx";
import type { LiveShown } from "./live-reading.tsx";

/** What went wrong with a form: the sentence, and the field it belongs to. */
export interface Problem {
  message: Sentence;
  field?: string | undefined;
  /** address of the form it was typed into */
  from?: string;
  /** what was typed, so that nothing typed is lost */
  typed?: Record<string, string>;
}

/** The repeats of the wet reading in the order they were made. */
export interface RepeatsView {
  repeats: { value: number; state: "kept" | "voided"; because?: Sentence }[];
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
  /** the water temperature, where it was typed, with its unit */
  temperature?: { first: string; second: string; withinCelsius: number; agrees: boolean };
}

/** How the piece stands with its second person. */
export interface SecondPersonView {
  /** the limit that asks for one who has not confirmed yet */
  due?: string;
  /** who confirmed just these readings */
  confirmed?: { by: string; when: string };
  /** who read otherwise, and what; no value of either stands here, so that the next reading is blind too */
  unlike?: { by: string; what: readonly (Role | "temperature")[] };
}

/** A reading kept for the piece, as it was taken. */
export interface CaptureView {
  /** id of its entry */
  id: string;
  role: Role;
  /** decimal text as shown by the balance or typed */
  text: string;
  unit: string;
  takenBy: Last<"bench.readings.how-taken", Code>;
  excluded?: { reason: Sentence };
}

/** The piece on the bench. */
export interface ItemView {
  id: string;
  ticket: string;
  description: string;
  method: MethodName;
  captures: readonly CaptureView[];
  /** decimal text in °C */
  waterCelsius?: string;
  closed?: { how: "recorded" | "called-off" };
}

/** What the code of a message ends with, after a beginning that others share. */
type Last<Begin extends string, C> = C extends `${Begin}.${infer End}` ? End : never;

/** The name of a step that has its words: `step.NAME.title` and the like. */
type StepName = { [Known in Code]: Known extends `step.${infer Name}.title` ? Name : never }[Code];

/** One line of the step list. */
export interface StepView {
  name: StepName;
  /** the reading it takes; none where something is stated, or the record written */
  role?: Role;
  state: "done" | "due" | "later";
}

/** A check with a question of its own: `CODE.ask`. */
type AskingCode = {
  [Known in Code]: Known extends `${infer Check}.ask` ? (Check extends Code ? Check : never) : never;
}[Code];

/** Something about how the piece was weighed, with its question and what to do. */
export interface CheckView {
  code: AskingCode;
  severity: "stop" | "warn";
  /** no answer settles it: a reading must be taken again */
  impossible?: boolean;
  params: Params;
  remedies: readonly { code: Code; params?: Params; offer?: { do: string } }[];
}

/** Why the bench is closed by its checks. */
export interface ClosedView {
  /** of the first failure that stands */
  since: string;
  message: Sentence;
  todo: Sentence;
}

/** What the piece will show once it is wet, and the weighing that this is about. */
export interface AheadView {
  message: readonly Message[];
  /** where the density is expected and how wide its interval will be, g/cm³ */
  expected?: { value: number; halfWidth: number };
  /** ids of what it will not exclude, the likeliest first */
  leaves: readonly string[];
  weighing: { claim: string; method: MethodName; massG: number; readabilityG: number; pieces: number };
}

/** An invented piece of the demonstration. */
export interface DemoPieceView {
  id: string;
  ticket: string;
}

type FieldName = { [Known in Code]: Known extends `weighing.fields.${infer Name}` ? Name : never }[Code];
type GroupName = { [Known in Code]: Known extends `weighing.groups.${infer Name}` ? Name : never }[Code];

/** One entry; a number has a unit, which may be none. */
export interface DetailField {
  name: FieldName;
  unit?: string;
}

export interface DetailGroup {
  name: GroupName;
  fields: readonly DetailField[];
}

/** What may be stated about a weighing of its method, and what was, by field. */
export interface DetailsView {
  groups: readonly DetailGroup[];
  values: Readonly<Record<string, string>>;
}

/** What the readings come to. */
export interface ResultShown {
  request: { confidence: number };
  statement: ResultStatement;
  curve: readonly CurvePoint[];
  displacedGrams: number;
}

/** The statement of the weighing, as far as the bench draws it. */
interface ResultStatement {
  density_g_cm3: number;
  u_g_cm3: number;
  /** null when every uncertainty is taken as known */
  dof: number | null;
  k: number;
  expanded_g_cm3: number;
  interval_g_cm3: readonly [number, number];
  interval_from: "gum" | "monte-carlo";
  relative_density: { apparent: number };
  mass_g: number;
  u_mass_g: number;
  volume_cm3: number;
  u_volume_cm3: number;
  /** null where no liquid was needed */
  liquid_density_g_cm3: number | null;
  budget: readonly BudgetRow[];
  checks: readonly Message[];
  conformity: { claim: string | null; state: StateName };
  not_excluded: readonly { id: string }[];
}

/** Everything the Bench page draws. Plain data, no ledger and no cable behind it. */
export interface BenchView {
  csrfToken: string;
  /** what the forms of this page are about, and how much of it the page shows */
  about: { subject: string; seen: number };
  item: ItemView | undefined;
  steps: readonly StepView[];
  /** undefined when readings are typed */
  scaleName: Sentence | undefined;
  /** balances that are heard already, to change over to */
  otherBalances: readonly { address: string; name: Sentence }[];
  /** what a person must look at on the balance before weighing on */
  scaleChecks: readonly { kind: string; message: Message }[];
  /** the balance said that it adjusted itself, and the reference piece was not weighed since */
  adjusted?: Sentence;
  waitingFor: Role | undefined;
  /** each load at rest is taken by itself */
  handsFree: boolean;
  error: Sentence | undefined;
  /** why the bench is closed by its checks: what failed, since when, what to do; weighing goes on */
  closed: ClosedView | undefined;
  /** what the form of the method states, by field and line by line; empty before it was filled in */
  stated?: { values: Readonly<Record<string, string>>; lines: readonly { label: Message; value: Message }[] };
  /** id of the metal that is claimed */
  claim?: string;
  /** id of the metal that is claimed, while the library does not have it any more */
  claimGone?: string;
  /** what the readings come to so far, or why they cannot be evaluated */
  evaluation: ResultShown | { refused: Sentence } | undefined;
  /** what may be stated about this weighing, and what was */
  details?: DetailsView;
  /** set while it must be said whether this is the piece of the ticket */
  otherItem?: OtherItemView;
  /** a second person who reads typed readings again; undefined when none is asked for */
  secondPerson?: SecondPersonView;
  /** what a piece weighed dry will show, while nothing is wet */
  beforeWetting: AheadView | undefined;
  checks: readonly CheckView[];
  /** what the readings mean so far; left out while they cannot be evaluated */
  result?: ResultView;
  repeats: RepeatsView | undefined;
  bands: readonly MetalBand[];
  /** the ticket that an empty field takes */
  nextTicket: string;
  /** the way to weigh that a new piece begins with */
  firstMethod: MethodName;
  /** what the ledger found when it was opened, */
  found: readonly Sentence[];
  /** why nothing can be stored at present; the reading on the balance is shown all the same */
  notStored?: Sentence;
  problem?: Problem;
  /** `truth`: what the invented piece that was just recorded really is */
  demo?: { items: readonly DemoPieceView[]; behind: string | undefined };
}

/** Taking each load by itself; `count` goes up with everything that is to be heard. */
export interface HandsFreeView {
  message: Sentence;
  taken: number;
  heard?: { kind: "taken" | "refused" | "lifted"; message: Sentence; count: number };
}

export interface LiveView {
  live: LiveShown | undefined;
  waitingFor: Role | undefined;
  /** why nothing was taken yet */
  waitsBecause?: Sentence | undefined;
  /** while each load at rest is taken by itself: what to do now, and what was sounded and spoken last */
  handsFree?: HandsFreeView | undefined;
}
