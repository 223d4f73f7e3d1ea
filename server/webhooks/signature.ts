import { hash } from "node:crypto";

/** What is signed of a request. */
interface Request {
  method: string;
  url: string;
  contentType: string;
  body: string;
}

/** Signs with the key of the bench, which a report and a backup name; the signature is base64. */
interface Signer {
  keyId: string;
  sign(text: string): string;
}

/**
 * Headers by which the receiver sees whose request this is and that it arrived whole: the digest of the body (RFC 9530)
 * and an Ed25519 signature (RFC 9421) over method, address, media type and digest. `seconds` since 1970.
 */
export function signatureHeaders(
  { method, url, contentType, body }: Request,
  { keyId, sign }: Signer,
  seconds: number,
): Record<string, string> {
  const digest = `sha-256=:${hash("sha256", body, "base64")}:`;
  const covered = [
    ["@method", method],
    ["@target-uri", url],
    ["content-type", contentType],
    ["content-digest", digest],
  ] as const;
  const names = covered.map(([name]) => `"${name}"`).join(" ");
  const params = `(${names});created=${seconds};keyid="${keyId}";alg="ed25519"`;
  const base = [...covered.map(([name, value]) => `"${name}": ${value}`), `"@signature-params": ${params}`];
  return {
    "content-digest": digest,
    "signature-input": `bench=${params}`,
    signature: `bench=:${sign(base.join("\n"))}:`,
  };
}
