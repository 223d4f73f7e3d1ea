import { type Message, message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";

/** What of an owner's entry must not change silently. */
interface Named {
  id: string;
  name: string;
}

const same = (a: string, b: string) => a.trim().toLowerCase() === b.trim().toLowerCase();

/** Refuses a list in which an id or a name stands twice, or a held id has another name than before. */
export function refuseSilentChanges(held: readonly Named[], next: readonly Named[]): void {
  const faults: Message[] = [];
  for (const [place, one] of next.entries()) {
    const earlier = next.slice(0, place);
    if (earlier.some(({ id }) => id === one.id)) faults.push(message("own.id-twice", { id: one.id }));
    else if (earlier.some(({ name }) => same(name, one.name)))
      faults.push(message("own.name-twice", { name: one.name }));
    const before = held.find(({ id }) => id === one.id);
    if (before && before.name !== one.name)
      faults.push(message("own.renamed", { id: one.id, held: before.name, name: one.name }));
  }
  if (faults.length > 0) throw new Refusal("own.not-taken-over", { faults }, "name");
}

/** What is held and no longer there. */
export function missingFrom<T extends Named>(next: readonly Named[], held: readonly T[]): T[] {
  return held.filter(({ id }) => !next.some((one) => one.id === id));
}
