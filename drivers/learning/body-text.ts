import { type BinaryNumber, frameText } from "./binary.ts";
import { framedText, textOf } from "./bytes.ts";
import type { Ending } from "./profile.ts";

/** The text of a line without parity, end and check. */
export function bodyText(
  body: Uint8Array,
  { ending, binary }: { ending: Ending; binary?: BinaryNumber | null | undefined },
): string {
  if (binary) return frameText(body, binary) ?? "";
  return ending.kind === "frame" ? framedText(body) : textOf(body);
}
