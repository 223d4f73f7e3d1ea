/** Where a profile of this name is shown. */
export function profileHref(name: string): string {
  return `/balances/profiles/${encodeURIComponent(name)}`;
}
