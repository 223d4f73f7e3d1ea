import type { Balance } from "../../drivers/balance.ts";
import { createFeed, type Feed } from "../../drivers/feed.ts";
import type { LineRecord } from "../../drivers/reading.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { type BalanceChoice, balanceChoiceShape, balanceHeard, balanceOf } from "./balance-choice.ts";
import { scaleOf } from "./feed-scale.ts";
import type { KeptProfile, KeptProfiles } from "./kept-profiles.ts";
import type { Scale } from "./scale.ts";

/** The balance that is open at this moment. */
interface Open {
  balance: Balance;
  feed: Feed;
  scale: Scale;
  /** kept when the cable was opened or refused */
  opened: Promise<void>;
}

/** A port that is still being opened would be locked for whoever opens it next; opening takes far less than this, ms. */
const openingMs = 500;

/** Waits until a balance first says something about its cable. */
function firstWord(balance: Balance): Promise<void> {
  return new Promise((said) => {
    const giveUp = setTimeout(said, openingMs);
    giveUp.unref();
    const end = balance.onLine(() => {
      end();
      clearTimeout(giveUp);
      said();
    });
  });
}

/** Choices looked back at for what was told about a balance before. */
const choicesLookedAt = 200;

/**
 * The one balance of the bench, owned by the server; pages only watch. It can be exchanged for another while the
 * bench runs: the earlier cable is closed, the choice is kept in the ledger, and whoever listens goes on listening.
 */
export class BalanceInUse {
  /** what was chosen; undefined while readings are typed or the balance is simulated */
  choice: BalanceChoice | undefined;
  /** the learned profile the lines are read by */
  profile: KeptProfile | undefined;
  #ledger: Ledger;
  #profiles: KeptProfiles;
  #open: Open | undefined;
  #earlier = new Map<string, BalanceChoice>();
  #lineListeners = new Set<(record: LineRecord) => void>();
  #exchangeListeners = new Set<(scale: Scale | undefined) => void>();
  #turn: Promise<unknown> = Promise.resolve();

  constructor(ledger: Ledger, profiles: KeptProfiles) {
    this.#ledger = ledger;
    this.#profiles = profiles;
  }

  get feed(): Feed | undefined {
    return this.#open?.feed;
  }
  get scale(): Scale | undefined {
    return this.#open?.scale;
  }

  /** The choice that was kept last; undefined when readings are typed. */
  async kept(): Promise<BalanceChoice | undefined> {
    const entries = await this.#ledger.entries({
      kind: "balance-choice",
      newestFirst: true,
      limit: choicesLookedAt,
    });
    const choices = entries.map((entry) =>
      entry.kind === "balance-choice" ? balanceChoiceShape.safeParse(entry.body.choice).data : undefined,
    );
    for (const choice of choices)
      if (choice && !this.#earlier.has(choice.address)) this.#earlier.set(choice.address, choice);
    return choices[0];
  }

  /** What was told before about the balance at this address. */
  told(address: string): BalanceChoice | undefined {
    return this.#earlier.get(address);
  }

  /** Keeps a choice, checked already, and goes over to it. Throws LedgerTrouble; then the earlier one goes on. */
  choose(choice: BalanceChoice | undefined): Promise<void> {
    return this.#inTurn(async () => {
      await this.#ledger.append("balance-choice", "balances", { choice: choice ?? null });
      await this.#goOver(choice);
    });
  }

  /** Goes over to a choice for this start of the bench only, without keeping it. */
  use(choice: BalanceChoice | undefined, profile?: KeptProfile): Promise<void> {
    return this.#inTurn(() => this.#goOver(choice, profile));
  }

  /** Takes a balance that needs no choice: the simulated one. */
  useSimulated(balance: Balance): Promise<void> {
    return this.#inTurn(() => this.#exchange(balance, createFeed({ balance })));
  }

  /** Listens to the chosen balance with every byte given on, for learning its lines. `resume` ends it. */
  learnFrom(hear: (bytes: Uint8Array) => void): Promise<void> {
    return this.#inTurn(async () => {
      if (!this.choice) throw new RangeError("No balance on a cable is chosen. Choose its port first.");
      const balance = balanceHeard(this.choice, hear);
      await this.#exchange(balance, createFeed({ balance }));
    });
  }

  /** Lets go of the cable while something else listens on it, such as the search for its settings. */
  letGo(): Promise<void> {
    return this.#inTurn(() => this.#exchange());
  }

  /** Goes back to the chosen balance after `learnFrom` or `letGo`. */
  resume(): Promise<void> {
    return this.#inTurn(() => this.#goOver(this.choice, this.profile));
  }

  /** Calls back for every line and event of whichever balance is in use. */
  onLine(listener: (record: LineRecord) => void): void {
    this.#lineListeners.add(listener);
  }

  /** Calls back with the new scale after every exchange. */
  onExchange(listener: (scale: Scale | undefined) => void): void {
    this.#exchangeListeners.add(listener);
  }

  async close(): Promise<void> {
    await this.#turn;
    this.#open?.feed.stop();
    await this.#open?.balance.stop();
  }

  async #goOver(choice: BalanceChoice | undefined, told?: KeptProfile): Promise<void> {
    this.choice = choice;
    this.profile = told ?? (choice?.profile === undefined ? undefined : this.#profiles.named(choice.profile));
    if (!choice) return this.#exchange();
    this.#earlier.set(choice.address, choice);
    const balance = balanceOf(choice, this.profile);
    const sends =
      choice.ask?.when === "capture"
        ? "on-request"
        : this.profile && !this.profile.profile.cadence.byItself && !choice.ask
          ? "on-key"
          : "by-itself";
    return this.#exchange(balance, createFeed({ balance, sends }));
  }

  async #exchange(balance?: Balance, feed?: Feed): Promise<void> {
    const before = this.#open;
    this.#open = undefined;
    before?.feed.stop();
    await before?.opened;
    await before?.balance.stop();
    if (balance && feed) {
      const scale = scaleOf(balance.name, feed, this.profile);
      this.#open = { balance, feed, scale, opened: firstWord(balance) };
      feed.onLine((record) => {
        for (const listener of this.#lineListeners) listener(record);
      });
    }
    for (const listener of this.#exchangeListeners) listener(this.scale);
    balance?.start();
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.#turn.then(work);
    this.#turn = turn.catch(() => undefined);
    return turn;
  }
}
