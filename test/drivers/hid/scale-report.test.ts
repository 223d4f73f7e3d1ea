import { expect, test } from "vitest";
import { inputFields } from "../../../drivers/hid/descriptor.ts";
import { scaleReports } from "../../../drivers/hid/scale-report.ts";
import { inWords } from "../sample-lines.ts";
import { scaleDescriptor } from "./descriptors.ts";

const reports = scaleReports(scaleDescriptor())!;
const read = (...report: number[]) => inWords(reports.read(Uint8Array.from(report)));

// Reports are invented; their layout and codes are those of the HID usage tables, section 33.
test("status, unit, power of ten and weight are found where the descriptor puts them", () => {
  expect(read(3, 0x04, 2, 0xfe, 0x27, 0x0c)).toBe("31.11 g stable"); // 0x0C27 = 3111
  expect(read(3, 0x03, 2, 0xfe, 0x27, 0x0c)).toBe("31.11 g moving");
  expect(read(3, 0x02, 2, 0xff, 0x00, 0x00)).toBe("0.0 g stable");
  expect(read(3, 0x04, 4, 0xfe, 0x05, 0x00)).toBe("0.05 ct stable");
  expect(read(3, 0x04, 10, 0xfd, 0xe8, 0x03)).toBe("1.000 ozt stable");
  expect(read(3, 0x04, 2, 0x01, 0x0c, 0x00)).toBe("120 g stable");
});

test("fault, below zero, above the limit and the wish to be adjusted are events and no numbers", () => {
  for (const [status, kind] of [
    [1, "error"],
    [5, "underload"],
    [6, "overload"],
    [7, "error"],
    [8, "error"],
  ] as const)
    expect(read(3, status, 2, 0xfe, 0x27, 0x0c)).toBe(kind);
});

test("taels, tons and pounds are refused", () => {
  for (const unit of [5, 8, 9, 12]) expect(read(3, 4, unit, 0xfe, 0x27, 0x0c)).toBe("not-a-weight");
});

test("an unknown unit, a short report and another report give no number", () => {
  expect(read(3, 4, 13, 0xfe, 0x27, 0x0c)).toBe("not-a-weight");
  expect(read(3, 4, 0, 0xfe, 0x27, 0x0c)).toBe("not-a-weight");
  expect(read(3, 4, 2, 0xfe, 0x27)).toBe("damaged");
  expect(read(4, 4, 2, 0xfe, 0x27, 0x0c)).toBe("nothing");
});

test("the limits of an unsigned field are stated, and a signed field goes below zero", () => {
  expect(reports).toMatchObject({ signed: false, largestSteps: 65535 });
  const signed = scaleReports(scaleDescriptor({ weight: "16 00 80 26 FF 7F 75 10" }))!;
  expect(signed).toMatchObject({ signed: true, largestSteps: 32767 });
  expect(inWords(signed.read(Uint8Array.of(3, 4, 2, 0xfe, 0x5d, 0xff)))).toBe("-1.63 g stable"); // 0xFF5D = -163
});

test("a scale that departs from the usual layout is read by its own descriptor", () => {
  const bare = scaleReports(
    scaleDescriptor({ status: false, reportId: false, weight: "15 00 27 FF FF FF 00 75 18" }),
  )!;
  expect(inWords(bare.read(Uint8Array.of(2, 0xfd, 0x71, 0x79, 0x01)))).toBe("96.625 g unknown"); // 0x017971 = 96625
});

test("a device without a weight field is no scale, and a descriptor that breaks off says so", () => {
  expect(scaleReports(Uint8Array.of(0x05, 0x01, 0x09, 0x06, 0xa1, 0x01, 0xc0))).toBeNull();
  expect(() => inputFields(Uint8Array.of(0x05, 0x8d, 0x27, 0xff))).toThrow(/item at byte 2/);
});
