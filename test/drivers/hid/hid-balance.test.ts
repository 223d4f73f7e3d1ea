import { closeSync, rmSync, writeSync } from "node:fs";
import { join } from "node:path";
import { expect, test, vi } from "vitest";
import { listScales } from "../../../drivers/hid/scales.ts";
import { createHidBalance } from "../../../drivers/hid-balance.ts";
import { inWords } from "../sample-lines.ts";
import { scaleOnAPipe } from "./scale-on-a-pipe.ts";

test("a USB scale is found by its descriptor, read report by report, and told when it is gone", async () => {
  const { root, path, roots, far } = scaleOnAPipe();
  const [scale] = listScales(roots);
  expect(scale).toMatchObject({ path, identity: "invented scale (1A2B:0003)" });

  const balance = createHidBalance({ path, scales: () => listScales(roots) });
  const heard: string[] = [];
  const raw: string[] = [];
  balance.onLine((record) => {
    heard.push(record.reading ? inWords({ reading: record.reading }) : record.event.kind);
    raw.push(record.raw);
  });
  balance.start();
  await vi.waitFor(() => expect(heard).toEqual(["open"]));
  writeSync(far, Uint8Array.of(3, 4, 2, 0xfe, 0x27, 0x0c));
  await vi.waitFor(() => expect(heard).toEqual(["open", "31.11 g stable"]));
  expect(raw[1]).toBe("\\x03\\x04\\x02\\xFE'\\x0C");
  rmSync(join(roots.sys, "class"), { recursive: true });
  closeSync(far);
  await vi.waitFor(() => expect(heard.slice(2)).toEqual(["lost", "refused"]));
  await balance.stop();
  rmSync(root, { recursive: true });
});
