import { readFileSync, statSync } from "node:fs";
import { importProfile } from "../../drivers/learning/index.ts";
import { type BalanceChoice, checkedChoice } from "./balance-choice.ts";
import type { KeptProfile } from "./kept-profiles.ts";

/** A balance told on the command line. */
export interface ToldCable {
  choice: BalanceChoice;
  profile?: KeptProfile;
}

/**
 * The balance of `--balance`, `--line` and `--profile`. Throws Error with a sentence when the address or the line
 * settings cannot be right, and when the profile cannot be read or does not read its own sample lines.
 */
export function cableFrom(told: {
  address: string;
  line?: string | undefined;
  profile?: string | undefined;
}): ToldCable {
  const { address, line, profile } = told;
  const choice = checkedChoice({ address, ...(line === undefined ? {} : { line }) });
  return { choice, ...(profile === undefined ? {} : { profile: profileFrom(profile) }) };
}

function profileFrom(path: string): KeptProfile {
  let text: string;
  let keptAt: string;
  try {
    text = readFileSync(path, "utf8");
    keptAt = statSync(path).mtime.toISOString();
  } catch (error) {
    throw new Error(
      `The profile ${path} cannot be read: ${(error as Error).message}. Right: a file that was exported on the Balances page.`,
    );
  }
  const imported = importProfile(text);
  if (imported.refused !== undefined) throw new Error(`The profile ${path} was refused. ${imported.refused}`);
  return { name: imported.profile.name, version: 1, keptAt, profile: imported.profile };
}
