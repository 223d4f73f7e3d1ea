import type { MassUnit } from "../calibration/units.ts";
import { type Clock, systemClock } from "./clock.ts";
import { createListening, defaultPatienceMs } from "./listening.ts";
import type { BytesReader } from "./reading.ts";
import { readAnyShape } from "./shapes/index.ts";
import { createChance } from "./simulated/chance.ts";
import type { SimulatedBalance } from "./simulated/commands.ts";
import { type Display, plainLine, shownIn } from "./simulated/display.ts";
import { type LineFault, spoiled } from "./simulated/faults.ts";
import type { Surroundings } from "./simulated/load.ts";
import { createMechanism, type MechanismSettings } from "./simulated/mechanism.ts";
import { createStage } from "./simulated/stage.ts";
import { createTold } from "./told.ts";

export type { SimulatedBalance } from "./simulated/commands.ts";
export type { SimulatedPiece } from "./simulated/load.ts";

export interface SimulatedBalanceOptions extends Partial<Surroundings>, Partial<MechanismSettings> {
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
  let identity = "simulated balance no. 1";
  const chance = createChance(options.seed ?? 1);
  const around: Surroundings = {
    liquidKgPerM3: options.liquidKgPerM3 ?? 997.9,
    airKgPerM3: options.airKgPerM3 ?? 1.19,
    hangerGrams: options.hangerGrams ?? 6.2,
    beakerGrams: options.beakerGrams ?? 148.6,
    bubblesMg: options.bubblesMg ?? 0,
  };
  const mechanism = createMechanism(chance, {
    settlingSeconds: options.settlingSeconds ?? 0.35,
    noiseGrams: options.noiseGrams ?? readability * 0.4,
    driftGramsPerHour: options.driftGramsPerHour ?? readability * 2,
  });
  const patienceMs = options.patienceMs ?? defaultPatienceMs;
  const name = "simulated balance";
  const told = createTold(clock);
  const listening = createListening({
    clock,
    told,
    read: options.read ?? (() => readAnyShape()),
    patienceMs,
    name: `The ${name}`,
  });

  const { hands, zeroGrams } = createStage(around, capacityGrams, (grams) =>
    mechanism.load(grams, clock.monotonicMs()),
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
    const grams = mechanism.shows(clock.monotonicMs());
    if (grams > capacityGrams) return "overload\r\n";
    shown = [...shown, grams].slice(-Math.max(3, Math.ceil(linesPerSecond * 0.8)));
    const spread = Math.max(...shown) - Math.min(...shown);
    const steady = shown.length >= 3 && spread <= Math.max(1.5 * readability, 4 * readability * 0.6);
    return writes({ digits: shownIn(grams - zeroGrams(), unit, readability), unit, steady });
  }

  function send(text: string): void {
    const fault = faults.shift();
    const whole = Buffer.from(text, "latin1");
    const bytes = fault ? spoiled(whole, fault, chance) : whole;
    // Cables deliver in pieces.
    const cut = chance.whole(bytes.length + 1);
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
    told.event("back", `The ${name} is back. Check its zero before weighing on.`);
  }

  return {
    ...hands,
    name,
    patienceMs,
    identity: () => identity,
    onLine: told.onLine,
    start() {
      if (running) return;
      running = true;
      listening.opened();
      told.event(
        "open",
        "The simulated balance is on. It weighs invented pieces; nothing it says is a measurement.",
      );
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
      told.event("lost", `The ${name} is gone. Nothing is taken until it is back.`);
    },
    replug: plugIn,
    replugOther() {
      if (plugged) return;
      identity = "simulated balance no. 2";
      readability *= 10;
      plugIn();
    },
    powerOff() {
      quiet = true;
    },
    powerOn() {
      quiet = false;
      // A balance that is switched on takes what it carries as its zero.
      hands.zero();
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
