const bytes = (text: string) =>
  Uint8Array.from(text.trim().split(/\s+/), (pair) => Number.parseInt(pair, 16));

const listed = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, i) => `09 ${(from + i).toString(16)}`).join(" ");

/**
 * A descriptor put together from the open tables (HID Usage Tables 1.7, section 33): report 3 with status, unit,
 * power of ten and weight. `weight` replaces the items of the weight field, `status` is left out on demand.
 */
export function scaleDescriptor({
  weight = "16 00 00 27 FF FF 00 00 75 10",
  status = true,
  reportId = true,
} = {}): Uint8Array {
  return bytes(`
    05 8D 09 20 A1 01
      09 32 A1 02
        ${reportId ? "85 03" : ""} 75 08 95 01
        ${status ? `15 01 25 08 09 70 A1 02 ${listed(0x71, 0x78)} 81 00 C0` : ""}
        15 01 25 0C 09 50 A1 02 ${listed(0x51, 0x5c)} 81 00 C0
        15 80 25 7F 09 41 81 02
        ${weight} 95 01 09 40 81 02
      C0
    C0`);
}
