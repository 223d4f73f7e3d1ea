import { createPrivateKey, X509Certificate } from "node:crypto";
import { existsSync, readFileSync, renameSync, statSync, writeFileSync } from "node:fs";
import { isIP } from "node:net";
import { join } from "node:path";
import { reasonOf } from "../../calibration/reason.ts";
import { Refusal } from "../../calibration/refusal.ts";

/** A certificate with its key, as TLS takes them, and what people compare. */
export interface Certificate {
  cert: string;
  key: string;
  /** SHA-256 of the certificate, 64 hex digits in groups of four */
  fingerprint: string;
  /** the names in it, wildcards left out */
  names: readonly string[];
  /** made by the bench itself */
  own: boolean;
  /** made anew at this start although there was one: it is over soon, or the machine has other addresses */
  renewed: boolean;
}

const dayMs = 24 * 3_600_000;
/** Browsers refuse certificates that are good for much longer than a year. */
const ownDays = 397;
const renewedDaysBefore = 30;

/** A certificate in files. Throws Refusal for files that cannot be read, are no pair, or are not good now. */
export function givenCertificate(files: { certificate: string; key: string }, now: Date): Certificate {
  const cert = textOf(files.certificate);
  const key = textOf(files.key);
  const read = parsed(cert, files.certificate);
  let fits: boolean;
  try {
    fits = read.checkPrivateKey(createPrivateKey(key));
  } catch (error) {
    throw new Refusal("access.certificate.no-key", { file: files.key, cause: reasonOf(error) });
  }
  if (!fits)
    throw new Refusal("access.certificate.other-key", { certificate: files.certificate, key: files.key });
  const { from, until } = goodBetween(read);
  if (now > until)
    throw new Refusal("access.certificate.over", { file: files.certificate, until: until.toISOString() });
  if (now < from)
    throw new Refusal("access.certificate.not-yet", { file: files.certificate, from: from.toISOString() });
  return { cert, key, ...seenIn(read), own: false, renewed: false };
}

/**
 * The bench's own certificate for these addresses and names, made at the first start (EC P-256, signed by itself) and
 * kept in two files that only its owner can read. Made anew when it ends soon or lacks an address.
 * Throws Refusal when others can read the key.
 */
export async function ownCertificate(
  folder: string,
  names: readonly string[],
  now: Date,
): Promise<Certificate> {
  const certFile = join(folder, "room-certificate.pem");
  const keyFile = join(folder, "room-key.pem");
  const before = existsSync(certFile) && existsSync(keyFile);
  if (before) {
    const mode = statSync(keyFile).mode & 0o777;
    if (mode & 0o077) throw new Refusal("access.file-readable", { file: keyFile, mode: mode.toString(8) });
    const cert = textOf(certFile);
    const read = parsed(cert, certFile);
    const soon = now.getTime() + renewedDaysBefore * dayMs > goodBetween(read).until.getTime();
    if (!soon && names.every((name) => isIn(read, name)))
      return { cert, key: textOf(keyFile), ...seenIn(read), own: true, renewed: false };
  }
  // only a start that makes one needs what makes it
  const { generate } = await import("selfsigned");
  const made = await generate([{ name: "commonName", value: "Underhook" }], {
    keyType: "ec",
    algorithm: "sha256",
    notBeforeDate: new Date(now.getTime() - dayMs),
    notAfterDate: new Date(now.getTime() + ownDays * dayMs),
    extensions: [
      { name: "basicConstraints", cA: false, critical: true },
      { name: "keyUsage", digitalSignature: true, critical: true },
      { name: "extKeyUsage", serverAuth: true },
      {
        name: "subjectAltName",
        altNames: names.map((name) => (isIP(name) ? { type: 7, ip: name } : { type: 2, value: name })),
      },
    ],
  });
  kept(keyFile, made.private);
  kept(certFile, made.cert);
  const read = parsed(made.cert, certFile);
  return { cert: made.cert, key: made.private, ...seenIn(read), own: true, renewed: before };
}

function kept(file: string, text: string): void {
  writeFileSync(`${file}.new`, text, { mode: 0o600 });
  renameSync(`${file}.new`, file);
}

function textOf(file: string): string {
  try {
    return readFileSync(file, "utf8");
  } catch (error) {
    throw new Refusal("access.certificate.unreadable", { file, cause: reasonOf(error) });
  }
}

function parsed(cert: string, file: string): X509Certificate {
  try {
    return new X509Certificate(cert);
  } catch {
    throw new Refusal("access.certificate.none", { file });
  }
}

const goodBetween = ({ validFrom, validTo }: X509Certificate) => ({
  from: new Date(validFrom),
  until: new Date(validTo),
});

const isIn = (read: X509Certificate, name: string): boolean =>
  (isIP(name) ? read.checkIP(name) : read.checkHost(name)) !== undefined;

function seenIn(read: X509Certificate): Pick<Certificate, "fingerprint" | "names"> {
  const names = [...(read.subjectAltName ?? "").matchAll(/(?:^|, )DNS:([^,"]+)/g)].map(
    ([, name = ""]) => name,
  );
  return {
    fingerprint: (read.fingerprint256.replaceAll(":", "").match(/.{4}/g) ?? []).join(" "),
    names: names.filter((name) => !name.includes("*")).map((name) => name.toLowerCase()),
  };
}
