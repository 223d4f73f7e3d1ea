// Small help for a page that already works without it. Plain script, no inline code, nothing from outside.
//  1. A live page that misses two heartbeats turns grey and says so; the next word from the bench clears it.
//  2. A tab that comes back opens its stream anew, and a new stream begins with the full state.
//  3. One-key shortcuts: data-key="t F9" on a button; off with data-keys="off" on <html>.
//     Digits go to the field of the step.
//  4. data-say="text" of freshly arrived parts goes to the one live region, at most once in 2 s.
//  5. A part that arrives never takes away what somebody typed; only a form that was taken is emptied.
//  6. Focus and scroll follow the step; which fold stands open is remembered.
//  7. Who asks for less motion sees the trace drawn anew once a second.
(() => {
  const root = document.documentElement;

  // --- 1 and 2: heartbeats. <div data-live data-heartbeat-seconds="2"> in or around the part that connects.
  let lastWord = Date.now();
  const beat = () => {
    lastWord = Date.now();
    setStale(false);
  };
  const setStale = (stale) => {
    if (root.classList.contains("stale") === stale) return;
    root.classList.toggle("stale", stale);
    const notice = document.querySelector("[data-stale-notice]");
    if (notice) notice.hidden = !stale;
    if (stale && notice) say(notice.textContent);
    for (const button of document.querySelectorAll("[data-needs-live]")) {
      button.setAttribute("aria-disabled", String(stale));
    }
  };
  for (const name of ["htmx:sse:after:message", "htmx:sse:after:connection"]) {
    document.addEventListener(name, beat);
  }
  // A tab that was opened behind another one lets go of its stream too, as one that goes behind does.
  document.addEventListener("htmx:sse:after:connection", () => {
    if (document.hidden) setTimeout(() => document.dispatchEvent(new Event("visibilitychange")));
  });
  setInterval(() => {
    const live = document.querySelector("[data-heartbeat-seconds]");
    if (!live) return;
    const seconds = Number(live.dataset.heartbeatSeconds);
    if (Date.now() - lastWord > 2 * seconds * 1000) setStale(true);
  }, 500);
  // A button that needs a live balance does nothing while the page is stale.
  document.addEventListener(
    "click",
    (event) => {
      if (event.target.closest?.('[data-needs-live][aria-disabled="true"]')) {
        event.preventDefault();
        event.stopPropagation();
      }
    },
    true,
  );

  // A press counts for what the next button was when it went down: the part may be drawn anew under the thumb, and
  // what the button does by then may be another thing.
  const does = (button) =>
    [
      button.getAttribute("aria-disabled"),
      button.form?.getAttribute("action"),
      ...["role", "take", "check", "place"].map((name) => button.form?.elements.namedItem(name)?.value),
    ].join(" ");
  let down;
  document.addEventListener(
    "pointerdown",
    ({ target }) => {
      const button = target.closest?.(".next");
      down = button && { button, does: does(button) };
    },
    true,
  );
  document.addEventListener(
    "click",
    (event) => {
      const button = event.target.closest?.(".next");
      if (!button || !down || event.detail === 0 || does(button) === down.does) return;
      event.preventDefault();
      event.stopPropagation();
    },
    true,
  );
  document.addEventListener(
    "pointerup",
    ({ target }) => {
      const now = document.getElementById("next");
      // where the element itself was exchanged, the browser makes no click of the press
      if (!down || down.button.isConnected || !now?.contains(target) || does(now) !== down.does) return;
      now.click();
    },
    true,
  );

  // --- 3: keys
  const typing = (element) =>
    element?.closest?.("input:not([type=checkbox]):not([type=radio]),select,textarea,[contenteditable]");
  // The first letter of a balance that types like a keyboard is no shortcut: a letter counts once no other key has
  // followed it closely, three times the longest gap of such a burst (35 ms).
  const alone = 105;
  let pressing;
  document.addEventListener(
    "keydown",
    (event) => {
      if (event.key.length === 1 || event.key === "Enter" || event.key === "Tab") clearTimeout(pressing);
    },
    true,
  );
  document.addEventListener("keydown", (event) => {
    if (root.dataset.keys === "off" || event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
    if (typing(event.target) && !/^F\d+$/.test(event.key)) return;
    // Enter and the space bar belong to the link or button they stand on.
    if ((event.key === "Enter" || event.key === " ") && event.target.closest?.("a,button,summary,input"))
      return;
    if (/^[\d.,+\-\u2212]$/.test(event.key)) return toField();
    const name = event.key === " " ? "space" : event.key.toLowerCase();
    for (const target of document.querySelectorAll("[data-key]")) {
      const keys = target.dataset.key.toLowerCase().split(" ");
      if (!keys.includes(name)) continue;
      if (target.disabled || target.getClientRects().length === 0) continue;
      event.preventDefault();
      const press = () => {
        if (target.matches("input,select,textarea")) target.focus();
        else target.click();
      };
      if (event.key.length === 1) pressing = setTimeout(press, alone);
      else press();
      return;
    }
  });

  /** The digit itself lands in the field, since the key is not pressed for good before it has the focus. */
  function toField() {
    const seen = (element) => element.getClientRects().length > 0;
    const folded = [...document.querySelectorAll("details[data-digits]")].find(seen);
    let field = [...document.querySelectorAll("[data-step-field][inputmode]")].find(seen);
    if (!field && folded) {
      folded.open = true;
      field = folded.querySelector("input[data-weight]");
    }
    if (!field) return;
    field.dataset.beforeDigits = field.value;
    field.focus();
  }

  // --- 4: what a screen reader hears
  let lastSaid = 0;
  let waiting;
  const say = (text) => {
    const region = document.getElementById("live");
    if (!region) return;
    clearTimeout(waiting);
    waiting = setTimeout(
      () => {
        lastSaid = Date.now();
        region.textContent = text;
      },
      Math.max(0, 2000 - (Date.now() - lastSaid)),
    );
  };
  let heard = "";
  document.addEventListener("htmx:after:swap", () => {
    const part = document.querySelector("[data-say]");
    if (part && part.dataset.say !== heard) {
      heard = part.dataset.say;
      say(heard);
    }
  });
  document.addEventListener("htmx:sse:after:message", () => {
    const part = document.querySelector("[data-say]");
    if (part && part.dataset.say !== heard) {
      heard = part.dataset.say;
      say(heard);
    }
  });

  // --- 5: what is typed. A field is the writer's from the first letter until the bench has taken its form.
  const isText = (element) =>
    element.matches?.("input:not([type=checkbox],[type=radio],[type=hidden],[type=file]),textarea");
  const lessMotion = matchMedia("(prefers-reduced-motion: reduce)");
  let traced = 0;
  globalThis.htmx?.registerExtension("typed", {
    htmx_before_morph_node: (element) => {
      if (!lessMotion.matches || !element.matches?.(".trace")) return true;
      if (Date.now() - traced < 1000) return false;
      traced = Date.now();
      return true;
    },
    htmx_before_morph_attr: (element, { attrName, newValue }) => {
      if (attrName !== "value" || !isText(element)) return true;
      const { value, defaultValue } = element;
      element.setAttribute("value", newValue ?? "");
      element.value = value === defaultValue ? (newValue ?? "") : value;
      return false;
    },
  });
  const sent = new WeakSet();
  // the fold a form stood in when it was sent: the answer may have put it into another one
  const sentFrom = new WeakMap();
  document.addEventListener("htmx:before:request", ({ target }) => {
    sentFrom.set(target, target.closest?.("details"));
    for (const field of target.elements ?? []) if (isText(field)) sent.add(field);
  });
  document.addEventListener("input", ({ target }) => sent.delete(target));
  document.addEventListener("htmx:after:request", ({ target, detail }) => {
    const { request, response } = detail.ctx;
    if (request.method !== "POST" || response.status >= 400 || !target.matches?.("form")) return;
    for (const field of target.elements) if (sent.has(field)) field.value = field.defaultValue;
    const folded = sentFrom.get(target);
    if (folded) folded.open = false;
  });

  // --- 6: focus and scroll follow the step
  const stepNow = () => {
    const step = document.querySelector("#piece [data-step]")?.dataset.step ?? "";
    return `${step} ${document.querySelector("#result #now") ? "answered" : ""}`;
  };
  // Hands at the simulated balance are no keys: the next thing keeps Enter.
  document.addEventListener("click", ({ target }) => target.closest?.("[data-passes-focus]")?.blur());
  let step = stepNow();
  const follow = () => {
    const now = stepNow();
    if (now === step) return;
    step = now;
    const { activeElement } = document;
    const elsewhere =
      activeElement !== document.body && !activeElement.closest("#piece, #result, main:focus");
    if (elsewhere || (typing(activeElement) && activeElement.value !== activeElement.defaultValue)) return;
    const place = document.getElementById("now");
    const field = document.querySelector("#piece [data-step-field]");
    const target = field ?? document.querySelector("#result #now") ?? document.getElementById("step-heading");
    target?.focus({ preventScroll: true });
    const seen = () => {
      const { top } = place.getBoundingClientRect();
      return top >= 0 && top < 0.6 * innerHeight;
    };
    if (place && !seen()) scrollTo(0, 0);
    if (place && !seen()) place.scrollIntoView({ block: "start" });
  };
  for (const name of ["htmx:after:swap", "htmx:sse:after:message"])
    document.addEventListener(name, () => requestAnimationFrame(follow));

  // a page that follows the bench as a whole is drawn anew when what it saw has changed
  const seenOf = () => document.querySelector("[data-redraw]")?.dataset.redraw;
  let seenBefore = seenOf();
  document.addEventListener("htmx:sse:after:message", () => {
    const now = seenOf();
    if (now === undefined || now === seenBefore) return;
    seenBefore = now;
    if (!document.getElementById("lot")) return;
    globalThis.htmx?.ajax("GET", location.pathname, { target: "#lot", swap: "outerMorph" });
  });

  const remembered = new WeakSet();
  const remember = () => {
    for (const fold of document.querySelectorAll("details[data-remember]")) {
      if (remembered.has(fold)) continue;
      remembered.add(fold);
      if (localStorage.getItem(fold.dataset.remember) === "open") fold.open = true;
    }
  };
  remember();
  for (const name of ["htmx:after:swap", "htmx:sse:after:message"]) document.addEventListener(name, remember);
  document.addEventListener(
    "toggle",
    ({ target }) => {
      const name = target.dataset?.remember;
      if (name) localStorage.setItem(name, target.open ? "open" : "closed");
    },
    true,
  );
})();
