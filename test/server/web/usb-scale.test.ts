import { closeSync, writeSync } from "node:fs";
import { expect, test } from "vitest";
import { listScales } from "../../../drivers/hid/scales.ts";
import { createHidBalance } from "../../../drivers/hid-balance.ts";
import { scaleMessage } from "../../../server/web/balances/ports-view.ts";
import { scaleOnAPipe } from "../../drivers/hid/scale-on-a-pipe.ts";
import { until } from "../../until.ts";
import { buildTestBench } from "../build.ts";

/** Report 3 of the descriptor: status, unit g, exponent -2, weight; steady or moving, 31.11 g. */
const report = (steady: boolean, hundredths: number) =>
  Uint8Array.of(3, steady ? 4 : 3, 2, 0xfe, hundredths & 0xff, hundredths >> 8);

test("a USB scale of the open usage tables is weighed with on the page, from its raw reports to the record", async () => {
  const { path, roots, far } = scaleOnAPipe();

  const [scale] = listScales(roots);
  expect(scaleMessage(scale!)).toMatchObject({ code: "port.usb-scale.unsigned", params: { steps: 65535 } });
  const at = await buildTestBench();
  await at.balance.useSimulated(createHidBalance({ path, scales: () => listScales(roots) }));
  let steady = false;
  // The pipe joins what is written within one look of the driver; 50 ms lie between two.
  const sending = setInterval(() => writeSync(far, report(steady, 3111)), 50);
  const shown = async (url: string) => (await at.app.inject({ url, headers: { host: "localhost:1" } })).body;
  await at.post("/bench/piece", { ticket: "U-1", method: "hung", claim: "", key: "U-1" });
  await until(() => at.balance.stream?.latest().record?.reading.text === "31.11", "the reports");
  expect(await shown("/balances")).toMatch(/31\.11 g, moving/);
  expect((await at.post("/bench/captures", { role: "dry" })).statusCode).toBe(303);
  expect(at.bench.item?.captures).toHaveLength(0);
  steady = true;
  await until(() => at.bench.item?.captures.length === 1, "the steady reading");
  expect(at.bench.item?.captures[0]).toMatchObject({
    text: "31.11",
    unit: "g",
    takenBy: "mark",
    balance: `USB scale on ${path}`,
  });
  expect(at.bench.item?.captures[0]?.lines[0]?.raw).toBe("\\x03\\x04\\x02\\xFE'\\x0C");
  clearInterval(sending);
  await at.close();
  closeSync(far);
});
