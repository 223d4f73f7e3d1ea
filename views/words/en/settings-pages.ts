/** What has a page of its own beside Settings. */
export const settingsPages = {
  heading: "More to set and to see",
  tokens: "Tokens for laboratory systems",
  retention: "How long records are kept",
};
