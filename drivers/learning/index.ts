/** The way in to learning a balance's lines. */
export { type Learned, learn } from "./learn.ts";
export { recordingFromText } from "./pasted.ts";
export { type Profile, profileSchema, type StoredFinding as KeptFinding } from "./profile.ts";
export { type Answers, answersFrom, type Question } from "./questions.ts";
export type { Chunk, Recording } from "./recording.ts";
export { recordingFromLines } from "./recording-lines.ts";
export { checkProfile, sampleMessage } from "./samples.ts";
export { beginSession, goOn, heard, isFinished, leaveOut, type Session, sessionNow } from "./session.ts";
export { exportProfile, importProfile, mustReadItsSamples } from "./stored.ts";
