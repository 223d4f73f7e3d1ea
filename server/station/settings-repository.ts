import type { Ledger } from "../ledger/ledger.ts";
import {
  type BenchSettings,
  benchSettingsShape,
  firstSettings,
  type ToldSettings,
} from "./bench-settings.ts";

/** The settings of a bench as its ledger keeps them: every change is a new entry, and the newest counts. */
export interface SettingsRepository {
  readonly now: BenchSettings;
  /** false until somebody has answered the first questions or kept the Settings page */
  readonly answered: boolean;
  /** Changes some of the settings. Throws LedgerError; then the earlier ones still count. */
  keep(change: Partial<ToldSettings>): Promise<void>;
  /** Calls back after every change. */
  onChange(listener: () => void): void;
}

/** How far back an entry is looked for that this version can read. */
const entriesLookedAt = 20;

/** Finds the settings that count. An entry this version cannot read is passed over for the one before it. */
export async function settingsRepository(ledger: Ledger): Promise<SettingsRepository> {
  const kept = await ledger.entries({ kind: "settings", newestFirst: true, limit: entriesLookedAt });
  const readable = kept.flatMap((entry) => {
    const parsed = entry.kind === "settings" ? benchSettingsShape.safeParse(entry.body.settings) : undefined;
    return parsed?.success ? [parsed.data] : [];
  });
  let now = readable[0] ?? firstSettings;
  let answered = kept.length > 0;
  const listeners: (() => void)[] = [];
  return {
    get now() {
      return now;
    },
    get answered() {
      return answered;
    },
    async keep(change) {
      const settings = benchSettingsShape.parse({ ...now, ...change });
      await ledger.append("settings", "bench", { settings });
      now = settings;
      answered = true;
      for (const listener of listeners) listener();
    },
    onChange(listener) {
      listeners.push(listener);
    },
  };
}
