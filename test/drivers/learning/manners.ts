import type { Lot } from "./lot.ts";
import { ascii, digits, type Line, type Manner, type Moment, minus, plain, text } from "./manner.ts";
import { marksOfOtherThings } from "./marks-of-other-things.ts";

/** Every manner of writing, its widths, letters and fillings drawn by lot. */
export function manners(by: Lot): Manner[] {
  const letters = [..."ABCDEFHJKLMQRSUVWXYZ"];
  const letter = () => by.one(letters);
  const two = (): [string, string] => {
    const a = letter();
    let b = letter();
    while (b === a) b = letter();
    return [a, b];
  };
  const width = () => by.whole(9, 13);
  const end = () => by.one(["\r\n", "\r\n", "\n", "\r", "\n\r"]);
  const all: Manner[] = [];
  const add = (...some: Manner[]) => all.push(...some);

  // number and unit, aligned in all ways
  for (const [unit, decimals] of [
    ["g", 4],
    ["g", 2],
    ["mg", 1],
    ["kg", 6],
    ["ct", 3],
    ["ozt", 4],
    ["dwt", 3],
    ["gn", 2],
    ["oz", 3],
    ["g", 3],
  ] as const) {
    const w = width();
    add(
      text(
        "plain",
        `${unit} ${decimals}, right, width ${w}`,
        { unit, decimals, end: end() },
        (m) => `${plain(m.net, decimals).padStart(w)} ${unit}`,
      ),
      text(
        "plain",
        `${unit} ${decimals}, free`,
        { unit, decimals, end: end() },
        (m) => `W:${plain(m.net, decimals)}${unit}`,
      ),
    );
  }
  for (const fill of ["*", "_", "0"]) {
    const w = width();
    add(
      text(
        "filled",
        `filled with ${fill}`,
        { decimals: 3 },
        (m) => `${minus(m.net, "-", "+")}${digits(m.net, 3).padStart(w, fill)} g`,
      ),
      text(
        "filled",
        `filled with ${fill}, mark behind`,
        { decimals: 3, tells: true },
        (m) => `${minus(m.net, "-", " ")}${digits(m.net, 3).padStart(w, fill)} g ${m.still ? "Q" : "V"}`,
      ),
    );
  }
  add(
    text(
      "plain",
      "left in its field",
      { decimals: 4 },
      (m) => `Z ${(minus(m.net, "-", " ") + digits(m.net, 4)).padEnd(14)}g`,
    ),
    text(
      "plain",
      "sign in the first column",
      { decimals: 3 },
      (m) => `${minus(m.net, "-", "+")}${digits(m.net, 3).padStart(11)} g  `,
    ),
    text("plain", "unit first", { unit: "ct", decimals: 3 }, (m) => `ct ${plain(m.net, 3).padStart(10)}`),
    text(
      "plain",
      "last digit in brackets",
      { decimals: 4 },
      (m) => `${minus(m.net, "-", " ")}${digits(m.net, 4).padStart(10).replace(/(\d)$/, "[$1]")} g`,
    ),
    text(
      "plain",
      "last digit in round brackets",
      { decimals: 4 },
      (m) => `${minus(m.net, "-", " ")}${digits(m.net, 4).padStart(10).replace(/(\d)$/, "($1)")} g`,
    ),
    text("plain", "no unit", { decimals: 3 }, (m) => plain(m.net, 3).padStart(11)),
    text(
      "plain",
      "unit nobody knows",
      { unit: "ozt", decimals: 4 },
      (m) => `${plain(m.net, 4).padStart(11)} troy`,
    ),
  );

  // signs in other places
  for (const decimals of [4, 2]) {
    const w = width();
    const [p, n] = two();
    add(
      text(
        "sign",
        `behind the digits, free, ${decimals}`,
        { decimals },
        (m) => `${digits(m.net, decimals)}${minus(m.net)} g`,
      ),
      text(
        "sign",
        `behind the digits, width, ${decimals}`,
        { decimals, end: end() },
        (m) => `K${digits(m.net, decimals).padStart(w)}${minus(m.net, "-", " ")} g`,
      ),
      text(
        "sign",
        `behind the digits, plus too, ${decimals}`,
        { decimals },
        (m) => `${digits(m.net, decimals).padStart(w)}${minus(m.net, "-", "+")} g`,
      ),
      text("sign", `in brackets, free, ${decimals}`, { decimals }, (m) =>
        m.net < 0 ? `(${digits(m.net, decimals)}) g` : `${digits(m.net, decimals)} g`,
      ),
      text(
        "sign",
        `in brackets, width, ${decimals}`,
        { decimals },
        (m) =>
          `${(m.net < 0 ? `(${digits(m.net, decimals)})` : `${digits(m.net, decimals)} `).padStart(w)} g`,
      ),
      text(
        "sign",
        `a letter in front, ${decimals}`,
        { decimals },
        (m) => `${m.net < 0 ? n : p}${digits(m.net, decimals).padStart(w)} g`,
      ),
      text(
        "sign",
        `a letter and a mark of rest, ${decimals}`,
        { decimals, tells: true },
        (m) => `${m.still ? "=" : "~"}${m.net < 0 ? n : p},${digits(m.net, decimals).padStart(w, "0")},g`,
      ),
      text(
        "sign",
        `a word, ${decimals}`,
        { decimals },
        (m) => `${m.net < 0 ? "NEG" : "   "} ${digits(m.net, decimals).padStart(w)} g`,
      ),
      text(
        "sign",
        `a word or none, ${decimals}`,
        { decimals },
        (m) => `${m.net < 0 ? "NEG " : ""}${digits(m.net, decimals)} g`,
      ),
      text(
        "sign",
        `a word behind, ${decimals}`,
        { decimals },
        (m) => `${digits(m.net, decimals).padStart(w)} g${m.net < 0 ? " below" : ""}`,
      ),
      text(
        "sign",
        `a bit of a status in hexadecimal, ${decimals}`,
        { decimals, tells: true },
        (m) =>
          `${(0x40 + (m.net < 0 ? 1 : 0) + (m.still ? 8 : 0)).toString(16).toUpperCase()};${digits(m.net, decimals).padStart(w)};g`,
      ),
      text(
        "sign",
        `a bit of a status byte, ${decimals}`,
        { decimals, tells: true },
        (m) =>
          `${String.fromCharCode(0x50 + (m.net < 0 ? 2 : 0) + (m.still ? 4 : 0))}${digits(m.net, decimals).padStart(w, "0")} g`,
      ),
      text(
        "sign",
        `a digit glued to the number, ${decimals}`,
        { decimals },
        (m) => `${m.net < 0 ? 1 : 0}${digits(m.net, decimals).padStart(8, "0")} g`,
      ),
      text(
        "sign",
        `three letters for above, below and zero, ${decimals}`,
        { decimals },
        (m) => `${m.net > 0 ? "P" : m.net < 0 ? "M" : "Z"} ${digits(m.net, decimals).padStart(w)} g`,
      ),
      text(
        "sign",
        `none in the line, ${decimals}`,
        { decimals, refused: ["learn.refused.sign"], hidesAboveZero: true },
        (m) => `${digits(m.net, decimals).padStart(w)} g`,
      ),
    );
  }
  add({
    ...text("sign", "the long minus of text", { decimals: 3 }, () => ""),
    message: (m) =>
      Uint8Array.from(
        Buffer.from(`${(minus(m.net, "\u2212") + digits(m.net, 3)).padStart(11)} g\r\n`, "utf8"),
      ),
  });

  // letters that are no unit
  for (const [unit, word, decimals] of [
    ["ozt", "toz", 4],
    ["dwt", "", 3],
    ["ct", "c.", 3],
  ] as const)
    add(
      text(
        "unit flags",
        `G in front of ${unit}`,
        { unit, decimals },
        (m) => `G ${plain(m.net, decimals).padStart(11)} ${word}`,
      ),
      text(
        "unit flags",
        `G behind ${unit}`,
        { unit, decimals },
        (m) => `${plain(m.net, decimals).padStart(11)} ${word} G`,
      ),
      text(
        "unit flags",
        `G right behind ${unit}`,
        { unit, decimals },
        (m) => `${plain(m.net, decimals).padStart(11)} G ${word}`,
      ),
      text(
        "unit flags",
        `an identity of letters and digits, ${unit}`,
        { unit, decimals },
        (m) => `CT0119 ${plain(m.net, decimals).padStart(11)} ${word}`,
      ),
    );

  // powers of ten and places of the point
  add(
    text("scale", "E-03 kg", { decimals: 3 }, (m) => `${plain(m.net, 3).padStart(10)}E-03 kg`),
    text("scale", "one digit before the point, E", { decimals: 4 }, (m) => {
      const size = Math.abs(m.net);
      const power = size === 0 ? 0 : String(size).length - 1;
      const mantissa =
        size === 0
          ? "0.00000"
          : `${String(size)[0]}.${String(size).slice(1).padEnd(5, "0").slice(0, Math.max(5, power))}`;
      const e = size === 0 ? 0 : power - 4;
      return `${minus(m.net, "-", "+")}${mantissa}E${e < 0 ? "-" : "+"}${String(Math.abs(e)).padStart(2, "0")} g`;
    }),
    text("scale", "x10 g", { decimals: 2 }, (m) => `${plain(m.net, 3).padStart(10)}x10 g`),
    text("scale", "x 10^-1 g", { decimals: 3 }, (m) => `${plain(m.net, 2).padStart(10)} x10^-1 g`),
    text(
      "scale",
      "kg in the line, g on the display",
      { decimals: 3 },
      (m) => `${plain(m.net, 6).padStart(11)} kg`,
    ),
    text(
      "scale",
      "mg in the line, g on the display",
      { decimals: 4 },
      (m) => `${plain(m.net, 1).padStart(11)} mg`,
    ),
    text(
      "scale",
      "point left out",
      { decimals: 4 },
      (m) => `${minus(m.net, "-", "+")}${String(Math.abs(m.net)).padStart(8, "0")}g`,
    ),
    text("scale", "point left out, free", { decimals: 2 }, (m) => `${m.net} g`),
    text(
      "scale",
      "decimals in a code before",
      { decimals: 4 },
      (m) => `4,${minus(m.net, "-", "+")}${String(Math.abs(m.net)).padStart(8, "0")},g`,
    ),
    text(
      "scale",
      "decimals in a code behind",
      { decimals: 3, tells: true },
      (m) => `${m.still ? "1" : "0"}${minus(m.net, "-", " ")}${String(Math.abs(m.net)).padStart(8, "0")}D3`,
    ),
    text(
      "scale",
      "point moved, nothing says so",
      { decimals: 3, refused: ["learn.refused.point"] },
      (m) => `${plain(m.net, 2).padStart(11)} g`,
    ),
    text(
      "scale",
      "another unit than the display",
      { unit: "dwt", decimals: 3, refused: ["learn.refused.other-unit"] },
      (m) => `${plain(m.net, 3).padStart(11)} g`,
    ),
  );

  // fields and groups
  const [s, u] = two();
  add(
    text(
      "fields",
      "a status digit before a comma",
      { decimals: 3, tells: true },
      (m) => `${m.still ? 1 : 2},${minus(m.net, "-", "")}${digits(m.net, 3).padStart(7, "0")},g`,
    ),
    text(
      "fields",
      "a range before a comma",
      { decimals: 3 },
      (m) => `1,${minus(m.net, "-", "")}${digits(m.net, 3).padStart(7, "0")},g`,
    ),
    text(
      "fields",
      "commas all through",
      { decimals: 2, tells: true },
      (m) => `${m.still ? s : u}${s},NW,${plain(m.net, 2).padStart(9)},g,0,${m.tare === 0 ? "N" : "T"}`,
    ),
    text(
      "fields",
      "commas, sign apart",
      { decimals: 3, tells: true },
      (m) => `S,${m.net < 0 ? "-" : "+"},${digits(m.net, 3)},g,${m.still ? "R" : "M"}`,
    ),
    text(
      "fields",
      "tabs",
      { decimals: 4, tells: true },
      (m) => `${m.still ? "rest" : "move"}\t${plain(m.net, 4)}\tg`,
    ),
    text(
      "fields",
      "tabs, number first",
      { decimals: 3 },
      (m) => `${plain(m.net, 3)}\tg\t${m.tare === 0 ? "" : "tared"}`,
    ),
    text(
      "fields",
      "semicolons and quotes",
      { decimals: 3, tells: true },
      (m) => `"${m.still ? 1 : 0}";"${plain(m.net, 3)}";"g"`,
    ),
    text(
      "fields",
      "flags as digits",
      { decimals: 2, tells: true },
      (m) => `${m.still ? 1 : 0};${m.net === 0 ? 1 : 0};${m.tare === 0 ? 0 : 1};${plain(m.net, 2)};g`,
    ),
    text(
      "fields",
      "names and values",
      { decimals: 3, tells: true },
      (m) => `{w=${plain(m.net, 3)},u=g,st=${m.still ? "ok" : "mv"}}`,
    ),
    text(
      "fields",
      "a counter in front",
      { decimals: 3 },
      (m) => `${String(m.count).padStart(5, "0")} ${plain(m.net, 3).padStart(10)} g`,
    ),
    text(
      "fields",
      "a clock in front",
      { decimals: 3 },
      (m) => `${clock(m.seconds)} ${plain(m.net, 3).padStart(10)} g`,
    ),
    text(
      "fields",
      "seconds behind",
      { decimals: 3 },
      (m) => `${plain(m.net, 3).padStart(10)} g @${m.seconds.toFixed(1)}`,
    ),
    text(
      "fields",
      "a temperature behind",
      { decimals: 3 },
      (m) => `${plain(m.net, 3).padStart(10)} g ${(21 + 0.1 * (m.count % 13)).toFixed(1)}C`,
    ),
    text(
      "groups",
      "thousands by blanks",
      { decimals: 2, load: 123_456 },
      (m) => `${minus(m.net)}${grouped(digits(m.net, 2), " ")} g`,
    ),
    text(
      "groups",
      "thousands by commas",
      { decimals: 2, load: 123_456 },
      (m) => `${minus(m.net)}${grouped(digits(m.net, 2), ",")} g`,
    ),
    text(
      "groups",
      "thousands by apostrophes",
      { decimals: 2, load: 123_456 },
      (m) => `${minus(m.net)}${grouped(digits(m.net, 2), "'")} g`,
    ),
    text(
      "groups",
      "thousands by points, decimal comma",
      { decimals: 2, load: 123_456 },
      (m) => `${minus(m.net)}${grouped(digits(m.net, 2), "_").replace(".", ",").replaceAll("_", ".")} g`,
    ),
    text(
      "groups",
      "thousands by commas, no decimals",
      { decimals: 0, unit: "mg", load: 31_103 },
      (m) => `${minus(m.net)}${grouped(digits(m.net, 0), ",")} mg`,
    ),
    text(
      "groups",
      "thousands by blanks, width",
      { decimals: 2, load: 123_456 },
      (m) => `${(minus(m.net) + grouped(digits(m.net, 2), " ")).padStart(12)} g`,
    ),
    text(
      "groups",
      "decimal comma",
      { decimals: 3 },
      (m) => `${minus(m.net, "-", " ")}${digits(m.net, 3, ",").padStart(9)} g`,
    ),
    text(
      "groups",
      "decimal comma, free, ended by a comma",
      { decimals: 2 },
      (m) => `${minus(m.net)}${digits(m.net, 2, ",")},g`,
    ),
    text(
      "groups",
      "decimal comma in tabs",
      { decimals: 4, tells: true },
      (m) => `${m.still ? "1" : "0"}\t${minus(m.net)}${digits(m.net, 4, ",")}\tg`,
    ),
  );

  // marks of rest
  const marks: [string, string][] = [
    two(),
    ["stable", "moving"],
    ["1", "0"],
    [" ", "?"],
    ["S", "SD"],
    ["", "~"],
    ["00", "10"],
    ["ST", "US"].reverse() as [string, string],
  ];
  for (const [still, moving] of marks) {
    const w = width();
    add(
      text(
        "marks",
        `"${still}" and "${moving}" in front`,
        { decimals: 3, tells: true },
        (m) => `${m.still ? still : moving} ${plain(m.net, 3).padStart(w)} g`,
      ),
      text(
        "marks",
        `"${still}" and "${moving}" behind`,
        { decimals: 2, tells: true, end: end() },
        (m) => `${plain(m.net, 2).padStart(w)} g ${m.still ? still : moving}`,
      ),
    );
  }
  add(
    text(
      "marks",
      "unit at rest only",
      { decimals: 3, tells: true },
      (m) => `${minus(m.net, "-", "+")}${digits(m.net, 3).padStart(9)} ${m.still ? "g" : " "}`,
    ),
    text(
      "marks",
      "unit at rest only, other length",
      { decimals: 3, tells: true },
      (m) => `${plain(m.net, 3).padStart(9)}${m.still ? " g" : ""}`,
    ),
    text(
      "marks",
      "a mark of zero",
      { decimals: 3, tells: true },
      (m) => `${m.net === 0 ? ">0<" : "   "} ${m.still ? s : u} ${plain(m.net, 3).padStart(10)} g`,
    ),
    text(
      "marks",
      "a mark of net",
      { decimals: 3, tells: true },
      (m) => `${m.tare === 0 ? "B" : "N"}${m.still ? s : u} ${plain(m.net, 3).padStart(10)} g`,
    ),
    text(
      "marks",
      "= at rest and - in motion",
      { decimals: 3, tells: true },
      (m) => `${m.still ? "=" : "-"} ${minus(m.net, "m", " ")}${digits(m.net, 3).padStart(9)} g`,
    ),
  );

  // several weights
  add(
    text(
      "several",
      "net, gross, tare by letters",
      { decimals: 3, answers: { number: /^N/ } },
      (m) =>
        `N${plain(m.net, 3).padStart(10)} G${plain(m.gross, 3).padStart(10)} T${plain(m.tare, 3).padStart(10)} g`,
    ),
    text(
      "several",
      "gross and net by comma",
      { decimals: 2, answers: { number: /^,?NT/ } },
      (m) => `GS,${plain(m.gross, 2)},NT,${plain(m.net, 2)},g`,
    ),
    text(
      "several",
      "net and tare",
      { decimals: 3 },
      (m) => `${plain(m.net, 3).padStart(10)} g PT ${plain(m.tare, 3).padStart(9)} g`,
    ),
    text(
      "several",
      "grams and carats",
      { decimals: 3 },
      (m) => `${plain(m.net, 3).padStart(10)} g ${plain(m.net * 5, 3).padStart(10)} ct`,
    ),
    text(
      "several",
      "pieces beside grams",
      { decimals: 2 },
      (m) =>
        `${String(Math.max(0, Math.round(m.net / 321))).padStart(4)} pcs ${plain(m.net, 2).padStart(10)} g`,
    ),
    text(
      "several",
      "the greatest so far beside",
      { decimals: 2 },
      (m) => `${plain(m.net, 2).padStart(10)} g limit 9999.99 g`,
    ),
  );

  // pounds and ounces
  const pounds = (steps: number) =>
    `${minus(steps)}${Math.floor(Math.abs(steps) / 1600)}:${digits(Math.abs(steps) % 1600, 2)}`;
  const inOunces = (steps: number) => ({ text: plain(steps, 2), unit: "oz" });
  add(
    text(
      "pounds",
      "lb:oz",
      {
        unit: "lb:oz",
        decimals: 2,
        load: 3521,
        shows: (n) => ({ text: pounds(n), unit: "lb:oz" }),
        reads: inOunces,
      },
      (m) => `${pounds(m.net).padStart(10)} lb:oz`,
    ),
    text(
      "pounds",
      "lb and oz in words",
      {
        unit: "lb:oz",
        decimals: 2,
        load: 3521,
        shows: (n) => ({ text: pounds(n), unit: "lb:oz" }),
        reads: inOunces,
      },
      (m) =>
        `${minus(m.net, "-", " ")}${String(Math.floor(Math.abs(m.net) / 1600)).padStart(3)} lb ${digits(Math.abs(m.net) % 1600, 2).padStart(5)} oz`,
    ),
  );

  // checks, frames, parity
  const body: Line = (m) =>
    `${m.still ? s : u}${minus(m.net, "-", "+")}${digits(m.net, 3).padStart(8, "0")}g`;
  for (const [name, check] of Object.entries(checks)) {
    add({
      kind: "checks",
      name,
      unit: "g",
      decimals: 3,
      tells: true,
      message: (m) => Uint8Array.from([...ascii(body(m)), ...check(ascii(body(m))), 13, 10]),
    });
    add({
      kind: "checks",
      name: `${name}, framed`,
      unit: "g",
      decimals: 3,
      tells: true,
      message: (m) => Uint8Array.from([2, ...ascii(body(m)), 3, ...check(ascii(body(m)))]),
    });
  }
  add(
    {
      kind: "frames",
      name: "STX and ETX",
      unit: "g",
      decimals: 3,
      tells: true,
      message: (m) => ascii(`\x02${body(m)}\x03`),
    },
    {
      kind: "frames",
      name: "STX and CR",
      unit: "g",
      decimals: 3,
      tells: true,
      message: (m) => ascii(`\x02${body(m)}\r`),
    },
    {
      kind: "frames",
      name: "STX, ETX, CR LF",
      unit: "ct",
      decimals: 3,
      tells: false,
      message: (m) => ascii(`\x02 ${plain(m.net, 3).padStart(9)} ct\x03\r\n`),
    },
    {
      kind: "frames",
      name: "ended by silence",
      unit: "g",
      decimals: 3,
      tells: false,
      pace: 4,
      message: (m) => ascii(`w${plain(m.net, 3).padStart(9)}g`),
    },
    text(
      "frames",
      "form feed and blanks around",
      { decimals: 2 },
      (m) => `   ${plain(m.net, 2).padStart(9)} g   `,
    ),
  );
  for (const parity of ["even", "odd", "mark"] as const)
    add({
      kind: "parity",
      name: parity,
      unit: "g",
      decimals: 3,
      tells: true,
      message: (m) => sevenBits(ascii(`${body(m)}\r\n`), parity),
    });

  // blocks of lines
  add(
    text(
      "blocks",
      "number, unit, state",
      { decimals: 3, tells: true },
      (m) => `W ${plain(m.net, 3).padStart(9)}\r\nU g\r\nS ${m.still ? "rest" : "move"}`,
    ),
    text(
      "blocks",
      "gross, tare, net with letters",
      { decimals: 3, answers: { number: /^N/ } },
      (m) =>
        `G ${plain(m.gross, 3).padStart(9)} g\r\nT ${plain(m.tare, 3).padStart(9)} g\r\nN ${plain(m.net, 3).padStart(9)} g`,
    ),
    text(
      "blocks",
      "sign in a line of its own",
      { decimals: 3 },
      (m) => `SIGN ${m.net < 0 ? "minus" : "plus"}\r\nVAL ${digits(m.net, 3).padStart(9)} g`,
    ),
    text(
      "blocks",
      "date above",
      { decimals: 3 },
      (m) => `2031-05-17 ${clock(m.seconds)}\r\n${plain(m.net, 3).padStart(9)} g`,
    ),
    text(
      "blocks",
      "a label now and then",
      { decimals: 3 },
      (m) =>
        `${m.count % 5 === 0 ? "bench 7 of the invented house\r\n" : ""}${plain(m.net, 3).padStart(9)} g`,
    ),
  );

  // what nobody could read
  const binary = (name: string, message: (m: Moment) => number[], refused?: string[]): Manner => ({
    kind: "binary",
    name,
    unit: "g",
    decimals: 3,
    tells: false,
    message: (m) => Uint8Array.from(message(m)),
    ...(refused && { refused }),
  });
  const telling = (name: string, message: (m: Moment) => number[]) => ({
    ...binary(name, message),
    tells: true,
  });
  const word32 = (n: number) => [(n >> 24) & 255, (n >> 16) & 255, (n >> 8) & 255, n & 255];
  add(
    telling("integer, high byte first", (m) => [
      0xaa,
      0x55,
      ...word32(m.net),
      m.still ? 1 : 0,
      (0xff + word32(m.net).reduce((a, b) => a + b, 0)) & 255,
    ]),
    telling("integer, low byte first", (m) => [0x7e, ...word32(m.net).reverse(), m.still ? 0x80 : 0, 0x0d]),
    binary("packed decimals", (m) => [
      0xff,
      ...Buffer.from(String(Math.abs(m.net)).padStart(8, "0"), "hex"),
      m.net < 0 ? 1 : 0,
    ]),
    text(
      "unreadable",
      "pieces only",
      { unit: "pcs", decimals: 0, load: 321, refused: ["learn.refused.quantity"] },
      (m) => `${String(m.net).padStart(6)} pcs`,
    ),
    text(
      "unreadable",
      "hexadecimal",
      {
        decimals: 3,
        refused: ["learn.refused.not-found", "learn.refused.no-digits", "learn.refused.not-all"],
      },
      (m) => `${minus(m.net, "-", "+")}${Math.abs(m.net).toString(16).padStart(6, "0")} g`,
    ),
    text(
      "unreadable",
      "digits from the right",
      { decimals: 3, refused: ["learn.refused.not-found", "learn.refused.not-all"] },
      (m) => `${[...digits(m.net, 3).padStart(8, "0")].reverse().join("")}${minus(m.net, "-", "+")}`,
    ),
  );
  // more of what was invented to mislead
  const big = (n: number) => Math.abs(n) > 20_000;
  const tenth = (n: number) => Math.round(Math.abs(n) / 10);
  const twoRanges = (n: number) => ({
    text: minus(n) + (big(n) ? digits(tenth(n), 2) : digits(n, 3)),
    unit: "g",
  });
  const ranges = { decimals: 3, shows: twoRanges, reads: twoRanges };
  add(
    text(
      "misleading",
      "two ranges, code of decimals",
      ranges,
      (m) =>
        `${big(m.net) ? 2 : 3};${minus(m.net, "-", "+")}${String(big(m.net) ? tenth(m.net) : Math.abs(m.net)).padStart(7, "0")};g`,
    ),
    text("misleading", "two ranges, point written", ranges, (m) => `${twoRanges(m.net).text.padStart(10)} g`),
    text(
      "misleading",
      "bits of a status of two digits",
      { decimals: 3, tells: true },
      (m) =>
        `${String((m.still ? 8 : 0) + (m.net < 0 ? 4 : 0) + (m.tare === 0 ? 0 : 2) + (m.net === 0 ? 1 : 0)).padStart(2, "0")} ${digits(m.net, 3).padStart(8)} g`,
    ),
    text(
      "misleading",
      "letters of sign, tare and rest",
      { decimals: 3, tells: true },
      (m) =>
        `${m.net < 0 ? "N" : "P"}${m.tare === 0 ? "-" : "T"}${m.still ? "S" : "D"} ${digits(m.net, 3).padStart(8)} g`,
    ),
    text(
      "misleading",
      "digits glued all through",
      { decimals: 3, tells: true },
      (m) => `${m.still ? 1 : 0}0${m.net < 0 ? 1 : 0}0${String(Math.abs(m.net)).padStart(7, "0")}`,
    ),
    text(
      "misleading",
      "E+00 and a mark in motion",
      { decimals: 3, tells: true },
      (m) => `${minus(m.net, "-", "+")}${digits(m.net, 3).padStart(9, "0")}E+00 g ${m.still ? "" : "?"}`,
    ),
    text(
      "misleading",
      "dashes behind in motion",
      { decimals: 3, tells: true },
      (m) => `${plain(m.net, 3).padStart(9)} g ${m.still ? "OK" : "--"}`,
    ),
    text(
      "misleading",
      "a letter behind as sign",
      { decimals: 3 },
      (m) => `${digits(m.net, 3).padStart(9)}${m.net < 0 ? "M" : "P"} g`,
    ),
    text("misleading", "JSON with a counter", { decimals: 3, tells: true }, (m) =>
      JSON.stringify({ w: plain(m.net, 3), u: "g", s: m.still, n: m.count }),
    ),
    text(
      "misleading",
      "sign twice",
      { decimals: 3 },
      (m) => `${minus(m.net, "-", "+")}${digits(m.net, 3).padStart(8)}${minus(m.net, "-", "+")} g`,
    ),
    text(
      "misleading",
      "zeros at the end left out",
      { decimals: 3, load: 31_103 },
      (m) => `${minus(m.net)}${Number(digits(m.net, 3))} g`,
    ),
    text(
      "misleading",
      "no zero before the point",
      { decimals: 3 },
      (m) => `${minus(m.net)}${digits(m.net, 3).replace(/^0\./, ".")} g`,
    ),
    text(
      "misleading",
      "a check of no known rule",
      { decimals: 3, refused: ["learn.refused.unexplained"] },
      (m) => {
        const line = `${minus(m.net, "-", "+")}${digits(m.net, 3).padStart(8, "0")} g`;
        return `${line} ${hex(
          [...ascii(line)].reduce((x, byte) => (x * 31 + byte) & 255, 7),
          2,
        )
          .map((code) => String.fromCharCode(code))
          .join("")}`;
      },
    ),
    text(
      "misleading",
      "three lines that look alike",
      { decimals: 3, refused: ["learn.refused.not-steady"] },
      (m) => [m.gross, m.tare, m.net].map((n) => `${plain(n, 3).padStart(9)} g`).join("\r\n"),
    ),
  );
  const sums = (bytes: number[]) => [...bytes, bytes.reduce((a, b) => a + b, 0) & 255];
  add(
    binary("integer, sum behind", (m) => sums([0x5a, 0x11, ...word32(m.net), m.tare === 0 ? 0 : 4])),
    binary("packed decimals, sum behind", (m) =>
      sums([0x81, m.net < 0 ? 0x2d : 0x2b, ...Buffer.from(String(Math.abs(m.net)).padStart(8, "0"), "hex")]),
    ),
    binary(
      "a float",
      (m) => {
        const bytes = Buffer.alloc(4);
        bytes.writeFloatBE(m.net / 1000);
        return [0xa5, ...bytes, 0x0a];
      },
      ["learn.failed.binary", "learn.failed.binary-below-zero"],
    ),
  );
  return [...all, ...marksOfOtherThings()];
}

const clock = (seconds: number) => {
  const at = 34_567 + Math.floor(seconds);
  return [Math.floor(at / 3600), Math.floor(at / 60) % 60, at % 60]
    .map((n) => String(n).padStart(2, "0"))
    .join(":");
};

function grouped(number: string, mark: string): string {
  const [whole = "", fraction] = number.split(".");
  let groups = whole;
  for (let at = whole.length - 3; at > 0; at -= 3)
    groups = `${groups.slice(0, at)}${mark}${groups.slice(at)}`;
  return fraction === undefined ? groups : `${groups}.${fraction}`;
}

const hex = (n: number, size: number) => [...ascii(n.toString(16).toUpperCase().padStart(size, "0"))];
const added = (bytes: Uint8Array) => bytes.reduce((a, b) => a + b, 0);

function divided(bytes: Uint8Array, size: number, by: number, from: number): number {
  // long division of the message by the polynomial, one bit after the other
  let rest = BigInt(from);
  const top = 1n << BigInt(size);
  for (const byte of bytes) {
    rest ^= BigInt(byte) << BigInt(size - 8);
    for (let i = 0; i < 8; i += 1) {
      rest <<= 1n;
      if (rest & top) rest ^= top | BigInt(by);
    }
  }
  return Number(rest);
}

const turned = (n: number, size: number) =>
  Number.parseInt([...n.toString(2).padStart(size, "0")].reverse().join(""), 2);

const checks: Record<string, (bytes: Uint8Array) => number[]> = {
  "exclusive or in two digits": (b) =>
    hex(
      b.reduce((x, y) => x ^ y, 0),
      2,
    ),
  "sum in two digits": (b) => hex(added(b) & 255, 2),
  "sum to zero in two digits": (b) => hex(-added(b) & 255, 2),
  "sum modulo 256 in three decimal digits": (b) => [...ascii(String(added(b) % 256).padStart(3, "0"))],
  "sum modulo 100 in two decimal digits": (b) => [...ascii(String(added(b) % 100).padStart(2, "0"))],
  "cyclic 8 in two digits": (b) => hex(divided(b, 8, 0x07, 0), 2),
  "cyclic 16 in four digits": (b) => hex(divided(b, 16, 0x1021, 0xffff), 4),
  "cyclic 16 from zero in four digits": (b) => hex(divided(b, 16, 0x1021, 0), 4),
  "cyclic 16 turned in four digits": (b) =>
    hex(
      turned(
        divided(
          b.map((x) => turned(x, 8)),
          16,
          0x8005,
          0xffff,
        ),
        16,
      ),
      4,
    ),
};

function sevenBits(bytes: Uint8Array, parity: "even" | "odd" | "mark"): Uint8Array {
  return bytes.map((byte) => {
    let ones = 0;
    for (let i = 0; i < 7; i += 1) ones += (byte >> i) & 1;
    const high = parity === "mark" || (ones % 2 === 1) === (parity === "even");
    return high ? byte | 0x80 : byte & 0x7f;
  });
}
