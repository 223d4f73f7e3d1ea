/**
 * For readings, units, tickets and names of entries: a browser that translates the page leaves them as they are.
 * Preact's types know only true and false here, HTML only "yes" and "no".
 */
export const asIs = { translate: "no" as unknown as boolean };
