import { cosignatureBytes, cosignedText, signatureLine } from "../note.ts";
import type { SigningKey } from "../signing-key.ts";

/** The line by which a key cosigns the text of a checkpoint (C2SP tlog-cosignature): as of this time, to the second. */
export function cosignatureLine(
  { name, key }: { name: string; key: SigningKey },
  text: string,
  at: Date,
): string {
  const time = Math.floor(at.getTime() / 1000);
  const signature = Buffer.from(key.sign(cosignedText(time, text)), "base64");
  return signatureLine({ name, raw: key.raw }, "cosignature", cosignatureBytes(time, signature));
}
