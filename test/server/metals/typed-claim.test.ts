import { expect, test } from "vitest";
import { builtIn } from "../../../server/metals/library.ts";
import { typedClaim } from "../../../server/metals/typed-claim.ts";

const names = (id: string) => (id === "br-cuzn37" ? ["Brass CuZn37"] : []);

/** Finenesses beside their carats: 24 ct is the whole, so n ct is n/24 of it, stamped as ISO 9202 lists them (from memory). */
test.each([
  ["585", "au-585"],
  ["14 ct", "au-585"],
  ["14K", "au-585"],
  ["14 Karat", "au-585"],
  ["18 quilates", "au-750"],
  ["Gold 750 (18 ct)", "au-750"],
  ["750er Gold", "au-750"],
  ["Oro 750", "au-750"],
  ["Gold 999,9", "au-24"],
  ["Silber 925", "ag-925"],
  ["925/1000", "ag-925"],
  ["sterling silver", "ag-925"],
  ["Pt 950", "pt-950"],
  ["AU-585", "au-585"],
])("%s is understood as %s", (typed, metal) => {
  expect(typedClaim(typed, builtIn, names)).toEqual({ metal });
});

test.each([
  ["999", ["ag-999", "au-999", "pd-999", "pt-999"]],
  ["9999", ["ag-9999", "au-24"]],
  ["950", ["ag-950", "pd-950", "pt-950"]],
  ["24 ct", ["au-24", "au-999"]],
  // the two halves contradict each other
  ["Gold 750 (14 ct)", ["au-585", "au-750"]],
])("%s can mean several metals, and none is chosen", (typed, meanings) => {
  const read = typedClaim(typed, builtIn, names);
  expect("meanings" in read && [...read.meanings].sort()).toEqual(meanings);
});

test.each(["gold", "Silber", "585 white", "14 ct silver", "18", "833", "unobtainium"])(
  "%s names no metal",
  (typed) => {
    expect(typedClaim(typed, builtIn, names)).toEqual({ meanings: [] });
  },
);
