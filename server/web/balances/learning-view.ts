import { message } from "../../../calibration/message.ts";
import { nameMessage } from "../../../drivers/balance-name.ts";
import { escapeBytes } from "../../../drivers/escape.ts";
import type { StoredFinding as KeptFinding, Profile } from "../../../drivers/learning/profile.ts";
import { sampleMessage } from "../../../drivers/learning/samples.ts";
import { type Session, sessionNow, steps } from "../../../drivers/learning/session.ts";
import type { LearningView, StepView } from "../../../views/balances/learning.tsx";
import type { SampleView } from "../../../views/balances/samples.tsx";
import type { Sentence } from "../../../views/sentence.tsx";
import type { BalanceInUse } from "../../station/balance-in-use.ts";
import type { Learning } from "../../station/learning.ts";

/** Setting the balance in use up, as its page draws it. */
export function learningView(learning: Learning, balance: BalanceInUse, csrfToken: string): LearningView {
  return {
    balance: balance.scale ? nameMessage(balance.scale.name) : message("balance.now.none"),
    canListen: balance.choice !== undefined,
    ...runningOf(learning),
    ...learnedOf(learning),
    csrfToken,
  };
}

function runningOf({ session, newestBytes }: Learning): Pick<LearningView, "running"> {
  if (!session) return {};
  return { running: { ...sessionNow(session), lines: lastLines(newestBytes), steps: stepsOf(session) } };
}

const linesShown = 6;
const longestShown = 100;

/** The last lines of some bytes for people, cut behind their line ends. */
function lastLines(bytes: Uint8Array): string[] {
  const lines =
    Buffer.from(bytes)
      .toString("latin1")
      .match(/[^\r\n]+[\r\n]*/g) ?? [];
  return lines
    .slice(-linesShown)
    .map((line) => escapeBytes(Buffer.from(line, "latin1")).slice(-longestShown));
}

/** Each step with how it stands; what was typed belongs to the moment it was typed in. */
function stepsOf({ step: current, moments, displayed }: Session): StepView[] {
  return steps.map(({ phase }, place): StepView => {
    const [from, to] = [moments[place], moments[place + 1]];
    const shown = displayed.find(({ atMs }) => from && atMs >= from.atMs && (!to || atMs < to.atMs));
    const past = from?.phase === "unmarked" ? "left-out" : "done";
    return {
      name: phase,
      stands: place < current ? past : place === current ? "now" : "later",
      ...(shown && { typed: `${shown.text} ${shown.unit}` }),
    };
  });
}

function learnedOf({ learned }: Learning): Pick<LearningView, "learned"> {
  if (!learned) return {};
  const { profile, questions = [], refused } = learned;
  const { facts, open } = findingsOf(profile?.findings ?? []);
  return {
    learned: {
      facts,
      open: refused ? [refused] : open,
      questions,
      samples: profile ? samplesOf(profile) : [],
      canBeKept: profile !== undefined,
    },
  };
}

/** What is sure and what is not; a profile of an earlier version holds sentences. */
export function findingsOf(findings: readonly KeptFinding[]): { facts: Sentence[]; open: Sentence[] } {
  const messagesOf = (sure: boolean) =>
    findings
      .filter((finding) => finding.sure === sure)
      .map((finding) => ("message" in finding ? finding.message : finding.says));
  return { facts: messagesOf(true), open: messagesOf(false) };
}

/** The sample lines with what the profile reads in each. */
export function samplesOf({ samples }: Profile): SampleView[] {
  return samples.map((sample) => ({ meaning: sampleMessage(sample), raw: sample.raw }));
}
