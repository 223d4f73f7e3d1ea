import { type Role, rolesBeside } from "../methods/index.ts";
import type { SituationReading } from "../weighing/checks/situation.ts";
import type { Live } from "./scale.ts";

/** So long is looked back, and so far apart are two looks at least: a drift shows over tens of seconds. */
const lookBackMs = 60_000;
const apartMs = 250;

/** What the balance showed while a capture of the piece in the liquid waited: there a drift or a pressed key shows. */
export class LiveReadings {
  #looks: SituationReading[] = [];
  /** of the last reading that was asked for */
  #role: Role | undefined;
  #watched: readonly string[] = [];

  /** ids of readings whose load was watched until a creep was excluded */
  get watched(): readonly string[] {
    return this.#watched;
  }

  /** A creep of the load of this reading was excluded, while it lay there. */
  creepExcluded(id: string): void {
    this.#watched = [...this.#watched, id];
  }

  get all(): readonly SituationReading[] {
    return this.#looks;
  }

  /** A capture of this role begins to wait. */
  begin(role: Role): void {
    this.#looks = [];
    this.#role = role;
  }

  /** One more look, of a line that came while a capture of this role waits. */
  add(live: Live, role: Role | undefined): void {
    if (live.state !== "reading" || role === undefined || !isImmersed(role)) return;
    const { at, text, unit } = live;
    const last = this.#looks.at(-1);
    if (last && Date.parse(at) - Date.parse(last.at) < apartMs) return;
    this.#looks = [...this.#looks, { at, text, unit }].filter(
      (reading) => Date.parse(at) - Date.parse(reading.at) <= lookBackMs,
    );
  }

  /** The display moved on by so many g after the last reading was taken, while its load stayed. */
  movedOn(live: Live, grams: number): void {
    if (live.state !== "reading" || this.#role === undefined || rolesBeside.some((one) => one === this.#role))
      return;
    const { at, text, unit } = live;
    const role = this.#role === "dry" ? "dry" : "wet";
    this.#looks = [...this.#looks, { at, text, unit, movedOn: { grams, role } }];
  }

  /** The piece they belong to is off the bench. */
  forget(): void {
    this.#looks = [];
    this.#watched = [];
  }
}

const isImmersed = (role: Role) => role === "immersed" || role === "rise";
