/** Entries were to be written after so many about their subject, and there are others by now. Nothing was stored. */
export class Stale extends Error {
  readonly subject: string;
  readonly expected: number;
  readonly found: number;

  constructor(subject: string, expected: number, found: number) {
    super(`${subject}: ${expected} entries expected, ${found} found`);
    this.name = "Stale";
    this.subject = subject;
    this.expected = expected;
    this.found = found;
  }
}
