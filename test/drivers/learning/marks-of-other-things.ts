import { ascii, digits, type Line, type Manner, type Moment, minus, plain, text } from "./manner.ts";

/** A line that also says something about the line before it. */
function withBefore<Kept>(first: Kept, line: (moment: Moment, before: Kept) => [string, Kept]): Line {
  let kept = first;
  return (moment) => {
    const [said, next] = line(moment, kept);
    kept = next;
    return said;
  };
}

const weight = (m: Moment) => plain(m.net, 3).padStart(9);
const size = (m: Moment) => digits(m.net, 3).padStart(9);

/** Manners with marks that go along with rest, sign or tare without saying it, and other ways to be read wrong. */
export function marksOfOtherThings(): Manner[] {
  const turns = (m: Moment, before: number, apart: number, marks: string) =>
    Math.abs(m.net - before) <= apart ? marks[0] : m.net > before ? marks[1] : marks[2];
  const other = (name: string, told: Parameters<typeof text>[2], line: Line) =>
    text("other things", name, { decimals: 3, ...told }, line);
  const lost = {
    refused: ["learn.refused.sign-lost", "learn.refused.sign", "learn.refused.not-all"],
    tells: true,
    hidesAboveZero: true,
  };
  const unfound = {
    refused: [
      "learn.refused.not-found",
      "learn.refused.not-all",
      "learn.failed.binary",
      "learn.failed.binary-below-zero",
    ],
  };
  return [
    other(
      "counting digit glued before zeros",
      { refused: ["learn.refused.unexplained"], tells: true },
      (m) =>
        `${m.count % 10}${digits(m.net, 3).padStart(9, "0")}${minus(m.net, "-", " ")} g ${m.still ? "S" : "M"}`,
    ),
    other(
      "same, up, down in front",
      {},
      withBefore(0, (m, was) => [`${turns(m, was, 0, "=^v")}${weight(m)} g`, m.net]),
    ),
    other(
      "up, down beyond three digits",
      {},
      withBefore(0, (m, was) => [`${turns(m, was, 3, "./\\")} ${weight(m)} g`, m.net]),
    ),
    other(
      "another number than before",
      {},
      withBefore(0, (m, was) => [`${m.net === was ? 0 : 1};${weight(m)};g`, m.net]),
    ),
    other(
      "direction on a coarse display",
      { decimals: 1, load: 3121 },
      withBefore(0, (m, was) => [`${plain(m.net, 1).padStart(8)} g ${turns(m, was, 0, "=+-")}`, m.net]),
    ),
    other(
      "rest on a coarse display",
      { decimals: 1, load: 3121, tells: true },
      (m) => `${plain(m.net, 1).padStart(8)} g ${m.still ? "=" : "~"}`,
    ),
    other(
      "rest of the line before",
      {},
      withBefore(true, (m, was) => [`${weight(m)} g ${was ? "R" : "M"}`, m.still]),
    ),
    other(
      "a mark once a rest",
      {},
      withBefore(true, (m, was) => [`${weight(m)} g ${m.still && !was ? "!" : " "}`, m.still]),
    ),
    other("a door that is open", {}, (m) => `${weight(m)} g ${m.busy ? "door" : "    "}`),
    other(
      "a door and rest",
      { tells: true },
      (m) => `${weight(m)} g ${m.busy ? "D" : " "}${m.still ? "=" : "~"}`,
    ),
    other(
      "zero, rest or motion",
      { tells: true },
      (m) => `${Math.abs(m.net) < 4 ? "00" : m.still ? "01" : "10"} ${weight(m)} g`,
    ),
    other("warm for some seconds", {}, (m) => `${weight(m)} g ${m.seconds < 12 ? "warm" : "    "}`),
    other(
      "sign in place of the mark of motion",
      lost,
      (m) => `${m.still ? minus(m.net, "-", " ") : "~"}${size(m)} g`,
    ),
    other(
      "minus at rest only",
      lost,
      (m) => `${m.still ? minus(m.net, "-", " ") : " "}${size(m)} g ${m.still ? "rest" : "    "}`,
    ),
    other(
      "sign of the tare in front, of the number behind",
      { answers: { sign: /behind/, "below-zero": /unknown/ } },
      (m) => `${m.tare === 0 ? "+" : "-"}${size(m)}${minus(m.net, "-", "+")} g`,
    ),
    other(
      "nines below zero",
      {
        hidesAboveZero: true,
        refused: ["learn.refused.not-steady", "learn.refused.not-all", "learn.refused.not-found"],
      },
      (m) => `${String(m.net < 0 ? 9_999_999 + m.net : m.net).padStart(7, "0")} g`,
    ),
    other(
      "capital unit below zero",
      { tells: true },
      (m) => `${size(m)} ${m.net < 0 ? "G" : "g"} ${m.still ? "S" : "M"}`,
    ),
    other(
      "two letters below zero",
      { tells: true },
      (m) => `${size(m)} ${m.net < 0 ? "DR" : "  "} g ${m.still ? "S" : "M"}`,
    ),
    other(
      "colour of the sign",
      { tells: true },
      (m) => `\x1b[${m.net < 0 ? 31 : 39}m${size(m)} g\x1b[0m ${m.still ? "*" : " "}`,
    ),
    other("colour of rest", { tells: true }, (m) => `\x1b[${m.still ? 32 : 31}m${weight(m)} g\x1b[0m`),
    other("blanks tell rest", { tells: true }, (m) => (m.still ? `${weight(m)} g ` : ` ${weight(m)} g`)),
    other(
      "kilograms as a program writes them",
      { unit: "kg", decimals: 7, load: 312_456, tells: true },
      (m) => `{"kg":${Number((m.net * 1e-7).toPrecision(9))},"ok":${m.still}}`,
    ),
    other(
      "previous and present",
      { answers: { number: /^now/ } },
      withBefore(0, (m, was) => [`was ${plain(was, 3).padStart(9)} now ${weight(m)} g`, m.net]),
    ),
    other(
      "the step beside",
      {},
      withBefore(0, (m, was) => [`${weight(m)} g ${plain(m.net - was, 3).padStart(9)} d`, m.net]),
    ),
    other(
      "gross and tare, the display net",
      { hidesAboveZero: true, refused: ["learn.refused.not-all"] },
      (m) => `B${plain(m.gross, 3).padStart(9)} T${plain(m.tare, 3).padStart(9)} g`,
    ),
    other(
      "gross alone, the display net",
      {
        hidesAboveZero: true,
        refused: ["learn.refused.not-all", "learn.refused.not-steady", "learn.refused.not-found"],
      },
      (m) => `${plain(m.gross, 3).padStart(9)} g`,
    ),
    other(
      "milligrams below one gram",
      { tells: true, shows: (n) => ({ text: plain(n, 3), unit: "g" }) },
      (m) =>
        `${Math.abs(m.net) < 1000 ? `${String(m.net).padStart(9)} mg` : `${weight(m)} g `} ${m.still ? "S" : "M"}`,
    ),
    other(
      "a letter of no known check",
      { refused: ["learn.refused.unexplained"] },
      (m) => `${weight(m)}${String.fromCharCode(65 + (ascii(weight(m)).reduce((a, b) => a + b, 0) % 26))}`,
    ),
    other("digits apart", unfound, (m) => `${[...weight(m)].join(" ")} g`),
    other("the unit for a point", unfound, (m) => plain(m.net, 3).replace(".", "g").padStart(10)),
    other(
      "grams and thousandths apart",
      unfound,
      (m) =>
        `${minus(m.net, "-", " ")}${String(Math.floor(Math.abs(m.net) / 1000)).padStart(5)} g ${String(Math.abs(m.net) % 1000).padStart(3, "0")} mg`,
    ),
    other("digits of another script", unfound, (m) =>
      Buffer.from(
        `${weight(m).replace(/\d/g, (d) => String.fromCharCode(0xff10 + Number(d)))} g`,
        "utf8",
      ).toString("latin1"),
    ),
    {
      ...other("rest by the line end", { tells: true }, () => ""),
      message: (m) => ascii(`${weight(m)} g${m.still ? "\r\n" : "\n"}`),
    },
    {
      ...other("rest by the eighth bit of the unit", { tells: true }, () => ""),
      message: (m) => Uint8Array.from([...ascii(`${weight(m)} `), 0x67 | (m.still ? 0x80 : 0), 13, 10]),
    },
  ];
}
