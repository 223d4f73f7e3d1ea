/** What was thrown says of itself: the reason that a file, a parser or the system gives. */
export function reasonOf(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown);
}
