import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";

/** A program of another maker's that something is checked against, and the Debian packages that bring it. */
export interface Peer {
  what: string;
  path: string;
  packages: readonly string[];
}

export const peers = {
  chromium: {
    // Chromium without a window: the same pages for a third less of the processors' time.
    what: "Chromium",
    path: process.env.CHROMIUM ?? "/usr/bin/chromium-headless-shell",
    packages: ["chromium-headless-shell", "fonts-dejavu-core"],
  },
  postgresql: { what: "PostgreSQL", path: "/usr/lib/postgresql", packages: ["postgresql"] },
  poppler: { what: "pdftotext", path: "/usr/bin/pdftotext", packages: ["poppler-utils"] },
  numpy: {
    what: "numpy",
    path: "/usr/lib/python3/dist-packages/numpy",
    packages: ["python3", "python3-numpy"],
  },
  pandas: {
    what: "pandas",
    path: "/usr/lib/python3/dist-packages/pandas",
    packages: ["python3", "python3-pandas"],
  },
  systemd: { what: "systemd-analyze", path: "/usr/bin/systemd-analyze", packages: ["systemd"] },
  compose: { what: "docker-compose", path: "/usr/bin/docker-compose", packages: ["docker-compose"] },
  r: { what: "R", path: "/usr/bin/Rscript", packages: ["r-base-core"] },
} satisfies Record<string, Peer>;

/** Installs what is missing, as the README announces. Throws Error naming what could not be had, and what to do. */
export function provide(...wanted: readonly Peer[]): void {
  const missing = wanted.filter(({ path }) => !existsSync(path));
  if (missing.length === 0) return;
  const packages = missing.flatMap((peer) => peer.packages);
  console.log(`Installing ${packages.join(", ")} with apt-get: ${named(missing)} not found.`);
  const options = {
    stdio: ["ignore", "ignore", "inherit"] as const,
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
  };
  const patient = ["-qq", "-o", "DPkg::Lock::Timeout=300"];
  let cause: unknown;
  try {
    execFileSync("apt-get", ["update", ...patient], { ...options, stdio: [...options.stdio] });
    execFileSync("apt-get", ["install", "-y", "--no-install-recommends", ...patient, ...packages], {
      ...options,
      stdio: [...options.stdio],
    });
  } catch (error) {
    cause = error;
  }
  const left = missing.filter(({ path }) => !existsSync(path));
  if (left.length > 0)
    throw new Error(
      `${named(left)} could not be installed. Install the Debian packages ${left.flatMap((peer) => peer.packages).join(", ")} by hand, as root.`,
      { cause },
    );
}

function named(some: readonly Peer[]): string {
  return some.map(({ what, path }) => `${what} (${path})`).join(", ");
}
