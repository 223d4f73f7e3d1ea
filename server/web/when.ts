/** A moment as the page writes it: date and time of day, UTC. */
export function whenOf(at: string): string {
  return `${at.slice(0, 10)} ${at.slice(11, 19)} UTC`;
}
