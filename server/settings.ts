import { dirname, join, resolve } from "node:path";
import { Refusal } from "../calibration/refusal.ts";
import { type RoomSettings, roomSettings } from "./access/room-settings.ts";
import { type SettingsFile, settingsFile } from "./settings-file.ts";
import { cableFrom, type ToldCable } from "./station/cable-from.ts";

/** How the bench gets its readings: an invented balance, a cable, a person typing, or as was chosen on its page. */
export type Source =
  | { kind: "demo" }
  | { kind: "typed" }
  | { kind: "chosen" }
  | ({ kind: "cable" } & ToldCable);

/** What a start of the bench is told. Everything else is set on the Settings page and kept in the ledger. */
export interface Settings {
  /** loopback port the pages are served on */
  port: number;
  /** folder that keeps the ledger */
  dataFolder: string;
  source: Source;
  /** name of this bench, written into every entry; several benches on one shared ledger need names of their own */
  bench: string;
  /** where the shared ledger of several benches is; undefined for a bench by itself */
  databaseUrl?: string;
  /** name of the site: its benches see each other's records, lots and tickets in the shared ledger */
  site: string;
  /** a second address, for other devices in the room; undefined: this machine only */
  room?: RoomSettings;
}

/** Loopback port when nothing else is said; the room is served at the next one. */
export const defaultPort = 4319;

/** The options of `underhook serve`. */
export const serveOptions = {
  port: { type: "string" },
  data: { type: "string" },
  balance: { type: "string" },
  line: { type: "string" },
  profile: { type: "string" },
  typed: { type: "boolean" },
  bench: { type: "string" },
  site: { type: "string" },
  listen: { type: "string" },
  certificate: { type: "string" },
  key: { type: "string" },
  "public-address": { type: "string" },
  settings: { type: "string" },
} as const;

type ServeValues = {
  [Name in keyof typeof serveOptions]?:
    | ((typeof serveOptions)[Name]["type"] extends "string" ? string : boolean)
    | undefined;
};

/**
 * Settings from the command line, else from the environment, else from a settings file. Throws Refusal for a value out of
 * range, and for a file that cannot be used.
 */
export function settingsFrom(given: ServeValues, environment: NodeJS.ProcessEnv): Settings {
  const file = given.settings ?? environment.UNDERHOOK_SETTINGS;
  const written = file === undefined ? {} : settingsFile(file);
  const values = { ...optionsIn(written, environment), ...given };
  // a source on the command line stands in place of the one in the file
  if (given.typed && !given.balance) values.balance = undefined;
  if (given.balance && !given.typed) values.typed = undefined;
  const databaseUrl = environment.DATABASE_URL ?? written.database_url;
  const bench = (values.bench ?? environment.UNDERHOOK_BENCH ?? "bench").trim();
  if (!/^[^\p{Cc}\p{Cs}]{1,60}$/u.test(bench)) throw new Refusal("cli.serve.bench-name", { name: bench });
  const site = (values.site ?? environment.UNDERHOOK_SITE ?? "").trim();
  if (!/^[^\p{Cc}\p{Cs}]{0,60}$/u.test(site)) throw new Refusal("cli.serve.site-name", { name: site });
  const port = portFrom(values.port ?? environment.UNDERHOOK_PORT ?? String(defaultPort));
  if (values.typed && values.balance) throw new Refusal("cli.serve.two-sources");
  const data = resolve(values.data ?? environment.UNDERHOOK_DATA ?? "underhook-data");
  const source: Source = values.balance
    ? { kind: "cable", ...cableFrom({ address: values.balance, line: values.line, profile: values.profile }) }
    : { kind: values.typed ? "typed" : "demo" };
  const room = roomSettings(
    {
      listen: values.listen ?? environment.UNDERHOOK_LISTEN,
      certificate: values.certificate,
      key: values.key,
      publicAddress: values["public-address"] ?? environment.UNDERHOOK_PUBLIC_ADDRESS,
    },
    port,
  );
  // Invented pieces never share a ledger with measured ones.
  return {
    port,
    dataFolder: source.kind === "demo" ? join(data, "demo") : data,
    source,
    bench,
    site,
    ...(databaseUrl ? { databaseUrl } : {}),
    ...(room ? { room } : {}),
  };
}

/** What the file says, by the names of the options, without what the environment says. */
function optionsIn(
  { port, public_address, database_url: _url, ...rest }: SettingsFile,
  environment: NodeJS.ProcessEnv,
): ServeValues {
  const said = {
    ...rest,
    ...(port === undefined ? {} : { port: String(port) }),
    ...(public_address === undefined ? {} : { "public-address": public_address }),
  };
  const byEnvironment = {
    port: environment.UNDERHOOK_PORT,
    data: environment.UNDERHOOK_DATA,
    bench: environment.UNDERHOOK_BENCH,
    listen: environment.UNDERHOOK_LISTEN,
    "public-address": environment.UNDERHOOK_PUBLIC_ADDRESS,
  };
  return Object.fromEntries(
    Object.entries(said).filter(([name]) => byEnvironment[name as keyof typeof byEnvironment] === undefined),
  );
}

function portFrom(text: string): number {
  const port = text.trim() === "" ? Number.NaN : Number(text);
  if (Number.isInteger(port) && port >= 0 && port <= 65535) return port;
  throw new Refusal("cli.serve.port-wrong", { port: text, such: String(defaultPort) });
}

/** The real bench of the same data folder, with the balance chosen there. */
export function realBench(settings: Settings): Settings {
  const { dataFolder, source } = settings;
  return {
    ...settings,
    dataFolder: source.kind === "demo" ? dirname(dataFolder) : dataFolder,
    source: { kind: "chosen" },
  };
}

/** The demonstration of the same data folder. */
export function demonstration(settings: Settings): Settings {
  const { dataFolder, source } = settings;
  return source.kind === "demo"
    ? settings
    : { ...settings, dataFolder: join(dataFolder, "demo"), source: { kind: "demo" } };
}
