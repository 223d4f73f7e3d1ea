import { isDecimal, minus, times } from "../../calibration/decimal.ts";
import { type SensedQuantity, type SensedValue, sensedValue } from "./quantity.ts";

/**
 * One quantity of a sensor that the kernel shows as files, by its interface for industrial I/O (Linux 6.1,
 * Documentation/ABI/testing/sysfs-bus-iio): `_input` holds the value, else it is (`_raw` + `_offset`) × `_scale`.
 */
export interface Channel {
  /** the beginning of the names of its files: "in_temp", "in_temp1", "in_temp_object" */
  name: string;
  quantity: SensedQuantity;
  files: { input: string } | { raw: string; scale: string; offset?: string };
}

/** Unit of the interface: m°C, kPa and m%; `factor` makes it the unit that is shown. */
const kinds = {
  temp: { quantity: "temperature", unit: "°C", factor: "0.001" },
  pressure: { quantity: "pressure", unit: "kPa", factor: "1" },
  humidityrelative: { quantity: "humidity", unit: "%", factor: "0.001" },
} as const;
type Kind = keyof typeof kinds;

const valueFile = /^(in_(temp|pressure|humidityrelative)(?:\d+|_x|_y|_ambient|_object)?)_(?:input|raw)$/;

/** The channels among the files of a folder. A raw value without its scale has no unit and is none. */
export function channelsOf(files: readonly string[]): Channel[] {
  const has = (file: string) => (files.includes(file) ? file : undefined);
  const named = new Map(
    files
      .flatMap((file) => Array.from(file.matchAll(new RegExp(valueFile, "g"))))
      .map(([, name = "", kind]) => [name, kind as Kind]),
  );
  return [...named].flatMap(([name, kind]): Channel[] => {
    const { quantity } = kinds[kind];
    const input = has(`${name}_input`);
    if (input) return [{ name, quantity, files: { input } }];
    const scale = has(`${name}_scale`) ?? has(`in_${kind}_scale`);
    const offset = has(`${name}_offset`) ?? has(`in_${kind}_offset`);
    return scale ? [{ name, quantity, files: { raw: `${name}_raw`, scale, ...(offset && { offset }) } }] : [];
  });
}

/** Decimals that show one step of a raw value, at most 9. */
const decimalsOf = (step: number) => Math.min(9, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));

/**
 * The value of a channel from what its files hold. Undefined where one holds no plain decimal number, or where the
 * value lies outside of what its quantity can be.
 */
export function channelValue(
  { name, files }: Channel,
  held: ReadonlyMap<string, string>,
): SensedValue | undefined {
  const kind = valueFile.exec(`${name}_raw`)?.[2] as Kind;
  const { unit, factor } = kinds[kind];
  const number = (file: string | undefined, without: string) =>
    file === undefined ? without : (held.get(file) ?? "");
  if ("input" in files) {
    const text = number(files.input, "");
    return isDecimal(text) ? sensedValue(times(text, factor), unit) : undefined;
  }
  const [raw, offset, scale] = [number(files.raw, ""), number(files.offset, "0"), number(files.scale, "")];
  if (![raw, offset, scale].every(isDecimal) || Number(scale) === 0) return undefined;
  const value = times(times(minus(raw, minus("0", offset)), scale), factor);
  return sensedValue(Number(value).toFixed(decimalsOf(Math.abs(Number(scale) * Number(factor)))), unit);
}
