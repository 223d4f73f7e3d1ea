import type { Message } from "../../../calibration/message.ts";

/** One thing that was looked at: in order, or what to do about it. */
export interface Finding {
  good: boolean;
  message: Message;
}
