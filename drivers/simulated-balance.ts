import { balanceName, nameMessage } from "./balance-name.ts";
import { type Clock, systemClock } from "./clock.ts";
import { createLineRecords } from "./line-records.ts";
import { createListening, defaultPatienceMs } from "./listening.ts";
import { type BytesReader, lineEvent } from "./reading.ts";
import { readAnyShape } from "./shapes/index.ts";
import type { SimulatedBalance } from "./simulated/commands.ts";
import { type Display, plainLine } from "./simulated/display.ts";
import type { Surroundings } from "./simulated/load.ts";
import { createLoading } from "./simulated/loading.ts";
import { createSeededRandom } from "./simulated/seeded-random.ts";
import { createSending } from "./simulated/sending.ts";
import { createSwingingPan, type SwingingPanSettings } from "./simulated/swinging-pan.ts";
import { createWeighingLines } from "./simulated/weighing-lines.ts";

export type { SimulatedBalance } from "./simulated/commands.ts";

export interface SimulatedBalanceOptions extends Partial<Surroundings>, Partial<SwingingPanSettings> {
  seed?: number;
  readabilityGrams?: number;
  /** above it the display says so instead of a number */
  capacityGrams?: number;
  linesPerSecond?: number;
  clock?: Clock;
  patienceMs?: number;
  /** how it writes its lines */
  writes?: (display: Display) => string;
  /** gives a fresh reader for every opening of the line */
  read?: () => BytesReader;
}

/** So long after 100 g were laid on a balance stands to half a step, s [common practice: 2 to 4 at 0.1 mg, 1 to 2 above]. */
const standsAfter = (readabilityGrams: number) => (readabilityGrams < 0.001 ? 3 : 1.5);

const settlingOf = (readabilityGrams: number) =>
  standsAfter(readabilityGrams) / Math.log(100 / (readabilityGrams / 2));

const surroundingsOf = (options: SimulatedBalanceOptions): Surroundings => ({
  liquidKgPerM3: options.liquidKgPerM3 ?? 997.9,
  airKgPerM3: options.airKgPerM3 ?? 1.19,
  hangerGrams: options.hangerGrams ?? 6.2,
  beakerGrams: options.beakerGrams ?? 148.6,
  bubblesMg: options.bubblesMg ?? 0,
});

/** A simulated balance: an ordinary driver whose lines go the same way as those of any cable. */
export function createSimulatedBalance(options: SimulatedBalanceOptions = {}): SimulatedBalance {
  const { capacityGrams = 320, linesPerSecond = 5, clock = systemClock, writes = plainLine } = options;
  const { readabilityGrams = 0.0001, patienceMs = defaultPatienceMs } = options;
  const random = createSeededRandom(options.seed ?? 1);
  const pan = createSwingingPan(random, {
    settlingSeconds: options.settlingSeconds ?? settlingOf(readabilityGrams),
    noiseGrams: options.noiseGrams ?? readabilityGrams * 0.4,
    driftGramsPerHour: options.driftGramsPerHour ?? readabilityGrams * 2,
  });
  const { actions, zeroGrams } = createLoading(surroundingsOf(options), capacityGrams, (grams) =>
    pan.load(grams, clock.monotonicMs()),
  );
  const panGrams = () => pan.shows(clock.monotonicMs());
  const lines = createWeighingLines({
    panGrams,
    zeroGrams,
    readabilityGrams,
    capacityGrams,
    linesPerSecond,
    writes,
  });
  const cable = simulatedCable(options, { clock, patienceMs });
  const { begin, end, silence, wake, ...faults } = createSending({
    clock,
    linesPerSecond,
    random,
    line: () => lines.next(),
    plugged: () => cable.plugged,
    bytes: (chunk) => cable.bytes(chunk),
  });
  return {
    ...actions,
    ...faults,
    name: balanceName.simulated,
    patienceMs,
    firstByteMs: () => cable.firstByteMs,
    identity: () => cable.identity,
    onLine: cable.onLine,
    start: () => cable.start(begin),
    async stop() {
      cable.stop(end);
    },
    unitChange: (next) => lines.unitChange(next),
    unplug: () => cable.unplug(),
    replug: () => cable.plugIn(),
    replugOther: () => cable.plugIn(() => lines.coarser()),
    powerOff: silence,
    powerOn() {
      wake();
      // A balance that is switched on takes what it carries as its zero.
      actions.zero();
    },
    freeze: silence,
  };
}

/** The cable of the simulated balance, in or out, and what is heard at its end. */
function simulatedCable(
  { read = () => readAnyShape() }: SimulatedBalanceOptions,
  { clock, patienceMs }: { clock: Clock; patienceMs: number },
) {
  const balance = nameMessage(balanceName.simulated);
  const records = createLineRecords(clock);
  const listening = createListening({ clock, records, read, patienceMs, balance });
  let identity = "simulated 1";
  let plugged = true;
  let running = false;
  return {
    get plugged() {
      return plugged;
    },
    get identity() {
      return identity;
    },
    get firstByteMs() {
      return listening.firstByteMs;
    },
    onLine: records.onLine,
    bytes: (chunk: Uint8Array) => listening.bytes(chunk),
    start(begin: () => void) {
      if (running) return;
      running = true;
      listening.opened();
      records.event(lineEvent("line.open.simulated"));
      begin();
    },
    stop(end: () => void) {
      running = false;
      end();
      listening.closed();
    },
    unplug() {
      if (!plugged) return;
      plugged = false;
      listening.closed();
      records.event(lineEvent("line.lost", { balance }));
    },
    /** `other`: makes another balance of the one at the end of the cable */
    plugIn(other?: () => void) {
      if (plugged) return;
      if (other) identity = "simulated 2";
      other?.();
      plugged = true;
      listening.opened();
      records.event(lineEvent("line.back", { balance }));
    },
  };
}
