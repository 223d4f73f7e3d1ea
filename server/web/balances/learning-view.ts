import { message } from "../../../calibration/message.ts";
import { nameMessage } from "../../../drivers/balance-name.ts";
import type { StoredFinding as KeptFinding, Profile } from "../../../drivers/learning/profile.ts";
import { sampleMessage } from "../../../drivers/learning/samples.ts";
import { sessionNow } from "../../../drivers/learning/session.ts";
import type { LearningView } from "../../../views/balances/learning.tsx";
import type { SampleView } from "../../../views/balances/samples.tsx";
import type { Told } from "../../../views/told.tsx";
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

function runningOf({ session, chunksHeard }: Learning): Pick<LearningView, "running"> {
  return session ? { running: { ...sessionNow(session), heard: chunksHeard } } : {};
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
export function findingsOf(findings: readonly KeptFinding[]): { facts: Told[]; open: Told[] } {
  const told = (sure: boolean) =>
    findings
      .filter((finding) => finding.sure === sure)
      .map((finding) => ("message" in finding ? finding.message : finding.says));
  return { facts: told(true), open: told(false) };
}

/** The sample lines with what the profile reads in each. */
export function samplesOf({ samples }: Profile): SampleView[] {
  return samples.map((sample) => ({ meaning: sampleMessage(sample), raw: sample.raw }));
}
