/** A way of working out the check behind a frame, from the bytes between its start and end characters. */
export interface CheckSum {
  id: string;
  of(payload: string): string;
}

const codes = (text: string) => [...text].map((character) => character.charCodeAt(0));
const xor = (text: string) => codes(text).reduce((all, code) => all ^ code, 0);
const sum = (text: string) => codes(text).reduce((all, code) => all + code, 0);
const hex = (value: number) => (value & 0xff).toString(16).toUpperCase().padStart(2, "0");
const ETX = "\x03";
const STX = "\x02";

/** Plain sums that any line protocol may use; which one a balance uses is found out from its own frames. */
export const checkSums: readonly CheckSum[] = [
  { id: "xor", of: (text) => String.fromCharCode(xor(text)) },
  { id: "xor-with-end", of: (text) => String.fromCharCode(xor(text + ETX)) },
  { id: "xor-with-both", of: (text) => String.fromCharCode(xor(STX + text + ETX)) },
  { id: "sum-7-bits", of: (text) => String.fromCharCode(sum(text) & 0x7f) },
  { id: "sum-8-bits", of: (text) => String.fromCharCode(sum(text) & 0xff) },
  { id: "sum-to-zero", of: (text) => String.fromCharCode(-sum(text) & 0xff) },
  { id: "xor-hex", of: (text) => hex(xor(text)) },
  { id: "sum-hex", of: (text) => hex(sum(text)) },
];

/** The sums that agree with one frame; a check of no length agrees with none. */
export function agreeing(sums: readonly CheckSum[], payload: string, check: string): CheckSum[] {
  return sums.filter((candidate) => candidate.of(payload) === check);
}
