import { Refusal } from "../calibration/refusal.ts";
import { unescapeText } from "./escape.ts";

/** A request that a balance must be sent before it answers with a line, typed by its owner from its manual. */
export interface AskedLines {
  /** with escapes: "…\r\n", "\x05" */
  request: string;
  /** sent again and again, or only while a capture waits */
  when: "timer" | "capture";
  /** pause between two requests on the timer, ms */
  everyMs?: number;
  /** the owner has read what will be sent and agreed; without it nothing is ever sent */
  ownerAgreed: boolean;
}

export const usualAskingMs = 500;

/** Words that would change what the balance shows. Only a person may do that, standing at the balance. */
const changing = /zero|tare|calib|adjust|reset|\boff\b|^[zt]$/i;

/**
 * The bytes of a request. Throws Refusal when the owner has not agreed, when the text cannot be turned into bytes,
 * and when it reads as if it would zero, tare, adjust or switch off the balance.
 */
export function requestBytes({ request, ownerAgreed }: AskedLines): Uint8Array {
  if (!ownerAgreed) throw new Refusal("balance.request.not-agreed", { request }, "request");
  const bytes = unescapeText(request);
  if (bytes.length === 0) throw new Refusal("balance.request.empty", { request }, "request");
  if (changing.test(request.replace(/\\(?:x[0-9A-Fa-f]{2}|[rnt\\])/g, " ").trim()))
    throw new Refusal("balance.request.changing", { request }, "request");
  return bytes;
}
