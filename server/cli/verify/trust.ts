import { existsSync, readFileSync } from "node:fs";
import { Refusal } from "../../../calibration/refusal.ts";
import { type OutsideHead, readOutside } from "../../ledger/checkpoint.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { readVerifierKey } from "../../ledger/note.ts";
import { pinnedKey } from "../../ledger/pinned-key.ts";
import { keyIdOfRaw } from "../../ledger/signing-key.ts";

/** What a check starts from, and where its key comes from. */
export interface GivenTrust {
  keyId?: string;
  /** all that are trusted; the chains of a shared ledger are signed each by its own */
  keyIds: string[];
  from: "key" | "pin" | "checkpoint";
  checkpoints: OutsideHead[];
}

/** The trusted key: as given, else pinned beside the folder, else that of a checkpoint kept elsewhere. Throws Refusal. */
export function trustIn(folder: string, keys: readonly string[], checkpoints: readonly string[]): GivenTrust {
  const outside = checkpoints.map(outsideHead);
  if (keys.length > 0) return trusting(keys.map(keyGiven), "key", outside);
  const pinned = pinnedKey(folder);
  if (pinned !== null) return trusting([pinned], "pin", outside);
  return trusting(
    outside.flatMap(({ signed }) => signed?.keyId ?? []),
    "checkpoint",
    outside,
  );
}

function trusting(keyIds: string[], from: GivenTrust["from"], checkpoints: OutsideHead[]): GivenTrust {
  const [keyId] = keyIds;
  return { ...(keyId === undefined ? {} : { keyId }), keyIds, from, checkpoints };
}

/** What of it is about this ledger: of the keys the one that it introduces, of the checkpoints its own. */
export async function trustFor(
  ledger: Ledger,
  { keyIds, from, checkpoints }: GivenTrust,
): Promise<GivenTrust> {
  const name = await ledger.name();
  const introduced = (await ledger.entries({ kind: "signing-key" })).flatMap((entry) =>
    entry.kind === "signing-key" ? entry.body.keyId : [],
  );
  const isOwn = (head: OutsideHead) =>
    head.origin === undefined ? introduced.includes(head.signed?.keyId ?? "") : head.origin === name;
  return trusting(
    keyIds.filter((keyId) => introduced.includes(keyId)),
    from,
    checkpoints.filter(isOwn),
  );
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
