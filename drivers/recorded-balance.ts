import { balanceName, nameMessage } from "./balance-name.ts";
import type { CableOptions } from "./cabled-device.ts";
import type { Clock } from "./clock.ts";
import type { Balance } from "./device.ts";
import type { Chunk } from "./learning/recording.ts";
import { createLineRecords } from "./line-records.ts";
import { createListening, defaultPatienceMs } from "./listening.ts";
import { createPlayedClock } from "./played-clock.ts";
import { readAnyShape } from "./shapes/index.ts";

/** A balance whose bytes were recorded; its clock reads the recording's times, 0 at the first byte. */
export interface RecordedBalance extends Balance {
  /** gives every line and event at once, each at its recorded time */
  play(): void;
}

/** Plays bytes back the way they came, through the same listening as a cable. `cable` is made for its clock. */
export function createRecordedBalance(
  chunks: readonly Chunk[],
  cable: (clock: Clock) => CableOptions,
): RecordedBalance {
  const fromMs = chunks[0]?.atMs ?? 0;
  const clock = createPlayedClock();
  const { read = () => readAnyShape(), cutter, patienceMs = defaultPatienceMs, ask } = cable(clock);
  const records = createLineRecords(clock);
  const listening = createListening({
    clock,
    records,
    read,
    cutter,
    patienceMs,
    balance: nameMessage(balanceName.recorded),
    asked: ask?.request,
  });
  return {
    name: balanceName.recorded,
    patienceMs,
    firstByteMs: () => listening.firstByteMs,
    onLine: records.onLine,
    start() {},
    stop: () => Promise.resolve(),
    play() {
      listening.opened();
      for (const { atMs, bytes } of chunks) {
        clock.passTo(atMs - fromMs);
        listening.bytes(bytes);
      }
      // the last line may be ended by silence; the end of a recording is no silence of the balance
      clock.passTo(clock.monotonicMs() + Math.min(longestSilentEndMs, patienceMs - 1));
      listening.closed();
    },
  };
}

/** Silence that ends a line by itself lasts no longer, ms. */
const longestSilentEndMs = 2000;
