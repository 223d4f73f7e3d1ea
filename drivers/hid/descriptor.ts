/** One field of an input report: what it carries and where its bits lie. */
export interface ReportField {
  reportId: number;
  /** usages as 32 bits: page in the upper half */
  usages: number[];
  bitOffset: number;
  bitSize: number;
  count: number;
  logicalMinimum: number;
  /** an array field holds the number of one of its usages, a variable field the value of its usage */
  array: boolean;
}

interface Globals {
  page: number;
  logicalMinimum: number;
  bitSize: number;
  count: number;
  reportId: number;
}

/**
 * The input fields of a HID report descriptor. Throws RangeError when an item runs over the end.
 * Items as in USB-IF, Device Class Definition for HID 1.11, section 6.2.2 [clause from memory]; long items carry
 * nothing here and are stepped over.
 */
export function inputFields(descriptor: Uint8Array): ReportField[] {
  const fields: ReportField[] = [];
  const kept: Globals[] = [];
  const nextBit = new Map<number, number>();
  let globals: Globals = { page: 0, logicalMinimum: 0, bitSize: 0, count: 0, reportId: 0 };
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
      const { reportId, bitSize, count, logicalMinimum } = globals;
      const bitOffset = nextBit.get(reportId) ?? 0;
      nextBit.set(reportId, bitOffset + bitSize * count);
      const [constant, array] = [(unsigned & 1) === 1, (unsigned & 2) === 0];
      if (!constant) fields.push({ reportId, usages, bitOffset, bitSize, count, logicalMinimum, array });
      usages = [];
    }
  }
  return fields;
}

/** What holds for all items that follow. */
function withGlobal(globals: Globals, { tag, unsigned, signed }: Item): Globals {
  switch (tag) {
    case "usage-page":
      return { ...globals, page: unsigned };
    case "logical-minimum":
      return { ...globals, logicalMinimum: signed };
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
