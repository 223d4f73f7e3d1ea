import { lineEvent } from "../reading.ts";
import type { Shape } from "./shape.ts";

//   "2026-03-04 10:22"     "10:22:31"     "04.03.26"     "ID 0042"     "No. 17"     "Serial: A-113"
const date = "\\d{1,4}[-./]\\d{1,2}[-./]\\d{1,4}";
const time = "\\d{1,2}:\\d{2}(?::\\d{2})?(?: ?[AaPp][Mm])?";
const words = "ID|Id|id|No\\.?|Nr\\.?|Serial|Sample|Name|User|Date|Time|Lot|Signature|Sign\\.?";
const line = new RegExp(
  `^[ \\f]*(?:(?:(?:${words})[ .:#]*)?(?:${date})?[ ,T]*(?:${time})?|(?:${words})(?:[ .:#]+[\\w./ -]{0,40})?) *[\\f]*$`,
);

/** Lines of a print-out between the weights. Kept as they are, and never a number, however many digits they carry. */
export const dateAndIdLines: Shape = {
  id: "date-and-id-lines",
  reader: () => (text) =>
    line.test(text) ? lineEvent("line.housekeeping.print-out", { line: text.trim() }) : null,
};
