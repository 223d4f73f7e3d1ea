import type { Message, Reason } from "../../calibration/message.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { Role } from "../methods/index.ts";
import type { Details } from "./details.ts";
import type { Ticket } from "./item.ts";
import type { TypedAgain } from "./second-person.ts";
import type { Reading } from "./taken-reading.ts";

/**
 * What every command names: the subject it is about, and how many entries about it the page had seen that gave it. "now"
 * for what no page gave: a load that came to rest, or a step the bench goes on to by itself.
 */
export interface About {
  subject: string;
  seen: number | "now";
}

/** Why an entry no longer counts, and who says so; an empty `by` names nobody. */
interface Exclusion {
  entry: string;
  reason: Reason;
  by?: string;
}

/** What can be asked of a weighing, while it goes on and once its record stands. */
export type WeighingCommandContent =
  | { do: "start-weighing"; ticket: Ticket }
  | { do: "take-reading"; role: Role; reading: Reading }
  | { do: "state-temperature"; celsius: string }
  | { do: "state-details"; details: Details }
  | { do: "note"; message: Message }
  | ({ do: "exclude-reading" } & Exclusion)
  | { do: "swap-readings" }
  | { do: "add-test"; test: BodyOf<"evidence"> }
  | ({ do: "exclude-test" } & Exclusion)
  | { do: "add-photo"; photo: BodyOf<"photo"> }
  | ({ do: "exclude-photo" } & Exclusion)
  | { do: "confirm-item"; reason: string; by: string }
  | {
      do: "second-reading";
      by: string;
      typedBy: string;
      again: readonly TypedAgain[];
      celsius?: string | undefined;
    }
  | { do: "answer-check"; found: string; stands: boolean; by: string }
  | { do: "call-off"; reason: Reason }
  | { do: "call-off-other-item" }
  | { do: "write-record"; found?: string; stands?: boolean }
  // the balance is asked, and nothing is written
  | { do: "request-reading"; role: Role }
  | { do: "accept-unstable" }
  | { do: "cancel-request" }
  /** `lot`: it goes on through the tickets of this lot */
  | { do: "auto-capture"; lot?: string }
  | { do: "end-auto-capture" }
  | { do: "balance-looked-at"; kind: string; check: Message }
  // once the record stands
  | ({ do: "amend" } & AmendmentTyped)
  | { do: "void"; reason: string; by: string }
  | { do: "weigh-again"; reading: Reading }
  | { do: "add-assay"; assay: BodyOf<"laboratory-assay"> }
  | ({ do: "exclude-assay" } & Exclusion);

export type WeighingCommand = About & WeighingCommandContent;

/** What an amendment puts right, as typed; what is empty stays as it is. `readings` by the id of their entry. */
export interface AmendmentTyped {
  by: string;
  second: string;
  reason: string;
  ticket: string;
  description: string;
  customer: string;
  celsius: string;
  readings: Readonly<Record<string, string>>;
  note: string;
}
