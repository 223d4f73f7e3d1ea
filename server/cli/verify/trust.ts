import { existsSync, readFileSync } from "node:fs";
import { Refusal } from "../../../calibration/refusal.ts";
import { type OutsideHead, readOutside } from "../../ledger/checkpoint.ts";
import { readVerifierKey } from "../../ledger/note.ts";
import { pinnedKey } from "../../ledger/pinned-key.ts";
import { keyIdOfRaw } from "../../ledger/signing-key.ts";

/** What a check starts from, and where its key comes from. */
export interface GivenTrust {
  keyId?: string;
  from: "key" | "pin" | "checkpoint";
  checkpoints: OutsideHead[];
}

/** The trusted key: as given, else pinned beside the folder, else that of a checkpoint kept elsewhere. Throws Refusal. */
export function trustIn(folder: string, key: string | undefined, checkpoints: readonly string[]): GivenTrust {
  const outside = checkpoints.map(outsideHead);
  if (key !== undefined) return { keyId: keyGiven(key), from: "key", checkpoints: outside };
  const pinned = pinnedKey(folder);
  if (pinned !== null) return { keyId: pinned, from: "pin", checkpoints: outside };
  const keyId = outside.find(({ signed }) => signed)?.signed?.keyId;
  return { ...(keyId === undefined ? {} : { keyId }), from: "checkpoint", checkpoints: outside };
}

/** A key as printed (64 hexadecimal digits, in groups or not) or as one verifier line. */
function keyGiven(typed: string): string {
  const digits = typed.replace(/\s/g, "").toLowerCase();
  if (/^[0-9a-f]{64}$/.test(digits)) return digits;
  const read = readVerifierKey(typed);
  if (read) return keyIdOfRaw(read.raw);
  throw new Refusal("ledger.verify.no-key-id", { typed: typed.slice(0, 80) }, "key");
}

function outsideHead(given: string): OutsideHead {
  const text = given.length < 1000 && existsSync(given) ? readFileSync(given, "utf8") : given;
  const read = readOutside(text);
  if (read) return read;
  throw new Refusal("ledger.verify.no-checkpoint", { typed: given.slice(0, 80) }, "checkpoint");
}
