import { type Message, message } from "../../calibration/message.ts";
import { nameMessage } from "../../drivers/balance-name.ts";

/** A balance as it is told by the name its readings and checks keep; readings that were typed have none. */
export function balanceLabel(name: string): Message | string {
  return name === "typed" ? message("bench.readings.how-taken.typed") : nameMessage(name);
}
