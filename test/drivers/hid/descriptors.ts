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

/**
 * A descriptor put together from the open tables (sensor page 0x20): report 1 with the state of the sensor, seven
 * states from 1, and one value of 16 bits.
 */
export function sensorDescriptor({
  value = "0A 34 04 16 00 80 26 FF 7F 55 0E", // temperature, -32768 to 32767, power of ten -2, the tables' own unit
  physical = "",
  state = true,
} = {}): Uint8Array {
  const states = Array.from({ length: 7 }, (_, i) => `0A ${i.toString(16).padStart(2, "0")} 08`).join(" ");
  return bytes(`
    05 20 09 33 A1 00
      85 01
      ${state ? `0A 01 02 A1 02 15 01 25 07 75 08 95 01 ${states} 81 00 C0` : ""}
      ${value} ${physical} 75 10 95 01 81 02
    C0`);
}
