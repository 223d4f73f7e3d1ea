/** What has a page of its own beside Settings. */
export const settingsPages = {
  heading: "More to set and to see",
  ledger: "The ledger: check it, sign it, hand it over",
  customer: "Window facing the customer",
  imports: "Take over a list: old weighings, tickets, specifications, metals",
  tickets: "Tickets that wait",
  tokens: "Tokens for laboratory systems",
  retention: "How long records are kept",
};
