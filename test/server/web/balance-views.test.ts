import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { keptFor } from "../../../server/web/balances/ports-view.ts";
import { PluggedPorts } from "../../drivers/plugged-ports.ts";

test("what is told of a balance is kept for the device when it has a name of its own, and else it is said why not", () => {
  const ports = new PluggedPorts();
  onTestFinished(() => ports.remove());
  ports.plugIn("ttyUSB1", "1-1", "usb-adapter_A113", "A113");
  expect(keptFor(join(ports.roots.dev, "ttyUSB1"), ports.roots)).toEqual({
    code: "balance.kept-for.device",
    params: { identity: "USB 1a2b:0003 #A113" },
  });
  ports.plugIn("ttyUSB2", "1-2", null, "A113");
  expect(keptFor(join(ports.roots.dev, "ttyUSB2"), ports.roots)).toEqual({ code: "balance.kept-for.socket" });
});
