import { type Message, message } from "../../calibration/message.ts";
import type { Item } from "../weighing/item.ts";

/** What a person has to look at when the balance changes under a piece; undefined when there is nothing. */
export function whatToLookAt(
  name: string,
  item: Item | undefined,
  how: "opened" | "heard-all-along",
): Message | undefined {
  if (how === "opened") return message("balance.check.exchanged");
  const isOther = item?.captures.some(({ excluded, balance }) => !excluded && balance !== name);
  return isOther ? message("balance.check.other-readings") : undefined;
}
