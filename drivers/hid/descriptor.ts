/** One field of an input report: what it carries and where its bits lie. */
export interface ReportField extends Omit<Globals, "page"> {
  /** usages as 32 bits: page in the upper half */
  usages: number[];
  bitOffset: number;
  /** an array field holds the number of one of its usages, a variable field the value of its usage */
  array: boolean;
}

/** What holds for all items that follow. */
interface Globals {
  page: number;
  reportId: number;
  bitSize: number;
  count: number;
  logicalMinimum: number;
  logicalMaximum: number;
  /** both 0 where physical and logical values are the same */
  physicalMinimum: number;
  physicalMaximum: number;
  /** as 32 bits; 0 where none is stated */
  unit: number;
  /** power of ten of the unit, -8 to 7 */
  unitExponent: number;
}

const atFirst: Globals = {
  page: 0,
  reportId: 0,
  bitSize: 0,
  count: 0,
  logicalMinimum: 0,
  logicalMaximum: 0,
  physicalMinimum: 0,
  physicalMaximum: 0,
  unit: 0,
  unitExponent: 0,
};

/**
 * The input fields of a HID report descriptor. Throws RangeError when an item runs over the end.
 * Items as in USB-IF, Device Class Definition for HID 1.11, section 6.2.2 [clause from memory]; long items carry
 * nothing here and are stepped over.
 */
export function inputFields(descriptor: Uint8Array): ReportField[] {
  const fields: ReportField[] = [];
  const kept: Globals[] = [];
  const nextBit = new Map<number, number>();
  let globals = atFirst;
  let usages: number[] = [];
  let usageMinimum = 0;

  for (const item of items(descriptor)) {
    const { tag, unsigned, size } = item;
    const usage = size === 4 ? unsigned : globals.page * 0x10000 + unsigned;
    globals = withGlobal(globals, item);
    if (tag === "push") kept.push(globals);
    else if (tag === "pop") globals = kept.pop() ?? globals;
    else if (tag === "usage") usages.push(usage);
    else if (tag === "usage-minimum") usageMinimum = usage;
    else if (tag === "usage-maximum")
      for (let each = usageMinimum; each <= usage && usages.length < 256; each += 1) usages.push(each);
    else if (tag === "other-main") usages = [];
    else if (tag === "input") {
      const { page: _, ...held } = globals;
      const bitOffset = nextBit.get(held.reportId) ?? 0;
      nextBit.set(held.reportId, bitOffset + held.bitSize * held.count);
      const [constant, array] = [(unsigned & 1) === 1, (unsigned & 2) === 0];
      if (!constant) fields.push({ ...held, usages, bitOffset, array });
      usages = [];
    }
  }
  return fields;
}

function withGlobal(globals: Globals, { tag, unsigned, signed }: Item): Globals {
  switch (tag) {
    case "usage-page":
      return { ...globals, page: unsigned };
    case "logical-minimum":
      return { ...globals, logicalMinimum: signed };
    case "logical-maximum":
      // a range that begins at zero or above is written without a sign
      return { ...globals, logicalMaximum: globals.logicalMinimum < 0 ? signed : unsigned };
    case "physical-minimum":
      return { ...globals, physicalMinimum: signed };
    case "physical-maximum":
      return { ...globals, physicalMaximum: globals.physicalMinimum < 0 ? signed : unsigned };
    case "unit":
      return { ...globals, unit: unsigned };
    case "unit-exponent":
      // four bits with a sign; some descriptors write a whole byte with a sign
      return { ...globals, unitExponent: signed > 7 ? signed - 16 : signed };
    case "report-size":
      return { ...globals, bitSize: unsigned };
    case "report-count":
      return { ...globals, count: unsigned };
    case "report-id":
      return { ...globals, reportId: unsigned };
    default:
      return globals;
  }
}

interface Item {
  tag: Tag;
  size: number;
  unsigned: number;
  signed: number;
}

type Tag =
  | "usage-page"
  | "logical-minimum"
  | "logical-maximum"
  | "physical-minimum"
  | "physical-maximum"
  | "unit-exponent"
  | "unit"
  | "report-size"
  | "report-id"
  | "report-count"
  | "push"
  | "pop"
  | "usage"
  | "usage-minimum"
  | "usage-maximum"
  | "input"
  | "other-main"
  | "other";

/** Items by their prefix without its size. Output, feature and collections carry no input but end the usages. */
const tags = new Map<number, Tag>([
  [0x04, "usage-page"],
  [0x14, "logical-minimum"],
  [0x24, "logical-maximum"],
  [0x34, "physical-minimum"],
  [0x44, "physical-maximum"],
  [0x54, "unit-exponent"],
  [0x64, "unit"],
  [0x74, "report-size"],
  [0x84, "report-id"],
  [0x94, "report-count"],
  [0xa4, "push"],
  [0xb4, "pop"],
  [0x08, "usage"],
  [0x18, "usage-minimum"],
  [0x28, "usage-maximum"],
  [0x80, "input"],
  [0x90, "other-main"],
  [0xb0, "other-main"],
  [0xa0, "other-main"],
  [0xc0, "other-main"],
]);

function* items(bytes: Uint8Array): Generator<Item> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 0;
  while (at < bytes.length) {
    const prefix = bytes[at]!;
    const long = prefix === 0xfe;
    const size = long ? (bytes[at + 1] ?? 0) + 2 : ([0, 1, 2, 4][prefix & 3] ?? 0);
    if (at + 1 + size > bytes.length)
      throw new RangeError(`report descriptor: the item at byte ${at} runs over the end`);
    const data = at + 1;
    at = data + size;
    if (long) continue;
    const tag = tags.get(prefix & 0xfc) ?? "other";
    if (size === 0) yield { tag, size, unsigned: 0, signed: 0 };
    else if (size === 1) yield { tag, size, unsigned: view.getUint8(data), signed: view.getInt8(data) };
    else if (size === 2)
      yield { tag, size, unsigned: view.getUint16(data, true), signed: view.getInt16(data, true) };
    else yield { tag, size, unsigned: view.getUint32(data, true), signed: view.getInt32(data, true) };
  }
}

/** The value of one element of a field in a report, without the byte of the report's number. */
export function fieldValue(field: ReportField, report: Uint8Array, index = 0): number | null {
  const from = field.bitOffset + index * field.bitSize;
  if (from + field.bitSize > report.length * 8) return null;
  let value = 0;
  for (let bit = field.bitSize - 1; bit >= 0; bit -= 1) {
    const at = from + bit;
    value = value * 2 + ((report[at >> 3]! >> (at & 7)) & 1);
  }
  return field.logicalMinimum < 0 && value >= 2 ** (field.bitSize - 1) ? value - 2 ** field.bitSize : value;
}

/** The usage an array field points to, or the one whose element is set in a variable field; 0 for none. */
export function chosenUsage(field: ReportField, body: Uint8Array): number {
  if (field.array) return field.usages[(fieldValue(field, body) ?? -1) - field.logicalMinimum] ?? 0;
  const set = field.usages.findIndex(
    (_, index) => index < field.count && fieldValue(field, body, index) === 1,
  );
  return field.usages[set] ?? 0;
}

/** Steps times a power of ten as decimal text: 3111 and -2 give "31.11". */
export function decimalSteps(steps: number, exponent: number): string {
  const digits = String(Math.abs(steps));
  const sign = steps < 0 ? "-" : "";
  if (exponent >= 0) return sign + (steps === 0 ? "0" : digits + "0".repeat(exponent));
  const padded = digits.padStart(1 - exponent, "0");
  return `${sign}${padded.slice(0, exponent)}.${padded.slice(exponent)}`;
}
