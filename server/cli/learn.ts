import { createInterface } from "node:readline";
import { z } from "zod";
import type { Message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { toGrams } from "../../calibration/units.ts";
import { learn } from "../../drivers/learning/learn.ts";
import type { Learned } from "../../drivers/learning/learned.ts";
import type { Profile } from "../../drivers/learning/profile.ts";
import { type Answers, answersFrom, type Question } from "../../drivers/learning/questions.ts";
import type { Chunk, Recording } from "../../drivers/learning/recording.ts";
import {
  beginSession,
  goOn,
  heard,
  isFinished,
  leaveOut,
  sessionNow,
} from "../../drivers/learning/session.ts";
import type { Tell } from "../../views/messages/tell.ts";
import { balanceHeard, checkedChoice } from "../station/balance-choice.ts";
import { command } from "./command.ts";
import { recordingIn, textIn } from "./recording-in.ts";

const usage = {
  name: "learn",
  options: { line: { type: "string" }, recording: { type: "string" }, answers: { type: "string" } },
  takesArguments: true,
} as const;

/** `underhook learn`: 0 learned, 1 refused with the reason, 2 wrong arguments, 3 questions are open. */
export const run = (args: string[]): Promise<number> =>
  command(usage, args, async ({ values: { recording, answers, line }, positionals, say: { tell } }) => {
    const [port, ...more] = positionals;
    if (more.length > 0 || (port === undefined) === (recording === undefined))
      throw new Refusal("learn.one-source", { count: positionals.length });
    if (recording === undefined) return atTerminal(port!, line, tell);
    const given = answers === undefined ? {} : answersIn(answers);
    return printed(
      learnedFrom(() => recordingIn(recording), given),
      tell,
    );
  });

/** What is wrong with the recording itself is a refusal as well; a file that cannot be read is wrong use. */
function learnedFrom(recording: () => Recording, answers: Answers): Learned {
  try {
    return learn(recording(), { answers, learnedAt: new Date().toISOString() });
  } catch (error) {
    if (error instanceof Refusal && error.code !== "recording.unreadable") return { refused: error };
    throw error;
  }
}

const answerFile = z.record(z.string(), z.string());

/** Answers from a file. Throws Refusal when it is not `{"id":"value"}`. */
function answersIn(path: string): Answers {
  const text = textIn(path, "--answers");
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    throw new Refusal("learn.answers-file", { path }, "--answers");
  }
  const read = answerFile.safeParse(json);
  if (!read.success) throw new Refusal("learn.answers-file", { path }, "--answers");
  return answersFrom(read.data);
}

/** Prints what was learned as one JSON object; gives the exit status. */
function printed({ profile, questions, refused }: Learned, tell: Tell): number {
  const words = ({ code, params = {} }: Message) => tell(code, params);
  if (profile) console.log(JSON.stringify({ profile, reads: readsOf(profile) }));
  else if (questions) console.log(JSON.stringify({ questions: questions.map((one) => asked(one, words)) }));
  else console.log(JSON.stringify({ refused: { code: refused.code, message: words(refused) } }));
  return profile ? 0 : questions ? 3 : 1;
}

function asked({ id, asks, options, refused }: Question, words: (message: Message) => string) {
  return {
    id,
    asks: words(asks),
    options: options.map(({ value, message }) => ({ value, message: words(message) })),
    ...(refused && { refused: words(refused) }),
  };
}

const stabilities = { steady: "stable", moving: "moving", "not-told": "unknown" } as const;

/** Sample lines with what the profile reads in each, as `listen` prints it. */
function readsOf({ samples }: Profile) {
  return samples.map(({ raw, reading, event }) => {
    if (!reading) return { raw, event: { code: event } };
    const { text, unit, steady } = reading;
    return { raw, reading: { text, unit, grams: toGrams(text, unit), stability: stabilities[steady] } };
  });
}

/** Sets up the balance at a port: says each step on standard error, and goes on with each line typed. */
async function atTerminal(port: string, line: string | undefined, tell: Tell): Promise<number> {
  const say = (message: Message) => console.error(tell(message.code, message.params ?? {}));
  const chunks: Chunk[] = [];
  const nowMs = () => performance.now();
  let session = beginSession(nowMs());
  const balance = balanceHeard(
    checkedChoice({ address: port, ...(line !== undefined && { line }) }),
    (bytes) => {
      chunks.push({ atMs: nowMs(), bytes: Uint8Array.from(bytes) });
      session = heard(session);
    },
  );
  balance.onLine(({ event }) => {
    if (event && ["open", "refused", "lost", "back"].includes(event.kind)) say(event);
  });
  balance.start();
  const input = createInterface({ input: process.stdin });
  const typed = input[Symbol.asyncIterator]();
  const next = async () => {
    const { value, done } = await typed.next();
    return done ? null : String(value).trim();
  };
  try {
    while (!isFinished(session)) {
      const { message, asksDisplayed, canLeaveOut } = sessionNow(session);
      say(message);
      say({ code: asksDisplayed ? "learn.terminal.type" : "learn.terminal.enter" });
      if (canLeaveOut) say({ code: "learn.terminal.leave-out" });
      const text = await next();
      if (text === null) return 2;
      try {
        session =
          text === "-" && canLeaveOut ? leaveOut(session, nowMs()) : goOn(session, nowMs(), displayIn(text));
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        say(error);
      }
    }
    return await answered(
      { chunks, moments: session.moments, displayed: session.displayed },
      next,
      say,
      tell,
    );
  } finally {
    input.close();
    await balance.stop();
  }
}

/** "31.1035 g" as number and unit. */
function displayIn(typed: string): { text: string; unit: string } {
  const [, text = typed, unit = ""] = /^(.*\d\S*?)\s*([^\d\s.,]\S*)?$/.exec(typed) ?? [];
  return { text, unit };
}

/** Asks what the recording does not decide, until nothing is left to ask. */
async function answered(
  recording: Recording,
  next: () => Promise<string | null>,
  say: (message: Message) => void,
  tell: Tell,
): Promise<number> {
  const answers: Record<string, string> = {};
  for (;;) {
    const learned = learnedFrom(() => recording, answersFrom(answers));
    const [question] = learned.questions ?? [];
    if (!question) return printed(learned, tell);
    say(question.refused ?? question.asks);
    for (const { value, message } of question.options)
      console.error(`  ${value}: ${tell(message.code, message.params ?? {})}`);
    const answer = await next();
    if (answer === null) return printed(learned, tell);
    answers[question.id] = answer;
  }
}
