import { type Browser, chromium } from "playwright-core";
import { peers } from "./debian.ts";

/** A Chromium of one's own. */
export function launchBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: peers.chromium.path,
    args: ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update"],
  });
}

let shared: Promise<Browser> | undefined;

/** The Chromium of all files that run in this process, one after the other; it ends with the process. */
export function sharedBrowser(): Promise<Browser> {
  shared ??= launchBrowser();
  return shared;
}

/** Ends what a test or a file has opened in it. */
export async function closeContexts(browser: Browser | undefined): Promise<void> {
  await Promise.all((browser?.contexts() ?? []).map((context) => context.close()));
}
