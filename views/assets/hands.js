// For hands in water and for balances that pretend to be a keyboard. Plain script; the page works without it.
//  1. What hands-free does (data-count counts it) sounds a tone of its kind and is spoken.
//  2. A code of a barcode reader (data-scans) goes into the field of a ticket; a press of the foot switch (data-presses)
//     presses the button that Enter belongs to.
//  3. A burst of keys faster than fingers comes from a balance: it ends in the field of a weight or is refused.
(() => {
  // --- 1: tone and voice
  let sound;
  const wakeSound = () => {
    if (!document.querySelector("[data-heard], [data-wakes-sound]") || !globalThis.AudioContext) return;
    sound ??= new AudioContext();
    if (sound.state === "suspended") void sound.resume();
  };
  // Browsers let a page sound only after its user has touched it.
  for (const name of ["pointerdown", "keydown"]) document.addEventListener(name, wakeSound);
  // taken: one high tone; lifted: two short ones; refused: one low and long
  const tones = {
    taken: [[880, 0.35]],
    lifted: [
      [660, 0.12],
      [880, 0.12],
    ],
    refused: [[220, 0.6]],
  };
  const ring = (kind) => {
    if (sound?.state !== "running") return;
    let from = sound.currentTime;
    for (const [hertz, seconds] of tones[kind] ?? []) {
      const source = sound.createOscillator();
      const volume = sound.createGain();
      source.frequency.value = hertz;
      volume.gain.setValueAtTime(0.3, from);
      volume.gain.exponentialRampToValueAtTime(0.001, from + seconds);
      source.connect(volume).connect(sound.destination);
      source.start(from);
      source.stop(from + seconds);
      from += seconds + 0.05;
    }
  };
  const hasVoice = () => globalThis.speechSynthesis !== undefined;
  const isSilent = () => localStorage.getItem("voice") === "off";
  const speak = (text) => {
    if (!hasVoice() || isSilent()) return;
    const words = new SpeechSynthesisUtterance(text);
    words.lang = document.documentElement.lang;
    speechSynthesis.cancel();
    speechSynthesis.speak(words);
  };
  let heard;
  const look = () => {
    const part = document.querySelector("[data-heard]");
    const voice = part?.querySelector("[data-voice]");
    if (voice) {
      voice.hidden = !hasVoice();
      voice.querySelector("input").checked = !isSilent();
    }
    const count = part && Number(part.dataset.count);
    // what the bench says first, once it was switched on here, is spoken too
    if (count !== undefined && heard !== undefined && count > heard) {
      ring(part.dataset.heard);
      speak(part.dataset.says);
    }
    heard = count ?? (heard === undefined ? undefined : 0);
  };
  document.addEventListener("change", ({ target }) => {
    if (target.closest?.("[data-voice]")) localStorage.setItem("voice", target.checked ? "on" : "off");
  });
  look();
  document.addEventListener("htmx:sse:after:message", look);
  document.addEventListener("htmx:after:swap", look);

  // --- 2: what came over a cable of its own
  let handsBefore;
  const lookAtHands = () => {
    const part = document.querySelector("[data-scans]");
    if (!part) return;
    const { scanned, scans, presses } = part.dataset;
    const before = handsBefore;
    handsBefore = { scans: Number(scans), presses: Number(presses) };
    if (!before) return;
    const ticket = [...document.querySelectorAll("input[data-scan]")].find(
      (one) => one.getClientRects().length > 0,
    );
    if (handsBefore.scans > before.scans && ticket) {
      ticket.value = scanned;
      ticket.focus();
    }
    if (handsBefore.presses <= before.presses) return;
    const button = [...document.querySelectorAll('[data-key~="Enter"]')].find(
      (one) =>
        !one.disabled && one.getAttribute("aria-disabled") !== "true" && one.getClientRects().length > 0,
    );
    button?.click();
  };
  lookAtHands();
  document.addEventListener("htmx:sse:after:message", lookAtHands);

  // --- 3: a balance at the keyboard; the same limits as in drivers/key-burst.ts
  const longestGapMs = 35;
  const leastCharacters = 4;
  let strokes = "";
  let lastMs = 0;
  let field;
  let before = "";
  let pending;
  // A scanner types as fast as a balance: what it puts into the field of a ticket stays, unless it is a weight.
  const isScan = (text) =>
    field?.matches("[data-scan]") && !/^\s*[+\-\u2212]?\s*\d+[.,]\d+\s*[a-zA-Z]*\s*$/.test(text);
  const isBurst = (text) => text.length >= leastCharacters && /\d/.test(text) && !isScan(text);
  const seen = (element) => element.getClientRects().length > 0;

  /** The page carries the sentences in its own language. */
  const inWords = (key, values) =>
    JSON.parse(document.body.dataset.typedByBalance)[key].replace(/\{(\w+)\}/g, (_, name) => values[name]);

  function place(text) {
    if (field) field.value = before;
    const [, sign, number, unit] =
      /^\s*([+\-\u2212]?)\s*(\d+(?:[.,]\d+)?)\s*([a-zA-Z]*)\s*$/.exec(text) ?? [];
    const typed = text.trim();
    if (number === undefined) return tell(inWords("noWeight", { text: typed }));
    const waiting = [...document.querySelectorAll("input[data-weight]")].filter(seen);
    const target = field?.matches("[data-weight]") ? field : waiting.length === 1 ? waiting[0] : undefined;
    if (!target) return tell(inWords(waiting.length === 0 ? "noField" : "manyFields", { text: typed }));
    const units = target.form?.querySelector("select[name=unit]");
    if (unit && units) {
      const known = [...units.options].find(({ value }) => value.toLowerCase() === unit.toLowerCase());
      if (!known) return tell(inWords("unknownUnit", { text: typed, unit }));
      units.value = known.value;
    }
    target.value = `${sign === "" || sign === "+" ? "" : "-"}${number}`;
    target.focus();
    tell("");
    return target;
  }

  function tell(says) {
    let notice = document.getElementById("typed-by-balance");
    if (!notice) {
      notice = document.createElement("div");
      notice.id = "typed-by-balance";
      notice.setAttribute("role", "alert");
      document.querySelector("main")?.prepend(notice);
    }
    notice.className = says === "" ? "" : "problems";
    notice.textContent = says;
  }

  document.addEventListener(
    "keydown",
    (event) => {
      const ends = event.key === "Enter" || event.key === "Tab";
      if (event.repeat || event.ctrlKey || event.altKey || event.metaKey) strokes = "";
      else if (ends || event.key.length === 1) hear(event, ends);
    },
    true,
  );

  function hear(event, ends) {
    const fast = strokes !== "" && event.timeStamp - lastMs <= longestGapMs;
    lastMs = event.timeStamp;
    clearTimeout(pending);
    // Inside a burst no letter is a shortcut.
    if (fast) {
      event.stopPropagation();
      // The first digit may have been led to the field of the step.
      if (!field) {
        field = event.target.closest?.("input[data-before-digits]") ?? undefined;
        before = field?.dataset.beforeDigits ?? "";
      }
    } else {
      strokes = "";
      field = event.target.closest?.("input, textarea") ?? undefined;
      before = field?.value ?? "";
    }
    if (!ends) {
      strokes += event.key;
      pending = setTimeout(() => {
        if (isBurst(strokes)) place(strokes);
        strokes = "";
      }, 4 * longestGapMs);
      return;
    }
    if (isBurst(strokes)) {
      // Only a burst typed into the field of a weight may also send its form.
      const right = field?.matches("[data-weight]") && place(strokes) === field;
      if (!right) {
        event.preventDefault();
        if (!field?.matches("[data-weight]")) place(strokes);
      }
    }
    strokes = "";
  }
})();
