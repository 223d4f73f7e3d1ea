import { readFileSync, statSync } from "node:fs";
import { messageOf } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { Profile } from "../../drivers/learning/profile.ts";
import { importProfile } from "../../drivers/learning/samples.ts";
import { errorFacts } from "../../drivers/port-error.ts";
import { type BalanceChoice, checkedChoice } from "./balance-choice.ts";
import type { StoredProfile } from "./profile-repository.ts";

/** A balance told on the command line. */
export interface ToldCable {
  choice: BalanceChoice;
  profile?: StoredProfile;
}

/**
 * The balance of `--balance`, `--line` and `--profile`. Throws Refusal when the address or the line
 * settings cannot be right, and when the profile cannot be read or does not read its own sample lines.
 */
export function cableFrom(given: {
  address: string;
  line?: string | undefined;
  profile?: string | undefined;
}): ToldCable {
  const { address, line, profile } = given;
  const choice = checkedChoice({ address, ...(line === undefined ? {} : { line }) });
  return { choice, ...(profile === undefined ? {} : { profile: profileFrom(profile) }) };
}

function profileFrom(path: string): StoredProfile {
  const profile = profileIn(path);
  return { name: profile.name, version: 1, keptAt: statSync(path).mtime.toISOString(), profile };
}

/** The profile in a file. Throws Refusal with its path when it cannot be read or is no good. */
export function profileIn(path: string): Profile {
  let text: string;
  try {
    text = readFileSync(path, "utf8");
  } catch (error) {
    throw new Refusal("profile.unreadable", { path, reason: errorFacts(error).message }, "profile");
  }
  try {
    return importProfile(text);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw new Refusal("profile.file", { path, because: messageOf(error) }, "profile");
  }
}
