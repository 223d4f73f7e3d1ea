// Keeps the page for weighings without a connection, and what it is drawn with, on the device. Every other page comes
// from the bench, and only while it answers. The bench writes `version` and `shell` before this text.
/* global version, shell */
const cacheName = `underhook-${version}`;
const page = "/offline";

self.addEventListener("install", (event) => {
  event.waitUntil(
    caches
      .open(cacheName)
      .then((cache) => cache.addAll(shell))
      .then(keepPage)
      .then(() => self.skipWaiting()),
  );
});

self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => names.filter((name) => name.startsWith("underhook-") && name !== cacheName))
      .then((old) => Promise.all(old.map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const { origin, pathname, search } = new URL(request.url);
  if (request.method !== "GET" || origin !== self.location.origin) return;
  if (request.mode === "navigate") event.respondWith(fromBench(request, pathname));
  else if (shell.includes(pathname + search))
    event.respondWith(caches.match(pathname + search).then((kept) => kept ?? fetch(request)));
});

/** Keeps the page, unless the bench leads to the sign-in in its place; then it is kept once somebody has signed in. */
async function keepPage() {
  const answer = await fetch(page);
  if (answer.ok && !answer.redirected) await (await caches.open(cacheName)).put(page, answer);
}

/** The page as the bench draws it now; the kept page while the bench is out of reach. */
async function fromBench(request, pathname) {
  try {
    const answer = await fetch(request);
    if (pathname === page && answer.ok) await (await caches.open(cacheName)).put(page, answer.clone());
    else if (answer.ok && !(await caches.match(page))) keepPage();
    return answer;
  } catch {
    return (await caches.match(page)) ?? Response.error();
  }
}
