import { Refusal } from "../../calibration/refusal.ts";
import { type PortRoots, stableName, systemRoots } from "../../drivers/ports.ts";
import type { FoundSensor } from "../../drivers/sensors/found-sensor.ts";
import { listPluggedSensors } from "../../drivers/sensors/plugged-sensors.ts";
import type { Ledger } from "../ledger/ledger.ts";
import type { SensorsNow } from "../weighing/sensor-value.ts";
import { isSamePort } from "./balance-choice.ts";
import { type HeardSensor, heardSensor } from "./heard-sensor.ts";
import { checkedSensor, type SensorChoice, sensorChoiceShape } from "./sensor-choice.ts";

/**
 * The sensors of the bench, owned by the server; pages only watch. Every change of the list is kept in the ledger, and
 * a start of the bench goes on with the newest.
 */
export class SensorsInUse {
  readonly #ledger: Ledger;
  readonly #roots: PortRoots;
  #heard: HeardSensor[] = [];
  readonly #listeners = new Set<() => void>();
  #turn: Promise<unknown> = Promise.resolve();

  /** `roots`: where the system shows its devices. */
  constructor(ledger: Ledger, roots: PortRoots = systemRoots) {
    this.#ledger = ledger;
    this.#roots = roots;
  }

  get all(): readonly HeardSensor[] {
    return this.#heard;
  }

  /** Sensors that are plugged in and not listened to. */
  found(): FoundSensor[] {
    const heard = new Set(this.#heard.map(({ choice }) => choice.address));
    return listPluggedSensors(this.#roots).filter(({ address }) => !heard.has(address));
  }

  /** What all of them show at this moment, and which are silent. */
  now(): SensorsNow {
    const heard = this.#heard.map((sensor) => ({ address: sensor.choice.address, ...sensor.now() }));
    return {
      sensed: heard.flatMap(({ values = [] }) => values),
      silent: heard.filter(({ values }) => values === undefined).map(({ address }) => address),
    };
  }

  /** Opens the sensors that were kept last. */
  async resume(): Promise<void> {
    const [entry] = await this.#ledger.entries({ kind: "sensors", newestFirst: true, limit: 1 });
    const kept = entry?.kind === "sensors" ? entry.body.sensors : [];
    for (const one of kept) {
      const choice = sensorChoiceShape.safeParse(one);
      if (choice.success) this.#open(choice.data);
    }
  }

  /**
   * Adds a sensor, or exchanges what is told about the one at the same port. Throws LedgerError, and Refusal for what
   * cannot be right.
   */
  keep(asked: unknown): Promise<void> {
    return this.#inTurn(async () => {
      const checked = checkedSensor(asked, this.#roots);
      const choice = { ...checked, address: stableName(checked.address) ?? checked.address };
      const others = this.#heard.filter((one) => !isSamePort(one.choice.address, choice.address));
      await this.#write([...others.map((one) => one.choice), choice]);
      await this.#close((one) => !others.includes(one));
      this.#open(choice);
    });
  }

  /** Lets a sensor go. Throws Refusal when there is none at this address. */
  remove(address: string): Promise<void> {
    return this.#inTurn(async () => {
      if (!this.#heard.some(({ choice }) => choice.address === address))
        throw new Refusal("sensor.none", { address }, "address");
      await this.#write(this.#heard.map(({ choice }) => choice).filter((one) => one.address !== address));
      await this.#close(({ choice }) => choice.address === address);
    });
  }

  /** Calls back for every line of a sensor, and after every change of the list. */
  onChange(listener: () => void): void {
    this.#listeners.add(listener);
  }

  async close(): Promise<void> {
    await this.#turn;
    await Promise.all(this.#heard.map((one) => one.close()));
  }

  async #write(sensors: readonly SensorChoice[]): Promise<void> {
    await this.#ledger.append("sensors", "sensors", { sensors: [...sensors] });
  }

  #open(choice: SensorChoice): void {
    const heard = heardSensor(choice, this.#roots);
    heard.onLine(() => this.#changed());
    this.#heard = [...this.#heard, heard];
    heard.start();
    this.#changed();
  }

  async #close(which: (one: HeardSensor) => boolean): Promise<void> {
    const closing = this.#heard.filter(which);
    this.#heard = this.#heard.filter((one) => !closing.includes(one));
    await Promise.all(closing.map((one) => one.close()));
    this.#changed();
  }

  #changed(): void {
    for (const listener of this.#listeners) listener();
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.#turn.then(work);
    this.#turn = turn.catch(() => undefined);
    return turn;
  }
}
