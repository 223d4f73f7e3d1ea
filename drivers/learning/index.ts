/** The way in to learning a balance's lines. */
export { type Hints, type Learned, learn } from "./learn.ts";
export { recordingFromText } from "./pasted.ts";
export { type KeptFinding, type Profile, profileJsonSchema, profileSchema } from "./profile.ts";
export type { Answers, Question } from "./questions.ts";
export { readByProfile } from "./reader.ts";
export type { Chunk, Moment, Phase, Recording } from "./recording.ts";
export { checkProfile, cutByProfile, sampleMessage } from "./samples.ts";
export { advance, beginSession, type Session, type SessionInput, sessionNow } from "./session.ts";
export { exportProfile, importProfile, mustReadItsSamples } from "./stored.ts";
