import type { MassUnit } from "../calibration/units.ts";
import { balanceName, nameMessage } from "./balance-name.ts";
import { type Clock, systemClock } from "./clock.ts";
import { createLineRecords } from "./line-records.ts";
import { createListening, defaultPatienceMs } from "./listening.ts";
import { type BytesReader, lineEvent } from "./reading.ts";
import { readAnyShape } from "./shapes/index.ts";
import type { SimulatedBalance } from "./simulated/commands.ts";
import { type Display, plainLine, shownIn } from "./simulated/display.ts";
import { type LineFault, spoiled } from "./simulated/faults.ts";
import type { Surroundings } from "./simulated/load.ts";
import { createLoading } from "./simulated/loading.ts";
import { createSeededRandom } from "./simulated/seeded-random.ts";
import { createSwingingPan, type SwingingPanSettings } from "./simulated/swinging-pan.ts";

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

/** A simulated balance: an ordinary driver whose lines go the same way as those of any cable. */
export function createSimulatedBalance(options: SimulatedBalanceOptions = {}): SimulatedBalance {
  const { capacityGrams = 320, linesPerSecond = 5, clock = systemClock, writes = plainLine } = options;
  let readability = options.readabilityGrams ?? 0.0001;
  let identity = "simulated 1";
  const random = createSeededRandom(options.seed ?? 1);
  const around: Surroundings = {
    liquidKgPerM3: options.liquidKgPerM3 ?? 997.9,
    airKgPerM3: options.airKgPerM3 ?? 1.19,
    hangerGrams: options.hangerGrams ?? 6.2,
    beakerGrams: options.beakerGrams ?? 148.6,
    bubblesMg: options.bubblesMg ?? 0,
  };
  const pan = createSwingingPan(random, {
    settlingSeconds: options.settlingSeconds ?? 0.35,
    noiseGrams: options.noiseGrams ?? readability * 0.4,
    driftGramsPerHour: options.driftGramsPerHour ?? readability * 2,
  });
  const patienceMs = options.patienceMs ?? defaultPatienceMs;
  const balance = nameMessage(balanceName.simulated);
  const records = createLineRecords(clock);
  const listening = createListening({
    clock,
    records,
    read: options.read ?? (() => readAnyShape()),
    patienceMs,
    balance,
  });

  const { actions, zeroGrams } = createLoading(around, capacityGrams, (grams) =>
    pan.load(grams, clock.monotonicMs()),
  );
  let unit: MassUnit = "g";
  let plugged = true;
  let quiet = false;
  let stuckLine: string | null = null;
  let lastLine = "";
  let faults: LineFault[] = [];
  let shown: number[] = [];
  let callOffNext = () => {};
  let running = false;

  function line(): string {
    const grams = pan.shows(clock.monotonicMs());
    if (grams > capacityGrams) return "overload\r\n";
    shown = [...shown, grams].slice(-Math.max(3, Math.ceil(linesPerSecond * 0.8)));
    const spread = Math.max(...shown) - Math.min(...shown);
    const stable = shown.length >= 3 && spread <= Math.max(1.5 * readability, 4 * readability * 0.6);
    return writes({ digits: shownIn(grams - zeroGrams(), unit, readability), unit, stable });
  }

  function send(text: string): void {
    const fault = faults.shift();
    const whole = Buffer.from(text, "latin1");
    const bytes = fault ? spoiled(whole, fault, random) : whole;
    // Cables deliver in pieces.
    const cut = random.whole(bytes.length + 1);
    listening.bytes(bytes.subarray(0, cut));
    listening.bytes(bytes.subarray(cut));
  }

  function tick(): void {
    callOffNext = clock.after(1000 / linesPerSecond, tick);
    if (!plugged || quiet) return;
    lastLine = stuckLine ?? line();
    send(lastLine);
  }

  function plugIn(): void {
    if (plugged) return;
    plugged = true;
    listening.opened();
    records.event(lineEvent("line.back", { balance }));
  }

  return {
    ...actions,
    name: balanceName.simulated,
    patienceMs,
    firstByteMs: () => listening.firstByteMs,
    identity: () => identity,
    onLine: records.onLine,
    start() {
      if (running) return;
      running = true;
      listening.opened();
      records.event(lineEvent("line.open.simulated"));
      tick();
    },
    async stop() {
      running = false;
      callOffNext();
      listening.closed();
    },
    unitChange(next) {
      unit = next;
    },
    unplug() {
      if (!plugged) return;
      plugged = false;
      listening.closed();
      records.event(lineEvent("line.lost", { balance }));
    },
    replug: plugIn,
    replugOther() {
      if (plugged) return;
      identity = "simulated 2";
      readability *= 10;
      plugIn();
    },
    powerOff() {
      quiet = true;
    },
    powerOn() {
      quiet = false;
      // A balance that is switched on takes what it carries as its zero.
      actions.zero();
    },
    freeze() {
      quiet = true;
    },
    stick() {
      stuckLine = lastLine || line();
    },
    thaw() {
      quiet = false;
      stuckLine = null;
    },
    garble(lines) {
      faults = [...faults, ...Array<LineFault>(lines).fill("garbled")];
    },
    halve(lines) {
      faults = [...faults, ...Array<LineFault>(lines).fill("halved")];
    },
    double(lines) {
      faults = [...faults, ...Array<LineFault>(lines).fill("doubled")];
    },
    say(text) {
      if (plugged && !quiet) send(text);
    },
  };
}
