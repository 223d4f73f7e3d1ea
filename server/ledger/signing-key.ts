import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
  sign,
  verify,
} from "node:crypto";
import { chmodSync, existsSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { reasonOf } from "../../calibration/reason.ts";
import { LedgerError } from "./error.ts";
import { spkiOf } from "./note.ts";

/** The key of a bench. It never leaves its file; its id and public half are shown and printed. */
export interface SigningKey {
  /** SHA-256 of the public key (SPKI, DER), 64 hex digits */
  keyId: string;
  /** SPKI, DER, base64 */
  publicKey: string;
  /** Ed25519 signature (RFC 8032) of the text, base64 */
  sign(text: string): string;
  /** the 32 bytes of the public key */
  raw: Buffer;
}

/**
 * Reads the Ed25519 key in `file`, made at first start, readable by its owner only (0600).
 * With `anyMode` others may read it: the file systems of sticks know no owner. Throws LedgerError "refused" when others can read the file or it holds no such key.
 */
export function signingKey(file: string, { anyMode = false } = {}): SigningKey {
  if (!existsSync(file)) {
    const { privateKey } = generateKeyPairSync("ed25519");
    writeFileSync(file, privateKey.export({ type: "pkcs8", format: "pem" }), { mode: 0o600, flag: "wx" });
    chmodSync(file, 0o600);
  }
  const mode = statSync(file).mode & 0o777;
  if (mode & 0o077 && !anyMode)
    throw new LedgerError("ledger.key.readable", { file, mode: mode.toString(8) }, "refused");
  let key: KeyObject;
  try {
    key = createPrivateKey(readFileSync(file));
    if (key.asymmetricKeyType !== "ed25519") throw new Error(`its type is ${key.asymmetricKeyType}`);
  } catch (cause) {
    throw new LedgerError("ledger.key.not-ed25519", { file, cause: reasonOf(cause) }, "refused", cause);
  }
  const publicKey = createPublicKey(key).export({ type: "spki", format: "der" }).toString("base64");
  return {
    keyId: keyIdOf(publicKey),
    publicKey,
    sign: (text) => sign(null, Buffer.from(text), key).toString("base64"),
    raw: Buffer.from(publicKey, "base64").subarray(-32),
  };
}

/** The id of a public key (SPKI, DER, base64): SHA-256 of its bytes, hex. */
export function keyIdOf(publicKey: string): string {
  return createHash("sha256").update(Buffer.from(publicKey, "base64")).digest("hex");
}

/** The same of the 32 bytes of an Ed25519 key. */
export function keyIdOfRaw(raw: Buffer): string {
  return keyIdOf(spkiOf(raw).toString("base64"));
}

/** True when the signature over the text was made with the key; false also when key or signature are no such thing. */
export function signatureHolds(text: string, signature: string, publicKey: string): boolean {
  try {
    const key = createPublicKey({ key: Buffer.from(publicKey, "base64"), type: "spki", format: "der" });
    return (
      key.asymmetricKeyType === "ed25519" &&
      verify(null, Buffer.from(text), key, Buffer.from(signature, "base64"))
    );
  } catch {
    return false;
  }
}

/** The id of the key in a file, without making one. */
export function publicKeyId(file: string): string {
  const publicKey = createPublicKey(readFileSync(file)).export({ type: "spki", format: "der" });
  return keyIdOf(publicKey.toString("base64"));
}
