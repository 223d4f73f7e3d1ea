/** Where the browser tests look for Chromium. */
export const chromiumPath = process.env.CHROMIUM ?? "/usr/bin/chromium";
