import { Refusal } from "../../calibration/refusal.ts";
import type { Balance } from "../../drivers/device.ts";
import { stableName } from "../../drivers/ports.ts";
import type { BalanceEvent, LineRecord } from "../../drivers/reading.ts";
import type { ReadingStream } from "../../drivers/reading-stream.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { type BalanceChoice, balanceChoiceShape, isSamePort } from "./balance-choice.ts";
import { type HeardBalance, heardBalance, heardForLearning, heardWithoutChoice } from "./heard-balance.ts";
import type { ProfileRepository, StoredProfile } from "./profile-repository.ts";
import type { Scale } from "./scale.ts";

/** Choices looked back at for what was told about a balance before. */
const choicesLookedAt = 200;

/** What the ledger keeps: the balance the bench takes from, and those that are heard beside it. */
interface StoredBalances {
  choice: BalanceChoice | undefined;
  beside: BalanceChoice[];
}

/**
 * The balances of the bench, owned by the server; pages only watch. The bench takes its readings from one of them;
 * others may be heard beside it, and it changes over to one of those without opening anything anew. Every choice is
 * kept in the ledger, and whoever listens goes on listening through every exchange.
 */
export class BalanceInUse {
  /** what was chosen; undefined while readings are typed or the balance is simulated */
  choice: BalanceChoice | undefined;
  /** the learned profile the lines are read by */
  profile: StoredProfile | undefined;
  #ledger: Ledger;
  #profiles: ProfileRepository;
  #inUse: HeardBalance | undefined;
  #beside: HeardBalance[] = [];
  #earlier = new Map<string, BalanceChoice>();
  #lineListeners = new Set<(record: LineRecord) => void>();
  #eventListeners = new Set<(balance: string, event: BalanceEvent) => void>();
  #besideListeners = new Set<(what: "line" | "list") => void>();
  #exchangeListeners = new Set<(scale: Scale | undefined, how: "opened" | "heard-all-along") => void>();
  /** true while the cable of the balance in use is lent to learning or to the search for its settings */
  #lent = false;
  #turn: Promise<unknown> = Promise.resolve();

  #lasting: (address: string) => string;

  /** `lasting` gives the name of a port that stays the same when it is plugged in again; by default the system's */
  constructor(
    ledger: Ledger,
    profiles: ProfileRepository,
    lasting = (address: string) => stableName(address) ?? address,
  ) {
    this.#ledger = ledger;
    this.#profiles = profiles;
    this.#lasting = lasting;
  }

  get stream(): ReadingStream | undefined {
    return this.#inUse?.stream;
  }
  get scale(): Scale | undefined {
    return this.#inUse?.scale;
  }
  /** the balances that are heard although the bench takes from another */
  get beside(): readonly HeardBalance[] {
    return this.#beside;
  }

  /** the same as a person tells them apart */
  get others(): { address: string; name: string }[] {
    return this.#beside.map((one) => ({ address: choiceOf(one).address, name: one.scale.name }));
  }

  /** What was kept last; without a choice when readings are typed. */
  async kept(): Promise<StoredBalances> {
    const entries = await this.#ledger.entries({
      kind: "balance-choice",
      newestFirst: true,
      limit: choicesLookedAt,
    });
    const kept = entries.flatMap((entry) => (entry.kind === "balance-choice" ? [storedIn(entry.body)] : []));
    for (const { choice, beside } of kept)
      for (const one of choice ? [choice, ...beside] : beside)
        if (!this.#earlier.has(one.address)) this.#earlier.set(one.address, one);
    return kept[0] ?? { choice: undefined, beside: [] };
  }

  /**
   * What was told before about the balance at this address. A port such as /dev/ttyUSB0 leads to one device today and
   * to another tomorrow, so all that is told is kept for the device's own name where it has one.
   */
  choiceAt(address: string): BalanceChoice | undefined {
    return this.#earlier.get(this.#lasting(address));
  }

  /** Keeps a choice, checked already, and goes over to it. Throws LedgerError; then the earlier one goes on. */
  choose(asked: BalanceChoice | undefined): Promise<void> {
    return this.#inTurn(async () => {
      const choice = asked && this.#named(asked);
      const others = this.#beside.filter(
        (one) => !choice || !isSamePort(choiceOf(one).address, choice.address),
      );
      await this.#keep(choice, others.map(choiceOf));
      // One port cannot be opened twice: one that was heard beside is closed before it is opened as told now.
      await this.#closeBeside((one) => !others.includes(one));
      await this.#goOver(choice);
    });
  }

  /** Keeps a balance to be heard beside the one in use. Throws Refusal when its port is heard already. */
  hearBeside(asked: BalanceChoice): Promise<void> {
    return this.#inTurn(async () => {
      const choice = this.#named(asked);
      const heard = [this.choice, ...this.#beside.map(choiceOf)];
      if (heard.some((one) => one && isSamePort(one.address, choice.address)))
        throw new Refusal("balance.heard-already", { address: choice.address }, "port");
      await this.#keep(this.choice, [...this.#beside.map(choiceOf), choice]);
      this.#openBeside(choice);
    });
  }

  /** Closes a balance that was heard beside. Throws Refusal when there is none at this address. */
  endBeside(address: string): Promise<void> {
    return this.#inTurn(async () => {
      const closing = this.#besideAt(address);
      await this.#keep(this.choice, this.#beside.filter((one) => one !== closing).map(choiceOf));
      await this.#closeBeside((one) => one === closing);
    });
  }

  /** Takes from a balance that is heard beside from now on; the one in use is heard beside it. Neither is reopened. */
  takeFrom(address: string): Promise<void> {
    return this.#inTurn(async () => {
      const next = this.#besideAt(address);
      if (this.#lent) throw new Refusal("balance.lent");
      const before = this.#inUse?.choice ? this.#inUse : undefined;
      const beside = this.#beside
        .map((one) => (one === next ? before : one))
        .filter((one) => one !== undefined);
      await this.#keep(choiceOf(next), beside.map(choiceOf));
      this.#beside = beside;
      this.#inUse = next;
      this.choice = next.choice;
      this.profile = next.profile;
      this.#exchanged("heard-all-along");
    });
  }

  /** Goes over to what is told for this start of the bench only, without keeping it. */
  use({
    choice,
    beside = [],
    profile,
  }: Partial<StoredBalances> & { profile?: StoredProfile | undefined }): Promise<void> {
    return this.#inTurn(async () => {
      await this.#goOver(choice, profile);
      for (const one of beside) this.#openBeside(one);
    });
  }

  /** Takes a balance that needs no choice: the simulated one. */
  useSimulated(balance: Balance): Promise<void> {
    return this.#inTurn(() => this.#exchange(heardWithoutChoice(balance)));
  }

  /** Listens to the chosen balance with every byte given on, for learning its lines. `resume` ends it. */
  learnFrom(hear: (bytes: Uint8Array) => void): Promise<void> {
    return this.#inTurn(async () => {
      if (!this.choice) throw new Refusal("balance.none-in-use");
      await this.#exchange(heardForLearning(this.choice, this.profile, hear));
      this.#lent = true;
    });
  }

  /** Lets go of a port while something else listens on it. Resolves with what goes back to its balance. */
  letGo(address: string): Promise<() => Promise<void>> {
    return this.#inTurn(async () => {
      if (this.choice && isSamePort(this.choice.address, address)) {
        await this.#exchange();
        this.#lent = true;
        return () => this.resume();
      }
      const beside = this.#beside.map(choiceOf).find((one) => isSamePort(one.address, address));
      if (!beside) return async () => {};
      await this.#closeBeside((one) => one.choice === beside);
      return () => this.#inTurn(async () => this.#openBeside(beside));
    });
  }

  /** Goes back to the chosen balance after `learnFrom`. */
  resume(): Promise<void> {
    return this.#inTurn(() => this.#goOver(this.choice, this.profile));
  }

  /** Calls back for every line and event of whichever balance is in use. */
  onLine(listener: (record: LineRecord) => void): void {
    this.#lineListeners.add(listener);
  }

  /** Calls back for every event of every balance that is heard, with its name. */
  onEvent(listener: (balance: string, event: BalanceEvent) => void): void {
    this.#eventListeners.add(listener);
  }

  /** Calls back for every line and event of the balances beside, and when one more or one less is heard. */
  onBeside(listener: (what: "line" | "list") => void): void {
    this.#besideListeners.add(listener);
  }

  /** Calls back with the new scale after every exchange, and whether it was opened for it or heard all along. */
  onExchange(listener: (scale: Scale | undefined, how: "opened" | "heard-all-along") => void): void {
    this.#exchangeListeners.add(listener);
  }

  async close(): Promise<void> {
    await this.#turn;
    await Promise.all([this.#inUse, ...this.#beside].map((one) => one?.close()));
  }

  #named(choice: BalanceChoice): BalanceChoice {
    return { ...choice, address: this.#lasting(choice.address) };
  }

  async #keep(choice: BalanceChoice | undefined, beside: BalanceChoice[]): Promise<void> {
    await this.#ledger.append("balance-choice", "balances", { choice: choice ?? null, beside });
    for (const one of choice ? [choice, ...beside] : beside) this.#earlier.set(one.address, one);
  }

  #besideAt(address: string): HeardBalance {
    const found = this.#beside.find(({ choice }) => choice?.address === address);
    if (!found) throw new Refusal("balance.not-beside", { address }, "port");
    return found;
  }

  #profileOf(choice: BalanceChoice): StoredProfile | undefined {
    return choice.profile === undefined ? undefined : this.#profiles.named(choice.profile);
  }

  #openBeside(choice: BalanceChoice): void {
    const heard = this.#listenedTo(heardBalance(choice, this.#profileOf(choice)));
    this.#beside = [...this.#beside, heard];
    heard.start();
    this.#besideChanged();
  }

  async #closeBeside(which: (one: HeardBalance) => boolean): Promise<void> {
    const closing = this.#beside.filter(which);
    this.#beside = this.#beside.filter((one) => !closing.includes(one));
    await Promise.all(closing.map((one) => one.close()));
    if (closing.length > 0) this.#besideChanged();
  }

  async #goOver(choice: BalanceChoice | undefined, given?: StoredProfile): Promise<void> {
    this.choice = choice;
    this.profile = given ?? (choice && this.#profileOf(choice));
    return this.#exchange(choice && heardBalance(choice, this.profile));
  }

  async #exchange(next?: HeardBalance): Promise<void> {
    const before = this.#inUse;
    this.#inUse = undefined;
    this.#lent = false;
    await before?.close();
    this.#inUse = next && this.#listenedTo(next);
    this.#exchanged("opened");
    next?.start();
  }

  /** Its lines are told to those who listen to the balance in use while it is that, else to those who watch the others. */
  #listenedTo(heard: HeardBalance): HeardBalance {
    heard.onLine((record) => {
      if (record.event) for (const listener of this.#eventListeners) listener(heard.scale.name, record.event);
      if (heard !== this.#inUse) return this.#besideChanged("line");
      for (const listener of this.#lineListeners) listener(record);
    });
    return heard;
  }

  #exchanged(how: "opened" | "heard-all-along"): void {
    for (const listener of this.#exchangeListeners) listener(this.scale, how);
    this.#besideChanged();
  }

  #besideChanged(what: "line" | "list" = "list"): void {
    for (const listener of this.#besideListeners) listener(what);
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.#turn.then(work);
    this.#turn = turn.catch(() => undefined);
    return turn;
  }
}

/** Only balances that were chosen are ever heard beside. */
function choiceOf({ choice }: HeardBalance): BalanceChoice {
  if (!choice) throw new RangeError("the simulated balance is heard beside another");
  return choice;
}

function storedIn(body: { choice: unknown; beside?: unknown }): StoredBalances {
  const read = (one: unknown) => balanceChoiceShape.safeParse(one).data;
  return {
    choice: read(body.choice),
    beside: (Array.isArray(body.beside) ? body.beside : []).map(read).filter((one) => one !== undefined),
  };
}
