/** The ticket after this one, when it ends in a number: A-017 gives A-018. */
export function ticketAfter(ticket: string): string | undefined {
  const [, start = "", digits] = /^(.*?)(\d{1,9})$/.exec(ticket) ?? [];
  if (digits === undefined) return undefined;
  return start + String(Number(digits) + 1).padStart(digits.length, "0");
}
