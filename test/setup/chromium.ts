import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { chromiumPath } from "./chromium-path.ts";

/** Browser tests need Debian's Chromium; it is installed when missing, and a failure to do so fails the run. */
export default function chromium(): void {
  if (existsSync(chromiumPath)) return;
  execFileSync("apt-get", ["update", "-qq"], { stdio: "inherit" });
  execFileSync(
    "apt-get",
    ["install", "-y", "-qq", "--no-install-recommends", "chromium", "fonts-dejavu-core"],
    {
      stdio: "inherit",
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    },
  );
  if (!existsSync(chromiumPath))
    throw new Error(
      `Browser tests found no Chromium at ${chromiumPath} and could not install it. ` +
        "Install the Debian package chromium, or set CHROMIUM to the path of another one.",
    );
}
