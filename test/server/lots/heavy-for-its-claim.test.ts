import { expect, onTestFinished, test } from "vitest";
import { messageText } from "../../message-text.ts";
import { buildTestBench } from "../build.ts";
import { textOf } from "../web/recorded.ts";
import { openedLot, weighed } from "./screened.ts";

test("a piece that is denser than its claim allows is flagged as heavy, one that fits is not", async () => {
  const at = await buildTestBench();
  onTestFinished(() => at.close());
  const lot = await openedLot(at, { gross: "25.80", count: "2" });
  await at.post(`${lot}/pieces`, { celsius: "21.4" });
  // invented: 12.90 g as gold 585 of 13.3 g/cm³, and as tungsten of 19.2
  await weighed(at, lot, "31", "12.90", "11.932");
  const heavy = messageText("lot-check.heavy-for-claim");
  expect(await textOf(at, lot)).not.toContain(heavy);
  await weighed(at, lot, "32", "12.90", "12.230");
  expect(await textOf(at, lot)).toContain(heavy);
  // in the row of the piece, and as one of the flags that can be set
  const flag = new RegExp(messageText("lots.flag-names.heavy for its claim"), "g");
  expect((await textOf(at, lot)).match(flag)).toHaveLength(2);
});
