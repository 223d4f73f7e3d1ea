import type { Message } from "../../calibration/message.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { NamedPerson } from "../settlements/person.ts";
import type { OtherMass } from "./announced-mass.ts";
import type { Check } from "./checks/check.ts";
import type { Agreed, Capture } from "./item.ts";
import type { SensorsNow } from "./sensor-value.ts";

/** What a decision rests on beside the weighing itself, gathered before it is made. */
export interface Known {
  /** whether readings come from an invented balance */
  simulated: boolean;
  /** the rule that a weighing started now is agreed at */
  rule: Agreed;
  /** ticket of another piece that is still being weighed */
  onBench?: string | undefined;
  /** the lot that a weighing is started in */
  lot?: KnownLot | undefined;
  /** a dry mass that is not the announced one and that nobody has explained */
  otherMass?: OtherMass | undefined;
  /** the limit that asks for a second person: "50 g" */
  secondPersonAbove?: string | undefined;
  /** who may sign in at this house; nobody where nobody signs in */
  people?: readonly NamedPerson[] | undefined;
  /** what the sensors beside the balance show at this moment */
  sensors?: SensorsNow;
  /** what looks wrong about the procedure, as far as the readings go */
  checks?: readonly Check[];
  /** the result the readings come to, or why they come to none; undefined while a reading is missing */
  result?: Result | NoResult | undefined;
  /** readings that an amendment puts right */
  readings?: readonly AmendedReading[];
}

/** What a weighing started in a lot rests on. */
export interface KnownLot {
  name: string;
  closed: boolean;
  /** temperature of its water, decimal text in °C */
  celsius?: string | undefined;
  /** what an item of the same ticket weighed in it, when its record stands: "12.90 g" */
  weighedBefore?: string | undefined;
}

type Result = BodyOf<"result">;
export interface NoResult {
  refused: Message;
  /** where the readings are those of no density: the result that says so, and the checks it rests on */
  noDensity?: { result: Result; stops: readonly Message[] };
}

/** A typed reading with what it should have been. */
export interface AmendedReading {
  capture: Capture;
  text: string;
  grams: string;
}
