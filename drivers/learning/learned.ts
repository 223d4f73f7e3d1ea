import type { Message } from "../../calibration/message.ts";
import type { Ending, Profile } from "./profile.ts";
import type { Answers, Question } from "./questions.ts";

export interface Hints {
  name?: string;
  /** when it was learned, ISO 8601, UTC; the clock is the caller's */
  learnedAt?: string;
  /** answers to the questions of an earlier try on the same recording */
  answers?: Answers;
  /** the line end, where the recording cannot show it (pasted text) */
  ending?: Ending;
}

/** Questions that only the owner can answer, or the reason why nothing was learned. */
export type NotLearned =
  | { questions: Question[]; profile?: never; refused?: never }
  | { refused: Message; profile?: never; questions?: never };

/** A profile, or why there is none. */
export type Learned = { profile: Profile; questions?: never; refused?: never } | NotLearned;
