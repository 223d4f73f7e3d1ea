// Weighings typed while the bench is out of reach: kept on this device, and sent when it answers. Plain script.
// Each has a key of its own, by which the bench knows it again: sent twice, it is written once.
(() => {
  const { serviceWorker } = navigator;
  if (serviceWorker) serviceWorker.register("/service-worker.js").catch(() => {});

  const place = "underhook-kept-weighings";
  const draftPlace = "underhook-kept-draft";
  const kept = () => JSON.parse(localStorage.getItem(place) ?? "[]");
  const keep = (list) => localStorage.setItem(place, JSON.stringify(list));
  const change = (key, how) => keep(kept().map((one) => (one.key === key ? { ...one, ...how } : one)));

  const part = document.querySelector("[data-offline]");
  const form = part?.querySelector("form");
  const notice = document.querySelector("[data-kept-notice]");

  // --- what is kept, told
  const draw = () => {
    const list = kept();
    if (notice)
      notice.hidden = part !== null || !list.some(({ state }) => state !== "recorded" && state !== "open");
    if (!part) return;
    const rows = part.querySelector("[data-kept]");
    const model = part.querySelector("template[data-row]");
    part.querySelector("[data-none]").hidden = list.length > 0;
    rows.replaceChildren(
      ...list.toReversed().map((one) => {
        const row = model.content.firstElementChild.cloneNode(true);
        row.querySelector("[data-ticket]").textContent = one.fields.ticket;
        row.querySelector("[data-state]").textContent = part.dataset[`state${one.state}`] ?? "";
        row.querySelector("[data-says]").textContent = one.message ?? "";
        const link = row.querySelector("a");
        link.hidden = !one.href;
        if (one.href) link.href = one.href;
        const correct = row.querySelector("[data-correct]");
        correct.hidden = one.state !== "refused";
        correct.addEventListener("click", () => fill(one));
        const forget = row.querySelector("[data-forget]");
        forget.hidden = one.state !== "recorded" && one.state !== "open";
        forget.addEventListener("click", () => {
          keep(kept().filter(({ key }) => key !== one.key));
          draw();
        });
        return row;
      }),
    );
  };

  // --- the form
  let key;
  const fields = () => Object.fromEntries([...new FormData(form)].filter(([name]) => name !== "_csrf"));
  const fill = (one) => {
    key = one.key;
    for (const [name, value] of Object.entries(one.fields)) {
      const field = form.elements.namedItem(name);
      if (field) field.value = value;
    }
    forMethod();
    form.elements.namedItem(one.at || "ticket")?.focus();
  };
  /** Only the readings of the chosen method are asked for. */
  const forMethod = () => {
    const method = form.elements.namedItem("method").value;
    for (const set of form.querySelectorAll("[data-methods]")) {
      const asked = set.dataset.methods.split(" ").includes(method);
      set.hidden = !asked;
      for (const field of set.querySelectorAll("input")) field.disabled = !asked;
    }
  };
  if (form) {
    form.hidden = false;
    const draft = localStorage.getItem(draftPlace);
    if (draft) fill(JSON.parse(draft));
    forMethod();
    form.addEventListener("input", () => {
      forMethod();
      localStorage.setItem(draftPlace, JSON.stringify({ key, fields: fields() }));
    });
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      const one = {
        key: key ?? crypto.randomUUID(),
        readAt: new Date().toISOString(),
        fields: fields(),
        state: "kept",
      };
      keep([...kept().filter((other) => other.key !== one.key), one]);
      localStorage.removeItem(draftPlace);
      key = undefined;
      form.reset();
      forMethod();
      draw();
      navigator.storage?.persist?.();
      send();
      form.elements.namedItem("ticket").focus();
    });
  }

  // --- sending, one after another, by one page at a time
  let waiting;
  const send = () =>
    navigator.locks.request("underhook-kept-weighings", { ifAvailable: true }, async (lock) => {
      if (!lock || !kept().some(({ state }) => state === "kept" || state === "waits")) return;
      clearTimeout(waiting);
      try {
        const page = new DOMParser().parseFromString(await (await fetch("/offline")).text(), "text/html");
        const token = page.querySelector('input[name="_csrf"]')?.value;
        for (const one of kept()) {
          if (one.state !== "kept" && one.state !== "waits") continue;
          const body = new URLSearchParams({ ...one.fields, key: one.key, readAt: one.readAt, _csrf: token });
          const answer = await fetch("/offline/weighings", { method: "POST", body });
          if (!answer.ok) throw new Error(String(answer.status));
          change(one.key, await answer.json());
          draw();
        }
      } catch {
        // out of reach, or on its way up: the weighings stay here and are sent later
      }
      if (kept().some(({ state }) => state === "kept" || state === "waits"))
        waiting = setTimeout(send, 15_000);
    });
  addEventListener("online", send);
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && send());
  addEventListener("storage", draw);
  draw();
  send();
})();
