import { successorText } from "./checkpoint.ts";
import type { BodyOf } from "./kinds.ts";
import { signatureHolds } from "./signing-key.ts";

/** True when a key that counts signed the id of the one that is introduced here. `keys`: public keys known so far by id. */
export function vouches(
  { keyId, vouchedBy }: BodyOf<"signing-key">,
  keys: ReadonlyMap<string, string>,
  counts: (keyId: string) => boolean,
): boolean {
  if (vouchedBy === undefined || vouchedBy.keyId === keyId || !counts(vouchedBy.keyId)) return false;
  const publicKey = keys.get(vouchedBy.keyId);
  return publicKey !== undefined && signatureHolds(successorText(keyId), vouchedBy.signature, publicKey);
}
